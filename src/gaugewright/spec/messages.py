"""What pydantic refused, as problems in plain words at their places in the file."""

import difflib
import re
from collections.abc import Iterable
from typing import Any

from pydantic import BaseModel, ValidationError

from gaugewright.errors import Origin, Problem
from gaugewright.spec.fields import as_written
from gaugewright.spec.walk import Path, keys_at
from gaugewright.yaml_reader import Source


def problems_from(error: ValidationError, model: type[BaseModel], source: Source) -> tuple[Problem, ...]:
    """Each fault of a validation as a problem."""
    return tuple(_problem(dict(fault), model, source) for fault in error.errors(include_url=False))


def did_you_mean(found: str, known: Iterable[str], otherwise: str) -> str:
    """A hint with the nearest known word, else another hint."""
    near = difflib.get_close_matches(found, list(known), n=1, cutoff=0.6)
    return f"did you mean {near[0]}?" if near else otherwise


def listed(words: Iterable[str]) -> str:
    """Words with commas, `or` before the last.

    >>> listed(["rows", "rounds", "both"])
    'rows, rounds or both'
    """
    *most, last = list(words) or ["nothing"]
    return f"{', '.join(most)} or {last}" if most else last


def _problem(fault: dict[str, Any], model: type[BaseModel], source: Source) -> Problem:
    path, kind, value = tuple(fault["loc"]), fault["type"], fault["input"]
    if kind == "gaugewright":
        return _refusal(path, fault["ctx"], source)
    if kind == "extra_forbidden":
        return _unknown_key(path, value, model, source)
    key = str(next((step for step in reversed(path) if isinstance(step, str) and step[:1] not in "<["), "the file"))
    if kind == "missing":
        return _missing(path, key, model, source)
    origin = source.origin_at(path)
    if value is None:
        return _nothing(key, origin, kind)
    if kind == "literal_error":
        return _unknown_word(key, str(as_written(value)), fault["ctx"]["expected"], origin)
    message, hint = _shape(kind, key, value, fault)
    return Problem("out-of-range" if kind in _RANGES else "wrong-kind", message, origin, hint)


_RANGES = ("greater_than_equal", "less_than_equal", "greater_than", "too_short", "string_too_short", "string_too_long")


def _refusal(path: Path, ctx: dict[str, Any], source: Source) -> Problem:
    path, column = (*path, *ctx["path"]), ctx["column"]
    if "[key]" in path:
        origin = source.origin_at(path, key=True)
    else:
        origin = source.origin_in(path, column) if column >= 0 else source.origin_at(path, key=ctx["name"] == "missing-key")
    return Problem(ctx["name"], ctx["message"], origin, ctx["hint"])


def _unknown_key(path: Path, value: Any, model: type[BaseModel], source: Source) -> Problem:
    key = str(path[-1])
    known = keys_at(model, path[:-1])
    where = next((str(step) for step in reversed(path[:-1]) if isinstance(step, str) and step[0] not in "<["), "")
    message = f"{key} is not a key of {where or 'a spec'}; {listed(known)} are"
    hint = did_you_mean(key, known, "take it out, or use one of those keys")
    if value is None and key[:1].isdigit():  # {width: 20,5 cm} is read as width: 20 and a key "5 cm"
        message, hint = f"{key} is not a key: a comma ends a value here", f"write a decimal point, as in 20.{key}"
    return Problem("unknown-key", message, source.origin_at(path, key=True), hint)


def _missing(path: Path, key: str, model: type[BaseModel], source: Source) -> Problem:
    where = next((str(step) for step in reversed(path[:-1]) if isinstance(step, str) and step[0] not in "<["), "the file")
    example = _example(model, path)
    return Problem("missing-key", f"{where} has no `{key}`", source.origin_at(path, key=True), f"add `{key}: {example}`")


def _example(model: type[BaseModel], path: Path) -> str:
    """The example of the field that a path leads to, as the model states it."""
    schema = model.model_json_schema(by_alias=True)
    node: dict[str, Any] = schema
    for step in path:
        node = next((below for below in _below(node, step, schema)), node)
    examples = node.get("examples") or node.get("enum") or ["a value"]
    return str(examples[0])


def _below(node: dict[str, Any], step: str | int, schema: dict[str, Any]) -> Iterable[dict[str, Any]]:
    while "$ref" in node:
        node = schema["$defs"][node["$ref"].rsplit("/", 1)[1]]
    for choice in (*node.get("anyOf", ()), *node.get("oneOf", ())):
        yield from _below(choice, step, schema)
    if isinstance(step, int) and "items" in node:
        yield node["items"]
    elif step in node.get("properties", {}):
        yield node["properties"][step]
    elif isinstance(step, str) and step[0] not in "<[" and isinstance(node.get("additionalProperties"), dict):
        yield node["additionalProperties"]


def _nothing(key: str, origin: Origin, kind: str) -> Problem:
    """An empty value; a colour without quotes is a comment to YAML."""
    comment = re.search(r":\s+(#[0-9A-Fa-f]{3,8})\b", origin.line_text)
    if comment and key == "colour":
        return Problem("colour-text", "a colour without quotes is read as a comment", origin, f'write colour: "{comment[1]}"')
    wanted = "keys with values" if kind in ("model_type", "dict_type") else "a value"
    return Problem("wrong-kind", f"{key} is empty; {wanted} is expected" if wanted == "a value" else f"{key} is empty; {wanted} are expected", origin, f"write what belongs to {key}, or take {key} out")


def _unknown_word(key: str, found: str, expected: str, origin: Origin) -> Problem:
    words = re.findall(r"'([^']*)'", expected) or [expected]
    message = f"{key} is {found!r}; {listed(words)} is expected"
    return Problem("unknown-word", message, origin, did_you_mean(found.lower(), words, f"write {listed(words)}"))


def _shape(kind: str, key: str, value: Any, fault: dict[str, Any]) -> tuple[str, str]:
    found = "keys with values" if isinstance(value, dict) else "a list" if isinstance(value, list) else str(as_written(value))
    ctx = fault.get("ctx", {})
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        return f"{key} holds {found}; keys with values are expected", f"write the keys of {key} under it, each with a colon"
    if kind == "tuple_type":
        return f"{key} holds {found}; a list is expected", f"write it in brackets: [{found}]" if not isinstance(value, dict) else "begin each entry with -"
    if kind == "string_type":
        hint = f'write it in quotes: "{found.lower()}"' if isinstance(value, bool) else f"write one text for {key}"
        return f"{key} is {found}; text is expected", hint
    if kind == "bool_type":
        return f"{key} is {found}; true or false is expected", "write true or false, without quotes"
    if kind in ("int_type", "int_from_float"):
        return f"{key} is {found}; a whole number is expected", "write a whole number with no unit"
    if kind in ("too_short", "string_too_short"):
        return f"{key} is empty", f"write what belongs to {key}, or take {key} out"
    if kind == "greater_than_equal":
        return f"{key} is {found}; at least {ctx['ge']} is expected", f"write a number from {ctx['ge']} up"
    if kind == "less_than_equal":
        return f"{key} is {found}; at most {ctx['le']} is expected", f"write a number up to {ctx['le']}"
    if kind == "string_pattern_mismatch":
        return f"{key} is {found!r}, which is no tag of a language", "write a tag such as en or en-GB"
    return f"{key} is {found}: {fault['msg'][:1].lower()}{fault['msg'][1:]}", "change it to what is expected"
