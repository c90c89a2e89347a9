"""Pieces worked from the neck down: drawn as they hang, measured from where they begin."""

from dataclasses import replace

from gaugewright.design.model import YOKES, Piece
from gaugewright.drawings.crown_figures import upside_down
from gaugewright.drawings.model import PieceFigure


def hangs(piece: Piece) -> bool:
    """Whether the piece is a yoke from the neck down, or goes on from one."""
    return piece.start.kind == "divide" or isinstance(piece.sections[-1], YOKES)


def from_neck(figure: PieceFigure, piece: Piece) -> PieceFigure:
    """The figure with its start up, its heights named from there."""
    bottom, top = piece.bottom.replace("_", " "), piece.top.replace("_", " ")
    named = {"Around at the top": f"Around at the {top}", "Whole height": f"From the {bottom} to the {top}"}

    def name(measure: str) -> str:
        told = named.get(measure, measure).replace("Height to", f"From the {bottom} to")
        return told.replace("Height below", f"From the {bottom} to")

    return upside_down(replace(figure, measures=tuple(replace(one, name=name(one.name)) for one in figure.measures)))
