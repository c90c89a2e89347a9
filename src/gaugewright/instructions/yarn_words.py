"""About the yarn itself: what its make asks for, what the finished work weighs, and what to look for in another yarn."""

from collections.abc import Iterator

from gaugewright.design.model import Design, Yarn
from gaugewright.grading.grade import Grading
from gaugewright.instructions.amount_tables import Amounts
from gaugewright.instructions.materials import alike
from gaugewright.instructions.nodes import Block, Heading, Paragraph, plain
from gaugewright.instructions.wording import Book, Spans, listed
from gaugewright.measurements import Body
from gaugewright.rounding import half_up, to_step, up, up_to_step
from gaugewright.sized import Sized
from gaugewright.trade.structures import SEWN_WITH_ANOTHER, traits
from gaugewright.trade.substitution import metres_per_100g, near_enough
from gaugewright.trade.yarn_weights import yarn_weight
from gaugewright.yarn.counted import counted
from gaugewright.yarn.hanging import heavy_sizes, is_judged, lengthens_more, masses


def yarn_chapter(book: Book, design: Design, bodies: Sized[Body], grading: Grading, amounts: Amounts) -> Iterator[Block]:
    """The part of the materials on the yarn itself."""
    bullets = [*_sewing_yarn(book, design, grading), *_traits(book, design), *_substitutes(book, design)]
    heavy = heavy_sizes(design, bodies, amounts)
    notes = list(_mass(book, design, amounts, bool(heavy)))
    if not bullets and not notes:
        return
    yield Heading(3, book.front["yarn-heading"])
    for spans in notes:
        yield Paragraph(spans, "body")
    for spans in bullets:
        yield Paragraph(spans, "bullet")


def sewn_apart(design: Design) -> bool:
    """Whether seams are sewn with another yarn, since this one doesn't do to sew with."""
    return bool(design.seams) and any(yarn.structure in SEWN_WITH_ANOTHER for yarn in design.yarns)


def _sewing_yarn(book: Book, design: Design, grading: Grading) -> Iterator[Spans]:
    """The strong yarn for seams, with its metres."""
    if sewn_apart(design):
        lengths = grading.environments.map(lambda env: _seam_metres(design, grading, env.size))
        yield book.front_text("sewing-yarn", metres=lengths)


def _seam_metres(design: Design, grading: Grading, size: str) -> int:
    shares = counted(design, {key: sized[size] for key, sized in grading.pieces.items()})
    return up(sum(share.amount for share in shares if share.term == "seams") / 1000)


def _traits(book: Book, design: Design) -> Iterator[Spans]:
    """What the make of each yarn asks for; yarns are named where there are several kinds."""
    groups = alike(design.yarns)
    for group in groups:
        yarn = group[0]
        named = listed(book, [one.label for one in group])
        for trait in traits(yarn.structure, [name for name, _ in yarn.fibre], yarn.treatment):
            if trait.gravity == "caution":
                text = trait.text if len(groups) == 1 else spans_named(book, named, trait.text)
                yield plain(text)


def spans_named(book: Book, name: str, text: str) -> str:
    """ "Name: what is said of it"."""
    return book.words["yarn-named"].format(name=name, text=text)


def _mass(book: Book, design: Design, amounts: Amounts, heavy: bool) -> Iterator[Spans]:
    """What it weighs, where that decides how it hangs, and what weight does where nobody has judged it."""
    found = masses(design, amounts)
    if found is None or not (heavy or any(fabric.lying for fabric in design.fabrics)):
        return
    grams = found.map(lambda one: int(to_step(one, 10)))
    notions = listed(book, [name for name, _ in design.notions]) if design.notions else ""
    yield book.front_text("mass-notions" if notions else "mass", grams=grams, **({"notions": notions} if notions else {}))
    if heavy and not is_judged(design):
        more = lengthens_more(design)
        yield book.front_text("mass-hangs-more" if more else "mass-hangs", **({"fibres": listed(book, more)} if more else {}))


def _substitutes(book: Book, design: Design) -> Iterator[Spans]:
    """What another yarn must have, for each kind of yarn whose ball is known."""
    groups = [group for group in alike(design.yarns) if group[0].ball_mass and group[0].ball_length]
    for group in groups:
        yield _substitute(book, group, len(groups) > 1)
    if groups:
        yield book.front_text("another-yarn-gauge", gauge=book.word("gauge"))
        yield book.front_text("another-yarn-balls")


def _substitute(book: Book, group: tuple[Yarn, ...], named: bool) -> Spans:
    yarn = group[0]
    assert yarn.ball_mass and yarn.ball_length  # only such groups are asked for
    metres = metres_per_100g(yarn.ball_mass, yarn.ball_length)
    near = near_enough(metres, yarn.weight)
    # Rounded inwards, so that what is printed is within the share.
    low, high = int(up_to_step(near.low, 1)), int(near.high)
    wanted = []
    if yarn.weight is not None:
        facts = yarn_weight(yarn.weight)
        name = (facts.uk_name if book.terms == "uk" and facts.uk_name else facts.name).lower()
        wanted.append(book.words["wanted-weight"].format(category=yarn.weight, name=name))
    wanted.append(book.words["wanted-metres"].format(low=low, high=high, yards=half_up(low / 0.9144), most=half_up(high / 0.9144), share=half_up(near.share * 100)))
    if yarn.structure:
        wanted.append(book.words[f"wanted-{yarn.structure}"])
    who = listed(book, [one.label for one in group])
    return book.front_text("another-yarn-for" if named else "another-yarn", f"yarn.{yarn.key}", wanted=", ".join(wanted), **({"yarn": who} if named else {}))
