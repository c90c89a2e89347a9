"""Gaugewright: one spec file in, a graded, multi-size written crochet pattern out.

The public calls are `load` (spec -> Design), `grade` (Design -> Graded) and `publish` (spec -> files).
They are imported on first use, so that `import gaugewright` stays cheap.
"""

from typing import Any

__version__ = "0.1.0"
__all__ = ["__version__", "grade", "load", "publish"]


def __getattr__(name: str) -> Any:
    if name in ("load", "grade", "publish"):
        from gaugewright import pipeline

        return getattr(pipeline, name)
    raise AttributeError(f"module 'gaugewright' has no attribute {name!r}")
