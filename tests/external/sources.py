"""`source(kind, text)`: names what an external check is held to, on every test under `external/`.

published: title, author or body, year. open data: data set, year, licence. library: a general
reference library. common practice: no source found. memory: to be confirmed, never an oracle
for a user. Used as a decorator on the test function itself, so that a reader sees it there:

    from external.sources import source

    @source("published", "Cherry Heart, 'Starting chains', 2014")
    def test_...
"""

from typing import get_args, Literal

import pytest

Kind = Literal["published", "open data", "library", "common practice", "memory"]
KINDS: tuple[str, ...] = get_args(Kind)


def source(kind: Kind, text: str) -> pytest.MarkDecorator:
    """The mark for a test that checks against this source."""
    if kind not in KINDS:
        raise ValueError(f"{kind!r} is not one of {', '.join(KINDS)}")
    if not text.strip():
        raise ValueError("a source has a name")
    return pytest.mark.source(kind, text)
