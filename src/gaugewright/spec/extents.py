"""How far a section goes is stated in exactly one way."""

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import refuse


def stated_keys(model: SpecModel, *keys: str) -> list[str]:
    """Which of these keys a section states."""
    return [key for key in keys if getattr(model, key) is not None]


def refuse_extents(model: SpecModel, keys: tuple[str, ...], surplus: str, what: str, lacks: str, add: str) -> None:
    """Refuses two extents, of which `surplus` (else the second) is to go, and none; `what` names the section, `lacks` what it then doesn't say."""
    found = stated_keys(model, *keys)
    if len(found) > 1:
        out = surplus or found[1]
        raise refuse("two-extents", f"this {what} gives both `{found[0]}` and `{found[1]}`", f"take out `{out}`", path=(out,))
    if not found:
        raise refuse("missing-key", f"this {what} doesn't say {lacks}", add)
