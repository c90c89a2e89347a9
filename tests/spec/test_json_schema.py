"""The JSON schema: every key described, nothing unknown allowed, words and examples as the reader takes them."""

from collections.abc import Iterator
from typing import Any

from gaugewright.formulas import parse_formula
from gaugewright.spec import json_schema


def objects(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        if "properties" in node:
            yield node
        for held in node.values():
            yield from objects(held)
    elif isinstance(node, list):
        for held in node:
            yield from objects(held)


def test_every_key_is_described_and_nothing_else_allowed() -> None:
    schema = json_schema()
    found = list(objects(schema))
    assert {"Spec", "Pattern", "Piece", "Even", "Taper", "Swatch"} <= {each["title"] for each in found}
    for each in found:
        assert each["additionalProperties"] is False, each["title"]
        assert each["description"], each["title"]
        for key, value in each["properties"].items():
            described = {**schema["$defs"].get(value.get("$ref", "").rpartition("/")[2], {}), **value}
            assert described.get("description", "").endswith("."), (each["title"], key)


def test_the_schema_uses_the_keys_of_the_file() -> None:
    attach = json_schema()["$defs"]["Attachment"]["properties"]
    assert {"in", "from"} <= attach.keys() and not {"inward", "from_edge"} & attach.keys()


def test_formulas_in_examples_can_be_read() -> None:
    examples = json_schema()["$defs"]["Finished"]["properties"]["measure"]["examples"]
    assert [parse_formula(example) for example in examples]
