"""Candidate yarns for a plain tabard: gauges, amounts by hand, reasons, verdicts; every phrase of the page is said."""

import tomllib
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cli.running import ROOT, spec_in
from gaugewright import pipeline
from gaugewright.advice.candidates import compare
from gaugewright.gauge.model import Gauge
from gaugewright.instructions.candidates_page import candidates_document
from gaugewright.instructions.phrase_book import load_book
from gaugewright.render.text import render_text
from gaugewright.spec.candidates import read_candidates
from gaugewright.yarn.comparison import Compared, Comparison, Reason
from instructions.test_phrases import Noted
from tiny_specs import designed

TABARD = """\
gaugewright: 1
pattern: {title: Lock Tabard, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 80 cm}, L: {bust: 110 cm}}, ease: {bust: 10 cm}}
yarns:
  oat: {weight: 5, fibre: {acrylic: 100}, structure: plied, ball: {mass: 100 g, length: 100 m}, price: 5 EUR}
  kelp: {like: oat}
  trim: {weight: 3, ball: {mass: 50 g, length: 115 m}}
fabrics: {plain: {stitch: sc, swatch: {stitches: 19, rows: 20, width: 20 cm, height: 20 cm, mass: 30 g}}}
pieces:
  back: {start: {chain: (body.bust + ease.bust) / 2}, sections: [even: {length: 50 cm}], edges: {both: [side], bottom: hem}, colours: {stripes: [{oat: 2}, {kelp: 2}]}}
  front: {like: back}
  tie: {start: {chain: 10 cm}, sections: [even: {length: 4 cm}], colours: trim}
finished:
  length: {measure: finished(back.length)}
  bust: {measure: finished(back.width) + finished(front.width), of: bust}
"""

PLAIN = "{weight: 5, fibre: {acrylic: 100}, structure: plied, ball: {mass: 100 g, length: 100 m}, price: 5 EUR"
SAME = PLAIN + ", swatch: {stitches: 19, rows: 20, width: 20 cm, height: 20 cm, mass: 30 g}}"


def tried(folder: Path, lines: dict[str, str], spec: str = TABARD, sizes: tuple[str, ...] = ()) -> Comparison:
    path = folder / "yarns.yaml"
    path.write_text("candidates:\n" + "".join(f"  {name}: {text}\n" for name, text in lines.items()), encoding="utf-8")
    return compare(pipeline.grade(pipeline.load(spec_in(folder, spec))), read_candidates(path), sizes)


def one(folder: Path, text: str, spec: str = TABARD) -> Compared:
    return tried(folder, {"Other": text}, spec).candidates[0]


def keys(found: Compared, gravity: str = "caution") -> list[str]:
    return [reason.slots.get("about", reason.key) for reason in found.reasons if reason.gravity == gravity]


def test_the_same_yarn_is_fit_and_takes_and_costs_the_same(tmp_path: Path) -> None:
    found = tried(tmp_path, {"Same": SAME})
    same = found.candidates[0]
    assert (same.verdict, same.gauge.basis, same.hand) == ("fit", "its swatch", "usual")
    assert same.take == found.own.take and same.cost == found.own.cost
    assert (found.own.name, found.kept, found.size) == ("Oat / Kelp", ("Trim",), "L")
    own = pipeline.side(pipeline.grade(designed(TABARD))).amounts
    for size, each in own.items():
        balls = sum((each or {})[key].balls for key in ("oat", "kelp"))
        assert found.own.take is not None and found.own.take.balls[size] == (balls, balls)
        assert found.own.cost is not None and found.own.cost[size] == (balls * Decimal(5),) * 2


def test_half_the_weight_to_the_metre_is_half_the_grams(tmp_path: Path) -> None:
    """At the pattern's gauge and by metres: 200 m to 100 g weighs half in every stitch, tail and seam."""
    found = tried(tmp_path, {"Airy": SAME.replace("length: 100 m", "length: 200 m").replace(", mass: 30 g", "")})
    own, airy = found.own.take, found.candidates[0].take
    assert own is not None and airy is not None and airy.estimated and not own.estimated
    trim = pipeline.side(pipeline.grade(designed(TABARD))).amounts
    for size in ("S", "L"):
        kept = (trim[size] or {})["trim"]
        rest = kept.counted.total
        assert airy.grams[size][0] - rest == pytest.approx((own.grams[size][0] - rest) / 2)
    assert "unweighed" in keys(found.candidates[0]) and "finer" in keys(found.candidates[0])


