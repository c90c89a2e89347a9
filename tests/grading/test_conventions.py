"""Habits of the trade as settings: the same piece by each of them, and the default untouched."""

import pytest
from tiny_specs import ONE_SIZE, counts, designed, graded, told

from gaugewright.design.conventions import Conventions
from gaugewright.grading.plan import RaglanPlan, ShouldersPlan, SpreadPlan, TaperPlan

TAPER = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {rows: 1}, taper: {rows: 23, target: 30 cm}]}}\n"


def by(habit: str, text: str = TAPER) -> str:
    return text.replace("pieces:", f"conventions: {{{habit}}}\npieces:", 1)


def shaped_rows(text: str) -> tuple[int, ...]:
    plan = graded(text).plans["piece"]["M"].sections[1]
    assert isinstance(plan, TaperPlan)
    return plan.schedule.positions()


def test_nothing_said_is_the_straightest_edge() -> None:
    assert designed(TAPER).conventions == Conventions() == designed(by("schedules: straightest")).conventions
    assert shaped_rows(TAPER) == shaped_rows(by("schedules: straightest")) == (4, 8, 12, 16, 20)


@pytest.mark.parametrize(("habit", "rows"), [("shorter", (4, 8, 13, 18, 23)), ("longer", (5, 10, 15, 19, 23))])
def test_a_taper_after_whole_gaps(habit: str, rows: tuple[int, ...]) -> None:
    assert shaped_rows(by(f"schedules: {habit} gap first")) == rows


@pytest.mark.parametrize(("habit", "rows"), [("shorter", (4, 8, 13, 18, 23)), ("longer", (5, 10, 15, 19, 23))])
def test_a_v_neck_after_whole_gaps(habit: str, rows: tuple[int, ...]) -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 40 cm}, sections: [even: {rows: 30}, neck: {shape: v, width: 10 cm, depth: 23 cm}]}}\n"
    side = graded(by(f"schedules: {habit} gap first", text)).pieces["piece"]["M"].strips[1]
    losing = [n for n, (a, b) in enumerate(zip((side.start.stitches, *side.counts()), side.counts(), strict=False), start=1) if b < a]
    assert tuple(losing) == rows


def test_a_raglan_after_whole_gaps() -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: round, colours: oat, start: {ring: 44 cm}, sections: [even: {rounds: 1}, raglan: {rows: 23, body: 76 cm, sleeve: 30 cm, underarm: 6 cm}]}}\n"
    text = text.replace("rows: 23", "length: 23 cm")
    plan = graded(by("schedules: shorter gap first", text)).plans["piece"]["M"].sections[1]
    assert isinstance(plan, RaglanPlan)
    gaps = [b - a for a, b in zip((0, *plan.body_rows), plan.body_rows, strict=False)]
    assert gaps == sorted(gaps) and gaps[-1] - gaps[0] <= 1
    assert plan.body_rows[-1] == plan.sleeve_rows[-1] == 23
    assert set(plan.sleeve_rows) <= set(plan.body_rows)


def test_stitches_left_at_the_end_of_a_round() -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: round, colours: oat, start: {ring: 40 cm}, sections: [even: {rounds: 2}, taper: {rounds: 1, target: 47 cm}]}}\n"
    plan = graded(by("spreading: left at the end", text)).plans["piece"]["M"].sections[1]
    assert isinstance(plan, SpreadPlan)
    [made] = plan.spreads
    assert made is not None
    assert made.positions() == (5, 11, 16, 22, 27, 33, 38) and made.trailing == 2
    assert counts(by("spreading: left at the end", text)) == counts(text) == (40, 40, 47)


@pytest.mark.parametrize(
    ("habit", "ends"),
    [("as they fall", (24, 35, 36)), ("nearest even", (24, 36, 36)), ("even below", (22, 34, 36))],
)
def test_the_ends_of_a_taper(habit: str, ends: tuple[int, int, int]) -> None:
    text = ONE_SIZE + """\
pieces:
  cuffed: {fabric: plain, colours: oat, start: {chain: 23.8 cm}, sections: [even: {rows: 1}, taper: {rows: 20, target: 36 cm}]}
  wide: {fabric: plain, colours: oat, start: {chain: 35.4 cm}, sections: [even: {rows: 1}, taper: {rows: 20, target: 24 cm}]}
"""
    made = graded(by(f"taper_ends: {habit}", text)).pieces
    first = {key: made[key]["M"].main.start.stitches for key in made}
    assert (first["cuffed"], first["wide"], made["cuffed"]["M"].main.last_count) == ends


def test_a_fabrics_own_parity_goes_before_the_habit() -> None:
    text = ONE_SIZE.replace("plain: {", "plain: {parity: odd, ", 1) + TAPER.partition("pieces:")[1] + TAPER.partition("pieces:")[2]
    assert counts(by("taper_ends: nearest even", text))[0] % 2 == 1


def test_an_edge_shaped_alone_has_no_parity() -> None:
    text = TAPER.replace("chain: 20 cm", "chain: 21 cm").replace("target: 30 cm", "target: 30 cm, at: far")
    assert counts(by("taper_ends: even below", text))[0] == 21


def test_more_changes_than_rows_are_told_whatever_the_habit() -> None:
    text = by("schedules: shorter gap first", TAPER.replace("rows: 23", "rows: 4").replace("30 cm", "50 cm"))
    assert [name for name, _, _ in told(text)] == ["taper-too-steep"]


@pytest.mark.parametrize(
    ("habit", "steps"), [("larger at the neck", (4, 4, 5, 5)), ("larger at the armhole", (5, 5, 4, 4)), ("spread", (5, 4, 5, 4))],
)
def test_the_steps_of_a_shoulder(habit: str, steps: tuple[int, ...]) -> None:
    text = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 56 cm}, sections: [even: {rows: 30}, shoulders: {neck: 20 cm, slope: 3 cm}]}}\n"
    plan = graded(by(f"shoulder_steps: {habit}", text)).plans["piece"]["M"].sections[1]
    assert isinstance(plan, ShouldersPlan)
    [part] = plan.slope
    left = tuple(step.stitches for step in part.profile.steps)
    assert (*left, plan.shoulder - sum(left)) == steps
    if habit == "larger at the neck":
        assert graded(text).plans["piece"]["M"] == graded(by(f"shoulder_steps: {habit}", text)).plans["piece"]["M"]
