"""A gauge as it is printed and graded from: whole stitches and rows over a measured piece."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Gauge:
    """Whole stitches over `width` mm and whole rows over `height` mm.

    What is printed is what is graded: every count comes from exactly these four figures,
    never from a rounded "stitches to 10 cm".

    >>> g = Gauge(stitches=18, width=205.0, rows=14, height=195.0)
    >>> round(g.stitch_width, 3), round(g.row_height, 3)
    (11.389, 13.929)
    """

    stitches: int
    width: float
    rows: int
    height: float

    @property
    def stitch_width(self) -> float:
        """Width of one stitch, mm."""
        return self.width / self.stitches

    @property
    def row_height(self) -> float:
        """Height of one row, mm."""
        return self.height / self.rows

    def stitches_in(self, length: float) -> float:
        """Exact (unrounded) stitches in a length of mm."""
        return length * self.stitches / self.width

    def rows_in(self, length: float) -> float:
        """Exact (unrounded) rows in a length of mm."""
        return length * self.rows / self.height

    def width_of(self, stitches: float) -> float:
        """Width of so many stitches, mm."""
        return stitches * self.width / self.stitches

    def height_of(self, rows: float) -> float:
        """Height of so many rows, mm."""
        return rows * self.height / self.rows
