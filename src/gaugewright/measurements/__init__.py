"""Bodies: the published size charts, the open survey, own measurements, and ease.

In: a table and a size label, or somebody's own figures. Out: a `Body`, its measures in mm,
each with the range it was read from, its source and whether that source was seen. Every
figure stands in `data/`; the code only reads, converts (1 in = 25.4 mm) and fills gaps.
"""

from gaugewright.measurements.ease import FITS, Ease, ease_range, read_ease
from gaugewright.measurements.model import Body, BodyValue, Read, Which
from gaugewright.measurements.own import own_body
from gaugewright.measurements.plausible import implausible
from gaugewright.measurements.tables import MEASURES, TABLES, body, credit, how_to_measure, size_labels

__all__ = [
    "FITS",
    "MEASURES",
    "TABLES",
    "Body",
    "BodyValue",
    "Ease",
    "Read",
    "Which",
    "body",
    "credit",
    "ease_range",
    "how_to_measure",
    "implausible",
    "own_body",
    "read_ease",
    "size_labels",
]
