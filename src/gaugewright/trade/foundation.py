"""Starting chains: how many to make, and which chain the first stitch goes into.

Chains skipped at the start stand for the first turning chain. If that counts as a stitch it
is one of the row's stitches, so the chain is one shorter; if not, it is extra. Both are in
print for half double crochet, so the pattern has to say.
"""


from typing import NamedTuple

from gaugewright.errors import UserError
from gaugewright.trade.stitches import stitch


CENTRE_CHAINS = 4
"""Chains joined into a ring in the place of an adjustable one (common practice, no source)."""


class Foundation(NamedTuple):
    """A starting chain; `first_into` counts chains from the hook."""

    chain: int
    first_into: int
    skipped_counts: bool


def foundation(name: str, stitches: int, chains: int | None = None, counts: bool | None = None) -> Foundation:
    """The starting chain for a first row of so many stitches.

    `chains` is the turning chain where it differs from the stitch's usual one. At least one
    chain is skipped, whatever the stitch: the loop on the hook needs room to turn.

    >>> foundation("sc", 10)
    Foundation(chain=11, first_into=2, skipped_counts=False)
    >>> foundation("hdc", 10, counts=True), foundation("hdc", 10, counts=False).chain
    (Foundation(chain=11, first_into=3, skipped_counts=True), 12)
    >>> foundation("dc", 10).chain, foundation("dc", 10, counts=False).chain
    (12, 13)
    """
    facts = stitch(name)
    skipped = max(facts.chains if chains is None else chains, 1)
    counted = facts.counts_unless_set if counts is None else counts
    if stitches < 1 or (chains is not None and chains < 0):
        raise UserError(
            "no-foundation",
            f"a starting chain for {stitches} stitches with a turning chain of {chains} cannot be made",
            hint="a row has at least one stitch, and a turning chain no fewer than 0 chains",
        )
    made = stitches + skipped - (1 if counted else 0)
    return Foundation(made, skipped + 1, counted)
