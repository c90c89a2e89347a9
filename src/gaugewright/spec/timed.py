"""Stitches worked by the clock, as a swatch states them."""

import re
from typing import Annotated, Any, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, as_written, refuse

MOST_MINUTES = 6000
_CLOCK = re.compile(r"\s*([0-9]{1,4}):([0-5][0-9])\s*")


def _minutes(value: Any) -> float:
    """Minutes as a number, or as minutes and seconds on a stopwatch: 9, 9.5 or 9:30."""
    clock = _CLOCK.fullmatch(value) if isinstance(value, str) else None
    if clock:
        found = int(clock[1]) + int(clock[2]) / 60
    elif isinstance(value, bool) or not isinstance(value, (int, float)):
        raise refuse("wrong-kind", f"minutes are expected, not {str(as_written(value))[:40]!r}", "write minutes such as 9 or 9.5, or minutes and seconds such as 9:30, without a unit")
    else:
        found = float(value)
    if not found > 0:
        raise refuse("not-positive", f"{as_written(value)} minutes are no time to work in", "write how many minutes the stitches took, such as 9 or 9:30")
    if found > MOST_MINUTES:
        raise refuse("out-of-range", f"{as_written(value)} minutes are more than anybody times at a stretch", f"write how many minutes the stitches took, at most {MOST_MINUTES}")
    return found


class Timed(SpecModel):
    """Stitches, or rows of so many stitches, worked by the clock with the swatch's tool and yarn."""

    stitches: Count = Field(description="Stitches worked, or stitches of each of the `rows`.", examples=[72])
    rows: Count = Field(1, description="How many rows of so many stitches were worked.", examples=[4])
    minutes: Annotated[float, PlainValidator(_minutes), WithJsonSchema({"type": ["number", "string"], "exclusiveMinimum": 0})] = Field(
        description="How long they took with their turns, in minutes or as minutes:seconds.", examples=[9, "9:30"]
    )

    @model_validator(mode="after")
    def _can_be(self) -> Self:
        from gaugewright.trade.work_times import pace_fault

        fault = pace_fault(self.stitches * self.rows / self.minutes)
        if fault:
            raise refuse(fault.name, fault.message, "check both figures: `stitches` are all that were worked, or those of each of the `rows`; `minutes` is how long they took", path=("minutes",))
        return self
