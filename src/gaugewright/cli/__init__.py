"""The command line: the only package that prints or exits.

Exit codes: 0 fine, 1 problems in the user's files, 2 wrong use of the command, 70 our own bug.
"""

from gaugewright.cli.app import main

__all__ = ["main"]
