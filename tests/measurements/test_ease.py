"""One figure of ease from a published range."""

import pytest

from gaugewright.errors import UserError
from gaugewright.measurements import FITS, read_ease


@pytest.mark.parametrize(
    ("fit", "mm", "rule"),
    [
        ("very_close", -76.2, "the middle of the range"),
        ("close", 0.0, "the chart's one figure"),
        ("classic", 76.2, "the middle of the range"),
        ("loose", 127.0, "the middle of the range"),
        ("oversized", 152.4, "the least of an open-ended range"),
    ],
)
def test_one_figure_is_read_by_a_worded_rule(fit: str, mm: float, rule: str) -> None:
    ease = read_ease(fit)
    assert ease.mm == pytest.approx(mm)
    assert ease.rule == rule
    assert ease.source.startswith("Craft Yarn Council")


def test_a_fit_may_be_written_with_a_space_or_hyphen() -> None:
    assert read_ease("very close") == read_ease("very-close") == read_ease("very_close")


def test_looser_fits_have_more_ease() -> None:
    values = [read_ease(fit).mm for fit in FITS]
    assert values == sorted(values) and len(set(values)) == 5


def test_an_unknown_fit_names_the_fits_there_are() -> None:
    with pytest.raises(UserError) as caught:
        read_ease("tent")
    assert caught.value.name == "unknown-fit"
    assert "very close" in caught.value.hint
