"""Whether it can be done by a day: the answer at its edges, what would make it possible, which pieces are done."""

import datetime
from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.advice.finish_by import Answer, Days, at_work, finish_by
from gaugewright.hours.duration import Duration
from gaugewright.hours.finishing import Chore
from gaugewright.hours.sizes import PieceTime, SizeTime
from gaugewright.sized import Sized

ROOT = Path(__file__).parents[2]
MONDAY = datetime.date(2026, 11, 23)
JACKET = pipeline.grade(pipeline.load(ROOT / "samples/saltmarsh-jacket/spec.yaml"))
KEYS = ("back", "right_front", "left_front", "sleeve", "pocket", "front_band")
HOUR = 3600.0


def days(number: int, hours: float) -> Days:
    return Days(MONDAY, MONDAY + datetime.timedelta(days=number - 1), hours)


def size(hours: float, finish: float = 1.0) -> SizeTime:
    """Six pieces of equal hours, from a tenth less to a fifth more."""

    def time(mean: float) -> Duration:
        return Duration(mean * 0.9 * HOUR, mean * HOUR, mean * 1.2 * HOUR)

    return SizeTime(tuple(PieceTime(key, 1, 0, 0, time(hours / 6)) for key in KEYS), (Chore("ends", 2, time(finish)),))


def answers(given: Days, *sizes: SizeTime) -> tuple[Answer, ...]:
    return finish_by(JACKET, Sized(("S", "M", "L")[: len(sizes)], sizes), given)


@pytest.mark.parametrize(("needed", "verdict"), [(5.0, "yes"), (5.01, "likely"), (6.0, "likely"), (6.01, "no"), (40.0, "no")])
def test_the_answer_turns_where_the_work_is_just_enough(needed: float, verdict: str) -> None:
    """Twelve days of half an hour, without a pause, are six hours of work; at the slowest a fifth more is needed."""
    assert answers(days(12, 0.5), size(needed - 1))[0].verdict == verdict


def test_both_ends_are_days_of_work() -> None:
    assert days(1, 2.0).number == 1
    assert Days(MONDAY, MONDAY + datetime.timedelta(days=5), 2.0).work == pytest.approx(6 * at_work(2.0))


def test_the_hours_a_day_that_it_names_make_it_possible() -> None:
    one = answers(days(4, 1.0), size(11))[0]
    assert one.verdict == "no" and one.likely_hours is not None and one.sure_hours is not None
    assert answers(days(4, one.likely_hours), size(11))[0].verdict == "likely"
    assert answers(days(4, one.sure_hours), size(11))[0].verdict == "yes"
    assert answers(days(4, one.likely_hours - 0.5), size(11))[0].verdict == "no"


def test_the_days_that_it_names_are_enough() -> None:
    one = answers(days(4, 1.0), size(11))[0]
    assert one.likely_day is not None and one.sure_day is not None
    assert answers(Days(MONDAY, one.likely_day, 1.0), size(11))[0].verdict == "likely"
    assert answers(Days(MONDAY, one.likely_day - datetime.timedelta(days=1), 1.0), size(11))[0].verdict == "no"
    assert answers(Days(MONDAY, one.sure_day, 1.0), size(11))[0].verdict == "yes"


def test_pieces_are_done_in_working_order_and_the_finishing_last() -> None:
    """Five hours of work: two pieces of two hours and half of the third. The band waits for its seams."""
    one = answers(days(10, 0.5), size(12))[0]
    assert [(done.piece, done.share) for done in one.by_then] == [("back", 1.0), ("right_front", 1.0), ("left_front", 0.5), ("sleeve", 0.0), ("pocket", 0.0), ("front_band", 0.0), ("", 0.0)]


def test_no_day_has_the_hours() -> None:
    one = answers(days(1, 2.0), size(60))[0]
    assert (one.verdict, one.likely_hours, one.sure_hours) == ("no", None, None)


def test_hardly_any_time_a_day_leads_to_no_day_at_all() -> None:
    one = answers(days(1, 1e-320), size(60))[0]
    assert (one.verdict, one.likely_day, one.sure_day) == ("no", None, None)
    assert answers(days(1, 1e-5), size(60))[0].sure_day is None


def test_each_size_has_its_answer() -> None:
    assert [one.verdict for one in answers(days(12, 0.5), size(4), size(5), size(6))] == ["yes", "likely", "no"]
