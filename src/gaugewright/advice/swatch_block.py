"""A spec with one fabric's swatch changed: the only place where a spec is written anew."""

from collections.abc import Mapping
from copy import deepcopy
from pathlib import Path
from typing import Any

from gaugewright.errors import InternalError, UserError
from gaugewright.yaml_edit import plain, set_values
from gaugewright.yaml_reader import read_yaml_text


def spec_with_block(data: bytes, path: Path, fabric: str, block: Mapping[str, str]) -> bytes:
    """The spec's bytes with the fabric's `swatch` set; its `gauge`, if it has one, gives way to it.

    Everything else is kept byte for byte; read again, the file must hold the same but for this block.
    """
    text = data.decode("utf-8")
    before = plain(read_yaml_text(text, str(path)).data)
    if not isinstance(before.get("fabrics", {}).get(fabric), dict):
        raise UserError("unknown-fabric", f"{path} has no fabric {fabric} of its own to change", "name a fabric that stands in this file")
    if "hung" in block and "growth" in before["fabrics"][fabric]:
        raise UserError("two-growths", f"{fabric} states `growth`, and these readings tell it as `hung`", f"take `growth` out of {fabric} first: what was measured rules")
    changed = set_values(text, ("fabrics", fabric, "swatch"), block, {"gauge": "swatch"})
    after = plain(read_yaml_text(changed, str(path)).data)
    if after != _expected(before, fabric, block):
        raise InternalError(f"the swatch of {fabric} can't be changed without changing more of {path}")
    return changed.encode("utf-8")


def _expected(before: dict[str, Any], fabric: str, block: Mapping[str, str]) -> dict[str, Any]:
    found = deepcopy(before)
    one = found["fabrics"][fabric]
    one.pop("gauge", None)
    written = {key: int(value) if value.isdigit() else value for key, value in block.items()}
    one["swatch"] = {**one.get("swatch", {}), **written}
    return found
