"""The raglan edge of a flat piece: stitches left at the underarm, then one straight line up to the neck.

Body and sleeves lose different stitches over the same rows, so each has its own rates and they are sewn
row for row. A front whose neck is lower than the back's keeps its whole raglan edge: the line goes on at
the outer edges of both sides of the neck until a few stitches are left, so all four seams stay alike
(the usual way of published flat raglans; a slanted sleeve top would need a sleeve for each side).
"""

from gaugewright.design.model import Design, Fabric, Neck, NeckEdge, Piece, RaglanEdge
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.fault import fault
from gaugewright.grading.armhole import with_block
from gaugewright.grading.cap_fit import USUAL_BLOCK
from gaugewright.grading.curves import ProfileImpossible, way_of
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.schedule import schedule_sizes, schedules_by
from gaugewright.rounding import half_up, up
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import MOST_DECREASED
from gaugewright.vocabulary import Schedules


MORE_LEFT = 5
"""So many more stitches may stay at the top of a side where thick yarn takes two at a time up to the neck."""


def raglan_profile(stitches: int, rows: int, block: int, habit: Schedules = "straightest") -> Profile:
    """`stitches` go at one edge over `rows`: `block` of them left on row 1, the others as straight as whole rows allow.

    At most two are worked together on one row at one edge.

    >>> made = raglan_profile(7, 11, 2)
    >>> [(step.row, step.stitches) for step in made.steps]
    [(1, 2), (3, 1), (5, 1), (7, 1), (9, 1), (11, 1)]
    """
    rest, sloping = stitches - block, rows - bool(block)
    if rest < 0 or rest > MOST_DECREASED * sloping:
        raise ProfileImpossible(f"{rest} stitches go in {sloping} rows, at most {MOST_DECREASED} on each")
    on_each, over = divmod(rest, sloping) if sloping else (0, 0)
    more = straight_rows(over, sloping, habit)
    steps = ((row, on_each + (row in more)) for row in range(1, sloping + 1))
    line = Profile(sloping, tuple(EdgeStep(row, each, way_of(each)) for row, each in steps if each))
    return Profile(rows, with_block(block, line)) if block else line


def straight_rows(changes: int, rows: int, habit: Schedules = "straightest") -> frozenset[int]:
    """The rows of so many changes that lie nearest to a line. Where they are more than the rows between them, those
    are what is spread: decreasing on each row and then on every second would bend the line by several stitches. A
    pattern whose convention sets which gaps come first keeps to it.

    >>> sorted(straight_rows(3, 9)), sorted(straight_rows(7, 9))
    ([3, 6, 9], [1, 2, 3, 5, 6, 7, 9])
    """
    if habit != "straightest":
        return frozenset(schedules_by(habit, [(changes, rows)])[0].positions())
    (spread,) = schedule_sizes([(min(changes, rows - changes), rows)])
    found = frozenset(spread.positions())
    return found if 2 * changes <= rows else frozenset(range(1, rows + 1)) - found


def least_rows(stitches: int, block: int) -> int:
    """The fewest rows in which an edge can lose so many stitches.

    >>> least_rows(9, 2), least_rows(8, 0)
    (5, 4)
    """
    return up((stitches - block) / MOST_DECREASED) + bool(block)


def left_at_neck(counts: bool) -> int:
    """The fewest stitches that stay at the top of each side of a neck: the last decrease needs a stitch beside
    it, two where a turning chain that counts stands for one.

    >>> left_at_neck(False), left_at_neck(True)
    (2, 4)
    """
    return 4 if counts else 2


def raglan_of(section: RaglanEdge, piece: Piece, design: Design, env: Environment, counts: tuple[int, int], rows: int) -> Profile:
    """A piece's raglan edge in one size; a located problem where it can't be worked. `counts` are those before and after."""
    gauge = design.fabric(section.fabric).gauge
    before, after = counts
    each, block = (before - after) // _edges(section), _block(section, gauge, env)
    if each < 1:
        message = f"{piece.key} is {before} stitches wide at the underarm and is to have {after} at the neck: nothing goes"
        hint = f"make `target` at most {gauge.width_of(before - _edges(section) * (block + 1)) / 10:.1f} cm, or the piece wider"
        raise fault("raglan-takes-nothing", message, section.target.origin, hint, env)
    if block >= each:
        message = f"the raglan of {piece.key} leaves {block} stitches at once at the underarm, and {each} go at each edge in all"
        hint = f"make `block` at most {gauge.width_of(each - 1) / 10:.1f} cm"
        raise fault("raglan-block-too-wide", message, section.block.origin if section.block else section.target.origin, hint, env)
    needed = least_rows(each, block)
    if needed > rows:
        held = MOST_DECREASED * max(0, rows - bool(block))
        message = f"{each - block} stitches go at each raglan edge of {piece.key} above the underarm, and its {rows} rows hold {held}, two on each"
        wider = gauge.width_of(after + _edges(section) * (each - block - held)) / 10
        hint = f"make it at least {gauge.height_of(needed) / 10:.1f} cm deep, or `target` at least {wider:.1f} cm"
        raise fault("raglan-too-steep", message, section.origin, hint, env)
    return raglan_profile(each, rows, block, design.conventions.schedules)


def necks_between(section: RaglanEdge, top: Neck | NeckEdge, piece: Piece, wide: int, fabric: Fabric, size: str) -> tuple[int, ...]:
    """The stitches a neck may have between raglan edges, the widest first; a located problem where they leave it none."""
    sides, least = (1, 1) if isinstance(top, NeckEdge) else (2, 2)
    few = left_at_neck(fabric.counts)
    found = tuple(wide - sides * left for left in range(few, few + MORE_LEFT + 1) if wide - sides * left >= least)
    if not found:
        message = f"{piece.key} has {wide} stitches between its raglan edges, too few for a neck and {few} left at the top of each side"
        hint = f"make `target` at least {fabric.gauge.width_of(least + sides * few) / 10:.1f} cm"
        raise ProblemsFound([Problem("raglan-neck-narrow", message, section.target.origin, hint, size)])
    return found


def _edges(section: RaglanEdge) -> int:
    return 2 if section.at == "both" else 1


def _block(section: RaglanEdge, gauge: Gauge, env: Environment) -> int:
    """The stitches left at the underarm; an inch unless stated, none where it is nothing."""
    return half_up(gauge.stitches_in(USUAL_BLOCK if section.block is None else env.length(section.block)))
