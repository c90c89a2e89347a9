"""Pieces to draw, of our own making."""

from gaugewright.drawings.model import ColourBand, Measure, PieceFigure

SIZES = ("XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X")
KELP, OAT, SLATE = ("kelp", "#3f5d4e"), ("oat", "#d9c9a8"), ("slate", "#5b6b7a")


def graded(first: float, step: float, sizes: int) -> tuple[float, ...]:
    return tuple(first + step * index for index in range(sizes))


def back(sizes: int = 9) -> PieceFigure:
    outline = ((0, 0), (600, 0), (600, 420), (600, 640), (390, 640), (210, 640), (0, 640))
    return PieceFigure(
        "back", "Back", SIZES[:sizes], SIZES[0], outline,
        bands=(ColourBand(*KELP, 0, 224), ColourBand(*OAT, 224, 416), ColourBand(*SLATE, 416, 640)),
        measures=(
            Measure("Width", "across", (0, 0), (600, 0), graded(600, 40, sizes)),
            Measure("Length", "up", (0, 0), (0, 640), graded(640, 5, sizes)),
            Measure("Armhole depth", "up", (600, 420), (600, 640), graded(220, 5, sizes)),
            Measure("Side", "up", (600, 0), (600, 420), graded(420, 0, sizes)),
            Measure("Back neck", "across", (210, 640), (390, 640), graded(180, 5, sizes)),
            Measure("Shoulder", "across", (390, 640), (600, 640), graded(210, 15, sizes)),
        ),
        edge_names=(("hem", (300, 0)), ("side", (600, 200)), ("armhole", (600, 530)), ("shoulder", (500, 640))),
        marks=(("underarm", (600, 420)), ("underarm", (0, 420))),
    )  # fmt: skip


def front(sizes: int = 9) -> PieceFigure:
    outline = ((0, 0), (270, 0), (270, 400), (200, 640), (0, 640))
    return PieceFigure(
        "right-front", "Right Front", SIZES[:sizes], SIZES[0], outline,
        bands=(ColourBand(*KELP, 0, 224), ColourBand(*SLATE, 224, 416), ColourBand(*OAT, 416, 640)),
        measures=(
            Measure("Width", "across", (0, 0), (270, 0), graded(270, 20, sizes)),
            Measure("Length", "up", (0, 0), (0, 640), graded(640, 5, sizes)),
            Measure("Shoulder", "across", (0, 640), (200, 640), graded(200, 15, sizes)),
            Measure("Neck edge", "edge", (270, 400), (200, 640), graded(250, 2, sizes)),
            Measure("Front edge", "up", (270, 0), (270, 400), graded(400, 5, sizes)),
        ),
        edge_names=(("front edge", (270, 200)), ("side", (0, 200)), ("neck edge", (235, 520))),
        marks=(("underarm", (0, 420)),),
    )  # fmt: skip


def sleeve(sizes: int = 9) -> PieceFigure:
    outline = (
        (60, 0), (160, 0), (160, 60), (220, 90), (220, 400), (200, 440), (20, 440), (0, 400), (0, 90), (60, 60),
    )  # fmt: skip
    return PieceFigure(
        "sleeve", "Sleeve", SIZES[:sizes], SIZES[0], outline,
        bands=(ColourBand(*SLATE, 0, 60), ColourBand(*OAT, 60, 250), ColourBand(*KELP, 250, 440)),
        measures=(
            Measure("Cuff", "across", (60, 0), (160, 0), graded(100, 5, sizes)),
            Measure("Widest", "across", (0, 400), (220, 400), graded(220, 10, sizes)),
            Measure("Top", "across", (20, 440), (200, 440), graded(180, 10, sizes)),
            Measure("Length", "up", (60, 0), (20, 440), graded(440, -5, sizes)),
            Measure("Cuff depth", "up", (160, 0), (160, 60), graded(60, 0, sizes)),
        ),
        edge_names=(("sleeve top", (110, 440)), ("cuff", (110, 0))),
        in_rounds=True,
    )  # fmt: skip


