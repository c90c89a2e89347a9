"""Specs whose patterns between them hold every kind of sentence, and what is read from those patterns."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from gaugewright import pipeline
from gaugewright.instructions.nodes import Block, Document, Figure, Heading, Paragraph, Table, spans_text
from gaugewright.measurements import MEASURES, TABLES, size_labels
from gaugewright.spec import load_spec_text

ROOT = Path(__file__).parents[2]

HEAD = """\
gaugewright: 1
pattern: {title: Tideway Pieces, workshop: Ferry Lane Workshop, level: intermediate, version: "1.1", date: 2026-01-02}
yarns:
  oat: {colour: "#d9c9a8", weight: 5, fibre: {wool: 80, nylon: 20}, ball: {mass: 100 g, length: 120 m}}
  kelp: {colour: "#3f5d4e", like: oat}
fabrics:
  plain: {stitch: hdc, tool: 8 mm, swatch: {stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 30 g, thickness: 6 mm}}
  rib: {stitch: sc, loop: back, tool: 7 mm, swatch: {stitches: 22, rows: 24, width: 20 cm, height: 20 cm, mass: 34 g}}
  front: {like: plain, loop: front}
  tall: {stitch: dc, tool: 8 mm, swatch: {stitches: 20, rows: 10, width: 20 cm, height: 20 cm, mass: 28 g}}
  joined: {like: plain, worked: joined rounds}
  turned: {like: plain, worked: turned rounds}
  spiral: {stitch: sc, worked: spiral rounds, tool: 8 mm, swatch: {stitches: 20, rows: 22, width: 20 cm, height: 20 cm, mass: 33 g}}
  tall_joined: {like: tall, worked: joined rounds}
  tall_turned: {like: tall, worked: turned rounds}
  tall_spiral: {like: tall, worked: spiral rounds}
  slip_joined: {stitch: sl st, worked: joined rounds, tool: 8 mm, swatch: {stitches: 20, rows: 30, width: 20 cm, height: 20 cm, mass: 40 g}}
  low: {stitch: sc, tool: 8 mm, swatch: {stitches: 20, rows: 40, width: 20 cm, height: 20 cm, mass: 40 g}}
  slipped: {stitch: sl st, loop: back, tool: 8 mm, swatch: {stitches: 20, rows: 30, width: 20 cm, height: 20 cm, mass: 40 g}}
"""

NINE = "sizes: {table: women, ease: {bust: 15 cm}}\n"
ONE = "sizes: {own: {Ada: {bust: 96 cm}}, ease: {bust: classic}}\n"
THREE = "sizes: {own: {S: {bust: 82 cm}, M: {bust: 97 cm}, L: {bust: 115 cm}}, ease: {bust: 12 cm}}\n"
NONE = ""

BODIES = """\
levels: {shoulder: 60 cm, underarm: shoulder - 22 cm, neck: shoulder - 20 cm}
bands:
  tide: {to: shoulder, heights: [32 %, 30 %, rest]}
