"""Multiples and repeats against published examples."""

import pytest
from external.sources import source

from gaugewright.design.model import Fabric
from gaugewright.gauge.counts import CountRule, allows, count_for
from gaugewright.stitch_patterns.parser import parse_row
from gaugewright.stitch_patterns.pattern import StitchPattern
from tiny_specs import designed, graded

HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns: {oat: {colour: "#d9c9a8"}}
stitch_patterns: {own: {multiple: {of: OF, plus: PLUS}, plain: sc, rows: ["ROW"], rounds: ["*OF sc*"]}}
"""


def fabric(of: int, plus: int, more: str = "") -> Fabric:
    row = f"*{of} sc*" + (f", {plus} sc" if plus else "")
    text = HEAD.replace("OF", str(of)).replace("PLUS", str(plus)).replace("ROW", row)
    text += f'fabrics: {{lace: {{pattern: own, gauge: "10 sts, 10 rows / 10 cm"{more}}}}}\npieces: {{one: {{start: {{chain: {of * 4 + plus} cm}}, sections: [even: {{rows: 2}}]}}}}\n'
    if "round" in more:
        text = text.replace("chain:", "ring:")
    return designed(text).fabrics[0]


@source("published", "Stitch Whisper Designs, 'Multiples', 2021; Made by Fabi, 2015: a multiple of 5 plus 1 gives 11, 56, 101; 12 plus 2 gives 110 in nine repeats")
@pytest.mark.parametrize(("of", "plus", "repeats", "stitches"), [(5, 1, 2, 11), (5, 1, 11, 56), (5, 1, 20, 101), (12, 2, 9, 110)])
def test_whole_repeats_with_their_extra(of: int, plus: int, repeats: int, stitches: int) -> None:
    assert allows(fabric(of, plus).rule, stitches)
    pattern = StitchPattern("p", "P", of, plus, "sc", (), (parse_row(f"*{of} sc*, {plus} sc"),))
    assert pattern.count(repeats, False) == stitches and pattern.counts(repeats, False) == (stitches,)


@source("published", "NeoKnits, 'Design process: yet more math', 2007: a multiple of 7 plus 4; of 151, 158 and 165 only 151 and 165 leave an even number to add at the sides of 99")
def test_parity_leaves_out_every_other_repeat() -> None:
    rule = fabric(7, 4).rule
    assert [count for count in (151, 158, 161, 165) if allows(rule, count)] == [151, 158, 165]
    odd = CountRule(7, 4, "odd")
    assert [count for count in (151, 158, 165) if allows(odd, count)] == [151, 165]
    assert count_for(161, odd) == 165


@source("published", "Pink Brutus Knits, 'It always goes back to gauge and stitches', 2017: 36 in at 5 sts to the inch, a multiple of 7 plus 2, whose extra is dropped in the round")
def test_in_rounds_the_extra_is_dropped() -> None:
    rule = fabric(7, 2, ", worked: joined rounds").rule
    assert (rule.multiple, rule.plus) == (7, 0)
    assert count_for(36 * 5, rule) == 182 and allows(rule, 175)


@source("published", "Yay For Yarn, 'Textured Pullover' (crochet), nine sizes: 14 sts to 4 in; printed busts 32.25 to 65.25 in steps of 4.5, 4.5, 3 in, as a repeat limits the grade")
def test_a_repeat_limits_the_grade() -> None:
    """All printed busts are whole repeats of five or six stitches twice round: counts differ by 16, 16, 10 or 11."""
    printed = (32.25, 36.75, 41.25, 44.25, 48.75, 53.25, 56.25, 60.75, 65.25)
    counts = [round(inches * 3.5) for inches in printed]
    steps = [b - a for a, b in zip(counts, counts[1:], strict=False)]
    assert set(steps) <= {10, 11, 15, 16}
    text = HEAD.replace("OF", "5").replace("PLUS", "2").replace("ROW", "*5 sc*, 2 sc")
    sizes = ", ".join(f"s{n}: {{bust: {bust} in}}" for n, bust in enumerate((30, 34, 38, 42, 46, 50, 54, 58, 62)))
    text += (
        f"sizes: {{own: {{{sizes}}}, ease: {{bust: 2.5 in}}}}\n"
        'fabrics: {lace: {pattern: own, gauge: "14 sts, 14 rows / 4 in"}}\n'
        "pieces: {back: {start: {chain: (body.bust + ease.bust) / 2}, sections: [even: {rows: 2}]}}\n"
    )
    widths = [2 * piece.main.rows[0].across / 3.5 for piece in graded(text).pieces["back"]]
    assert all(abs(width - wanted) <= 2.5 / 3.5 + 0.26 * 2 + 1.0 for width, wanted in zip(widths, printed, strict=True))
    eases = [width - bust for width, bust in zip(widths, (30, 34, 38, 42, 46, 50, 54, 58, 62), strict=True)]
    assert max(eases) - min(eases) > 0.5  # the body grows evenly and the garment cannot: its ease drifts
