"""What yarns cost as bars: as long as their figures, told in words, and apart in black and white."""

from decimal import Decimal
from itertools import combinations

import pytest
from drawings.inspection import labels, labels_overlap
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.drawings.cost_plot import LONGEST, CostBar, draw_costs
from gaugewright.drawings.primitives import Drawing, Label, Polygon


def bars_of(drawing: Drawing) -> list[Polygon]:
    return [item for item in drawing.items if isinstance(item, Polygon) and item.width]


def span(polygon: Polygon) -> float:
    return max(x for x, _ in polygon.points) - min(x for x, _ in polygon.points)


def test_bars_are_as_long_as_they_cost_and_told_in_words() -> None:
    drawing = draw_costs([CostBar("Oat", Decimal("100"), Decimal("100")), CostBar("Drift", Decimal("25.50"), Decimal("50"))], "EUR", "M")
    assert drawing is not None
    oat, low, high = bars_of(drawing)
    assert [span(one) / LONGEST for one in (oat, low, high)] == pytest.approx([1, 0.255, 0.245])
    assert {"Oat", "100 EUR", "Drift", "25.50 to 50 EUR"} <= {item.text for item in drawing.items if isinstance(item, Label)}
    assert "Drift: 25.50 to 50 EUR" in drawing.description and "size M" in drawing.title


def test_bars_differ_in_hatch_and_open_ends_have_none() -> None:
    drawing = draw_costs([CostBar(name, Decimal(1), Decimal(2)) for name in ("A", "B", "C", "D")], "EUR", "")
    assert drawing is not None
    found = bars_of(drawing)
    filled, open_ends = found[::2], found[1::2]
    assert len({one.hatch for one in filled}) == 4 and {one.hatch for one in open_ends} == {"none"}
    assert {one.fill for one in found} == {"#ffffff"}


def test_one_yarn_or_none_with_a_price_is_no_plot() -> None:
    assert draw_costs([CostBar("Oat", Decimal(5), Decimal(5))], "EUR", "M") is None
    assert draw_costs([CostBar("Oat", Decimal(0), Decimal(0))] * 2, "EUR", "M") is None


@given(st.lists(st.tuples(st.decimals(0, 500, places=2), st.decimals(0, 500, places=2)), min_size=2, max_size=9))
def test_nothing_is_written_over_anything(costs: list[tuple[Decimal, Decimal]]) -> None:
    drawing = draw_costs([CostBar(f"Yarn {index}", min(pair), max(pair)) for index, pair in enumerate(costs)], "EUR", "M")
    if any(high for pair in costs for high in pair):
        assert drawing is not None
        assert [pair for pair in combinations(labels(drawing), 2) if labels_overlap(*pair)] == []
