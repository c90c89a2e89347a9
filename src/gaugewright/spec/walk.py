"""Walks a file's data along the models: which texts name something, and which keys belong where.

The models are the one list of fields; nothing here repeats them. Data of a wrong shape is passed
over, since pydantic reports it: so references are checked even where other things are wrong.
"""

from collections.abc import Iterator
from types import NoneType, UnionType
from typing import Annotated, Any, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gaugewright.spec.fields import Refers, as_written

Path = tuple[str | int, ...]


class Reference(NamedTuple):
    """A text that names something; `is_key` when the text is itself a key."""

    path: Path
    text: str
    kind: str
    is_key: bool = False


def references_in(model: type[BaseModel], data: Any) -> tuple[Reference, ...]:
    """All references of a file's data, in the order of the models."""
    return tuple(_walk(model, (), data, (), False))


def keys_at(model: type[BaseModel], path: Path) -> tuple[str, ...]:
    """The keys known where a path leads, path steps that no model has being passed over."""
    models = [model]
    annotations: list[Any] = [model]
    for step in path:
        below = [inner for annotation in annotations for inner in _step(annotation, step)]
        if below:
            annotations = below
            models = [found for annotation in below for found in _models(annotation)] or models
    return tuple(_key(name, field) for found in models for name, field in found.model_fields.items())


def _key(name: str, field: FieldInfo) -> str:
    return field.alias or name


def _walk(annotation: Any, marks: tuple[Any, ...], value: Any, path: Path, is_key: bool) -> Iterator[Reference]:
    origin = get_origin(annotation)
    if origin is Annotated:
        inner, *more = get_args(annotation)
        yield from _walk(inner, (*marks, *more), value, path, is_key)
    elif origin in (Union, UnionType):
        for member in get_args(annotation):
            if _fits(member, value):
                yield from _walk(member, marks, value, path, is_key)
    elif isinstance(annotation, type) and issubclass(annotation, BaseModel):
        if isinstance(value, dict):
            for name, field in annotation.model_fields.items():
                key = _key(name, field)
                if key in value:
                    yield from _walk(field.annotation, tuple(field.metadata), value[key], (*path, key), False)
    elif origin is dict and isinstance(value, dict):
        of_key, of_value = get_args(annotation)
        for key, held in value.items():
            yield from _walk(of_key, (), key, (*path, key), True)
            yield from _walk(of_value, (), held, (*path, key), False)
    elif origin is tuple:
        item = get_args(annotation)[0]
        for step, held in enumerate(value) if isinstance(value, list) else [(None, value)]:
            yield from _walk(item, (), held, path if step is None else (*path, step), False)
    elif not isinstance(value, (dict, list, NoneType, bool)):
        for mark in marks:
            if isinstance(mark, Refers):
                yield Reference(path, str(as_written(value)), mark.kind, is_key)


def _fits(member: Any, value: Any) -> bool:
    """Whether a choice is meant by a value of this shape; a tuple may also be written as one text."""
    while get_origin(member) is Annotated:
        member = get_args(member)[0]
    if get_origin(member) in (Union, UnionType):
        return any(_fits(choice, value) for choice in get_args(member))
    table = get_origin(member) is dict or (isinstance(member, type) and issubclass(member, BaseModel))
    if isinstance(value, dict):
        return table
    return not table and (get_origin(member) is tuple or not isinstance(value, list))


def _step(annotation: Any, step: str | int) -> Iterator[Any]:
    origin = get_origin(annotation)
    if origin is Annotated:
        yield from _step(get_args(annotation)[0], step)
    elif origin in (Union, UnionType):
        for member in get_args(annotation):
            yield from _step(member, step)
    elif origin is dict and isinstance(step, str):
        yield get_args(annotation)[1]
    elif origin is tuple and isinstance(step, int):
        yield get_args(annotation)[0]
    elif isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield from (field.annotation for name, field in annotation.model_fields.items() if _key(name, field) == step)


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    elif get_origin(annotation) in (Annotated, Union, UnionType):
        for member in get_args(annotation):
            yield from _models(member)
