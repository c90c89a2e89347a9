"""Habits of the trade that differ from author to author: settings of the whole pattern.

Whatever has several published habits (the remainder of a schedule, of a spread, of a slope) is a key here
with the engine's own way as its default; `design/conventions.py` holds it for grading, and
`instructions/notes_page.py` states it once where it isn't the default and something is worked by it.
"""

from pydantic import Field

from gaugewright.spec.base import SpecModel
from gaugewright.vocabulary import Schedules, ShoulderSteps, Spreading, TaperEnds


class Conventions(SpecModel):
    """How what doesn't share out evenly is placed."""

    schedules: Schedules = Field(
        "straightest",
        description="Rows of tapers, raglans and V necks: the straightest edge; or every shaping row after a whole gap, the shorter or the longer gaps first.",
    )
    spreading: Spreading = Field(
        "shared out",
        description="Stitches of a taper round a round that don't share out among its changes: shared among them, or left after the last one.",
    )
    shoulder_steps: ShoulderSteps = Field(
        "larger at the neck",
        description="Stitches of a shoulder that don't share out among the steps of its slope: one more to each of the steps nearest the neck, or nearest the armhole, or spread among them.",
    )
    taper_ends: TaperEnds = Field(
        "as they fall",
        description="The stitches that a taper at two edges begins and ends with: the nearest count, its end of the parity of its beginning; or both even, the nearest or the one below.",
    )
