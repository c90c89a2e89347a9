"""Boxes are placed in order, none is lost, and what belongs together stays together."""

from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.errors import InternalError
from gaugewright.render.pdf.pages import paginate


@dataclass(frozen=True)
class Block:
    """A box of lines of 10; `whole` can't be split but by force."""

    name: str
    lines: int
    keep: bool = False
    whole: bool = False
    new_page: bool = False
    before: float = 4.0
    after: float = 6.0

    @property
    def height(self) -> float:
        return self.lines * 10.0

    def split(self, room: float, force: bool) -> "tuple[Block, Block] | None":
        count = min(int(room // 10), self.lines - (1 if force else 2))
        if (self.whole and not force) or count < (1 if force else 2):
            return None
        return Block(self.name, count), Block(self.name, self.lines - count)

    def shrink(self, room: float) -> None:
        return None

    def at_head(self) -> "Block":
        return self

    def draw(self, pen: object, x: float, top: float) -> None:
        raise AssertionError("not drawn here")


def names(boxes: tuple[Block, ...], height: float = 100) -> list[list[tuple[str, float]]]:
    pages = paginate(boxes, height)
    return [[(box.name, top) for box, top in page.boxes] for page in pages]  # type: ignore[attr-defined]


def test_the_larger_space_counts_and_none_at_the_head() -> None:
    assert names((Block("a", 2, before=30), Block("b", 2, before=9), Block("c", 1))) == [
        [("a", 0), ("b", 29), ("c", 55)]
    ]


def test_a_heading_goes_with_what_follows() -> None:
    boxes = (Block("a", 7), Block("h", 1, keep=True), Block("b", 3, whole=True))
    assert names(boxes) == [[("a", 0)], [("h", 0), ("b", 16)]]


def test_a_heading_stays_where_the_beginning_of_the_next_fits() -> None:
    boxes = (Block("a", 5), Block("h", 1, keep=True), Block("b", 5))
    assert names(boxes) == [[("a", 0), ("h", 56), ("b", 72)], [("b", 0)]]


def test_a_whole_box_is_not_split_unless_it_is_higher_than_a_page() -> None:
    assert names((Block("a", 6), Block("s", 4, whole=True))) == [[("a", 0)], [("s", 0)]]
    assert [len(page) for page in names((Block("s", 25, whole=True),))] == [1, 1, 1]


def test_a_new_page_begins_only_where_there_is_something_before() -> None:
    boxes = (Block("a", 1, new_page=True), Block("b", 1, new_page=True))
    assert names(boxes) == [[("a", 0)], [("b", 0)]]


def test_a_last_heading_and_a_pile_of_headings_are_placed() -> None:
    pile = tuple(Block(f"h{n}", 3, keep=True, whole=True) for n in range(6))
    assert [name for page in names(pile) for name, _ in page] == [f"h{n}" for n in range(6)]


def test_what_can_not_be_placed_is_our_bug() -> None:
    class Solid(Block):
        def split(self, room: float, force: bool) -> None:
            return None

    with pytest.raises(InternalError, match="higher than the page"):
        paginate((Solid("s", 11),), 100)


BLOCKS = st.builds(
    Block, st.just("x"), st.integers(1, 30), st.booleans(), st.booleans(), st.booleans(), st.sampled_from([0.0, 5.0, 12.0])
)


@given(st.lists(BLOCKS, min_size=1, max_size=25))
def test_no_line_is_lost_and_no_page_overflows(blocks: list[Block]) -> None:
    pages = paginate(tuple(blocks), 120)
    assert all(page.boxes and page.used <= 120 + 1e-6 for page in pages)
    placed = sum(box.height for page in pages for box, _ in page.boxes)
    assert placed == pytest.approx(sum(block.height for block in blocks))
    for page in pages:
        ends = [(top, top + box.height) for box, top in page.boxes]
        assert all(end <= top + 1e-6 for (_, end), (top, _) in zip(ends, ends[1:], strict=False))


def test_a_page_left_almost_empty_begins_earlier() -> None:
    """The two lines of `c` would stand alone, since `d` is kept whole: `b` goes with them."""
    boxes = (Block("a", 6), Block("b", 2), Block("c", 2, whole=True), Block("d", 9, whole=True), Block("e", 4))
    before = (Block("a", 6), Block("b", 2), Block("c", 2, whole=True), Block("d", 3))
    assert names(boxes) == [[("a", 0)], [("b", 0), ("c", 26)], [("d", 0)], [("e", 0)]]
    assert names(before)[0] == [("a", 0), ("b", 66)]  # room for all: nothing moves


def test_an_almost_empty_page_stays_where_the_one_before_would_be_no_better() -> None:
    boxes = (Block("a", 4), Block("b", 5, whole=True), Block("c", 2, whole=True), Block("d", 9, whole=True), Block("e", 4))
    assert names(boxes)[:2] == [[("a", 0), ("b", 46)], [("c", 0)]]


def test_the_last_page_may_hold_little() -> None:
    assert names((Block("a", 6), Block("b", 2), Block("c", 2, whole=True))) == [[("a", 0), ("b", 66)], [("c", 0)]]
