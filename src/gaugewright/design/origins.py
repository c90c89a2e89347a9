"""Origins and formulas: a spec path becomes a place in the file."""

from dataclasses import dataclass

from gaugewright.design.model import Formula
from gaugewright.errors import Origin
from gaugewright.formulas.parser import parse_formula
from gaugewright.yaml_reader import Source

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Origins:
    """Finds places in the file a spec was read from."""

    source: Source

    def at(self, path: Path, key: bool = False) -> Origin:
        """The place of a value, or of its key."""
        return self.source.origin_at(path, key)

    def formula(self, text: str, path: Path) -> Formula:
        """A formula with its place; the reader has made sure that it parses."""
        return Formula(parse_formula(text), text, self.source.origin_in(path, 0))
