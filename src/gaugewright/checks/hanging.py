"""Will the garment lengthen when it hangs, and has its maker said so?"""

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import problem
from gaugewright.rounding import to_step
from gaugewright.tolerances import HEAVY_GARMENT
from gaugewright.yarn.amounts import amounts
from gaugewright.yarn.hanging import heavy_sizes, is_judged, lengthens_more, load_for_swatch, masses


def check_hanging(subject: Subject) -> Found:
    """A heavy garment whose spec doesn't say whether its fabric grows is named: a warning where its fibre lengthens more than others."""
    design, pieces = subject.design, subject.grading.pieces
    sizes = subject.bodies.map(lambda body: amounts(design, {key: sized[body.label] for key, sized in pieces.items()}))
    found = masses(design, sizes)
    if found is None:
        return Found((), "no weighed swatch, so no mass")
    figures = f"{_kg(min(found))} to {_kg(max(found))}" if len(found) > 1 else _kg(max(found))
    heavy = heavy_sizes(design, subject.bodies, sizes)
    if not heavy or is_judged(design):
        return Found((), figures)
    more = lengthens_more(design)
    why = f", and {' and '.join(more)} lengthens more than others" if more else ""
    last = heavy[-1]
    load = load_for_swatch(design, {key: sized[last] for key, sized in pieces.items()})
    hang = f"hang a swatch with about {to_step(load, 5):.0f} g to each 10 cm of its width" if load else "hang a swatch with a garment's weight"
    told = problem(
        "hanging-growth", f"{_kg(found[last])} in {last}: cloth of {_kg(HEAVY_GARMENT)} and more lengthens when it hangs (common practice, no published figure){why}",
        design.fabric(design.pieces[0].fabric).origin, f"{hang}, and state what its rows then measure as `hung` in its swatch, or `growth: 0 %` if it keeps its length",
        heavy, "warning" if more else "note",
    )
    return Found((told,), figures)


def _kg(grams: float) -> str:
    """
    >>> _kg(1384), _kg(960)
    ('1.4 kg', '960 g')
    """
    return f"{to_step(grams / 1000, 0.1):.1f} kg" if grams >= 1000 else f"{to_step(grams, 10):.0f} g"
