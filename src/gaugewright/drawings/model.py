"""What a schematic shows, as plain data.

In: nothing (pure data). Later stages make a `PieceFigure` from the graded rows of a piece;
`drawings/schematic.py` turns it into a `Schematic`. Points are millimetres of the real piece,
x to the right and y *up* from the bottom edge.
"""

from dataclasses import dataclass
from typing import Literal

from gaugewright.drawings.primitives import Drawing, Point
from gaugewright.tolerances import SAME_LENGTH

Along = Literal["across", "up", "edge"]
Units = Literal["cm", "in"]
KeyEntry = tuple[str, str, tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class ColourBand:
    """A band of colour: `colour` as #rrggbb, `bottom` and `top` in mm up from the bottom edge.

    A block of a row has a `left` and a `right` too, as x on the piece (None: as far as the piece goes), and the
    `number` by which the words call it.
    """

    name: str
    colour: str
    bottom: float
    top: float
    left: float | None = None
    right: float | None = None
    number: int = 0

    @property
    def label(self) -> str:
        """What is written beside or on it."""
        return f"{self.number} {self.name}" if self.number else self.name


@dataclass(frozen=True, slots=True)
class Measure:
    """A named length between two points of the piece, with its value in mm for each size.

    `along` says how it is measured: across (side to side), up (bottom to top) or along the
    sloping edge between the points. The points say where, the values say how much: both come
    from the same graded rows, but only the values are ever printed.
    """

    name: str
    along: Along
    start: Point
    end: Point
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class PieceFigure:
    """One piece in the size it is drawn in, with its measures in all sizes.

    `outline` is a closed polygon (the last point is joined to the first). `edge_names` are set
    beside their points, `marks` get a small tick too, `slits` are openings drawn as lines. A piece worked `in_rounds` is given flat,
    so its widths are half the round, unless it is drawn `opened`, cut open where its rounds begin. `holes` are buttonholes,
    and `along` is the length of the edge they lie on; a `note` is written below.
    The `rings` of a disc lie between their distances from its middle, from there outwards; of a motif they have `ring_sides`. `rows` are some of its
    rows, where they don't lie level.
    """

    name: str
    title: str
    sizes: tuple[str, ...]
    drawn_size: str
    outline: tuple[Point, ...]
    bands: tuple[ColourBand, ...] = ()
    measures: tuple[Measure, ...] = ()
    edge_names: tuple[tuple[str, Point], ...] = ()
    marks: tuple[tuple[str, Point], ...] = ()
    slits: tuple[tuple[str, Point, Point], ...] = ()
    in_rounds: bool = False
    note: str = ""
    along: float = 0.0
    holes: tuple[tuple[Point, Point], ...] = ()
    opened: bool = False
    rings: tuple[ColourBand, ...] = ()
    rows: tuple[tuple[Point, ...], ...] = ()
    ring_sides: int = 0

    def __post_init__(self) -> None:
        if len(self.outline) < 3:
            raise ValueError(f"the outline of {self.name} needs at least three points")
        if any(len(measure.values) != len(self.sizes) for measure in self.measures):
            raise ValueError(f"each measure of {self.name} needs one value per size")


@dataclass(frozen=True, slots=True)
class Schematic:
    """A finished schematic: the drawing, and the table printed below it.

    `key` has one entry per measure, in the order of the letters: letter, name, values in mm. The piece is `alike` if
    all of them are the same in all sizes.
    """

    drawing: Drawing
    key: tuple[KeyEntry, ...]

    @property
    def alike(self) -> bool:
        """Whether every measure is the same in all sizes, so that the drawing is of no size in particular."""
        return are_alike(self.key)


def are_alike(key: tuple[KeyEntry, ...]) -> bool:
    """Whether every measure is the same in all sizes."""
    return all(abs(value - values[0]) < SAME_LENGTH for _, _, values in key for value in values)
