"""A file of a swatch's readings, as it is written."""

from pathlib import Path
from typing import Annotated, Literal, Self

from pydantic import Field, Strict, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Length, Many, Mass, Tool, refuse
from gaugewright.spec.own_files import validated
from gaugewright.spec.vocabulary import Worked
from gaugewright.yaml_reader import read_yaml

_Loose = Strict(False)
State = Literal["fresh", "washed", "hung"]
STATES: tuple[State, ...] = ("fresh", "washed", "hung")


class WrittenReading(SpecModel):
    """One count over one measured length."""

    count: Annotated[float, Strict(False), Field(gt=0, le=2000)] = Field(description="Stitches or rows counted, halves too.", examples=[18, 13.5])
    over: Length = Field(description="The length they measure.", examples=["20.5 cm"])
    along: Annotated[int, Field(ge=1, le=20000)] | None = Field(
        None, description="The row it was counted along, or for rows the column of stitches; one of its own unless stated.", examples=[5]
    )
    start: Length | None = Field(None, description="Where along it the count begins, from the swatch's edge: readings that overlap tell less.", examples=["3 cm"])

    @model_validator(mode="after")
    def _placed(self) -> Self:
        if self.start is not None and self.along is None:
            raise refuse("missing-key", "this reading says where it begins, but not along which row", "add `along: 5` with the number of its row", path=("start",))
        return self


ReadingList = Annotated[tuple[WrittenReading, ...], _Loose, Many, Field(min_length=1, max_length=200)]


class ReadState(SpecModel):
    """What was read in one state of the swatch."""

    stitches: ReadingList = Field(description="Counts across the width.", examples=["[{count: 18, over: 20.5 cm}]"])
    rows: ReadingList = Field(description="Counts over the height.", examples=["[{count: 14, over: 19.5 cm}]"])


class Weighed(SpecModel):
    """A piece of the swatch as it was weighed, without its tails."""

    mass: Mass = Field(description="What it weighs without tails.", examples=["41 g"])
    stitches: Annotated[int, Field(ge=1, le=20000)] = Field(description="Stitches of each of its rows.", examples=[18])
    rows: Annotated[int, Field(ge=1, le=20000)] = Field(description="Its rows.", examples=[14])


class SwatchReadings(SpecModel):
    """A swatch's readings, in the states it was read in."""

    fresh: ReadState | None = Field(None, description="As it came off the hook.")
    washed: ReadState | None = Field(None, description="Washed and dried as the garment will be.")
    hung: ReadState | None = Field(None, description="Hung, with the weight of a garment on it.")
    use: State | None = Field(None, description="The state that is graded from: washed where it was read, unless stated.")
    worked: Worked = Field("rows", description="Back and forth in rows, or how in rounds, as the garment will be.")
    tool: Tool | None = Field(None, description="The hook it was worked with, or `hands`.")
    weighed: Weighed | None = Field(None, description="What was weighed, if anything.")
    thickness: Length | None = Field(None, description="How thick the cloth is.")

    @model_validator(mode="after")
    def _read(self) -> Self:
        given = [state for state in STATES if getattr(self, state) is not None]
        if not given:
            raise refuse("missing-key", "this file holds no readings", "add `washed: {stitches: [{count: 18, over: 20.5 cm}], rows: [{count: 14, over: 19.5 cm}]}`")
        if self.use is not None and self.use not in given:
            raise refuse("missing-key", f"nothing was read {self.use}, and that is what `use` names", f"write `use: {given[-1]}`, or add {self.use} with its readings", path=("use",))
        return self

    @property
    def used(self) -> State:
        """The state that is graded from."""
        given = [state for state in STATES if getattr(self, state) is not None]
        return self.use or ("washed" if "washed" in given else given[-1])


def read_swatch(path: Path) -> SwatchReadings:
    """A readings file; raises its problems, placed in it."""
    return validated(SwatchReadings, read_yaml(path))
