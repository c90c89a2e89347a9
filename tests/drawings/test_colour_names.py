"""Where a schematic names its colours: not beside a piece of one colour, where a name reads as an edge's."""

from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.model import ColourBand, PieceFigure
from gaugewright.drawings.primitives import Label
from gaugewright.drawings.schematic import draw_schematic

OUTLINE = ((0.0, 0.0), (400.0, 0.0), (400.0, 500.0), (0.0, 500.0))
OAT, KELP = ColourBand("Oat", "#d9c9a8", 0.0, 500.0), ColourBand("Kelp", "#3f5d4e", 250.0, 500.0)


def labels(bands: tuple[ColourBand, ...], yarns: tuple[str, ...]) -> dict[str, Label]:
    figure = PieceFigure("p", "P", ("S",), "S", OUTLINE, bands=bands, edge_names=(("side", (400.0, 250.0)),))
    drawing = draw_schematic(figure, "cm", hatches=assign_hatches(yarns)).drawing
    return {item.text: item for item in drawing.items if isinstance(item, Label)}


def test_the_only_yarn_of_a_pattern_needs_no_name() -> None:
    assert set(labels((OAT,), ("Oat",))) == {"side"}


def test_the_one_colour_of_a_piece_stands_in_a_key_below_it() -> None:
    found = labels((OAT,), ("Oat", "Kelp"))
    assert set(found) == {"side", "Oat"} and found["Oat"].y > found["side"].y


def test_several_colours_are_named_at_their_bands() -> None:
    found = labels((ColourBand("Oat", "#d9c9a8", 0.0, 250.0), KELP), ("Oat", "Kelp"))
    assert found["Kelp"].y < found["Oat"].y


def test_numbered_blocks_say_from_where_they_are_counted() -> None:
    blocks = tuple(ColourBand(name, colour, 0.0, 500.0, left, right, number) for name, colour, left, right, number in (("Oat", "#d9c9a8", None, 200.0, 1), ("Kelp", "#3f5d4e", 200.0, None, 2)))
    text = " ".join(labels(blocks, ("Oat", "Kelp")))
    assert "blocks are counted from the edge where row 1 begins, here on the left; on the RS it is on the right if you are right-handed" in text
    turned = tuple(ColourBand(one.name, one.colour, 0.0, 500.0, one.left, one.right, 3 - one.number) for one in blocks)
    assert "here on the right" in " ".join(labels(turned, ("Oat", "Kelp")))
