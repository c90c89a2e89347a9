"""Every tolerance, named, with its reason. Lengths are mm.

A tolerance says how far apart two lengths may be before somebody is told. None of them ever
changes a number.
"""

SEAM_SHARE = 0.03
"""A seam takes up 3 % unseen: knit and crochet edges give that much under the needle."""

PLAIN_JOIN_SHARE = 0.01
"""A sideways band may be a hundredth longer or shorter where every join then takes the same places: the
hook's tension varies by more (common practice)."""

STRAY_STITCHES = 1.0
"""Further than one stitch from its line an edge shows: steps are then spread another way."""

UNSEEN_STITCHES = 0.5
"""Plainer words (the same rates in all sizes, two blocks instead of turns) may cost this many
stitches of straightness: under half a stitch nobody sees it."""

MOST_STITCHES_PER_EDGE = 3
"""More than three stitches at one edge in one row are no taper but a cast-off step: the edge
would lie flat along the row (common practice, no source)."""


MOST_DECREASED = 2
"""Along a curve up to two stitches are worked together at an edge; more bunch up and are left (common practice)."""

CAP_STRAY_STITCHES = 1.5
"""A cap's curve is eased into its armhole: half a stitch more than elsewhere passes for small, smooth steps."""


def seam_tolerance(length: float, row_height: float) -> float:
    """How far the two edges of a seam may differ: one row or 3 %, the larger.

    One row, because edges are made of whole rows and cannot be brought nearer in thick yarn;
    3 %, because a longer edge shares the difference over many stitches.

    >>> seam_tolerance(200, 14), seam_tolerance(600, 14)
    (14, 18.0)
    """
    return max(row_height, SEAM_SHARE * length)


RAGLAN_SHARE = 0.1
"""Body and sleeve lose different stitches over the same rows of a raglan, so one edge slants more and is longer.
Sewn row for row such edges give a tenth: they run aslant, where cloth stretches most (common practice, no source)."""


def raglan_tolerance(length: float, row_height: float) -> float:
    """How far two raglan edges of the same rows may differ: a tenth of the longer, at least as other seams.

    >>> raglan_tolerance(300, 14), raglan_tolerance(100, 14)
    (30.0, 14)
    """
    return max(seam_tolerance(length, row_height), RAGLAN_SHARE * length)


def total_tolerance(row_height: float) -> float:
    """How far a total length may be from the wanted one: half a row.

    The total of a stack is rounded once, so it never errs by more.

    >>> total_tolerance(14)
    7.0
    """
    return row_height / 2


def bust_tolerance(stitch_width: float) -> float:
    """How far the bust may be from the wanted one where every count is allowed: one stitch.

    Back and front are each rounded by up to half a stitch, and the two add up.

    >>> bust_tolerance(11.4)
    11.4
    """
    return stitch_width


def width_tolerance(stitch_width: float, spacing: int) -> float:
    """How far a width may be from the wanted one: half the gap between allowed counts.

    A wide stitch repeat cannot do better; the same sum gives half a stitch without a repeat.

    >>> width_tolerance(10, spacing=6), width_tolerance(10, spacing=1)
    (30.0, 5.0)
    """
    return stitch_width * spacing / 2


def edge_tolerance(stitch_width: float) -> float:
    """How far a worked edge may stray from its drawn curve: one stitch, the least step there is.

    >>> edge_tolerance(11.4)
    11.4
    """
    return STRAY_STITCHES * stitch_width


CORNER_STITCHES = 1.5
"""A corner changes by two stitches at a time, so it is up to one off at any row; half a stitch more for a
marked stitch that rounding moved and a shoulder's steps that are taken for its slope."""

SAME_LENGTH = 0.05
"""Lengths in mm this near are the same: what is left is the last bits of a sum, not cloth."""

EASED_SLACK = 0.5
"""A sleeve top may be this many mm shorter than its opening: less than anyone can measure."""

BLOCK_STITCHES = 1.0
"""A block within a stitch of all that goes at an armhole takes all of it: rounding both widths may cost so much,
and one stitch decreased by itself after a block is no curve."""

NECK_STITCHES = 0.5
"""Further than half a stitch from its width a neck was moved by its parity, not by rounding alone."""

