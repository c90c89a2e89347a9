"""How much a fabric lengthens when it hangs, as a spec states it."""

from typing import Annotated, Any

from pydantic import PlainValidator, WithJsonSchema

from gaugewright.spec.fields import percentage, refuse

MOST_GROWTH = 50.0
"""More than half as long again isn't growth but a slip of the pen."""


def _growth(value: Any) -> float:
    """A percentage from 0, which says that the fabric was hung and kept its length."""
    percent, text = percentage(value, "5 %")
    if not 0 <= percent <= MOST_GROWTH:
        raise refuse("out-of-range", f"{text} is no growth of a hanging fabric: 0 to {MOST_GROWTH:g} % is expected", "hang a swatch, measure it again, and write a percentage such as 5 %")
    return percent


Growth = Annotated[float, PlainValidator(_growth), WithJsonSchema({"type": ["number", "string"], "examples": ["5 %", "0 %"]})]
