"""The spec: from a maker's YAML file to models in which every name means something.

In: a path, the size labels of each table, and the body measures. Out: `LoadedSpec`, the models
(formulas still text, but known to read) with the file they came from; or `ProblemsFound`, each
problem at its place. Pydantic stays in this package.
"""

from gaugewright.spec.model import Spec, json_schema
from gaugewright.spec.reader import LoadedSpec, load_spec, load_spec_text

__all__ = ["LoadedSpec", "Spec", "json_schema", "load_spec", "load_spec_text"]
