"""The design: likeness followed, defaults made explicit, edges and sections placed."""

from tiny_specs import HEAD, designed

from gaugewright.design.model import NamedEdge

TEXT = HEAD + """\
sizes: {own: {M: {bust: 100 cm}}}
levels: {underarm: 20 cm}
pieces:
  front:
    fabric: plain
    colours: oat
    make: 2
    start: {chain: 20 cm}
    sections:
      - even: {length: 30 cm}
      - taper: {rows: 10, target: 10 cm, at: opening}
    edges: {starting: [side, underarm, armhole], far: [opening]}
  other: {like: front, mirrored: true, colours: kelp, title: Other Front}
"""


def test_what_is_not_stated_comes_from_what_it_is_like() -> None:
    front, other = designed(TEXT).pieces
    assert other.sections == front.sections and other.edges == front.edges and other.make == 2
    assert (front.title, other.title, other.mirrored, other.colours.order) == ("Front", "Other Front", True, ("kelp",))


def test_the_name_of_an_edge_stands_for_its_side() -> None:
    taper = designed(TEXT).pieces[0].sections[1]
    assert getattr(taper, "at") == "far"


def test_edges_lie_between_their_levels() -> None:
    assert designed(TEXT).pieces[0].edges == (
        NamedEdge("side", "starting", None, "underarm"), NamedEdge("armhole", "starting", "underarm", None), NamedEdge("opening", "far", None, None),
    )


def test_a_name_on_both_sides_means_both() -> None:
    text = TEXT.replace("{starting: [side, underarm, armhole], far: [opening]}", "{both: [opening]}")
    assert getattr(designed(text).pieces[0].sections[1], "at") == "both"


def test_bottom_and_top_have_names_of_their_own_unless_named() -> None:
    front = designed(TEXT).pieces[0]
    assert (front.bottom, front.top) == ("bottom", "top")
