"""The habits a pattern is worked by, where the trade has several; a setting each, the same in all pieces."""

from dataclasses import dataclass

from gaugewright.vocabulary import Schedules, ShoulderSteps, Spreading, TaperEnds


@dataclass(frozen=True, slots=True)
class Conventions:
    """How what doesn't share out evenly is placed; the defaults are the engine's own ways."""

    schedules: Schedules = "straightest"
    spreading: Spreading = "shared out"
    shoulder_steps: ShoulderSteps = "larger at the neck"
    taper_ends: TaperEnds = "as they fall"
