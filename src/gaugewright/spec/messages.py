"""What pydantic refused, as problems in plain words at their places in the file."""

import difflib
import re
from collections.abc import Iterable
from typing import Any

from pydantic import BaseModel, ValidationError

from gaugewright.errors import Origin, Problem
from gaugewright.spec.fields import as_written
from gaugewright.spec.money import MoneyError, parse_money
from gaugewright.spec.walk import Path, keys_at
from gaugewright.yaml_reader import Source


def problems_from(error: ValidationError, model: type[BaseModel], source: Source) -> tuple[Problem, ...]:
    """Each fault of a validation as a problem; empty values are left to `check_empty`."""
    faults = [dict(fault) for fault in error.errors(include_url=False)]
    commas = {path: problem for path, problem in (_cut_by_comma(fault, source) for fault in faults) if problem}
    plain = (_problem(fault, model, source) for fault in faults if not _explained(fault, commas))
    return (*commas.values(), *plain)


def _explained(fault: dict[str, Any], commas: dict[Path, Problem]) -> bool:
    """Faults told otherwise: empty values, and both halves of a number with a comma."""
    path, kind = tuple(fault["loc"]), fault["type"]
    halves = any(path == comma or _is_second_half(fault) and path[:-1] == comma[:-1] for comma in commas)
    return halves or (fault["input"] is None and kind not in ("missing", "extra_forbidden"))


def _is_second_half(fault: dict[str, Any]) -> bool:
    return fault["type"] == "extra_forbidden" and fault["input"] is None and str(fault["loc"][-1])[:1].isdigit()


def _cut_by_comma(fault: dict[str, Any], source: Source) -> tuple[Path, Problem | None]:
    """`{width: 20,5 cm}` is read as a width of 20 and a key "5 cm": told as what was meant."""
    path: Path = tuple(fault["loc"])
    if not _is_second_half(fault):
        return path, None
    held, second = source.value_at(path[:-1]), str(path[-1])
    keys = list(held) if isinstance(held, dict) else []
    at = keys.index(second) if second in keys else 0
    key = keys[at - 1] if at else ""
    first = str(as_written(held[key])) if at else ""
    path = (*path[:-1], key)
    if key == "gauge":
        message = "a comma ends a value within braces, and the gauge with it"
        return path, Problem("gauge-text", message, source.origin_at(path), f'write gauge: "{first}, {second}"')
    if not re.fullmatch(r"[^A-Za-z]*[0-9]", first):
        return path, None
    hint = f"write {first}.{second}"
    if key == "price":
        try:
            parse_money(f"{first}.{second}")
        except MoneyError as price:
            hint = price.hint
    message = f"a comma can't stand inside a number: {key} ends after {first}"
    return path, Problem("decimal-comma", message, source.origin_at(path), hint)


def did_you_mean(found: str, known: Iterable[str], otherwise: str) -> str:
    """A hint with the nearest known word, else another hint."""
    words = list(known)
    near = difflib.get_close_matches(found, words, n=1, cutoff=0.6)
    begun = [word for word in words if len(found) > 2 and word.startswith(found)]
    near = near or (begun if len(begun) == 1 else [])
    return f"did you mean {near[0]}?" if near else otherwise


def listed(words: Iterable[str], link: str = "or") -> str:
    """Words with commas, `or` (or another link) before the last.

    >>> listed(["rows", "rounds", "both"]), listed(["S", "S or M"], "and")
    ('rows, rounds or both', 'S and S or M')
    """
    *most, last = list(words) or ["nothing"]
    return f"{', '.join(most)} {link} {last}" if most else last


def _problem(fault: dict[str, Any], model: type[BaseModel], source: Source) -> Problem:
    path, kind, value = tuple(fault["loc"]), fault["type"], fault["input"]
    if kind == "gaugewright":
        return _refusal(path, fault["ctx"], source)
    if kind == "extra_forbidden":
        return _unknown_key(path, model, source)
    key = _last_key(path) or "the file"
    if kind == "missing":
        return _missing(path, key, model, source)
    origin = source.origin_at(path)
    if kind == "literal_error":
        return _unknown_word(key, str(as_written(value)), fault["ctx"]["expected"], origin)
    message, hint = _shape(kind, key, value, fault)
    return Problem("out-of-range" if kind in _RANGES else "wrong-kind", message, origin, hint)