def v_neck(sizes: int = 9) -> PieceFigure:
    outline = (
        (0, 0), (500, 0), (500, 380), (460, 400), (460, 600), (340, 630), (250, 430), (160, 630), (40, 600),
        (40, 400), (0, 380),
    )  # fmt: skip
    return PieceFigure(
        "front", "Pullover Front", SIZES[:sizes], SIZES[0], outline,
        bands=(ColourBand(*OAT, 0, 500), ColourBand(*KELP, 500, 640)),
        measures=(
            Measure("Width", "across", (0, 0), (500, 0), graded(500, 40, sizes)),
            Measure("Length", "up", (0, 0), (160, 630), graded(630, 5, sizes)),
            Measure("Neck", "across", (160, 630), (340, 630), graded(180, 5, sizes)),
            Measure("Shoulder", "across", (340, 630), (460, 600), graded(120, 10, sizes)),
            Measure("Neck edge", "edge", (250, 430), (340, 630), graded(220, 5, sizes)),
            Measure("Cross front", "across", (40, 500), (460, 500), graded(420, 30, sizes)),
            Measure("Armhole depth", "up", (500, 380), (460, 600), graded(220, 5, sizes)),
        ),
        edge_names=(("neck edge", (295, 530)), ("side", (500, 200)), ("armhole", (460, 500))),
        marks=(("underarm", (0, 380)),),
    )  # fmt: skip


def pocket() -> PieceFigure:
    """A very wide piece in one size."""
    return PieceFigure(
        "pocket", "Pocket", ("one size",), "one size", ((0, 0), (400, 0), (400, 60), (0, 60)),
        bands=(ColourBand(*SLATE, 0, 60),),
        measures=(
            Measure("Width", "across", (0, 0), (400, 0), (400,)),
            Measure("Height", "up", (0, 0), (0, 60), (60,)),
        ),
        edge_names=(("mouth", (200, 60)),),
    )  # fmt: skip


def band(sizes: int = 9) -> PieceFigure:
    """A very tall piece: 4 cm by 2 m."""
    return PieceFigure(
        "band", "Front Band", SIZES[:sizes], SIZES[0], ((0, 0), (40, 0), (40, 2000), (0, 2000)),
        bands=(ColourBand(*OAT, 0, 1000), ColourBand(*KELP, 1000, 2000)),
        measures=(
            Measure("Depth", "across", (0, 0), (40, 0), graded(40, 0, sizes)),
            Measure("Length", "up", (0, 0), (0, 2000), graded(2000, 20, sizes)),
        ),
        edge_names=(("picked-up edge", (0, 1000)), ("rim", (40, 1000))),
    )  # fmt: skip


def striped_gore(sizes: int = 9) -> PieceFigure:
    """A very tapered piece in thirty stripes too narrow to be named beside them."""
    paints = (OAT, KELP, SLATE, ("rust", "#a0522d"))
    return PieceFigure(
        "gore", "Gore", SIZES[:sizes], SIZES[0], ((0, 0), (500, 0), (260, 600), (240, 600)),
        bands=tuple(ColourBand(*paints[i % 4], i * 20, i * 20 + 20) for i in range(30)),
        measures=(
            Measure("Hem", "across", (0, 0), (500, 0), graded(500, 40, sizes)),
            Measure("Top", "across", (240, 600), (260, 600), graded(20, 0, sizes)),
            Measure("Height", "up", (240, 0), (240, 600), graded(600, 10, sizes)),
            Measure("Right slope", "edge", (500, 0), (260, 600), graded(646, 10, sizes)),
            Measure("Left slope", "edge", (0, 0), (240, 600), graded(646, 10, sizes)),
        ),
        edge_names=(("left edge", (120, 300)), ("right edge", (380, 300))),
    )  # fmt: skip


FIGURES = (
    back(), back(1), front(), front(1), sleeve(), sleeve(1), v_neck(), v_neck(1), pocket(), band(), band(1),
    striped_gore(), striped_gore(1),
)  # fmt: skip
