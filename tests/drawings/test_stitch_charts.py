"""Charts agree with the words: both are worked separately, stitch by stitch, and give the same."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest
from tiny_specs import MEASURES, TABLES, size_labels

from gaugewright import pipeline
from gaugewright.design.resolve import resolve
from gaugewright.drawings.chart_layout import Chart, chart_of
from gaugewright.drawings.primitives import Label, Polyline
from gaugewright.drawings.stitch_chart import draw_chart
from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, spans_text
from gaugewright.spec import load_spec_text
from gaugewright.spec.pattern_shelf import shelf_pattern, shelved

LABELS = {table: size_labels(table) for table in TABLES}
WAYS = [(name, rounds) for name in shelved() for rounds in (False, True) if shelf_pattern(name).cycle(rounds)]

Worked = tuple[str, tuple[int, ...]]
"""A stitch by name and the stitches of the row before that it is worked into, in the order met; a chain into none."""


def written(name: str, rounds: bool, terms: str = "us") -> Document:
    spec = (
        "gaugewright: 1\npattern: {title: Tiny, workshop: Ferry Lane Workshop}\nyarns: {oat: {weight: 4}}\n"
        f'fabrics: {{lace: {{pattern: {name}, worked: {"joined rounds" if rounds else "rows"}, gauge: "10 sts, 10 rows / 10 cm"}}}}\n'
        f"pieces: {{one: {{start: {{{'ring' if rounds else 'chain'}: 48 cm}}, sections: [even: {{rows: 5}}]}}}}\n"
    )
    design = resolve(load_spec_text(spec, "tiny.yaml", LABELS, MEASURES), LABELS)
    return pipeline.document(pipeline.grade(design), pipeline.Edition(terms=terms))  # type: ignore[arg-type]


def rows_in_words(document: Document) -> list[str]:
    """The sentences of the pattern's rows."""
    found = []
    for block in document.blocks:
        if isinstance(block, Paragraph) and re.match(r"Pattern r\w+.\d", block.label):
            found.append(spans_text(block.spans).replace("\u00a0", " ").partition(". ")[0].rstrip("."))
    return found


