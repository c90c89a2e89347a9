"""The craft's own choices that several stages share, each a closed list of words.

Gathered here, below every stage, so that none has to ask a later one what it may say.
"""

from typing import Literal

Side = Literal["RS", "WS"]
"""Which face of the work is towards the maker."""

Loop = Literal["both", "back", "front"]
"""The loops of the stitch below that are worked into."""

Hold = Literal["both", "back", "front", "front post", "back post"]
"""Which part of the stitch below is worked into: its loops, or round its post."""

Worked = Literal["rows", "joined rounds", "turned rounds", "spiral rounds"]
"""Back and forth, or how in rounds."""

RowEdge = Literal["starting", "far"]
"""The two edges made of row ends: where right-side rows begin, and where they end."""

Direction = Literal["nearest", "up", "down"]
"""Which way an exact number is taken to an allowed count."""

NeckShape = Literal["round", "v", "boat", "square"]
"""How the neck of a back or front is cut out."""

HalfNeckShape = Literal["round", "v"]
"""How the neck edge of a half front is cut out."""

OpeningPlace = Literal["start", "middle", "end"]
"""Where an opening lies in a round, or between the starting and the far edge of rows."""

CornerKind = Literal["point", "square", "underarm", "hem", "tip", "neck start", "back neck", "outer", "valley"]
"""Corners of a picked-up band: the point of a V neck, the corners of a square one, those at an underarm, where
a hem meets an edge, the tip of a shawl, where a front edge turns into its neck edge, and where that meets the back neck; of joined motifs the
outer corners, and the valleys between two of six sides."""

ColourPlan = Literal["checkerboard", "rows"]
"""How the yarns of joined motifs take turns: from one to the next in diagonals, or a row each."""

TakeUp = Literal["edge to edge", "half stitch", "whole stitch"]
"""How much of each edge a seam or picked-up edge takes into itself."""

Schedules = Literal["straightest", "shorter gap first", "longer gap first"]
"""On which rows a taper is shaped: nearest its line, or each time after a whole gap, in two rates."""

Spreading = Literal["shared out", "left at the end"]
"""Where the stitches go that don't share out among the changes of a round."""

ShoulderSteps = Literal["larger at the neck", "larger at the armhole", "spread"]
"""Where the steps of a shoulder lie that are a stitch larger than the others."""

TaperEnds = Literal["as they fall", "nearest even", "even below"]
"""How the counts are chosen that a taper at two edges leads between."""
