"""`like:` followed: what isn't stated comes from the thing it is like."""

from collections.abc import Callable, Mapping
from typing import Any


def resolved(
    things: Mapping[str, Any], key: str, together: tuple[tuple[str, ...], ...] = (), goes_with: Mapping[str, str] | None = None
) -> Callable[[str], Any]:
    """A getter for one thing's fields.

    Fields in one group of `together` exclude one another: a thing that states one of them takes none
    of the others from what it is like. A field that goes with another is not looked for beyond the
    thing that states the other: a fabric with a stitch of its own has no other stitch's turning chain.
    """
    chain = [things[key]]
    while chain[-1].like is not None:
        chain.append(things[chain[-1].like])

    def get(field: str) -> Any:
        group = next((fields for fields in together if field in fields), (field,))
        leader = (goes_with or {}).get(field, "")
        for thing in chain:
            if any(getattr(thing, name) is not None for name in group):
                return getattr(thing, field)
            if leader and getattr(thing, leader) is not None:
                return None
        return None

    return get


def stated_in(things: Mapping[str, Any], key: str, field: str) -> str:
    """The key of the thing that states a field: itself, or one it is like."""
    while getattr(things[key], field) is None and things[key].like is not None:
        key = things[key].like
    return key
