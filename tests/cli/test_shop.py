"""The command `shop`: what it prints, the card, JSON, and every way to go wrong."""

import json
import re
from decimal import Decimal
from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.running import ROOT, invoke, nothing_new, spec_in

SAMPLE = ROOT / "samples/saltmarsh-jacket"

WRAP = """\
gaugewright: 1
pattern: {title: Pier Wrap, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 80 cm}, M: {bust: 100 cm}}}
yarns:
  oat: {colour: "#d9c9a8", ball: {mass: 100 g, length: 58 m}, price: 7.40 EUR}
  kelp: {colour: "#3f5d4e", like: oat}
fabrics:
  plain: {stitch: hdc, tool: 10 mm, swatch: {stitches: 20, rows: 14, width: 20 cm, height: 20 cm, mass: 40 g}}
pieces:
  wrap:
    start: {chain: body.bust}
    sections:
      - even: {length: 60 cm}
    colours: {stripes: [{oat: 4}, {kelp: 2}]}
"""

FILE = """\
prices_as_of: 2026-11-20
budget: 90 EUR
make: [{size: S, for: Ada}, {size: M, times: 2}]
have: {oat: 1, 10 mm: 1}
notions: {yarn needle: 1}
shops:
  quay:
    title: Quay Street Wools
    yarns: {oat: {price: 7.40 EUR, in_stock: [20, 30]}, kelp: {price: 7.40 EUR, packs: [{balls: 5, price: 35.00 EUR}]}}
    offers: [{second_reduced: 50 %, on: oat}, {off: 5 EUR, over: 60 EUR}]
    delivery: {cost: 4.90 EUR, free_over: 40 EUR}
  lane: {yarns: {kelp: 6.10 GBP}}
rates: {GBP: 1.1520 EUR}
"""


def files(folder: Path, spec: str = WRAP, shops: str = FILE) -> tuple[Path, Path]:
    return spec_in(folder, spec), spec_in(folder, shops, "shops.yaml")


def data(*arguments: object) -> dict[str, object]:
    found: dict[str, object] = json.loads(invoke("shop", *arguments, "--json").stdout)
    return found


def test_the_sample_is_told_as_stored() -> None:
    done = invoke("shop", SAMPLE / "spec.yaml", SAMPLE / "shopping.yaml")
    assert (done.exit_code, done.stderr) == (0, "")
    assert done.stdout == (SAMPLE / "shopping.txt").read_text(encoding="utf-8"), "run: gaugewright shop samples/saltmarsh-jacket/spec.yaml samples/saltmarsh-jacket/shopping.yaml > samples/saltmarsh-jacket/shopping.txt"


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_sample_s_card_is_one_page_with_the_terminal_s_words(tmp_path: Path, paper: str) -> None:
    card = tmp_path / "card.pdf"
    with nothing_new(SAMPLE):
        done = invoke("shop", SAMPLE / "spec.yaml", SAMPLE / "shopping.yaml", "--card", card, "--paper", paper)
    pages = PdfReader(card).pages
    assert len(pages) == 1 and done.stdout.endswith(f"\n{card}\n")
    page = re.sub(r"\s+", "", pages[0].extract_text())
    for word in ("☐Oat", "____", "152.36", "38.24", "Inall:190.60EUR", "overthebudgetof185.00EUR", "Pricesasof2026-11-20", "AdaandsizeLforBea"):
        assert word in page, word


def test_the_same_card_twice(tmp_path: Path) -> None:
    for name in ("a.pdf", "b.pdf"):
        invoke("shop", SAMPLE / "spec.yaml", SAMPLE / "shopping.yaml", "--card", tmp_path / name)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_json_adds_up_as_text(tmp_path: Path) -> None:
    found = data(*files(tmp_path))
    plan = found["plan"]
    assert isinstance(plan, dict)
    visits = plan["visits"]
    assert Decimal(plan["total"]) == sum(Decimal(one["cost"]) for one in visits)
    for one in visits:
        receipt = one["receipt"]
        assert Decimal(receipt["goods"]) == sum(map(Decimal, receipt["paid"])) == sum(map(Decimal, receipt["full"])) - sum(Decimal(given["saved"]) for given in receipt["given"])
        assert Decimal(receipt["total"]) == Decimal(receipt["goods"]) + Decimal(receipt["delivery"])
    assert found["currency"] == "EUR" and found["in_hand"] == [["Oat", 1], ["10 mm", 1]]
    assert [one["key"] for one in found["unpriced"]] == ["yarn needle"]  # type: ignore[union-attr, index, misc]