def test_where_a_gauge_comes_from(tmp_path: Path) -> None:
    """The tabard has 9.65 sts to 4 in: category 5 is published with 8 to 11, category 4 with 11 to 14, category 6 with 7 to 9."""
    within = one(tmp_path, PLAIN + "}")
    assert within.gauge.basis == "within its category" and within.gauge.gauge == Gauge(19, 200.0, 20, 200.0) and within.gauge.ends is None
    finer = one(tmp_path, PLAIN.replace("weight: 5", "weight: 4") + "}")
    assert finer.gauge.basis == "its category" and finer.gauge.ends is not None
    assert [gauge.stitches_in(101.6) for gauge in (finer.gauge.gauge, *finer.gauge.ends)] == pytest.approx([12.5, 14, 11], rel=2e-3)
    stated = one(tmp_path, PLAIN + ', gauge: "8 sts, 9 rows / 10 cm"}')
    assert (stated.gauge.basis, stated.gauge.gauge) == ("as stated", Gauge(8, 100.0, 9, 100.0))
    assert finer.take is not None and all(low <= high for low, high in finer.take.balls)


def test_hand_at_its_own_gauge_and_at_the_patterns(tmp_path: Path) -> None:
    thick = one(tmp_path, PLAIN.replace("weight: 5", "weight: 7") + ', gauge: "5 sts, 5 rows / 10 cm"}')
    assert (thick.hand, thick.at_pattern) == ("usual", "stiff") and "pattern-stiff" in keys(thick)
    tight = one(tmp_path, PLAIN.replace("weight: 5", "weight: 6") + ', gauge: "11 sts, 11 rows / 10 cm"}')
    assert tight.hand == "stiff" and "hand-stiff" in keys(tight)
    loose = one(tmp_path, PLAIN.replace("weight: 5", "weight: 2") + "}".replace("}", ', gauge: "9 sts, 9 rows / 10 cm"}'))
    assert loose.hand == "drapey" and {"hand-drapey", "loose-pills"} <= set(keys(loose))


def test_a_gauge_that_differs_is_told_and_the_design_is_graded_at_it(tmp_path: Path) -> None:
    """8 sts to 10 cm in place of 9.5: stitches 19 % larger; the page's balls are those of an edition at that gauge."""
    text = PLAIN + ", swatch: {stitches: 16, rows: 16, width: 20 cm, height: 20 cm, mass: 30 g}}"
    found = one(tmp_path, text)
    reason = next(each for each in found.reasons if each.key == "gauge-differs")
    assert reason.slots["across"] == "19 % larger" and reason.slots["along"] == "25 % larger"
    spec = TABARD.replace("stitches: 19, rows: 20", "stitches: 16, rows: 16")
    own = pipeline.side(pipeline.grade(designed(spec))).amounts
    assert found.take is not None
    for size, each in own.items():
        assert found.take.balls[size][0] == sum((each or {})[key].balls for key in ("oat", "kelp"))


def test_what_cannot_be_made_is_not_for_this(tmp_path: Path) -> None:
    found = one(tmp_path, PLAIN + ', gauge: "0.5 sts, 0.4 rows / 10 cm"}')
    assert found.verdict == "not for this" and found.take is None and keys(found, "against")
    assert all(reason.slots["text"] for reason in found.reasons if reason.key == "unmakeable")


@pytest.mark.parametrize("structure", ["roving", "chenille"])
def test_what_sheds_is_not_for_babies(tmp_path: Path, structure: str) -> None:
    baby = TABARD.replace("sizes: {own: {S: {bust: 80 cm}, L: {bust: 110 cm}}, ease: {bust: 10 cm}}", "sizes: {table: baby, make: [6 months, 12 months], ease: {bust: 6 cm}}").replace("body.bust", "body.chest").replace("ease.bust", "ease.chest").replace("{bust: 6 cm}", "{chest: 6 cm}").replace("of: bust", "of: chest")
    text = PLAIN.replace("plied", structure) + "}"
    assert keys(one(tmp_path, text, baby), "against") == ["babies"]
    grown = one(tmp_path, text)
    assert grown.verdict == "fit with cautions" and "babies" not in keys(grown, "against")


def test_gentler_care_flame_and_weight_are_told(tmp_path: Path) -> None:
    cotton = one(tmp_path, PLAIN.replace("acrylic: 100", "cotton: 100").replace("plied", "chenille").replace("length: 100 m", "length: 30 m") + "}")
    assert {"gentler-care", "flame", "thicker", "hangs-more", "shedding", "ends"} <= set(keys(cotton))


def test_a_treated_wool_neither_felts_nor_is_washed_by_hand(tmp_path: Path) -> None:
    plain, treated = (one(tmp_path, PLAIN.replace("acrylic: 100", "wool: 100").replace("plied", "roving") + more) for more in ("}", ", treatment: machine-washable}"))
    assert "felting" in keys(plain) and "felting" not in keys(treated)


