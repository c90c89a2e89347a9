"""Checks: does the graded pattern hold together, and can it be worn?

In: the design, each size's body, the graded pieces. Out: one `CheckResult` for each check, its
problems and its figures. Nothing here changes anything. Whatever a check measures it measures for
itself, from rows, printed gauge and take-up, and never by the functions that graded the pieces.
"""

from gaugewright.checks.model import CheckResult
from gaugewright.checks.rows import row_faults
from gaugewright.checks.run import CHECKS, run_checks

__all__ = ["CHECKS", "CheckResult", "row_faults", "run_checks"]
