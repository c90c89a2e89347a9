"""Every phrase of the shopping card is said by some card, and cards say what they should."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from cli import test_shop
from cli.running import SCARF, invoke, spec_in
from gaugewright.cli import shopping
from gaugewright.instructions.wording import Book
from instructions.test_phrases import PHRASES, Noted

PRICES = "yarns: {oat: 7.40 EUR, kelp: 7.40 EUR}"
CARDS = (
    *(test_shop.FILE.replace("budget: 90", f"budget: {budget}") for budget in (20, 100, 200)),
    f"make: [{{size: M}}]\nshops: {{quay: {{{PRICES}, offers: [{{off: 10 %, on: oat}}, {{take: 3, pay: 2, on: kelp}}]}}}}\nmix_lots: all\nbudget: 10 EUR",
    f"make: [{{size: M}}, {{size: S}}]\nshops: {{quay: {{{PRICES}, offers: [{{take: 3, pay: 2}}, {{off: 40 %, over: 10 EUR}}]}}}}\nmix_lots: oat",
    f"make: [{{size: M, for: Ada}}, {{size: M}}]\nshops: {{quay: {{{PRICES}, delivery: {{cost: 4.90 EUR, free_over: 900 EUR}}}}}}\nbudget: 10 EUR",
    f"make: [{{size: S, times: 4}}]\nshops: {{quay: {{{PRICES}, offers: [{{off: 60 EUR, over: 130 EUR}}]}}, lane: {{yarns: {{kelp: 7.30 EUR}}}}}}",
    "make: [{size: S}]\nshops: {quay: {yarns: {oat: {price: 7.40 EUR, packs: [{balls: 5, price: 20 EUR}]}}}, lane: {yarns: {kelp: 7.40 EUR, oat: 99 EUR}}}",
    "make: [{size: M}]\nshops: {quay: {yarns: {oat: {price: 7.40 EUR, in_stock: [3, 3]}, kelp: 7.30 EUR}}, lane: {yarns: {oat: 19 EUR}}}\nbudget: 50 EUR",
)


def said(folder: Path, text: str, *more: str, spec: str = test_shop.WRAP) -> str:
    done = invoke("shop", *test_shop.files(folder, spec, text), *more)
    assert done.exit_code == 0, done.stderr
    return re.sub(r"\s+", " ", done.stdout)


def test_every_phrase_of_the_card_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    noted, real = Noted(PHRASES["shopping"]), shopping.load_book

    def load(*arguments: object) -> Book:
        return replace(real(*arguments), shopping=noted)  # type: ignore[arg-type]

    monkeypatch.setattr(shopping, "load_book", load)
    for text in CARDS:
        total = re.search(r"In all: (\d+\.\d\d EUR)", said(tmp_path, text))
        assert total
        said(tmp_path, re.sub(r"budget: .*\n?", "", text) + f"\nbudget: {total[1]}")
    assert invoke("shop", test_shop.files(tmp_path)[0], "--size", "M").exit_code == 0
    assert invoke("shop", test_shop.files(tmp_path, test_shop.WRAP.replace(", price: 7.40 EUR", ""))[0], "--size", "M").exit_code == 0
    assert invoke("shop", test_shop.files(tmp_path, test_shop.WRAP.replace(", mass: 40 g", ""))[0], "--size", "M").exit_code == 0
    only = invoke("shop", spec_in(tmp_path, SCARF))
    assert only.exit_code == 0 and "To be made: the one size." in only.stdout, only.stderr
    assert sorted(PHRASES["shopping"].keys() - noted.taken) == []


def test_what_is_left_of_the_budget_is_told(tmp_path: Path) -> None:
    text = f"make: [{{size: S}}]\nshops: {{quay: {{{PRICES}}}}}\nbudget: 90 EUR"
    words = said(tmp_path, text).replace("\u00a0", " ")
    total = re.search(r"In all: (\d+)\.(\d\d) EUR\. Of the budget of 90\.00 EUR, (\d+)\.(\d\d) EUR is left", words)
    assert total and int(total[1] + total[2]) + int(total[3] + total[4]) == 9000


def test_a_person_s_name_stands_on_the_card_only_where_it_was_given(tmp_path: Path) -> None:
    assert "size S for Ada" in said(tmp_path, test_shop.FILE) and "Ada" not in said(tmp_path, test_shop.FILE, "--size", "S")