def test_sizes_on_the_command_go_before_the_file_s(tmp_path: Path) -> None:
    spec, shops = files(tmp_path)
    made = data(spec, shops, "--size", "S", "--size", "S,M")["makes"]
    assert made == [{"size": "S", "person": "", "times": 2}, {"size": "M", "person": "", "times": 1}]


def test_without_a_file_the_pattern_s_own_prices_count(tmp_path: Path) -> None:
    spec, _ = files(tmp_path)
    found = data(spec, "--size", "M")
    balls = sum(one["balls"] for one in found["colours"])  # type: ignore[union-attr, index, misc, attr-defined]
    assert found["plan"]["total"] == str(Decimal("7.40") * balls)  # type: ignore[index, call-overload]
    assert "The pattern’s own prices" in invoke("shop", spec, "--size", "M").stdout


def test_without_any_price_balls_are_told_and_no_cost(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, WRAP.replace(", price: 7.40 EUR", ""))
    said = invoke("shop", spec, "--size", "M").stdout
    assert "no cost" in said and "EUR" not in said and "☐ hook 10 mm: 1" in said and re.search(r"☐ Oat +\d+ +\d+ +_+", said)


def test_without_a_weighed_swatch_balls_and_cost_are_told_as_a_range(tmp_path: Path) -> None:
    """What is bought is enough at the upper end; the lower end is told beside it, and both are priced as they are."""
    spec = spec_in(tmp_path, WRAP.replace(", mass: 40 g", ""))
    found = data(spec, "--size", "M")
    colours, plan = found["colours"], found["plan"]
    assert isinstance(colours, list) and isinstance(plan, dict)
    assert all(one["estimated"] and one["fewest"] < one["balls"] and one["least_grams"] < one["grams"] for one in colours)
    low, high = (Decimal("7.40") * sum(one[key] for one in colours) for key in ("fewest", "balls"))
    assert (plan["total"], found["least_total"]) == (str(high), str(low))
    said = re.sub(r"\s+", " ", invoke("shop", spec, "--size", "M").stdout)
    assert f"In all: {low} to {high} EUR" in said and f"{colours[0]['fewest']} to {colours[0]['balls']} × Oat" in said and "no swatch was weighed" in said


def test_of_a_weighed_swatch_no_range_is_told(tmp_path: Path) -> None:
    spec, shops = files(tmp_path)
    found = data(spec, shops)
    assert found["least_total"] is None and not any(one["estimated"] for one in found["colours"])  # type: ignore[attr-defined]
    assert "was weighed" not in invoke("shop", spec, shops).stdout


def test_every_yen_is_whole(tmp_path: Path) -> None:
    shops = re.sub(r"(\d+)\.(\d\d) EUR", lambda one: f"{one[1]}{one[2]} JPY", FILE).replace("90 EUR", "9000 JPY").replace("5 EUR", "500 JPY").replace("60 EUR", "6000 JPY").replace("40 EUR", "4000 JPY")
    shops = shops.replace("1.1520 EUR", "198.35 JPY")
    found = data(*files(tmp_path, shops=shops))
    plan = found["plan"]
    assert isinstance(plan, dict) and found["currency"] == "JPY" and re.fullmatch(r"\d+", plan["total"])
    assert all(re.fullmatch(r"-?\d+", money) for visit in plan["visits"] for money in visit["receipt"]["paid"] if visit["shop"]["currency"] == "JPY")