@dataclass
class Reader:
    """Works a row from its words over the row before, of which it knows how many stitches there are."""

    before: int
    at: int = 0
    found: list[Worked] = field(default_factory=list)

    def into(self, name: str, count: int = 1) -> None:
        self.found.append((name, tuple(range(self.at, self.at + count))))
        self.at += count

    def part(self, text: str) -> None:
        text = text.strip()
        if m := re.fullmatch(r"ch (\d+)", text):
            self.found += [("ch", ())] * int(m[1])
        elif m := re.fullmatch(r"sk next (?:(\d+) sts|st)", text):
            self.at += int(m[1] or 1)
        elif m := re.fullmatch(r"(\w+)([2-9])tog over next (\d+) sts", text):
            for _ in range(int(m[3]) // int(m[2])):
                self.into(m[1], int(m[2]))
        elif m := re.fullmatch(r"\((.*)\) in next (?:st|ch-(\d+) space)|(\d+ \w+|\w+) in next (?:st|ch-(\d+) space)", text):
            self.group(m[1] or m[3], int(m[2] or m[4] or 1))
        elif m := re.fullmatch(r"(?:FP|BP)?(\w+?) (?:in each of|round each of) next (\d+) sts", text):
            for _ in range(int(m[2])):
                self.into(m[1])
        elif m := re.fullmatch(r"(?:FP|BP)?(\w+?) round next st", text):
            self.into(m[1])
        else:
            raise AssertionError(f"no reading of {text!r}")

    def group(self, inside: str, reach: int) -> None:
        bases = tuple(range(self.at, self.at + reach))
        for one in inside.split(", "):
            words = re.fullmatch(r"(?:(\d+) )?(\w+)|ch (\d+)", one)
            assert words, one
            if words[3]:
                self.found += [("ch", ())] * int(words[3])
            else:
                self.found += [(words[2], bases)] * int(words[1] or 1)
        self.at += reach

    def row(self, sentence: str) -> list[Worked]:
        m = re.fullmatch(r"(?:(.*), )?\*(.*); rep from \* to the (?:end|last (?:(\d+) sts|st))(?:, (.*))?", sentence)
        assert m, sentence
        for text in self.parts(m[1] or ""):
            self.part(text)
        last = self.before - (int(m[3] or 1) if "to the last" in sentence else 0)
        while self.at < last:
            for text in self.parts(m[2]):
                self.part(text)
        assert self.at == last, sentence
        for text in self.parts(m[4] or ""):
            self.part(text)
        assert self.at == self.before, sentence
        return self.found

    @staticmethod
    def parts(text: str) -> Iterator[str]:
        return (part for part in re.split(r", (?![^(]*\))", text) if part)


def rows_in_chart(chart: Chart) -> list[list[Worked]]:
    """The same from the chart: a counted turning chain is the stitch in whose place it stands, another none."""
    return [[(one.name, one.bases) for one in row.stitches if one.counts] for row in chart.rows[1:]]


@pytest.mark.parametrize(("name", "rounds"), WAYS)
def test_words_and_chart_give_the_same_stitches(name: str, rounds: bool) -> None:
    chart = chart_of(shelf_pattern(name), rounds)
    before, told = len(chart.rows[0].stitches), []
    for sentence in rows_in_words(written(name, rounds)):
        told.append(Reader(before).row(sentence))
        before = len(told[-1])
    assert told == rows_in_chart(chart)


@pytest.mark.parametrize(("name", "rounds"), WAYS)
def test_feet_stand_on_the_tops_of_the_stitches_they_are_worked_into(name: str, rounds: bool) -> None:
    chart = chart_of(shelf_pattern(name), rounds)
    for below, row in zip(chart.rows, chart.rows[1:], strict=False):
        tops = [one.top for one in below.stitches if one.counts]
        met = tops if rounds and below.number else tops[::-1]
        for one in row.stitches:
            if one.bases and len(one.feet) == len(one.bases):
                assert [met[base] for base in one.bases] == list(one.feet)
            elif one.bases and one.feet:
                xs = [met[base][0] for base in one.bases]
                assert min(xs) - 1e-9 <= one.feet[0][0] <= max(xs) + 1e-9


@pytest.mark.parametrize(("name", "rounds"), WAYS)
def test_stitches_of_a_row_stand_in_order_and_apart(name: str, rounds: bool) -> None:
    for row in chart_of(shelf_pattern(name), rounds).rows:
        xs = [one.top[0] for one in row.stitches]
        steps = [b - a for a, b in zip(xs, xs[1:], strict=False)]
        assert all(step < -0.5 if row.leftward else step > 0.5 for step in steps)


@pytest.mark.parametrize(("name", "rounds"), WAYS)
def test_a_left_handed_maker_s_chart_is_the_mirror_image(name: str, rounds: bool) -> None:
    right, left = (draw_chart(shelf_pattern(name), rounds, "us", hand) for hand in (False, True))
    lines = [[item for item in one.items if isinstance(item, Polyline)] for one in (right, left)]
    count = sum(len(row.stitches) for row in chart_of(shelf_pattern(name), rounds).rows)
    assert count > 10 and right.title != left.title

    def shape(drawing: list[Polyline], sign: float) -> list[list[tuple[float, float]]]:
        first = drawing[0].points[0]
        return [[(round(sign * (x - first[0]), 6), round(y - first[1], 6)) for x, y in item.points] for item in drawing]

    key = sum(1 for item in lines[0] if item.points[0][1] > max(y for i in right.items if isinstance(i, Label) and "st" in i.text and i.anchor == "middle" for y in [i.y]))
    body = len(lines[0]) - key
    assert shape(lines[0][:body], 1.0) == shape(lines[1][:body], -1.0)


def test_a_chart_is_in_the_pattern_with_its_key_in_its_terms() -> None:
    for terms, word in (("us", "dc"), ("uk", "tr")):
        figures = [block for block in written("fans", False, terms).blocks if isinstance(block, Figure)]
        charts = [figure for figure in figures if figure.name.startswith("fans")]
        assert [figure.name for figure in charts] == ["fans-rows-right", "fans-rows-left"]
        texts = [item.text for figure in charts for item in figure.drawing.items if isinstance(item, Label)]
        assert word in texts and "6 sts" in texts and "1" in texts


def test_the_chapter_stands_before_the_pieces() -> None:
    headings = [block.text for block in written("moss", False).blocks if isinstance(block, Heading) and block.level == 2]
    assert headings.index("Stitch patterns") < headings.index("One")


def test_a_pattern_s_words_and_charts_are_kept_together() -> None:
    blocks = written("fans", False).blocks
    begin = next(index for index, block in enumerate(blocks) if isinstance(block, Heading) and block.level == 3)
    end = max(index for index, block in enumerate(blocks) if isinstance(block, Figure) and block.name.startswith("fans"))
    assert all(block.keep for block in blocks[begin + 1 : end] if isinstance(block, Paragraph | Figure)) and end - begin > 4


@pytest.mark.parametrize(("name", "rounds"), WAYS)
def test_each_word_of_the_key_stands_beside_its_sign(name: str, rounds: bool) -> None:
    drawing = draw_chart(shelf_pattern(name), rounds, "us")
    lowest = max(item.y for item in drawing.items if isinstance(item, Label) and item.anchor == "middle")
    words = [item for item in drawing.items if isinstance(item, Label) and item.y > lowest]
    signs = [item for item in drawing.items if not isinstance(item, Label) and min(y for _, y in item.points) > lowest]
    assert words and signs
    for word in words:
        beside = [sign for sign in signs if word.x - 6.0 < max(x for x, _ in sign.points) < word.x]
        heights = [y for sign in beside for _, y in sign.points]
        assert beside and (min(heights) + max(heights)) / 2 == pytest.approx(word.y - word.size / 3, abs=1.0)
