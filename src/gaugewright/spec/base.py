"""What all models of the spec share: nothing unknown, nothing changed, every field described."""

from pydantic import BaseModel, ConfigDict


class SpecModel(BaseModel):
    """Strict and frozen; keys are the trade's words, and a key that means nothing is a problem."""

    model_config = ConfigDict(strict=True, frozen=True, extra="forbid", defer_build=True)