pieces:
  back:
    fabric: plain
    start: {chain: (body.bust + ease.bust) / 2}
    sections:
      - even: {to: shoulder}
      - shoulders: {neck: 20 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
    colours: {bands: tide, order: [oat, kelp, oat]}
  front:
    fabric: plain
    start: {chain: (body.bust + ease.bust) / 4}
    sections:
      - even: {to: neck}
      - taper: {to: shoulder, target: edge(back.shoulder), at: opening}
    edges: {starting: [side, underarm, armhole], far: [opening], bottom: hem, top: shoulder}
    colours: {bands: tide, order: [kelp, oat, kelp]}
  left: {like: front, mirrored: true, title: Other Front, notes: [Mind the curve.]}
  sleeve:
    make: 2
    fabric: turned
    start: {ring: 24 cm, fabric: joined}
    sections:
      - even: {length: 5 cm}
      - taper: {length: 30 cm, target: edge(back.armhole) + edge(front.armhole), round: up}
      - even: {rounds: 2}
    edges: {bottom: cuff, top: sleeve_top}
    colours: kelp
  band:
    fabric: rib
    start: {pick_up: [front.opening, back.neck, left.opening], take_up: half stitch}
    sections: [even: {rows: 5}]
    colours: oat
  pocket: {fabric: plain, colours: oat, start: {chain: 14 cm}, sections: [even: {length: 15 cm}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.shoulder, to: left.shoulder, method: slip stitch}
  - {join: back.side, to: front.side, take_up: half stitch}
  - {join: back.side, to: left.side, take_up: whole stitch, method: whip}
  - {join: sleeve.sleeve_top, to: [back.armhole, front.armhole]}
  - {join: sleeve.sleeve_top, to: [back.armhole, left.armhole]}
attach:
  - {piece: pocket, to: front, up: 8 cm, in: 4 cm, from: side}
  - {piece: pocket, to: left, up: 0 cm, in: 0 cm, from: side}
  - {piece: pocket, to: left, up: 30 cm, in: 1 cm, from: opening}
finished:
  bust: {measure: finished(back.width) + finished(front.width) * 2, wanted: body.bust + ease.bust, of: bust}
  length: {measure: finished(back.length)}
"""

SHAPES = """\
pieces:
  both_ways:
    fabric: plain
    colours: oat
    start: {chain: body.bust / 3}
    sections:
      - taper: {length: 21 cm, target: body.bust / 3 + 11 cm}
      - even: {length: 4 cm}
      - taper: {length: 12 cm, target: body.bust / 4}
  one_edge:
    fabric: plain
    colours: {bands: {to: total, heights: [9 cm, rest]}, order: [oat, kelp]}
    start: {chain: 18 cm}
    sections:
      - even: {rows: 1}
      - taper: {length: 20 cm, target: 30 cm, at: front}
      - taper: {rows: 10, target: 22 cm, at: front}
    total: in_rows(20 cm, plain) + in_rows(1 cm, plain) + in_rows(12.5 cm, plain)
    edges: {starting: [side], far: [front]}
  counted:
    fabric: tall
    colours: oat
    start: {chain: body.bust / 5}
    sections:
      - taper: {rows: 6, target: body.bust / 5 + 6 cm}
      - even: {length: 6 cm}
      - taper: {rows: 7, target: body.bust / 5 - 2 cm}
    edges: {starting: [left_out], far: [inner]}
  counted_one_edge:
    fabric: tall
    colours: oat
    start: {chain: 20 cm}
    sections:
      - taper: {rows: 7, target: 25 cm, at: inner}
      - taper: {rows: 7, target: 21 cm, at: inner}
    edges: {starting: [side], far: [inner]}
  steep:
    fabric: front
    colours: oat
    start: {chain: 20 cm}
    sections: [taper: {rows: 7, target: body.bust / 3}, taper: {rows: 7, target: 20 cm}]
  strip: {fabric: rib, colours: kelp, start: {chain: 6 cm}, sections: [even: {length: body.bust / 2}]}
  edging: {fabric: slipped, colours: kelp, start: {chain: 10 cm}, sections: [even: {rows: 3}]}
  tall_back: {fabric: front, colours: kelp, start: {chain: 10 cm}, sections: [even: {rows: 1}]}
"""

ROUNDS = """\
pieces:
  balloon:
    fabric: joined
    colours: {bands: {to: total, heights: [11 cm, rest]}, order: [kelp, oat]}
    start: {ring: 22 cm}
    sections:
      - even: {length: 4 cm}
      - taper: {rounds: 2, target: body.bust * 0.5}
      - even: {length: rest}
      - taper: {rounds: 2, target: 28 cm}
    total: 40 cm
  gathered: {fabric: tall_joined, colours: oat, start: {ring: 20 cm}, sections: [even: {rounds: 1}, taper: {rounds: 1, target: 37 cm}, even: {rounds: 4}]}
  narrowed: {fabric: tall_turned, colours: oat, start: {ring: body.bust / 2}, sections: [even: {rounds: 3}, taper: {rounds: 8, target: body.bust / 3}, taper: {rounds: 5, target: body.bust / 2}]}
  hat:
    fabric: spiral
    colours: oat
    start: {ring: 50 cm}
    sections:
      - even: {length: 10 cm}
      - taper: {length: 8 cm, target: 40 cm}
      - taper: {length: 5 cm, target: 46 cm}
      - taper: {rounds: 3, target: 30 cm}
  tube: {fabric: turned, colours: {bands: {to: total, heights: [40 %, rest]}, order: [oat, kelp]}, total: 30 cm, start: {ring: body.bust / 2}, sections: [taper: {length: 15 cm, target: body.bust / 2 - 12 cm}, taper: {length: 15 cm, target: body.bust / 2}]}
"""

CORNERS = """\
pieces:
  point: {fabric: rib, colours: oat, start: {chain: 8 cm}, sections: [taper: {rows: 12, stitches: 1, at: far}]}
  cuffed:
    fabric: plain
    colours: oat
    start: {chain: 20 cm, fabric: rib}
    sections:
      - even: {length: 5 cm, fabric: rib}
      - even: {length: 10 cm}
      - taper: {rows: 6, target: 24 cm}
  unshaped: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [taper: {rows: 6, target: 20 cm}, even: {rows: 2}]}
  some: {fabric: plain, colours: oat, start: {chain: 41 cm}, sections: [taper: {rows: 9, target: body.bust / 2}]}
  long: {fabric: plain, colours: oat, start: {chain: 12 cm}, sections: [even: {rows: 1}, taper: {rows: 102, target: 94 cm}]}
  sock: {fabric: spiral, colours: {bands: {to: total, heights: [40 %, rest]}, order: [oat, kelp]}, total: 10 cm, start: {ring: 30 cm}, sections: [even: {length: rest}, taper: {rounds: 3, target: 20 cm}, taper: {rounds: 3, target: 28 cm}]}
  panel: {fabric: plain, colours: oat, start: {chain: 30 cm}, sections: [even: {length: 40 cm}]}
  ribbed: {fabric: rib, colours: kelp, start: {chain: 30 cm}, sections: [even: {length: 40 cm}]}
  crosswise: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}
  narrow: {fabric: tall, colours: kelp, start: {chain: 20 cm}, sections: [even: {length: 20 cm}]}
  lengthwise: {fabric: low, colours: kelp, start: {chain: 20 cm}, sections: [even: {length: 20 cm}]}
  flat_sleeve: {fabric: plain, colours: kelp, start: {chain: edge(panel.far)}, sections: [even: {length: 20 cm}]}
