"""What speaks for or against a yarn, each with its source or as common practice without one."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright import pipeline
from gaugewright.errors import Problem
from gaugewright.gauge.hand import FOUR_INCHES, usual_stitches
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up, to_step
from gaugewright.tolerances import FIT_SHARE
from gaugewright.trade.care import care_names, gentler_than
from gaugewright.trade.cautions import UNDER_THREE
from gaugewright.trade.structures import is_raised, traits
from gaugewright.trade.substitution import near_enough
from gaugewright.yarn.comparison import Compared, Reason
from gaugewright.yarn.hanging import heavy_sizes, is_judged, lengthens_more

COMMON = "common practice, no source"
RANGES = "gauge ranges published for weight categories"
PILLING = "Turkish J. Engineering and Environmental Sciences, machine-knitted wool: tighter loops pill and wear less"
THICK = "designer's advice on super bulky yarn, 2024"
FLAME = "16 CFR 1610: raised surfaces; wool, acrylic, nylon and polyester are exempt"
PLANT = frozenset(("cotton", "linen", "flax", "viscose", "rayon", "modal", "bamboo", "lyocell"))


@dataclass(frozen=True, slots=True)
class Judged:
    """A yarn beside the pattern's own, with what either's fibre was treated with; `graded` is the `pattern`'s design in it, None where it
    can't be made, for these `problems`; else they are what its checks warn of.
    """

    yarn: Compared
    own: Compared
    treatment: str
    own_treatment: str
    pattern: pipeline.Graded
    graded: pipeline.Graded | None
    problems: tuple[Problem, ...]
    sizes: tuple[str, ...]

    @property
    def fibres(self) -> tuple[str, ...]:
        """Its fibres by name."""
        return tuple(name.strip().lower() for name, _ in self.yarn.fibre)


def reasons_of(one: Judged) -> tuple[Reason, ...]:
    """The reasons, the gravest first."""
    found = [reason for rule in (_unmakeable, _babies, _gauge, _hand, _fineness, _amounts, _hanging, _care, _flame, _make, _thick) for reason in rule(one)]
    order = ("against", "caution", "fact")
    return tuple(sorted(found, key=lambda reason: order.index(reason.gravity)))


def _unmakeable(one: Judged) -> Iterator[Reason]:
    for problem in one.problems:
        size = f" ({problem.size})" if problem.size else ""
        gravity, key = ("against", "unmakeable") if one.graded is None else ("caution", "warns")
        yield Reason(gravity, key, {"text": problem.message + size}, "worked out from its gauge")  # type: ignore[arg-type]


def _babies(one: Judged) -> Iterator[Reason]:
    """Loose fibre and mouths that chew: no yarn that sheds for children under three."""
    sizes = one.graded.design.sizes if one.graded else None
    small = sizes is not None and (sizes.table == "baby" or (sizes.table == "child" and set(sizes.labels) & set(UNDER_THREE)))
    if small and one.yarn.structure in ("roving", "chenille"):
        yield Reason("against", "babies", {}, COMMON)


def _gauge(one: Judged) -> Iterator[Reason]:
    if one.yarn is one.own or one.yarn.gauge.basis == "the pattern":
        return
    gauge, own = one.yarn.gauge.gauge, one.own.gauge.gauge
    if one.yarn.gauge.estimated:
        low, high = usual_stitches(one.yarn.category or 0)
        slots = {"category": str(one.yarn.category), "stitches": f"{high} or fewer" if low == high else f"{low} to {high}"}
        yield Reason("caution", "gauge-within" if one.yarn.gauge.basis == "within its category" else "gauge-estimated", slots, RANGES)
    elif one.yarn.take is not None and one.yarn.take.estimated:
        yield Reason("caution", "unweighed", {}, "by metres: published for one gauge, in proportion to the stitch for another")
    across, along = gauge.stitch_width / own.stitch_width - 1, gauge.row_height / own.row_height - 1
    if max(abs(across), abs(along)) > FIT_SHARE:
        yield Reason("caution", "gauge-differs", {"gauge": gauge_text(gauge), "own": gauge_text(own), "across": _percent(across), "along": _percent(along)}, RANGES if one.yarn.gauge.estimated else "its file")


def gauge_text(gauge: Gauge) -> str:
    """
    >>> gauge_text(Gauge(18, 205.0, 14, 195.0))
    '8.8 sts, 7.2 rows to 10 cm'
    """
    return f"{to_step(gauge.stitches_in(100), 0.1):.1f} sts, {to_step(gauge.rows_in(100), 0.1):.1f} rows to 10 cm"


def _percent(share: float) -> str:
    """
    >>> _percent(0.125), _percent(-0.031)
    ('13 % larger', '3 % smaller')
    """
    return f"{half_up(abs(share) * 100)} % {'larger' if share >= 0 else 'smaller'}"


def _hand(one: Judged) -> Iterator[Reason]:
    """At its own gauge as it would be worked, and where that is another, at the pattern's: what comes of keeping to it."""
    yarn = one.yarn
    if yarn.category is None:
        return
    low, high = usual_stitches(yarn.category)
    usual = f"{high} or fewer" if low == high else f"{low} to {high}"
    if yarn.hand in ("stiff", "drapey"):
        stitches = f"{to_step(yarn.gauge.gauge.stitches_in(FOUR_INCHES), 0.1):.1f}"
        yield Reason("caution", f"hand-{yarn.hand}", {"stitches": stitches, "usual": usual}, f"{RANGES}; that they tell the hand is {COMMON}")
        if yarn.hand == "drapey":
            yield Reason("caution", "loose-pills", {}, PILLING)
    elif yarn.at_pattern in ("stiff", "drapey"):
        stitches = f"{to_step(one.own.gauge.gauge.stitches_in(FOUR_INCHES), 0.1):.1f}"
        yield Reason("caution", f"pattern-{yarn.at_pattern}", {"stitches": stitches, "usual": usual}, f"{RANGES}; that they tell the hand is {COMMON}")


