"""One block changed, everything else kept byte for byte."""

import pytest

from gaugewright.yaml_edit import plain, set_values
from gaugewright.yaml_reader import read_yaml_text

NEW = {"stitches": "27", "rows": "14", "width": "30.8 cm"}
FLOW = 'fabrics:\n  body: {stitch: hdc, swatch: {stitches: 18, width: 20.5 cm}}   # mine\nother: 1 # kept\n'
BLOCK = """\
fabrics:
  # the body's
  body:
    stitch: hdc
    swatch:          # counted in May
      stitches: 18   # in the middle
      width: "20.5 cm"

    tool: 10 mm      # kept
yarns: {oat: {}}
"""
GAUGE = 'fabrics:\n  body: {stitch: hdc, gauge: "9 sts, 7 rows / 10 cm", tool: 10 mm}\n'
LIKE = "fabrics:\n  body:\n    like: other   # as it is\n\n  other: {stitch: sc}\n"
QUOTED = 'fabrics:\r\n  body: {stitch: hdc, swatch: {"stitches": 18, rows: 9}}\r\n# “end” with no line end'


@pytest.mark.parametrize("text", [FLOW, BLOCK, GAUGE, LIKE, QUOTED, "\ufefffabrics: {body: {swatch: {stitches: 1}}}\n".lstrip("\ufeff")])
def test_only_the_block_changes(text: str) -> None:
    changed = set_values(text, ("fabrics", "body", "swatch"), NEW, {"gauge": "swatch"})
    before, after = (plain(read_yaml_text(one, "x.yaml").data) for one in (text, changed))
    swatch = after["fabrics"]["body"].pop("swatch")
    assert {key: str(value) for key, value in swatch.items() if key in NEW} == NEW
    before["fabrics"]["body"].pop("swatch", None)
    before["fabrics"]["body"].pop("gauge", None)
    assert after == before


def test_comments_and_spaces_are_kept() -> None:
    changed = set_values(BLOCK, ("fabrics", "body", "swatch"), NEW)
    assert changed == BLOCK.replace("18 ", "27 ").replace('"20.5 cm"', "30.8 cm\n      rows: 14")
    assert set_values(FLOW, ("fabrics", "body", "swatch"), NEW).endswith("width: 30.8 cm, rows: 14}}   # mine\nother: 1 # kept\n")
    assert "\r\n# “end” with no line end" in set_values(QUOTED, ("fabrics", "body", "swatch"), NEW)


def test_a_gauge_gives_way_in_its_place() -> None:
    changed = set_values(GAUGE, ("fabrics", "body", "swatch"), NEW, {"gauge": "swatch"})
    assert changed == "fabrics:\n  body: {stitch: hdc, swatch: {stitches: 27, rows: 14, width: 30.8 cm}, tool: 10 mm}\n"


def test_a_fabric_that_isn_t_there_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        set_values(FLOW, ("fabrics", "hem", "swatch"), NEW)


def test_a_later_change_undoes_an_earlier_one() -> None:
    there = set_values(FLOW, ("fabrics", "body", "swatch"), {"stitches": "27"})
    assert set_values(there, ("fabrics", "body", "swatch"), {"stitches": "18"}) == FLOW