seams:
  - {join: panel.top, to: ribbed.top}
  - {join: panel.starting, to: ribbed.far}
  - {join: crosswise.top, to: narrow.far}
  - {join: narrow.top, to: lengthwise.far}
  - {join: flat_sleeve.top, to: panel.far}
"""

DISCS = """\
pieces:
  mat: {fabric: tall_turned, colours: oat, start: {centre: 12}, sections: [crown: {target: body.bust}], edges: {top: rim}}
  bag:
    fabric: joined
    start: {centre: flat}
    sections: [crown: {target: body.bust / 2}, even: {length: rest}]
    total: 30 cm
    colours: {bands: {to: total, heights: [50 %, rest]}, order: [oat, kelp]}
    edges: {bottom: base, top: mouth}
  cap: {fabric: spiral, colours: kelp, start: {ring: body.bust / 2}, sections: [even: {length: rest}, crown: {close: true}], total: 22 cm, edges: {bottom: brim}}
  ball: {fabric: spiral, colours: kelp, start: {centre: 6}, sections: [crown: {each: 6, stitches: 36}, even: {rounds: 6}, crown: {close: true}]}
  sun_brim: {fabric: tall_joined, colours: kelp, start: {ring: 50 cm}, sections: [even: {rounds: 2}, crown: {target: body.bust}]}
  button: {fabric: slip_joined, colours: kelp, start: {centre: 9}, sections: [crown: {stitches: 18}]}
  cord: {fabric: spiral, colours: kelp, start: {centre: 5}, sections: [even: {length: 20 cm}]}
openings:
  - {name: brim, around: [cap.brim], passes: head, stretch: 40 %}
