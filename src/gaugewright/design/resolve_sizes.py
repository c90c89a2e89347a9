"""The size list and the ease on each measure."""

from collections.abc import Mapping
from typing import Any

from gaugewright.design.origins import Origins
from gaugewright.design.size_list import ONE_SIZE, Ease, SizeList
from gaugewright.measurements.ease import read_ease
from gaugewright.spec import Spec


def resolve_sizes(spec: Spec, origins: Origins, size_labels: Mapping[str, tuple[str, ...]]) -> SizeList:
    """Labels in the order given (all of the table, or all own ones, unless stated), bodies and ease."""
    sizes = spec.sizes
    own = tuple((label, tuple((name, length.mm) for name, length in measures.items())) for label, measures in sizes.own.items())
    labels = sizes.make or tuple(dict.fromkeys((*(size_labels[sizes.table] if sizes.table else ()), *sizes.own, *sizes.dimensions))) or (ONE_SIZE,)
    dimensions = tuple((label, tuple((name, length.mm) for name, length in named.items())) for label, named in sizes.dimensions.items())
    ease = tuple(_ease(name, value, labels) for name, value in sizes.ease.items())
    return SizeList(sizes.table or "", labels, sizes.read, own, ease, origins.at(("sizes",), key=True), dimensions)


def _ease(measure: str, value: Any, labels: tuple[str, ...]) -> Ease:
    if isinstance(value, str):
        read = read_ease(value)
        return Ease(measure, (read.mm,) * len(labels), f"{read.fit} fit ({read.rule})")
    if isinstance(value, dict):
        return Ease(measure, tuple(value[label].mm for label in labels), "")
    if isinstance(value, tuple) and not hasattr(value, "mm"):
        return Ease(measure, tuple(length.mm for length in value), "")
    return Ease(measure, (value.mm,) * len(labels), "")