def test_no_price_or_amounts_are_told_and_not_guessed(tmp_path: Path) -> None:
    free = one(tmp_path, SAME.replace(", price: 5 EUR", ""))
    assert free.cost is None and free.take is not None and "no-price" in keys(free, "fact")
    unweighed = TABARD.replace(", mass: 30 g", "")
    rough = one(tmp_path, SAME.replace(", mass: 30 g", ""), unweighed)
    assert rough.take is not None and rough.take.estimated and all(few < many for few, many in rough.take.balls)
    bare = one(tmp_path, SAME.replace(", mass: 30 g", ""), unweighed.replace("trim: {weight: 3, ball: {mass: 50 g, length: 115 m}}", 'trim: {colour: "#445566"}'))
    assert bare.take is None and bare.cost is None and "no-amounts" in keys(bare)


def test_a_swatch_that_was_hung_has_the_design_graded_as_it_hangs(tmp_path: Path) -> None:
    lying, hung = (one(tmp_path, SAME.replace("height: 20 cm", f"height: 20 cm{more}")) for more in ("", ", hung: 22 cm"))
    assert lying.take is not None and hung.take is not None
    assert all(less[0] < more[0] for less, more in zip(hung.take.grams, lying.take.grams, strict=True))


@settings(deadline=None, max_examples=12)
@given(st.integers(12, 30), st.integers(12, 30))
def test_the_coarser_the_gauge_the_fewer_the_stitches(tmp_path_factory: pytest.TempPathFactory, first: int, second: int) -> None:
    """Regraded, wider stitches never make more of them: by the yarn of swatches that weigh the same to the stitch."""
    folder = tmp_path_factory.mktemp("yarns")
    few, many = sorted((first, second))
    found = tried(folder, {name: SAME.replace("stitches: 19, rows: 20", f"stitches: {count}, rows: {count}").replace("mass: 30 g", f"mass: {count * count / 10} g") for name, count in (("A", few), ("B", many))})
    coarse, fine = (yarn.take for yarn in found.candidates)
    assert coarse is not None and fine is not None
    assert all(less[0] <= more[0] + 1e-6 for less, more in zip(coarse.grams, fine.grams, strict=True))


EVERY = {
    "Same": SAME,
    "Roving": "{weight: 7, fibre: {wool: 100}, structure: roving, ball: {mass: 200 g, length: 60 m}, price: 5 EUR}",
    "Finer": "{weight: 4, structure: spun, ball: {mass: 100 g, length: 200 m}, price: 6 EUR}",
    "Loose": '{weight: 2, fibre: {acrylic: 100}, ball: {mass: 100 g, length: 300 m}, price: 6 USD, gauge: "9 sts, 9 rows / 10 cm"}',
    "Tight": '{weight: 6, fibre: {acrylic: 100}, ball: {mass: 100 g, length: 40 m}, gauge: "11 sts, 11 rows / 10 cm"}',
    "Heavy": "{weight: 5, fibre: {cotton: 100}, structure: chenille, ball: {mass: 100 g, length: 20 m}, price: 1 EUR}",
    "Heavy Wool": "{weight: 5, fibre: {wool: 100}, structure: plied, ball: {mass: 100 g, length: 20 m}, price: 1 EUR}",
    "Impossible": PLAIN + ', gauge: "0.5 sts, 0.4 rows / 10 cm"}',
    "Fine Lace": "{weight: 1, ball: {mass: 50 g, length: 250 m}}",
}


def test_every_phrase_of_the_page_is_said(tmp_path: Path) -> None:
    phrases = Noted(tomllib.loads((ROOT / "templates/phrases/en.toml").read_text(encoding="utf-8"))["comparing"])

    def page(found: Comparison, labels: tuple[str, ...]) -> str:
        book = replace(load_book("en", "us", "cm", labels), comparing=phrases)
        return render_text(candidates_document(found, book, ""))

    text = page(tried(tmp_path, EVERY), ("S", "L"))
    bare = TABARD.replace(", mass: 30 g", "").replace("trim: {weight: 3, ball: {mass: 50 g, length: 115 m}}", 'trim: {colour: "#445566"}')
    page(tried(tmp_path, {"Bare": SAME.replace(", mass: 30 g", "")}, bare), ("S", "L"))
    scarf = TABARD.replace("sizes: {own: {S: {bust: 80 cm}, L: {bust: 110 cm}}, ease: {bust: 10 cm}}\n", "").replace("(body.bust + ease.bust) / 2", "40 cm").replace(", of: bust", "").replace("length: 50 cm", "length: 150 cm")
    page(tried(tmp_path, {"Roving": EVERY["Roving"]}, scarf), ("",))
    warned = tried(tmp_path, {"Same": SAME})
    odd = (Reason("caution", "warns", {"text": "hips are tight"}, "a check"), Reason("against", "babies", {}, "x"))
    page(replace(warned, candidates=(replace(warned.candidates[0], reasons=odd),)), ("S", "L"))
    assert sorted(phrases.keys() - phrases.taken) == []
    # Each yarn's verdict, once in the table and once before its reasons; every reason with its source in brackets.
    assert text.count("Not for this.") == 1 and "Impossible" in text
    assert "≈" in text and "[common practice, no source]" in text
