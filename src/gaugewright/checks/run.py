"""All checks, in the order they are told."""

from gaugewright.checks.attachments import check_attached
from gaugewright.checks.bands import check_bands, check_buttonholes
from gaugewright.checks.blocks import check_blocks
from gaugewright.checks.corners import check_corners
from gaugewright.checks.crowds import check_crowds
from gaugewright.checks.crowns import check_crowns
from gaugewright.checks.curves import check_curves
from gaugewright.checks.finished import check_bust_steps, check_ease_drift, check_finished, check_never_falls
from gaugewright.checks.folds import check_folds, check_seam_order
from gaugewright.checks.growth import check_growth
from gaugewright.checks.hanging import check_hanging
from gaugewright.checks.hoods import check_hoods
from gaugewright.checks.joins import check_joins
from gaugewright.checks.lengths import check_equal_counts, check_necks, check_total_length
from gaugewright.checks.model import Check, CheckResult
from gaugewright.checks.motifs import check_motifs
from gaugewright.checks.pattern_rows import check_patterns
from gaugewright.checks.remeasure import subject_of
from gaugewright.checks.rows import check_rows_follow
from gaugewright.checks.seams import check_bands_meet, check_seams
from gaugewright.checks.shaping import check_gathers, check_shaping_balances
from gaugewright.checks.slits import check_pairs
from gaugewright.checks.sources import check_unconfirmed, check_yarns_used
from gaugewright.checks.stripes import check_stripes
from gaugewright.checks.swatch_yarns import check_swatch_yarns
from gaugewright.checks.yokes import check_round_yokes
from gaugewright.checks.triangles import check_triangles
from gaugewright.checks.wearing import check_hips, check_openings, check_upper_arm
from gaugewright.design.model import Design
from gaugewright.grading.grade import Grading
from gaugewright.measurements.model import Body
from gaugewright.sized import Sized

CHECKS: tuple[tuple[str, str, Check], ...] = (
    ("rows-follow", "Each row uses what the row before makes", check_rows_follow),
    ("patterns-follow", "Stitch patterns are worked into what is there", check_patterns),
    ("shaping-balances", "Increases less decreases give the end less the start", check_shaping_balances),
    ("gathers", "No row more than halves or doubles", check_gathers),
    ("curves", "Edges keep to their curves", check_curves),
    ("crowns", "Crowns lie flat and closed ends close", check_crowns),
    ("motifs", "Motifs lie flat and fill their grid", check_motifs),
    ("round-yokes", "Circular yokes lie over the shoulders", check_round_yokes),
    ("triangles", "Triangles lie flat", check_triangles),
    ("finished-measures", "Finished measurements are as wanted", check_finished),
    ("total-length", "Total lengths are as wanted", check_total_length),
    ("neck-centred", "Shoulders are equal and the neck is in the middle", check_necks),
    ("seam-pairs", "Edges sewn together fit", check_seams),
    ("seam-order", "Seams are told once their pieces are made", check_seam_order),
    ("folds", "Edges folded and sewn to themselves have halves that meet", check_folds),
    ("attachments", "Pieces sewn on lie on the pieces under them", check_attached),
    ("bands-fit", "Picked-up bands are as long as their edges", check_bands),
    ("joins", "Sideways bands go along their edges", check_joins),
    ("bands-flat", "Bands lie flat at their corners", check_corners),
    ("buttonholes", "Buttonholes add up to their edge", check_buttonholes),
    ("bands-meet", "Colour bands meet across seams", check_bands_meet),
    ("stripes", "Stripes follow their sequence and meet", check_stripes),
    ("blocks", "Blocks of colour add up to their rows", check_blocks),
    ("never-falls", "Girths and lengths never fall with size", check_never_falls),
    ("openings", "Hands and heads pass their openings", check_openings),
    ("hoods", "Heads fit their hoods", check_hoods),
    ("pairs", "Two of a pair fit two hands", check_pairs),
    ("upper-arm", "Sleeves leave room for the arm", check_upper_arm),
    ("hips", "What covers the hips goes round them", check_hips),
    ("many-bodies", "Arms and hips aren't tight on many", check_crowds),
    ("ease-drift", "Ease is even over the sizes", check_ease_drift),
    ("bust-steps", "The bust grows in even steps", check_bust_steps),
    ("grows-as-bodies-do", "Large sizes grow as bodies do", check_growth),
    ("hanging", "Heavy cloth is judged by how it hangs", check_hanging),
    ("equal-counts", "Sizes differ where they are meant to", check_equal_counts),
    ("yarns-used", "Each yarn is used", check_yarns_used),
    ("swatches", "Swatches are weighed in the yarns they stand for", check_swatch_yarns),
    ("unconfirmed-measures", "Body measures come from a chart seen in print", check_unconfirmed),
)


def run_checks(design: Design, bodies: Sized[Body], grading: Grading) -> tuple[CheckResult, ...]:
    """Every check's problems and figures; measures all pieces anew once, changes nothing."""
    subject = subject_of(design, bodies, grading)
    return tuple(CheckResult(name, title, *check(subject)) for name, title, check in CHECKS)
