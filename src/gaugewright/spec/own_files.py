"""Files beside a spec (readings, measurements, shopping), from their source to their model."""

from typing import TypeVar

from pydantic import BaseModel, ValidationError

from gaugewright.errors import Problem, ProblemsFound
from gaugewright.spec.check_empty import check_empty
from gaugewright.spec.messages import problems_from
from gaugewright.yaml_reader import Source

Model = TypeVar("Model", bound=BaseModel)


def validated(model: type[Model], source: Source) -> Model:
    """The file as its model; raises its problems, placed in it, keys left empty among them."""
    problems: list[Problem] = []
    found = None
    unknown: frozenset[tuple[str | int, ...]] = frozenset()
    try:
        found = model.model_validate(source.data)
    except ValidationError as fault:
        problems.extend(problems_from(fault, model, source))
        unknown = frozenset(error["loc"] for error in fault.errors(include_url=False) if error["type"] == "extra_forbidden")
    problems.extend(check_empty(source, unknown))
    if problems or found is None:
        raise ProblemsFound(tuple(dict.fromkeys(problems)))
    return found
