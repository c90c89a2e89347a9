"""Boxes placed on pages.

In: boxes and the frame's height. Out: for each page its boxes with their distance from the top.
A heading is never last on a page, a step is never split, a drawing rather gets a little smaller
than leaves a hole; only what is higher than a whole page is split by force.
"""

from collections import deque
from dataclasses import dataclass, field

from gaugewright.errors import InternalError
from gaugewright.render.pdf.boxes import Box

SLACK = 1e-6


@dataclass(slots=True)
class Page:
    """A page being filled; `used` is the height taken so far, `last` the group placed last on it or before it."""

    height: float
    boxes: list[tuple[Box, float]] = field(default_factory=list)
    used: float = 0.0
    last: int = -1

    def gap(self, box: Box) -> float:
        """Space above the box: the larger of the two that meet, none at the head of the page."""
        return max(self.boxes[-1][0].after, box.before) if self.boxes else 0.0

    def room(self, box: Box) -> float:
        """Height left for this box."""
        return self.height - self.used - self.gap(box)

    def put(self, box: Box) -> None:
        """Place the box below the last one."""
        top = self.used + self.gap(box)
        placed = box if self.boxes else box.at_head()
        self.boxes.append((placed, top))
        self.used = top + placed.height


def paginate(boxes: tuple[Box, ...], height: float) -> tuple[Page, ...]:
    """Fill pages one after the other; then, where one is left almost empty, begin it earlier.

    A page gets little where what follows is kept together and has no room there. What stands last on the page before
    it goes with it, as long as that page stays well filled and nothing else moves from its page.
    """
    groups = _groups(boxes)
    pages, breaks = _fill(groups, height, frozenset()), frozenset[int]()
    number = 1
    while number < len(pages) - 1:
        if pages[number].used < THIN * height and (earlier := _earlier(groups, height, breaks, pages, number)) is not None:
            breaks = earlier
            pages = _fill(groups, height, breaks)
        number += 1
    return tuple(pages)


THIN, FILLED = 1 / 3, 0.5
"""Of a page's height: one with less looks forgotten, one that keeps as much doesn't."""


def _groups(boxes: tuple[Box, ...]) -> list[list[Box]]:
    """Each box with all that must not be parted from it: headings and what they stand over."""
    waiting, found = deque(boxes), list[list[Box]]()
    while waiting:
        found.append([waiting.popleft()])
        while found[-1][-1].keep and waiting and not waiting[0].new_page:
            found[-1].append(waiting.popleft())
    return found


def _fill(groups: list[list[Box]], height: float, breaks: frozenset[int]) -> list[Page]:
    """Pages filled one after the other; groups whose number is in `breaks` begin one."""
    pages = [Page(height)]
    for number, group in enumerate(groups):
        if (group[0].new_page or number in breaks) and pages[-1].boxes:
            pages.append(Page(height))
        rest = _place(pages[-1], group)
        while rest is not None:
            pages.append(Page(height))
            rest = _place(pages[-1], rest)
        pages[-1].last = number
    return pages


def _earlier(groups: list[list[Box]], height: float, breaks: frozenset[int], pages: list[Page], number: int) -> frozenset[int] | None:
    """The breaks with one more, by which an almost empty page begins earlier; None where that would only move the gap."""
    for group in range(pages[number - 1].last, pages[number - 2].last if number > 1 else 0, -1):
        tried = _fill(groups, height, breaks | {group})
        if len(tried) != len(pages) or tried[number - 1].used < FILLED * height or tried[number].last != pages[number].last:
            return None
        if tried[number].used >= THIN * height:
            return breaks | {group}
    return None


def _place(page: Page, group: list[Box]) -> list[Box] | None:
    """Put the group on the page; what has to go on to the next page is given back."""
    trial = Page(page.height, list(page.boxes), page.used)
    for place, box in enumerate(group):
        last = place == len(group) - 1
        room = trial.room(box)
        if box.height <= room + SLACK:
            trial.put(box)
            continue
        fresh = not page.boxes
        parts = box.split(room, force=False) if last else None
        smaller = box.shrink(room) if last else None
        if parts is None and smaller is None and fresh:
            return _force(page, trial, group, place)
        if smaller is not None:
            trial.put(smaller)
            continue
        if parts is None:
            return group
        trial.put(parts[0])
        _accept(page, trial)
        return [parts[1]]
    _accept(page, trial)
    return None


def _force(page: Page, trial: Page, group: list[Box], place: int) -> list[Box]:
    """On an empty page and still no room: leave what fits, or split what is higher than a page."""
    box = group[place]
    parts = None if trial.boxes and box.height <= page.height else box.split(trial.room(box), force=True)
    if parts is not None:
        trial.put(parts[0])
        _accept(page, trial)
        return [parts[1], *group[place + 1 :]]
    if not trial.boxes:
        raise InternalError(f"a {type(box).__name__} of {box.height:.0f} pt is higher than the page")
    _accept(page, trial)
    return group[place:]


def _accept(page: Page, trial: Page) -> None:
    page.boxes, page.used = trial.boxes, trial.used