UPPER_ARM_EASE = 20.0
"""An arm bends and swells: under 2 cm of ease round it a sleeve binds (common practice, no source)."""

HOOD_ROUND_HEAD = 0.8
"""A hood leaves the face free, about a fifth of the head's girth (common practice, no source)."""

HOOD_EASE = 20.0
"""From neck to crown a hood is half the head's girth high and 2 cm for turning it (common practice, no source)."""

COUNT_SHARE = 0.25
"""A repeat may move a count by so much of itself: moved further it makes another thing than was asked for."""


def count_tolerance(exact: float) -> float:
    """How far a fabric's repeat may take a count from the width asked for; two stitches of a very narrow one.

    >>> count_tolerance(18.0), count_tolerance(3.0)
    (4.5, 2.0)
    """
    return max(2.0, COUNT_SHARE * exact)


CROWN_SHARE = 0.25
"""A disc lies flat with up to a quarter more or fewer stitches to a round than geometry asks: the usual 6, 8
and 12 are said to lie flat at measured stitches whose own figures are 4.7 to 5.8, 7.1 to 9.1 and 12.6 to
13.4, while 8 single crochet are said to ruffle."""

CLOSED_STITCHES = 12
"""More stitches than a dozen leave a hole when they are drawn together (common practice, no source)."""


def crown_tolerance(flat: float) -> float:
    """How many stitches a crown's round may be from flat: a quarter, at least the one that rounding may cost.

    >>> crown_tolerance(6.0), crown_tolerance(3.0)
    (1.5, 1.0)
    """
    return max(1.0, CROWN_SHARE * flat)


TRIANGLE_FLAT_SHARE = 0.05
"""A triangle's rows may gain a twentieth more or less than lies flat: its tips then lie a twentieth of a wing's
length off the line of its long edge, which blocking takes out (common practice, no source)."""

GROWTH_TIMES = 2.0
"""A measure may grow twice as fast as bodies: a garment isn't skin, and the rates are those of mean bodies."""

GROWTH_SPREADS = 2.0
"""Grown past its limit by two standard deviations of bodies of one bust, a measure fits one large body in forty."""

LEAST_BUST_SPAN = 100.0
"""Under 10 cm from the least bust to the largest, rounding to stitches says more than grading (common practice)."""

FIT_SHARE = 0.02
"""A piece within 2 % of what it should measure is at gauge: the pattern's own checks along the way allow as much."""

LEAST_FIT = 10.0
"""Under a centimetre nobody sees which size a garment is (common practice, no source)."""


def fit_tolerance(length: float) -> float:
    """How far a finished measure may be from the wanted one before it is another fit, mm.

    >>> fit_tolerance(1000.0), fit_tolerance(200.0)
    (20.0, 10.0)
    """
    return max(LEAST_FIT, FIT_SHARE * length)


GAUGE_OFF = 1.0
"""Millimetres: girths that differ by less are the same, so that there is no step between them to tell."""

LEAST_SURVEYED_BUST = 695.0
"""No woman with a smaller chest was surveyed (ANSUR II, 2012): below it sizes are taken for children's."""

LOOSE_SPREADS = 2.0
"""A size is loose on bodies slimmer by two standard deviations than its own: one in forty (common practice, no source)."""

BUST_BELOW = 60.0
"""Sizes of a chart stand 10 cm apart: under 6 cm less ease than intended another size is nearer (common practice, no source)."""

BUST_ABOVE = 100.0
"""A size up for the arm's or the hip's sake is worn by choice, two aren't (common practice, no source)."""

TIGHT_ON_MANY = 0.2
"""From one body in five of its bust on a size is told to be tight (common practice, no source)."""

FEW_BODIES = 30
"""A share counted on fewer bodies is a hint: its 95 % range is over 30 points wide in the middle (Wilson 1927)."""

TAPE_ERROR = 10.0
"""Own readings of a tape are a centimetre or more off the ones that trained measurers take (common practice, no source)."""

HEAVY_GARMENT = 1000.0
"""A garment of a kilogram and more lengthens under its own weight (common practice, no source: published advice names no figure)."""
