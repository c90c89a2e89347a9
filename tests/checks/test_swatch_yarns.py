"""One swatch's weight is one yarn's."""

from checks.specs import damaged, places, told_by

BALLS = (
    '  oat: {colour: "#d9c9a8"}\n  kelp: {colour: "#3f5d4e"} => '
    '  oat: {colour: "#d9c9a8", ball: {mass: 100 g, length: 110 m}}\n  kelp: {colour: "#3f5d4e", ball: {mass: 50 g, length: KELP m}}'
)
WEIGHED = "height: 20 cm, thickness: 5 mm} => height: 20 cm, mass: 30 g, thickness: 5 mm}"


def test_yarns_alike_share_a_swatch() -> None:
    assert told_by("swatches") == ()
    assert told_by("swatches", damaged(BALLS.replace("KELP", "60"), WEIGHED)) == ()


def test_a_finer_yarn_needs_a_swatch_of_its_own() -> None:
    text = damaged(BALLS.replace("KELP", "110"), WEIGHED)
    problems = told_by("swatches", text)
    assert [(one.name, one.severity) for one in problems] == [("swatch-of-another-yarn", "warning")] * len(problems) and problems
    assert "kelp, which has 100 % more metres to the gram" in problems[0].message
    assert places(problems, text)[0][3].startswith(("body:", "tube:"))


def test_a_swatch_that_was_not_weighed_says_nothing_wrong() -> None:
    assert told_by("swatches", damaged(BALLS.replace("KELP", "110"))) == ()
