"""A file of people's own measurements, as it is written: it stays with its owner, and no pattern is printed from it unasked."""

from collections.abc import Iterator
from pathlib import Path

from pydantic import Field

from gaugewright.errors import Problem, ProblemsFound
from gaugewright.measurements import MEASURES, implausible
from gaugewright.spec.base import SpecModel
from gaugewright.spec.fields import Length, NameKey, Text
from gaugewright.spec.messages import did_you_mean
from gaugewright.spec.own_files import validated
from gaugewright.yaml_reader import Source, read_yaml


class Household(SpecModel):
    """People and what they measure; whatever wasn't measured is left out."""

    people: dict[Text, dict[NameKey, Length]] = Field(description="Body measures by person, in any unit.", min_length=1, examples=["{Ada: {bust: 96 cm, upper_arm: 12 1/2 in}}"])

    def measures(self, person: str) -> dict[str, float]:
        """One person's measures, mm."""
        return {name: length.mm for name, length in self.people[person].items()}


def read_household(path: Path) -> Household:
    """The file; raises its problems, placed in it."""
    source = read_yaml(path)
    found = validated(Household, source)
    problems = tuple(_problems(found, source))
    if problems:
        raise ProblemsFound(problems)
    return found


def _problems(found: Household, source: Source) -> Iterator[Problem]:
    """Measures that nobody knows, slips of the decimal point or the unit, and people without any measure."""
    for person, measures in found.people.items():
        if not measures:
            yield Problem("empty-value", f"nothing is known of {person}", source.origin_at(("people", person), key=True), "add what was measured, such as bust: 96 cm")
        for name, length in measures.items():
            path = ("people", person, name)
            if name not in MEASURES:
                hint = did_you_mean(name, sorted(MEASURES), f"the measures are {', '.join(sorted(MEASURES))}")
                yield Problem("unknown-measure", f"{name} is not a body measure known here", source.origin_at(path, key=True), hint)
            elif said := implausible(name, length.mm):
                yield Problem("out-of-range", said, source.origin_at(path), f"measure the {name.replace('_', ' ')} again, or mend the unit or the decimal point")