"""

NECKS = """\
levels: {shoulder: 56 cm, underarm: shoulder - 23 cm}
lengths: {half: (body.bust + ease.bust) / 2, above: half - 12 cm}
pieces:
  back:
    fabric: plain
    start: {chain: half}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: above}
      - neck: {shape: round, width: 20 cm, depth: 3 cm, slope: 4 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
    colours: {bands: {to: shoulder, heights: [50 cm, rest]}, order: [oat, kelp]}
  front:
    like: back
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: above, block: 2 cm}
      - neck: {shape: v, width: 20 cm, depth: 21 cm, slope: 4 cm}
  tank:
    like: back
    colours: kelp
    sections: [even: {to: shoulder}, neck: {shape: square, width: 24 cm, depth: 12 cm}]
  boat: {like: back, colours: kelp, sections: [even: {to: shoulder}, neck: {shape: boat, width: 30 cm, depth: 6 cm}]}
  slant: {like: back, colours: kelp, sections: [even: {to: shoulder}, shoulders: {neck: 20 cm, slope: 3 cm}]}
  half:
    fabric: plain
    colours: kelp
    start: {chain: half / 2}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: above / 2, at: armhole}
      - neck_edge: {shape: round, width: 10 cm, depth: 9 cm, slope: 4 cm, at: front}
    edges: {starting: [side, underarm, armhole], far: [front], bottom: hem}
  v_half:
    like: half
    sections: [even: {to: shoulder}, neck_edge: {shape: v, width: 10 cm, depth: 18 cm, at: front}]
  odd_v:
    fabric: plain
    colours: kelp
    start: {chain: 41 cm}
    sections: [even: {length: 20 cm}, neck: {shape: v, width: 13 cm, depth: 10 cm}]
  tall:
    fabric: tall
    colours: kelp
    start: {chain: 41 cm}
    sections: [even: {length: 20 cm}, armhole: {length: 24 cm, target: 31 cm}, neck: {shape: round, width: 15 cm, depth: 10 cm, slope: 4 cm}]
  slipped:
    fabric: slipped
    colours: kelp
    start: {chain: 30 cm}
    sections: [even: {length: 20 cm}, shoulders: {neck: 12 cm, slope: 2 cm}]
  sleeve:
    make: 2
    fabric: plain
    colours: kelp
    start: {chain: 24 cm}
    sections:
      - even: {length: 4 cm}
      - taper: {length: 30 cm, target: 34 cm}
      - cap: {fit: [back.armhole, front.armhole]}
    edges: {bottom: cuff}
  neckband: {fabric: rib, colours: oat, start: {pick_up: [back.neck, front.neck]}, sections: [even: {rows: 4}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: sleeve.cap, to: [back.armhole, front.armhole]}
"""

YOKES = """\
pieces:
  yoke:
    fabric: joined
    colours: oat
    start: {ring: 44 cm, fabric: rib}
    sections: [even: {rounds: 3, fabric: rib}, raglan: {length: 30 cm, body: body.bust + ease.bust, sleeve: 40 cm, underarm: 6 cm}]
    edges: {bottom: neck, top: underarm}
  lower: {fabric: spiral, colours: kelp, start: {divide: yoke.body}, sections: [even: {length: 20 cm}], edges: {bottom: underarm, top: hem}}
  sleeve: {fabric: joined, colours: kelp, make: 2, start: {divide: yoke.sleeve}, sections: [taper: {length: 30 cm, target: 26 cm}], edges: {bottom: underarm, top: cuff}}
  full_yoke:
    fabric: spiral
    colours: {bands: {to: total, heights: [10 cm, rest]}, order: [oat, kelp]}
    start: {ring: 60 cm}
    sections: [raglan: {length: 22 cm, body: 84 cm, sleeve: 46 cm, underarm: 5 cm, neck_sleeve: 9 cm}]
    total: 22 cm
  full_sleeve: {fabric: spiral, colours: kelp, start: {divide: full_yoke.sleeve}, sections: [even: {rounds: 9}]}
"""

HABITS = """\
pieces:
  sleeve: {fabric: plain, colours: oat, start: {chain: 23 cm}, sections: [even: {length: 4 cm}, taper: {length: 34 cm, target: body.bust * 0.4 + 4 cm}], edges: {bottom: cuff}}
  in_pairs: {fabric: joined, colours: oat, start: {ring: 23 cm}, sections: [even: {length: 4 cm}, taper: {length: 34 cm, target: body.bust * 0.4}], edges: {bottom: cuff}}
  front: {fabric: plain, colours: oat, start: {chain: body.bust / 2}, sections: [even: {length: 50 cm}, neck: {shape: v, width: 19 cm, depth: 21 cm, slope: 3 cm}]}
  skirt: {fabric: spiral, colours: kelp, start: {ring: body.bust - 1 cm}, sections: [even: {rounds: 3}, taper: {rounds: 3, target: body.bust + 21 cm}, taper: {rounds: 2, target: body.bust - 8 cm}]}
  yoke: {fabric: joined, colours: oat, start: {ring: 44 cm}, sections: [raglan: {length: 40 cm, body: body.bust + ease.bust, sleeve: 38 cm, underarm: 6 cm}]}
"""

TUBES = """\
pieces:
  paw:
    fabric: spiral
    colours: {bands: {to: total, heights: [8 cm, rest]}, order: [oat, kelp]}
    start: {ring: 22 cm}
    sections: [even: {rounds: 4}, taper: {rounds: 3, target: 30 cm, at: sides}, even: {rounds: 2}, opening: {edge: thumb, width: 5 cm, at: start}, even: {length: rest}, taper: {length: 6 cm, target: 6 cm, at: sides, close: true}]
    total: 24 cm
  mitts: {make: 2, fabric: joined, colours: kelp, start: {ring: 20 cm}, sections: [even: {rounds: 9}, opening: {edge: thumb, width: 5 cm, at: middle}, even: {rounds: 6}, crown: {close: true}]}
  thumbs: {make: 2, fabric: joined, colours: kelp, start: {pick_up: mitts.thumb}, sections: [even: {rounds: 5}, crown: {close: true}]}
  thin_thumb: {fabric: slip_joined, colours: kelp, start: {pick_up: paw.thumb}, sections: [even: {rounds: 5}]}
  hood: {fabric: tall_spiral, colours: kelp, start: {centre: flat}, sections: [crown: {target: body.bust / 2}, even: {rounds: 3}]}
  panel: {fabric: plain, colours: oat, start: {chain: body.bust / 4}, sections: [even: {rows: 6}, opening: {edge: slot, width: 6 cm, at: end}, even: {rows: 6}]}
  pouch: {fabric: rib, colours: oat, start: {chain: 21 cm}, sections: [even: {length: body.bust / 8}], edges: {both: [side]}}
  shoe: {make: 2, fabric: spiral, colours: oat, start: {ring: 24 cm}, sections: [even: {length: 12 cm}, open: {leave: 8 cm}], edges: {bottom: toes}}
  back: {make: 2, fabric: tall, colours: kelp, start: {go_on: shoe.sole}, sections: [even: {length: 8 cm}], edges: {both: [side], bottom: sole}}
  edging: {make: 2, fabric: joined, colours: kelp, start: {pick_up: [back.side, shoe.instep, back.side]}, sections: [even: {rounds: 2}]}
seams:
  - {join: shoe.toes, to: shoe.toes}
  - {join: back.top, to: back.top}
  - {join: pouch.side, to: pouch.side}
openings: [{name: ankle, around: [edging.top], passes: foot, stretch: 20 %}]
"""

ROUND_YOKES = """\
pieces:
  yoke:
    fabric: joined
    colours: {bands: {to: total, heights: [10 cm, rest]}, order: [oat, kelp]}
    start: {ring: 46 cm, fabric: rib}
    sections: [even: {rounds: 3, fabric: rib}, round_yoke: {length: 22 cm, body: body.bust + ease.bust, sleeve: 40 cm, underarm: 7 cm}]
    edges: {bottom: neck, top: underarm}
    total: 24 cm
  lower: {fabric: joined, colours: kelp, start: {divide: yoke.body}, sections: [even: {length: 20 cm}], edges: {bottom: underarm, top: hem}}
  sleeve: {fabric: spiral, colours: kelp, make: 2, start: {divide: yoke.sleeve}, sections: [taper: {length: 30 cm, target: 26 cm}], edges: {bottom: underarm, top: cuff}}
  capelet_yoke: {fabric: spiral, colours: oat, start: {ring: 60 cm}, sections: [round_yoke: {rounds: 9, body: 90 cm, sleeve: 20 cm, underarm: 14 cm, increases: 1}]}
  capelet: {fabric: spiral, colours: oat, start: {divide: capelet_yoke.body}, sections: [even: {rounds: 4}]}
"""

TURNED_YOKES = """\
pieces:
  raglan:
    fabric: turned
    colours: oat
    start: {ring: 44 cm}
    sections: [even: {rounds: 2}, raglan: {length: body.bust / 4 + 14 cm, body: body.bust + 8 cm, sleeve: 60 cm, underarm: 6 cm, neck_sleeve: 6 cm}]
  raglan_body: {fabric: turned, colours: oat, start: {divide: raglan.body}, sections: [even: {rounds: 2}]}
  raglan_sleeve: {fabric: turned, colours: oat, make: 2, start: {divide: raglan.sleeve}, sections: [even: {rounds: 2}]}
  yoke: {fabric: turned, colours: kelp, start: {ring: 50 cm}, sections: [round_yoke: {rounds: 22, body: body.bust + ease.bust, sleeve: 40 cm, underarm: 7 cm, at: [0 %, 20 %, 40 %, 60 %]}]}
  lower: {fabric: turned, colours: kelp, start: {divide: yoke.body}, sections: [even: {rounds: 4}]}
  deep_yoke: {fabric: turned, colours: kelp, start: {ring: 50 cm}, sections: [round_yoke: {rounds: 23, body: body.bust + ease.bust, sleeve: 40 cm, underarm: 7 cm}]}
  deep_sleeve: {fabric: turned, colours: kelp, start: {divide: deep_yoke.sleeve}, sections: [even: {rounds: 4}]}
"""

BY_HAND = """\
gaugewright: 1
pattern: {title: Mooring Throw, workshop: Ferry Lane Workshop, units: in}
yarns: {rope: {label: Rope, colour: "#5b6b7a", weight: 7, structure: tube}}
fabrics: {big: {stitch: sc, tool: hands, gauge: "5 sts, 5 rows / 25 cm"}}
pieces:
  throw: {start: {chain: 100 cm}, sections: [even: {length: 150 cm}]}
  fringe: {start: {pick_up: throw.top, take_up: whole stitch}, sections: [even: {rows: 2}]}
"""

PICKED = """\
pieces:
  panel: {fabric: plain, colours: oat, start: {chain: body.bust / 4}, sections: [even: {length: 20 cm}], edges: {starting: [front], far: [back_edge]}}
  facing: {fabric: rib, colours: kelp, start: {pick_up: panel.front, take_up: edge to edge}, sections: [even: {rows: 3}]}
  cap: {fabric: plain, colours: kelp, start: {pick_up: panel.top}, sections: [even: {rows: 4}]}
  ends: {fabric: rib, colours: kelp, start: {pick_up: [panel.front, panel.top], take_up: whole stitch}, sections: [even: {rows: 7}]}
  short: {fabric: plain, colours: kelp, start: {chain: body.bust / 4 + 1 cm}, sections: [even: {length: 20 cm}]}
  low: {fabric: rib, colours: kelp, start: {chain: 12 cm}, sections: [even: {length: 8 cm}], edges: {starting: [low_edge]}}
  both: {fabric: plain, colours: kelp, start: {pick_up: [panel.front, low.low_edge], take_up: edge to edge}, sections: [even: {rows: 2}]}
seams:
  - {join: panel.top, to: short.top}
  - {join: panel.bottom, to: short.bottom}
  - {join: panel.back_edge, to: short.far}
"""

OWN_ROWS = """\
pieces:
  panel: {fabric: plain, start: {chain: 20 cm}, sections: [even: {rows: 1, colour: oat}, even: {length: body.bust / 4}], colours: {stripes: [{oat: 2}, {kelp: 1}], carry: 4}}
  flap: {fabric: plain, colours: kelp, start: {pick_up: panel.top}, sections: [even: {length: 20 cm}]}
"""

VEST = """\
levels: {shoulder: 50 cm, underarm: shoulder - 22 cm, neck: shoulder - 18 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: body.bust / 2}
    sections: [even: {to: shoulder}, shoulders: {neck: 18 cm}]
    edges: {both: [side, underarm, armhole], bottom: hem}
  front:
    fabric: plain
    colours: oat
    start: {chain: body.bust / 4}
    sections: [even: {to: neck}, taper: {to: shoulder, target: edge(back.shoulder), at: opening}]
    edges: {starting: [side, underarm, armhole], far: [opening], bottom: hem, top: shoulder}
  left: {like: front, mirrored: true}
  band:
    fabric: rib
    colours: kelp
    start: {pick_up: [front.opening, back.neck, left.opening], take_up: half stitch}
    sections: [even: {rows: 6}]
    buttonholes: {count: 5, size: 20 mm, edge: left.opening, first: 3 cm, last: 2 cm}
  facing:
    fabric: plain
    colours: kelp
    start: {pick_up: [back.neck]}
    sections: [even: {rows: 3}]
    buttonholes: {count: 1, size: 10 mm, edge: back.neck, first: 3 cm, last: 2 cm}
  armband: {make: 2, fabric: joined, colours: kelp, start: {pick_up: [back.armhole, front.armhole]}, sections: [even: {rounds: 3}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.shoulder, to: left.shoulder}
  - {join: back.side, to: front.side}
  - {join: back.side, to: left.side}
"""


UNLIKE = """\
levels: {shoulder: 56 cm, underarm: shoulder - 23 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: body.bust / 2}
    sections: [even: {to: underarm}, armhole: {to: shoulder, target: body.bust / 2 - 20 cm, block: 10 cm}, shoulders: {neck: 18 cm}]
    edges: {both: [side, underarm, armhole], bottom: hem}
  front: {like: back, sections: [even: {to: underarm}, armhole: {to: shoulder, target: body.bust / 2 - 20 cm, block: 6 cm}, shoulders: {neck: 18 cm}]}
  armband: {make: 2, fabric: turned, colours: kelp, start: {pick_up: [back.armhole, front.armhole]}, sections: [even: {length: 5 cm}]}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.side, to: front.side}
"""


def _timed(text: str, hours: str, timed: str = "") -> str:
    """A spec of the set with its hours printed; `timed` rows of its plain fabric."""
    return text.replace('version: "1.1"', f'version: "1.1", hours: {hours}').replace("mass: 30 g, thickness", f"timed: {timed}, mass: 30 g, thickness" if timed else "mass: 30 g, thickness")


def _case(name: str) -> str:
    return (ROOT / "tests/cases" / name / "spec.yaml").read_text(encoding="utf-8")


UNWEIGHED = """\
pieces:
  mat: {fabric: plain, colours: oat, start: {chain: 30 cm}, sections: [even: {length: 30 cm}], edges: {both: [side]}}
  edging: {fabric: rib, colours: kelp, start: {pick_up: [mat.top]}, sections: [even: {length: 4 cm}]}
"""

BARE = HEAD.replace("20 cm, mass: 30 g", "20 cm")
"""The plain fabric without its weight: what is worked in it is an estimate."""


def _grown(name: str) -> str:
    """A case whose main fabric grows by 6 % when it hangs."""
    return _case(name).replace("body: {stitch: hdc,", "body: {stitch: hdc, growth: 6 %,")


HEAVY = """\
gaugewright: 1
pattern: {title: Weir Coat, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 86 cm}, M: {bust: 96 cm}, L: {bust: 106 cm}}, ease: {bust: 20 cm}}
yarns:
  oat: {weight: 5, fibre: {FIBRE: 60, kapok: 40}, structure: plied, ball: {mass: 100 g, length: 100 m}}
  kelp: {weight: 6, fibre: {polyester: 100}, structure: chenille, ball: {mass: 100 g, length: 60 m}}
  slate: {weight: 6, structure: spun, ball: {mass: 50 g, length: 40 m}}
  shell: {weight: 6, structure: tube, ball: {mass: 50 g, length: 40 m}}