def _fineness(one: Judged) -> Iterator[Reason]:
    if one.yarn.metres is None or one.own.metres is None:
        return
    near = near_enough(one.own.metres, one.own.category)
    if not near.low <= one.yarn.metres <= near.high:
        key = "finer" if one.yarn.metres > near.high else "thicker"
        yield Reason("caution", key, {"metres": str(half_up(one.yarn.metres)), "own": str(half_up(one.own.metres)), "share": str(half_up(near.share * 100))}, near.source)


def _amounts(one: Judged) -> Iterator[Reason]:
    if one.graded is not None and one.yarn.take is None:
        yield Reason("caution", "no-amounts", {}, "the pattern's own swatch")
    elif one.graded is not None and one.yarn.cost is None:
        yield Reason("fact", "no-price", {}, "its file")


def _hanging(one: Judged) -> Iterator[Reason]:
    """Heavy garments lengthen, some fibres more. What the pattern's own yarn does as well is only to be known."""
    if one.graded is None:
        return
    graded, pattern = (pipeline.chosen(each, one.sizes) for each in (one.graded, one.pattern))
    heavy, own = (heavy_sizes(each.design, each.bodies, pipeline.side(each).amounts) for each in (graded, pattern))
    if heavy and not is_judged(graded.design):
        more = lengthens_more(graded.design)
        worse = set(heavy) - set(own) or set(more) - set(lengthens_more(pattern.design)) or is_judged(pattern.design)
        slots = {"sizes": ", ".join(heavy), "fibres": " and ".join(more)}
        yield Reason("caution" if worse else "fact", "hangs-more" if more else "hangs", slots, "published in directions, 2006, without a figure; the limit is " + COMMON)


def _care(one: Judged) -> Iterator[Reason]:
    own = care_names([name for name, _ in one.own.fibre], one.own_treatment, one.own.structure)
    gentler = gentler_than(care_names(one.fibres, one.treatment, one.yarn.structure), own)
    if gentler:
        yield Reason("caution", "gentler-care", {"care": " ".join(gentler)}, "care by fibre; ISO 3758 symbols, worded")


def _flame(one: Judged) -> Iterator[Reason]:
    if is_raised(one.yarn.structure, one.fibres) and set(one.fibres) & PLANT:
        yield Reason("caution", "flame", {}, FLAME)


def _make(one: Judged) -> Iterator[Reason]:
    """What its make means: of the pattern's own yarn too, since it is worn all the same."""
    found = traits(one.yarn.structure, one.fibres, one.treatment)
    for trait in found:
        yield Reason(trait.gravity, "said", {"text": trait.text, "about": trait.key}, trait.source)
    if not any(trait.key == "pilling" for trait in found):
        yield Reason("fact", "pilling-unknown", {}, "no grade of handmade cloth is published")


def _thick(one: Judged) -> Iterator[Reason]:
    if (one.yarn.category or 0) >= 6:
        yield Reason("fact", "thick-firm" if "acrylic" in one.fibres else "thick", {}, THICK)