# Words a maker may well use for a key that goes by another.
_OTHER_WORDS = {
    "hook": "tool", "needle": "tool", "tension": "gauge", "sts": "stitches", "fiber": "fibre", "color": "colour", "colors": "colours",
    "license": "licence", "author": "workshop", "designer": "workshop", "name": "title", "yarn": "colours", "cast_on": "chain",
    "measures": "own", "quantity": "make", "times": "make", "weight": "mass",
}  # fmt: skip
_SHAPES = {"<text>": "one value", "<table>": "keys with values", "<list>": "a list"}
_RANGES = ("greater_than_equal", "less_than_equal", "greater_than", "too_short", "string_too_short", "string_too_long")


def _is_key(step: str | int) -> bool:
    """Steps in angle or square brackets are choices and keys themselves, not keys of the file."""
    return isinstance(step, str) and not step.startswith(("<", "["))


def _last_key(path: Path) -> str:
    return next((str(step) for step in reversed(path) if _is_key(step)), "")


def _refusal(path: Path, ctx: dict[str, Any], source: Source) -> Problem:
    path, column = (*path, *ctx["path"]), ctx["column"]
    if "[key]" in path:
        origin = source.origin_at(path, key=True)
    else:
        origin = (
            source.origin_in(path, column) if column >= 0 else source.origin_at(path, key=ctx["name"] == "missing-key")
        )
    return Problem(ctx["name"], ctx["message"], origin, ctx["hint"])


def _unknown_key(path: Path, model: type[BaseModel], source: Source) -> Problem:
    key = str(path[-1])
    known = keys_at(model, path[:-1])
    where = _last_key(path[:-1])
    message = f"{where or 'the file'} has no key {key}; {listed(known)} is expected"
    other = _OTHER_WORDS.get(key.lower(), "")
    hint = (
        f"write {other} instead"
        if other in known
        else did_you_mean(key, known, "take it out, or use one of those keys")
    )
    return Problem("unknown-key", message, source.origin_at(path, key=True), hint)


def _missing(path: Path, key: str, model: type[BaseModel], source: Source) -> Problem:
    where = _last_key(path[:-1]) or "the file"
    example = _example(model, path)
    return Problem(
        "missing-key", f"{where} has no `{key}`", source.origin_at(path, key=True), f"add `{key}: {example}`"
    )


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
    elif _is_key(step) and isinstance(node.get("additionalProperties"), dict):
        yield node["additionalProperties"]


def _unknown_word(key: str, found: str, expected: str, origin: Origin) -> Problem:
    words = re.findall(r"'([^']*)'", expected) or [expected]
    message = f"{key} is {found!r}; {listed(words)} is expected"
    return Problem("unknown-word", message, origin, did_you_mean(found.lower(), words, f"write {listed(words)}"))


def _shape(kind: str, key: str, value: Any, fault: dict[str, Any]) -> tuple[str, str]:
    found = (
        "keys with values"
        if isinstance(value, dict)
        else "a list"
        if isinstance(value, list)
        else str(value).lower()
        if isinstance(value, bool)
        else str(as_written(value))
    )
    ctx = fault.get("ctx", {})
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        return (
            f"{key} holds {found}; keys with values are expected",
            f"write the keys of {key} under it, each with a colon",
        )
    if kind == "union_tag_invalid":
        shapes = listed(_SHAPES[tag] for tag in re.findall(r"<\w+>", ctx["expected_tags"]))
        return f"{key} holds {found}; {shapes} is expected", f"write {shapes} for {key}"
    if kind == "tuple_type":
        return f"{key} holds {found}; a list is expected", f"write it in brackets: [{found}]" if not isinstance(
            value, dict
        ) else "begin each entry with -"
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