fabrics:
  plain: {stitch: hdc, tool: 8 mm, swatch: {stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 60 g}}
pieces:
  back:
    start: {chain: (body.bust + ease.bust) / 2}
    sections: [even: {length: 60 cm}]
    edges: {both: [side], bottom: hem}
    colours: {stripes: [{oat: 6}, {kelp: 2}, {oat: 6}, {slate: 2}, {oat: 2}, {shell: 2}]}
  front: {like: back}
seams: [{join: back.side, to: front.side}]
"""


SPECS: dict[str, str] = {
    "estimated in part": BARE + THREE + UNWEIGHED,
    "estimated by its category": BARE.replace(", ball: {mass: 100 g, length: 120 m}", "").replace(", mass: 34 g", "") + ONE + "buying: {margin: 0 %, swatches: in the balls}\n" + UNWEIGHED,
    "priced": HEAD.replace("length: 120 m}", "length: 120 m}, price: 4.80 EUR") + THREE + "buying: {cost: printed}\n" + UNWEIGHED,
    "priced and estimated": BARE.replace("length: 120 m}", "length: 120 m}, price: 4.80 EUR") + THREE + "buying: {cost: printed}\n" + UNWEIGHED,
    "not sure enough": HEAD.replace("stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 30 g", "stitches: 5, rows: 4, width: 5 cm, height: 5 cm, mass: 2.6 g") + THREE + "buying: {margin: 1 %}\n" + UNWEIGHED,
    "heavy": HEAVY.replace("FIBRE", "wool"),
    "heavy of cotton": HEAVY.replace("FIBRE", "cotton"),
    "hung": _case("roving-vest"),
    "hung caps": _grown("armhole-and-cap") + "seams: [{join: sleeve.cap, to: [tall_back.armhole, back.armhole]}]\n",
    "hung raglans": _grown("flat-raglan"),
    "hung wedges": _grown("front-wedge"),
    "hung slopes": _grown("rising-shoulders"),
    **{f"{name} in {sizes}": HEAD + size + parts for name, parts in (("bodies", BODIES), ("shapes", SHAPES), ("rounds", ROUNDS), ("discs", DISCS)) for sizes, size in (("nine", NINE), ("three", THREE), ("one", ONE))},
    **{f"necks in {name}": HEAD + size + NECKS for name, size in (("three", THREE), ("one", ONE))},
    **{f"yokes in {name}": HEAD + size + YOKES for name, size in (("three", THREE), ("one", ONE))},
    **{f"habits in {name}": HEAD + size + f"conventions: {{schedules: {first} gap first, spreading: left at the end, shoulder_steps: {steps}, taper_ends: {ends}}}\n" + HABITS for name, size, first, steps, ends in (("three", THREE, "shorter", "spread", "even below"), ("one", ONE, "longer", "larger at the armhole", "nearest even"))},
    "unlike corners": HEAD + THREE + UNLIKE,
    **{f"round yokes in {name}": HEAD + size + ROUND_YOKES for name, size in (("three", THREE), ("one", ONE))},
    **{f"turned yokes in {name}": HEAD + size + TURNED_YOKES for name, size in (("three", THREE), ("one", ONE))},
    "own rows": HEAD + THREE + OWN_ROWS,
    "picked up": HEAD + THREE + PICKED,
    **{f"vest in {name}": HEAD + size + VEST for name, size in (("three", THREE), ("one", ONE))},
    **{f"tubes in {name}": HEAD + size + TUBES for name, size in (("three", THREE), ("one", ONE))},
    "corners": HEAD + THREE + CORNERS,
    "corners in one": HEAD + ONE + CORNERS,
    "lower ends": HEAD + "sizes: {table: women, make: [XS, S], read: lower}\n" + PICKED,
    "middles": HEAD + "sizes: {table: child, read: middle}\n" + PICKED,
    "by hand": BY_HAND,
    "bodies timed": _timed(HEAD + NINE + BODIES, "by piece", "{stitches: 40, rows: 4, minutes: 16}"),
    "bodies timed in one": _timed(HEAD + ONE + BODIES, "at a glance", "[{stitches: 40, minutes: 4:10}, {stitches: 40, minutes: 3:50}]"),
    "hours as published": _timed(HEAD + THREE + ROUNDS, "by piece"),
    "without sizes": HEAD + NONE + "pieces: {mat: {fabric: plain, colours: oat, start: {chain: 30 cm}, sections: [even: {length: 30 cm}]}}\n",
    "sample": (ROOT / "samples/saltmarsh-jacket/spec.yaml").read_text(encoding="utf-8"),
    "shawl": (ROOT / "samples/windrow-shawl/spec.yaml").read_text(encoding="utf-8"),
    "wrap": (ROOT / "samples/slipway-wrap/spec.yaml").read_text(encoding="utf-8"),
    "vest": (ROOT / "samples/groyne-vest/spec.yaml").read_text(encoding="utf-8"),
    "hooded vest": (ROOT / "samples/turnstone-vest/spec.yaml").read_text(encoding="utf-8"),
    "raglan cardigan": (ROOT / "samples/shearwater-cardigan/spec.yaml").read_text(encoding="utf-8"),
    "cowl": (ROOT / "samples/tideline-cowl/spec.yaml").read_text(encoding="utf-8"),
    "throw": (ROOT / "samples/quayside-throw/spec.yaml").read_text(encoding="utf-8"),
    "hat": (ROOT / "samples/lamplighter-hat/spec.yaml").read_text(encoding="utf-8"),
    "bag": (ROOT / "samples/shingle-bag/spec.yaml").read_text(encoding="utf-8"),
    **{name: _case(name) for name in sorted(path.name for path in (ROOT / "tests/cases").iterdir() if (path / "spec.yaml").exists())},
}  # fmt: skip


@cache
def graded(name: str) -> pipeline.Graded:
    """A spec of the set, graded."""
    from gaugewright.design.resolve import resolve

    labels = {table: size_labels(table) for table in TABLES}
    return pipeline.grade(resolve(load_spec_text(SPECS[name], f"{name}.yaml", labels, MEASURES), labels))


@cache
def document(name: str, sizes: tuple[str, ...] = (), terms: str = "") -> Document:
    """Its pattern."""
    return pipeline.document(graded(name), pipeline.Edition(sizes, terms or None))  # type: ignore[arg-type]


@dataclass(frozen=True, slots=True)
class Told:
    """One paragraph or table cell, with the chapter it stands in; `label` begins a step."""

    chapter: str
    label: str
    text: str


def told(found: Document, drawings: bool = True) -> Iterator[Told]:
    """Everything written in a pattern, in reading order, with a plain space for one that doesn't break."""
    chapter = ""
    for block in found.blocks:
        if isinstance(block, Heading) and block.level < 3:
            chapter = block.text
        if isinstance(block, Figure) and not drawings:
            continue
        yield from (Told(chapter, _plain(label), _plain(text)) for label, text in _texts(block))