QUAY = "shops: {quay: {yarns: {oat: 7.40 EUR, kelp: 7.40 EUR}"
WRONG: tuple[tuple[str, str, str], ...] = (
    # The file, the problem, and the words at its place.
    ("shops: {quay: {yarns: {oat: -7.40 EUR, kelp: 7.40 EUR}}}", "price-text", "-7.40"),
    ("shops: {quay: {yarns: {oat: 0 EUR, kelp: 7.40 EUR}}}", "not-positive", "0 EUR"),
    ("shops: {quay: {yarns: {oat: 7.40 XQQ, kelp: 7.40 EUR}}}", "price-text", "XQQ"),
    ("shops: {quay: {yarns: {oat: 7.405 EUR, kelp: 7.40 EUR}}}", "price-text", "405"),
    ("shops: {quay: {yarns: {oat: 7.40 GBP, kelp: 7.40 EUR}}}", "currencies-in-shop", "7.40 EUR"),
    (QUAY + "}, lane: {yarns: {oat: 6 GBP}}}", "currency-without-rate", "6 GBP"),
    (QUAY + "}}\nbudget: 60 GBP", "currency-without-rate", "7.40 EUR"),
    (QUAY + "}}\nrates: {GBP: 1.15 USD}", "currency-without-rate", "1.15"),
    (QUAY + "}}\nrates: {GBP: 0 EUR}", "price-text", "0 EUR"),
    (QUAY + "}}\nrates: {XQQ: 1 EUR}", "price-text", "XQQ"),
    (QUAY + "}}\ncurrency: euro", "price-text", "euro"),
    (QUAY + ", offers: [{off: 10 %}, {off: 20 %}]}}", "offers-contradict", "{off: 20 %}"),
    (QUAY + ", offers: [{second_reduced: 50 %}, {second_reduced: 70 %, on: kelp}]}}", "offers-contradict", "{second_reduced: 70"),
    (QUAY + ", combine: true, offers: [{second_reduced: 50 %}, {take: 3, pay: 2}]}}", "offers-contradict", "{take"),
    (QUAY + ", offers: [{take: 3, pay: 3}]}}", "offer-gives-nothing", "3}"),
    (QUAY + ", offers: [{take: 3}]}}", "missing-key", "{take"),
    (QUAY + ", offers: [{off: 0 %}]}}", "offer-gives-nothing", "0 %"),
    (QUAY + ", offers: [{off: 100 %}]}}", "offer-gives-nothing", "100 %"),
    (QUAY + ", offers: [{second_reduced: 120 %}]}}", "offer-gives-nothing", "120 %"),
    (QUAY + ", offers: [{off: 5 EUR}]}}", "missing-key", "{off"),
    (QUAY + ", offers: [{off: 50 EUR, over: 20 EUR}]}}", "offer-gives-nothing", "20 EUR"),
    (QUAY + ", offers: [{}]}}", "offer-kind", "{}"),
    (QUAY + ", offers: [{off: 5 %, take: 3, pay: 2}]}}", "offer-kind", "{off"),
    (QUAY + ", offers: [{take: 3, pay: 2, over: 20 EUR}]}}", "offer-kind", "20 EUR"),
    (QUAY + ", offers: [{off: 5 %, on: slate}]}}", "offer-for-nothing", "slate"),
    ("shops: {quay: {yarns: {oat: 7.40 EUR, klep: 7.40 EUR}}}", "unknown-yarn", "klep"),
    ("shops: {quay: {yarns: {oat: 7.40 EUR}}}", "sold-nowhere", "shops"),
    ("shops: {quay: {yarns: {oat: {price: 7.40 EUR, in_stock: 1}, kelp: 7.40 EUR}}}", "not-enough-in-stock", "1}"),
    ("shops: {quay: {yarns: {oat: {price: 7.40 EUR, in_stock: [2, 2, 2, 2]}, kelp: 7.40 EUR}}}", "not-enough-in-stock", "[2"),
    ("shops: {quay: {yarns: {oat: {price: 7.40 EUR, in_stock: -1}, kelp: 7.40 EUR}}}", "out-of-range", "-1"),
    ("shops: {quay: {yarns: {oat: {price: 7.40 EUR, packs: [{balls: 0, price: 7 EUR}]}, kelp: 7.40 EUR}}}", "not-positive", "0, price"),
    ("shops: {quay: {}}", "empty-value", "quay"),
    ("shops: {}", "out-of-range", "{}"),
    ("shops: {quay: {yarns: {oat: 7.40 EUR, kelp: 7.40 EUR}, hooks: {ten: 6 EUR}}}", "wrong-unit", "ten"),
    (QUAY + "}}\nmake: [{size: XL}]", "size-not-made", "XL"),
    (QUAY + "}}\nmake: [{size: M, times: 0}]", "not-positive", "0}"),
    (QUAY + "}}\nhave: {oats: 2}", "unknown-yarn", "oats"),
    (QUAY + "}}\nmix_lots: [oats]", "unknown-yarn", "oats"),
    (QUAY + "}}\nprices_as_of: 2026-13-01", "date-text", "2026-13"),
    (QUAY + "}}\nshop: 3", "unknown-key", "shop: 3"),
    (QUAY + ", delivery: {free_over: 40 EUR}}}", "missing-key", "delivery"),
)  # fmt: skip


