"""Stitch patterns by name: the spec's own, then those of the templates folders, one a file under `stitches/`."""

from collections.abc import Mapping
from pathlib import Path

from pydantic import ValidationError

from gaugewright.errors import ProblemsFound
from gaugewright.resources import find_template, template_names
from gaugewright.spec.messages import problems_from
from gaugewright.spec.stitch_patterns import WrittenPattern, worked_pattern
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.yaml_reader import read_yaml

FOLDER = "stitches"


def shelved(own: Path | None = None) -> tuple[str, ...]:
    """The names of patterns in the user's folder and in those that are shipped."""
    return template_names(FOLDER, ".yaml", own)


def shelf_pattern(name: str, own: Path | None = None) -> StitchPattern:
    """A pattern from its file; raises its problems, placed in that file."""
    source = read_yaml(find_template(f"{FOLDER}/{name}.yaml", own))
    try:
        return worked_pattern(name, WrittenPattern.model_validate(source.data))
    except ValidationError as fault:
        raise ProblemsFound(problems_from(fault, WrittenPattern, source)) from None


def patterns_used(written: Mapping[str, WrittenPattern], used: tuple[str, ...], own: Path | None = None) -> dict[str, StitchPattern]:
    """The patterns that fabrics name: the spec's own win."""
    return {name: worked_pattern(name, written[name]) if name in written else shelf_pattern(name, own) for name in used}
