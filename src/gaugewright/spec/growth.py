"""How much a fabric lengthens when it hangs, as a spec states it."""

from typing import Annotated, Any

from pydantic import PlainValidator, WithJsonSchema

from gaugewright.spec.fields import as_written, refuse
from gaugewright.units import UnitError, parse_quantity

MOST_GROWTH = 50.0
"""More than half as long again isn't growth but a slip of the pen."""


def _growth(value: Any) -> float:
    """A percentage from 0, which says that the fabric was hung and kept its length."""
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise refuse("wrong-kind", "a percentage is expected", "write a percentage such as 5 %")
    text = str(as_written(value))
    try:
        amount, dimension = parse_quantity(text if "%" in text else f"{text} %")
    except UnitError as fault:
        raise refuse("wrong-unit", fault.message, fault.hint, fault.column) from None
    if dimension != "number" or not 0 <= amount * 100 <= MOST_GROWTH:
        raise refuse("out-of-range", f"{text} is no growth of a hanging fabric: 0 to {MOST_GROWTH:g} % is expected", "hang a swatch, measure it again, and write a percentage such as 5 %")
    return amount * 100


Growth = Annotated[float, PlainValidator(_growth), WithJsonSchema({"type": ["number", "string"], "examples": ["5 %", "0 %"]})]