@pytest.mark.parametrize(("text", "name", "place"), WRONG, ids=[f"{case[1]}-{number}" for number, case in enumerate(WRONG)])
def test_what_is_wrong_is_told_at_its_place(tmp_path: Path, text: str, name: str, place: str) -> None:
    spec, shops = files(tmp_path, shops=text if "make:" in text else f"{text}\nmake: [{{size: M}}]\n")
    with nothing_new(tmp_path):
        done = invoke("shop", spec, shops)
    assert (done.exit_code, done.stdout) == (1, ""), done.stdout
    found = re.findall(rf"^{re.escape(str(shops))}:(\d+):(\d+): ([a-z-]+): \S", done.stderr, re.MULTILINE)
    assert name in [one for _, _, one in found] and "hint: " in done.stderr, done.stderr
    lines = shops.read_text(encoding="utf-8").split("\n")
    assert any(lines[int(line) - 1][int(column) - 1 :].startswith(place) for line, column, one in found if one == name), done.stderr


def test_several_lots_do_where_they_may_mix(tmp_path: Path) -> None:
    text = "shops: {quay: {yarns: {oat: {price: 7.40 EUR, in_stock: [2, 2, 2, 2]}, kelp: 7.40 EUR}}}\nmake: [{size: M}]\nmix_lots: oat\n"
    done = invoke("shop", *files(tmp_path, shops=text))
    assert done.exit_code == 0 and "one shop and one dye lot, but for Oat" in done.stdout


@pytest.mark.parametrize(("spec", "name"), [
    (WRAP.replace("mass: 100 g, length: 58 m", "mass: 100 g, length: 0 m"), "not-positive"),
    (WRAP.replace("mass: 100 g, length: 58 m", "mass: 0 g, length: 58 m"), "not-positive"),
    (WRAP.replace("ball: {mass: 100 g, length: 58 m}, ", ""), "yarn-without-ball"),
    (WRAP.replace(", mass: 40 g", "").replace("ball: {mass: 100 g, length: 58 m}, ", ""), "yarn-unknown"),
    (WRAP.replace("price: 7.40 EUR", "price: -7.40 EUR"), "price-text"),
])  # fmt: skip
def test_what_is_wrong_with_the_spec_is_told_in_it(tmp_path: Path, spec: str, name: str) -> None:
    path, shops = files(tmp_path, spec)
    done = invoke("shop", path, shops)
    assert done.exit_code == 1 and re.search(rf"^{re.escape(str(path))}:\d+:\d+: {name}: ", done.stderr, re.MULTILINE), done.stderr


@pytest.mark.parametrize(("arguments", "name"), [([], "size-unsaid"), (["--size", "XL"], "size-not-made"), (["--size", "M", "--card", "card.txt"], "output-unwritable")])
def test_a_command_that_can_t_be_followed(tmp_path: Path, arguments: list[str], name: str) -> None:
    spec, _ = files(tmp_path)
    done = invoke("shop", spec, *arguments)
    assert (done.exit_code, done.stdout) == (1, "") and f"{name}: " in done.stderr and "hint: " in done.stderr


def test_a_shopping_file_that_is_not_there(tmp_path: Path) -> None:
    spec, _ = files(tmp_path)
    done = invoke("shop", spec, tmp_path / "no.yaml")
    assert done.exit_code == 1 and "file-missing" in done.stderr


def test_too_much_to_be_certain_is_refused_in_plain_words(tmp_path: Path) -> None:
    names = [f"c{number}" for number in range(21)]
    yarns = "".join(f"  {name}: {{like: oat}}\n" for name in names)
    stripes = ", ".join(f"{{{name}: 1}}" for name in ("oat", *names))
    spec = WRAP.replace('  kelp: {colour: "#3f5d4e", like: oat}\n', yarns).replace("[{oat: 4}, {kelp: 2}]", f"[{stripes}]")
    price = ", ".join(f"{name}: {{price: 7.4{number % 10} EUR, packs: [{{balls: 2, price: 14.5{number % 7} EUR}}]}}" for number, name in enumerate(("oat", *names)))
    shop = f"{{yarns: {{{price}}}, offers: [{{second_reduced: 30 %}}, {{off: 20 EUR, over: 150 EUR}}]}}"
    done = invoke("shop", *files(tmp_path, spec, f"make: [{{size: M}}]\nshops:\n  a: {shop}\n  b: {shop}\n  c: {shop}\n"))
    assert (done.exit_code, done.stdout) == (1, "") and "basket-too-large: " in done.stderr and "for certain" in done.stderr
