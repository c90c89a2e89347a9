"""A small spec that uses every part of the format, for tests to damage."""

from gaugewright.spec import LoadedSpec, load_spec_text

LABELS = {"women": ("XS", "S", "M", "L")}
MEASURES = frozenset({"bust", "cross_back", "wrist", "upper_arm", "armhole_depth", "head"})

VEST = """\
gaugewright: 1
pattern:
  title: Slipway Vest
  level: easy
  version: "1.0"
  date: 2026-03-02
sizes:
  table: women
  make: [S, M, L]
  ease: {bust: 10 cm}
yarns:
  oat: {colour: "#d9c9a8", weight: 5, fibre: {wool: 70, nylon: 30}, ball: {mass: 100 g, length: 120 m}, price: 6.50 EUR}
  kelp: {like: oat}
fabrics:
  body:
    stitch: hdc
    tool: 8 mm
    swatch: {stitches: 18, rows: 14, width: 20.5 cm, height: 19.5 cm, mass: 41 g, thickness: 9 mm}
  rib: {stitch: sc, gauge: "8 sts, 6.5 rows / 10 cm"}
lengths:
  around: body.bust + ease.bust
  armhole: body.armhole_depth + 5 cm
levels:
  shoulder: 56 cm
  underarm: shoulder - armhole
bands:
  tide: {to: shoulder, heights: [50 %, rest]}
pieces:
  back:
    fabric: body
    start: {chain: around / 2}
    sections:
      - even: {to: shoulder}
      - shoulders: {neck: body.cross_back * 0.42}
    edges: {both: [side, underarm, arm_edge], bottom: hem}
    colours: {bands: tide, order: [oat, kelp]}
  front:
    like: back
    colours: oat
  cuff:
    make: 2
    fabric: rib
    start: {pick_up: [back.arm_edge, front.arm_edge]}
    sections:
      - even: {length: 2 cm}
      - taper: {target: body.upper_arm * 1.1, rounds: 2}
      - even: {length: rest}
    total: in_rows(6 cm, rib)
    edges: {bottom: root, top: rim}
    colours: kelp
seams:
  - {join: back.side, to: front.side, take_up: half stitch}
attach:
  - {piece: cuff, to: front, up: 10 cm, in: 3 cm, from: side}
openings:
  - {name: neck, around: [back.neck, front.neck], passes: head, stretch: 20 %}
finished:
  bust: {measure: finished(back.width) + finished(front.width), wanted: around, of: bust}
"""


def read(text: str) -> LoadedSpec:
    return load_spec_text(text, "vest.yaml", LABELS, MEASURES)
