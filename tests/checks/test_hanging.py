"""Heavy garments against what their spec says of hanging; masses worked by hand."""

from checks.specs import checked, told_by

from gaugewright.errors import Problem

COAT = """\
gaugewright: 1
pattern: {title: Weir Coat, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 80 cm}, L: {bust: 120 cm}}}
yarns: {oat: {weight: 6, fibre: {wool: 100}, structure: plied}}
fabrics:
  plain: {stitch: hdc, swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, mass: 40 g}}
pieces:
  back: {start: {chain: body.bust / 2}, sections: [even: {length: 60 cm}], edges: {both: [side], bottom: hem}}
  front: {like: back}
"""


def told(text: str) -> tuple[Problem, ...]:
    return told_by("hanging", text)


def figures(text: str) -> str:
    return next(result.figures for result in checked(text) if result.name == "hanging")


def test_a_kilogram_and_more_is_noted_in_its_sizes() -> None:
    """0.1 g to the square centimetre: S is 80 x 60 cm, 480 g, L 120 x 60 cm, 720 g, 4 and 6 g for the chains and 2 g of tails; at 0.2 g L is 1.452 kg."""
    assert told(COAT) == () and figures(COAT) == "490 g to 730 g"
    heavy = COAT.replace("mass: 40 g", "mass: 80 g")
    [problem] = told(heavy)
    assert (problem.name, problem.severity, problem.size) == ("hanging-growth", "note", "L")
    assert "1.5 kg in L" in problem.message and "no published figure" in problem.message
    # 2 kg to the square metre, 60 cm long: 10 cm of it carry 120 g.
    assert "about 120 g to each 10 cm" in problem.hint
    assert problem.origin is not None and problem.origin.line_text.strip().startswith("plain:")


def test_cotton_and_unspun_yarn_are_warned_of() -> None:
    heavy = COAT.replace("mass: 40 g", "mass: 80 g")
    for change in (("wool: 100", "cotton: 100"), ("wool: 100", "silk: 100"), ("plied", "roving")):
        [problem] = told(heavy.replace(*change))
        assert problem.severity == "warning" and "lengthens more than others" in problem.message


def test_who_has_hung_it_is_not_told() -> None:
    heavy = COAT.replace("mass: 40 g", "mass: 80 g").replace("wool", "cotton")
    assert told(heavy.replace("mass: 80 g}", "mass: 80 g}, growth: 0 %")) == ()
    assert told(heavy.replace("mass: 80 g}", "mass: 80 g, hung: 21 cm}")) == ()


def test_what_hangs_from_no_shoulders_may_be_heavy() -> None:
    throw = COAT.replace("mass: 40 g", "mass: 80 g").replace("sizes: {own: {S: {bust: 80 cm}, L: {bust: 120 cm}}}\n", "").replace("body.bust / 2", "60 cm")
    assert told(throw) == () and figures(throw).endswith("kg")


def test_notions_weigh_too_and_nothing_is_said_without_a_scale() -> None:
    light = COAT.replace("mass: 40 g", "mass: 80 g").replace("120 cm", "82 cm")
    assert told(light) == ()
    assert [one.size for one in told(light.replace("fabrics:", "notions: {buckles: 60 g}\nfabrics:"))] == ["S, L"]
    assert figures(COAT.replace(", mass: 40 g", "")) == "no weighed swatch, so no mass"
