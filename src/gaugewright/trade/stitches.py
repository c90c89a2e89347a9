"""The five plain stitches: names in both terms, turning chains, how they are worked.

US names are the keys throughout the project; UK names are one step taller from single crochet
upwards, so a bare "dc" means nothing until the terms are stated.
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Literal, NamedTuple

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError

DATA = Path(__file__).with_name("data")
Terms = Literal["us", "uk"]


class StitchFacts(NamedTuple):
    """One stitch. `chains` are the chains of its turning chain; `counts` says whether that
    counts as a stitch (None where published practice differs and the pattern must say);
    `counts_unless_set` is what is taken where the pattern does not.

    Why hdc does not count unless set: a counted hdc chain leaves a gap at the edge, and the
    graded pattern checked against (Lion Brand 70644AD) does not count it.
    """

    name: str
    us_term: str
    uk_term: str
    us_abbr: str
    uk_abbr: str
    chains: int
    counts: bool | None
    counts_unless_set: bool
    yarn_overs: int
    description: str
    source: str

    def abbr(self, terms: Terms) -> str:
        """The abbreviation in these terms."""
        return self.us_abbr if terms == "us" else self.uk_abbr

    def term(self, terms: Terms) -> str:
        """The name written out in these terms."""
        return self.us_term if terms == "us" else self.uk_term


def stitch(name: str) -> StitchFacts:
    """The facts of a stitch by its US abbreviation.

    >>> hdc = stitch("hdc")
    >>> hdc.uk_abbr, hdc.chains, hdc.counts, stitch("sc").counts, stitch("dc").counts
    ('htr', 2, None, False, True)
    """
    if name not in _stitches():
        raise UserError(
            "unknown-stitch", f"there is no stitch {name!r}", hint=f"the stitches are {', '.join(_stitches())}"
        )
    return _stitches()[name]


def stitch_names() -> tuple[str, ...]:
    """The stitches' US abbreviations, lowest stitch first."""
    return tuple(_stitches())


def decrease_of(name: str, of: int = 2) -> str:
    """The key of the decrease that makes one stitch of two or three.

    >>> decrease_of("hdc"), decrease_of("dc", 3)
    ('hdc2tog', 'dc3tog')
    """
    if stitch(name).chains == 0 or of not in (2, 3):
        raise UserError(
            "no-such-decrease", f"{of} {name} are not worked together", hint="two or three of sc, hdc, dc or tr can be"
        )
    return f"{name}{of}tog"


def increase_of(name: str) -> str:
    """The key of the increase that works two of a stitch into one.

    >>> increase_of("sc")
    '2 sc in next st'
    """
    return f"2 {stitch(name).name} in next st"


@cache
def _stitches() -> Mapping[str, StitchFacts]:
    return {row["name"]: _facts(row) for row in read_table(DATA / "stitches.csv")}


def _facts(row: Mapping[str, str]) -> StitchFacts:
    return StitchFacts(
        name=row["name"],
        us_term=row["us_term"],
        uk_term=row["uk_term"],
        us_abbr=row["us_abbr"],
        uk_abbr=row["uk_abbr"],
        chains=int(row["chains"]),
        counts={"yes": True, "no": False, "": None}[row["counts"]],
        counts_unless_set=row["counts_unless_set"] == "yes",
        yarn_overs=int(row["yarn_overs"]),
        description=row["description"],
        source=row["publication"],
    )
