"""What each yarn would cost as bars, one under the other, the dearest setting the scale.

A bar is filled up to the lower end of what is known and open from there to the upper one; each yarn has a hatch of its own and
its figure in words, so that a print in black and white says as much.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour import INK
from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.primitives import Drawing, Polygon, Polyline
from gaugewright.drawings.scene import Scene, level_label, text_room

LONGEST = 80.0
"""The longest bar, mm."""
BAR, BETWEEN = 6.0, 3.0
GAP = 2.0


@dataclass(frozen=True, slots=True)
class CostBar:
    """What one yarn costs, from the lower end to the upper (the same where they agree)."""

    name: str
    low: Decimal
    high: Decimal


def draw_costs(bars: Sequence[CostBar], currency: str, size: str) -> Drawing | None:
    """The plot; none of a single yarn, nor where all of them are for nothing."""
    most = max((bar.high for bar in bars), default=Decimal(0))
    if len(bars) < 2 or not most:
        return None
    hatches = assign_hatches(f"{index} {bar.name}" for index, bar in enumerate(bars))
    down = len(bars) * (BAR + BETWEEN)
    scene = Scene().draw(Polyline(((0.0, 0.0), (0.0, down)), 0.35))
    for index, bar in enumerate(bars):
        top = index * (BAR + BETWEEN) + BETWEEN / 2
        low, high = (float(value / most) * LONGEST for value in (bar.low, bar.high))
        if low:
            scene = scene.fill(Polygon(_box(0.0, low, top), 0.25, INK, "#ffffff", hatches[f"{index} {bar.name}"]))
        if high != low:
            scene = scene.fill(Polygon(_box(low, high, top), 0.25, INK, "#ffffff"))
        baseline = top + BAR / 2 + text_room("0")[1] / 2
        scene = scene.write(level_label(-GAP, baseline, bar.name, "end")).write(level_label(high + GAP, baseline, _figure(bar, currency), "start"))
    told = "; ".join(f"{bar.name}: {_figure(bar, currency)}" for bar in bars)
    title = f"What the yarn for size {size} would cost" if size else "What the yarn would cost"
    return cut_canvas(scene, f"{title}.", f"Bars of what each yarn would cost. {told}.")


def _box(left: float, right: float, top: float) -> tuple[tuple[float, float], ...]:
    return ((left, top), (right, top), (right, top + BAR), (left, top + BAR))


def _figure(bar: CostBar, currency: str) -> str:
    """
    >>> _figure(CostBar("Drift", Decimal("88.20"), Decimal("98.00")), "EUR")
    '88.20 to 98.00 EUR'
    """
    return f"{bar.low} {currency}" if bar.low == bar.high else f"{bar.low} to {bar.high} {currency}"
