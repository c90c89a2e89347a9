"""The words a spec may use where only certain words have a meaning."""

from typing import Literal

Level = Literal["basic", "easy", "intermediate", "complex"]
Terms = Literal["us", "uk"]
ShownUnits = Literal["cm", "in"]
SizeTable = Literal["women", "men", "child", "baby"]
ReadRange = Literal["lower", "middle", "upper"]
Fit = Literal["very close", "close", "classic", "loose", "oversized"]
Structure = Literal["spun", "plied", "roving", "tube", "chenille"]
Stitch = Literal["sl st", "sc", "hdc", "dc", "tr"]
Loop = Literal["both", "back", "front"]
Worked = Literal["rows", "joined rounds", "turned rounds", "spiral rounds"]
TurningChainCounts = Literal["as a stitch", "not as a stitch"]
Parity = Literal["even", "odd"]
RoundingRule = Literal["nearest", "up", "down"]
TakeUp = Literal["edge to edge", "half stitch", "whole stitch"]
JoinBy = Literal["slip stitch", "sewing"]
NeckShape = Literal["round", "v", "boat", "square"]
HalfNeckShape = Literal["round", "v"]
SeamMethod = Literal["mattress", "whip", "slip stitch"]
BodyPart = Literal["hand", "head", "foot"]
OpeningPlace = Literal["start", "middle", "end"]
