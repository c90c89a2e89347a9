"""Stitch patterns as written: in the spec, or one a file under `stitches/`."""

from typing import Annotated, Any, Self

from pydantic import AfterValidator, Field, Strict, model_validator

from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Count, Many, Text, refuse
from gaugewright.spec.vocabulary import Stitch
from gaugewright.stitch_patterns.parser import PatternError, parse_row
from gaugewright.stitch_patterns.pattern import StitchPattern, pattern_faults

_Loose = Strict(False)


def _row(text: str) -> str:
    try:
        parse_row(text)
    except PatternError as fault:
        raise refuse("stitch-pattern-text", fault.message, fault.hint, fault.column) from None
    return text


RowOfPattern = Annotated[Text, AfterValidator(_row)]
Rows = Annotated[tuple[RowOfPattern, ...], _Loose, Many, Field(max_length=60)]


class PatternMultiple(SpecModel):
    """A stitch pattern's multiple and extra."""

    of: Count = Field(description="Stitches in one repeat.", examples=[6])
    plus: Annotated[int, Field(ge=0, le=200)] = Field(0, description="Stitches beyond the whole repeats, in rows.")


class WrittenPattern(SpecModel):
    """A stitch pattern: the rows of its repeat, in the trade's abbreviations (US terms), right side first.

    A row such as `1 sc, *ch 1, sk 1, 1 sc*` has its repeat between stars; turning chains are left out, since they
    follow from the first stitch.
    """

    title: Text | None = Field(None, description="The name printed for it; otherwise its key.")
    multiple: PatternMultiple = Field(description="The multiple and extra it is worked over.", examples=["{of: 6, plus: 1}"])
    plain: Stitch = Field(description="The stitch of plain rows and of plain edge stitches.", examples=["sc"])
    set_up: Rows = Field((), description="Rows worked once, before the repeat.")
    rows: Rows = Field((), description="The rows repeated.", examples=['["1 sc, *ch 5, sk 3, 1 sc*", "1 sc, *3 sc in ch 5, 1 sc*"]'])
    rounds: Rows = Field((), description="The same for work in rounds: a multiple without an extra.")
    note: Text | None = Field(None, description="A note printed with it.")

    @model_validator(mode="after")
    def _follows(self) -> Self:
        if not self.rows and not self.rounds:
            raise refuse("missing-key", "this stitch pattern has no rows", 'add `rows: ["1 sc, *ch 1, sk 1, 1 sc*"]`, or `rounds`')
        if self.set_up and not self.rows:
            raise refuse("missing-key", "a set-up comes before rows, and this pattern has none", "add `rows`, or take out `set_up`", path=("set_up",))
        for fault in pattern_faults(worked_pattern("", self)):
            raise refuse("stitch-pattern-broken", fault.message, fault.hint, fault.column, path=(fault.group, fault.number))
        return self


def worked_pattern(key: str, written: WrittenPattern) -> StitchPattern:
    """The pattern with its rows read."""
    rows: dict[str, Any] = {name: tuple(parse_row(text) for text in getattr(written, name)) for name in ("set_up", "rows", "rounds")}
    title = written.title or key.replace("_", " ").capitalize()
    return StitchPattern(
        key, title, written.multiple.of, written.multiple.plus, written.plain, rows["set_up"], rows["rows"], rows["rounds"], written.note or ""
    )