def _texts(block: Block) -> Iterator[tuple[str, str]]:
    match block:
        case Heading(text=text):
            yield "", text
        case Paragraph(spans=spans, label=label):
            yield label, spans_text(spans)
        case Figure(alt=alt, caption=caption):
            yield from (("", alt), ("", caption))
        case Table():
            yield from (("", text) for text in (block.caption, *block.header, block.note))
            yield from (("", cell) for row in block.rows for cell in row)
        case _:
            raise TypeError(f"no texts of {block!r}")


def _plain(text: str) -> str:
    return text.replace("\u00a0", " ")


NUMBER = r"[0-9]+(?:\.[0-9]+)?[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞]|–"
LIST = re.compile(rf"(?<![\w.])({NUMBER}) \(((?:{NUMBER})(?:, (?:{NUMBER}))*)\)")
"""A number for each size: the first, and the others in brackets."""


def at_size(text: str, index: int, sizes: int) -> str:
    """A text with one number instead of each list: that of the size at this place."""

    def chosen(found: "re.Match[str]") -> str:
        values = [found[1], *found[2].split(", ")]
        assert len(values) == sizes, found[0]
        return values[index]

    return LIST.sub(chosen, text)


def pieces_told(name: str, sizes: tuple[str, ...] = ()) -> dict[str, list[Told]]:
    """The paragraphs and cells of each piece's chapter, by its key; a drawing's words are of one size only."""
    titles = {piece.title: piece.key for piece in graded(name).design.pieces}
    found: dict[str, list[Told]] = {}
    for one in told(document(name, sizes), drawings=False):
        if one.chapter in titles:
            found.setdefault(titles[one.chapter], []).append(one)
    return found


def sentences(texts: Sequence[Told]) -> list[str]:
    """Single sentences, with a step's label before its first."""
    found = []
    for one in texts:
        parts = re.split(r"(?<=[.:]) (?=[A-Z—])", one.text)
        found += [f"{one.label} {parts[0]}".strip(), *parts[1:]]
    return found
