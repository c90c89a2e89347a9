"""What one test maker sends back, as it is written: a small file a garment, read and never printed from."""

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Annotated, Any, NamedTuple

from pydantic import BeforeValidator, Field, PlainValidator, Tag, ValidationError, WithJsonSchema

from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import GaugeText, Length, Mass, OneOrMany, Shape, Text, Tool, as_written, refuse
from gaugewright.spec.messages import problems_from
from gaugewright.spec.readings import ReadState
from gaugewright.units import UnitError, parse_quantity
from gaugewright.yaml_reader import Source, read_yaml

MOST_HOURS = 2000
"""Nobody has spent a working year on one garment's piece: more is minutes, or a slip."""

_CLOCK = re.compile(r"([0-9]{1,4}):([0-5][0-9])")


def _hours(value: Any) -> float:
    """Hours as people write them: 4, 4.5, 4 1/2 or 4:30."""
    text = str(as_written(value))
    clock = _CLOCK.fullmatch(text.strip())
    try:
        if isinstance(value, (bool, dict, list)):
            raise UnitError("hours are a number")
        amount, dimension = (int(clock[1]) + int(clock[2]) / 60, "number") if clock else parse_quantity(text)
    except UnitError:
        raise refuse("wrong-kind", f"{'this' if isinstance(value, (dict, list)) else text} is no number of hours", "write hours such as 4, 4.5, 4 1/2 or 4:30, without a unit") from None
    if dimension != "number" or "%" in text:
        raise refuse("wrong-unit", f"{text} is no number of hours", "write hours such as 4, 4.5, 4 1/2 or 4:30, without a unit")
    if not 0 < amount <= MOST_HOURS:
        raise refuse("out-of-range", f"{text} hours can't be: more than 0 and at most {MOST_HOURS} are expected", "write the hours it took, such as 4.5")
    return amount


def _sentence(value: Any) -> Any:
    """A remark that holds a colon is taken for a key and its value, unless it stands in quotes: it is put together again."""
    if isinstance(value, dict) and len(value) == 1:
        ((before, after),) = value.items()
        if not isinstance(after, (dict, list)):
            return f"{before}: {as_written(after)}" if after is not None else f"{before}:"
    return value


Hours = Annotated[float, PlainValidator(_hours), WithJsonSchema({"type": ["number", "string"], "examples": [4.5, "4:30"]})]
Read = Annotated[Annotated[GaugeText, Tag("<text>")] | Annotated[ReadState, Tag("<table>")], Shape]
Said = Annotated[tuple[Annotated[Text, BeforeValidator(_sentence)], ...], OneOrMany]


class FabricReturn(SpecModel):
    """One fabric as its maker worked it."""

    hook: Tool | None = Field(None, description="The hook used, or `hands`.")
    fresh: Read | None = Field(None, description="The gauge before washing, as text or as counts over lengths.")
    washed: Read | None = Field(None, description="The gauge once washed and dried; this one is compared, if it is told.")


Told = Annotated[Annotated[GaugeText, Tag("<text>")] | Annotated[FabricReturn, Tag("<table>")], Shape]
Gauges = Annotated[Annotated[GaugeText, Tag("<text>")] | Annotated[dict[Text, Told], Tag("<table>")], Shape]
Used = Annotated[Annotated[Mass, Tag("<text>")] | Annotated[dict[Text, Mass], Tag("<table>")], Shape]
Spent = Annotated[Annotated[Hours, Tag("<text>")] | Annotated[dict[Text, Hours], Tag("<table>")], Shape]


class MakerReturn(SpecModel):
    """One finished piece of work; whatever wasn't noted is left out, or left blank."""

    pattern: Text | None = Field(None, description="The pattern's title.")
    version: Text | None = Field(None, description="The version of the pattern that was worked from.")
    size: Text = Field(description="The size made.", examples=["M"])
    gauge: Gauges | None = Field(None, description="The maker's own gauge: of each fabric, or one text for the main fabric.")
    finished: dict[Text, Length] = Field({}, description="Finished measurements by the names the spec gives them, in any unit.")
    yarn: Used | None = Field(None, description="What was used of each colour, or in all.")
    hours: Spent | None = Field(None, description="How long each piece took, or all of it.")
    remarks: dict[Text, Said] = Field({}, description="Remarks by piece.")
    hard_to_follow: Said = Field((), description="Where something was hard to follow: page and row, and what.")
    more: Said = Field((), description="Anything else.")
    maker: Text | None = Field(None, description="A name or sign, so that several returns of one maker count as one.")


class ReadReturn(NamedTuple):
    """A return, and where its parts stand."""

    path: Path
    told: MakerReturn
    source: Source


def read_return(path: Path) -> ReadReturn:
    """One file; raises its problems, placed in it. Blanks that nobody filled are as if they weren't there."""
    source = read_yaml(path)
    cut = tuple(_cut_by_comma(source, (), source.data))
    if cut:
        raise ProblemsFound(cut)
    try:
        return ReadReturn(path, MakerReturn.model_validate(_filled(source.data)), source)
    except ValidationError as fault:
        raise ProblemsFound(problems_from(fault, MakerReturn, source)) from None


def _cut_by_comma(source: Source, path: tuple[str, ...], data: dict[str, Any]) -> Iterator[Problem]:
    """`{bust: 116,5 cm}` and `{body: 9 sts, 7 rows / 10 cm}` are read as two keys, the second a blank one."""
    for (key, value), (second, blank) in pairwise(data.items()):
        if blank is None and second[:1].isdigit() and value is not None and not isinstance(value, (dict, list)):
            first = str(as_written(value))
            if first[-1:].isdigit():
                yield Problem("decimal-comma", f"a comma can't stand inside a number: {key} ends after {first}", source.origin_at((*path, key)), f"write {first}.{second}")
            else:
                yield Problem("gauge-text", "a comma ends a value within braces, and the gauge with it", source.origin_at((*path, key)), f'write {key}: "{first}, {second}"')
    for key, value in data.items():
        if isinstance(value, dict):
            yield from _cut_by_comma(source, (*path, key), value)


def _filled(data: dict[str, Any]) -> dict[str, Any]:
    """Without keys that hold nothing, and without tables that then hold nothing; an entry of a list keeps its place."""
    found: dict[str, Any] = {}
    for key, value in data.items():
        if isinstance(value, dict):
            value = _filled(value)
        elif isinstance(value, list):
            value = ["" if one is None else _filled(one) if isinstance(one, dict) else one for one in value]
        if value is not None and value != {}:
            found[key] = value
    return found


def returns_in(paths: tuple[Path, ...]) -> tuple[Path, ...]:
    """The files named, and those of the folders named, in order of their names; each once."""
    found: dict[Path, Path] = {}
    for path in paths:
        for one in _files_of(path) if path.is_dir() else (path,):
            found.setdefault(one.resolve(), one)
    return tuple(found.values())


def _files_of(folder: Path) -> tuple[Path, ...]:
    files = tuple(sorted(one for one in folder.iterdir() if one.suffix.lower() in (".yaml", ".yml") and one.is_file()))
    if not files:
        raise UserError("no-returns", f"{folder} holds no return", "name a folder with one .yaml file for each garment made")
    return files
