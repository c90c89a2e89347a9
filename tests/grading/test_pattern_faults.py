"""What can't be worked in a stitch pattern is told at its place."""

from tiny_specs import told

TEXT = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {own: {M: {bust: 100 cm}}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  lace: {pattern: arches, edge_stitches: as needed, gauge: "10 sts, 10 rows / 10 cm"}
  plain: {stitch: sc, gauge: "10 sts, 10 rows / 10 cm"}
pieces:
  piece:
    fabric: lace
    start: {chain: 41 cm}
    sections:
      - even: {length: 10 cmFABRIC}
      - wedge: {depth: 4 cm, point: 4 cm}
      - even: {length: 10 cmFABRIC}
    edges: {both: [side]}
"""


def test_a_wedge_is_worked_in_a_plain_fabric() -> None:
    assert [name for name, _, _ in told(TEXT.replace("FABRIC", ""))] == ["wedge-in-pattern"]
    assert told(TEXT.replace("FABRIC", ", fabric: plain")) == []


def test_a_slope_rises_in_a_plain_fabric() -> None:
    text = TEXT.replace("      - wedge: {depth: 4 cm, point: 4 cm}\n", "").replace("    edges:", "      - shoulders: {neck: 12 cm, slope: 1 cm, as: rising stitches}\n    edges:")
    assert [name for name, _, _ in told(text.replace("FABRIC", ""))] == ["rising-in-pattern"]
    assert told(text.replace("FABRIC", ", fabric: plain")) == []
