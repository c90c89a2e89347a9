"""The numbers in the words, worked out again from the words alone and held to the graded rows."""

import re
from collections.abc import Iterator

import pytest

from gaugewright.design.model import Crown, Motif
from gaugewright.grading.model import CentreStart, ChainStart, GradedPiece, Row
from gaugewright.instructions.nodes import Table
from instructions.specs import SPECS, Told, at_size, document, graded, pieces_told, sentences

EVERY = tuple(SPECS)
MANY = tuple(name for name in EVERY if name not in ("by hand", "without sizes") and " in one" not in name)


def each_piece(name: str, sizes: tuple[str, ...] = ()) -> Iterator[tuple[str, str, int, GradedPiece, list[Told]]]:
    """Each piece in each size: key, size, the size's place, the graded piece, what its chapter tells that size."""
    labels = sizes or graded(name).bodies.labels
    chapters = pieces_told(name, sizes)
    for key, sized in graded(name).grading.pieces.items():
        for index, (size, piece) in enumerate(sized.pick(labels).items()):
            yield key, size, index, piece, [for_size(one, index, labels) for one in chapters[key] if size in served(one.text, labels)]


def for_size(one: Told, index: int, labels: tuple[str, ...]) -> Told:
    """What is told to one size."""
    return Told(one.chapter, at_size(one.label, index, len(labels)), at_size(one.text, index, len(labels)))


def served(text: str, labels: tuple[str, ...]) -> set[str]:
    """The sizes a text is for: all, unless it begins by naming some."""
    named = re.match(r"Sizes? (.*?) only:", text)
    return in_words(named[1], labels) if named else set(labels)


def in_words(sizes: str, labels: tuple[str, ...]) -> set[str]:
    """The sizes that a list of sizes names; a table's line may be for all of them."""
    if sizes == "all":
        return set(labels)
    found: set[str] = set()
    for part in re.split(r", | and ", sizes):
        first, _, last = part.partition(" to ")
        found |= set(labels[labels.index(first) : labels.index(last or first) + 1])
    return found


def test_sizes_named_are_understood() -> None:
    assert served("Sizes S to L and 2X only: Work on.", ("XS", "S", "M", "L", "1X", "2X")) == {"S", "M", "L", "2X"}


@pytest.fixture(params=EVERY)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def each_told(name: str) -> Iterator[tuple[str, str, int, GradedPiece, list[Told]]]:
    """Each piece in the pattern of all sizes, and in the copies for the smallest and the largest alone."""
    labels = graded(name).bodies.labels
    yield from each_piece(name)
    for alone in dict.fromkeys((labels[0], labels[-1])) if len(labels) > 1 else ():
        yield from each_piece(name, (alone,))


def all_rows(piece: GradedPiece) -> tuple[Row, ...]:
    """The rows from the bottom to the top, of one side where the piece divides."""
    return (*piece.main.rows, *(piece.strips[-1].rows if len(piece.strips) > 1 else ()))


def steps_in(cell: str) -> dict[int, int]:
    """Stitches by row in words such as "3 sts on Row 29; 1 st on Rows 30 to 32 and 35"."""
    found: dict[int, int] = {}
    for group in cell.replace("\u00a0", " ").split("; ") if cell != "–" else ():
        said = re.fullmatch(r"(\d+) sts? on Rows? (.+)", group)
        assert said, cell
        for part in re.split(r", | and ", said[2]):
            first, _, last = part.partition(" to ")
            found |= {row: int(said[1]) for row in range(int(first), int(last or first) + 1)}
    return found


def test_steps_are_read_as_they_are_written() -> None:
    assert steps_in("3 sts on Row 29; 1 st on Rows 30 to 32 and 35") == {29: 3, 30: 1, 31: 1, 32: 1, 35: 1}
    assert steps_in("–") == {}


BLOCK = re.compile(r"In Row (\d+) leave (\d+) sts at both edges: nothing else is shaped")


def test_edge_tables_say_what_each_row_loses(name: str) -> None:
    """Whatever rows from a section's first to its last lose is in the tables, and nothing else."""
    for key, sized in graded(name).grading.pieces.items():
        title = graded(name).design.piece(key).title
        tables = [
            block for block in document(name).blocks
            if isinstance(block, Table) and any(": leave" in head or ": decrease" in head for head in block.header)
            and re.match(rf"{re.escape(title)}(: |, (first|second) side: )", block.caption)
        ]
        for size, piece in sized.items() if tables else ():
            lost: dict[str, dict[int, int]] = {}
            for one in pieces_told(name)[key]:
                for block_row, left in BLOCK.findall(at_size(one.text, sized.labels.index(size), len(sized))):
                    lost[""] = {int(block_row): 2 * int(left)}
            for table in tables:
                half = next((which for which in ("first side", "second side") if which in table.caption), "")
                line = next(row for row in table.rows if row[0] == size)
                for head, cell in zip(table.header, line, strict=True):
                    if ": leave" in head or ": decrease" in head:
                        for row, stitches in steps_in(cell).items():
                            losses = lost.setdefault(half, {})
                            losses[row] = losses.get(row, 0) + stitches * (2 if "both edges" in table.caption else 1)
            _held_to_rows(lost, piece, f"{key} {size}")


def test_what_is_said_of_a_division_is_where_the_sides_begin(name: str) -> None:
    """Sides and centre add up to the last row below them, and the second side begins after the first and the centre."""
    for key, size, _, piece, told in each_told(name):
        if len(piece.strips) == 1:
            continue
        main, *sides = piece.strips
        divided = next(one.text for one in told if one.label == "Divide:")
        found = re.search(r"From Row (\d+) on, .* over (\d+) sts(?:; the (?:(\d+) sts|st) between)?", divided)
        assert found, divided
        centre = 0 if "between" not in divided else int(found[3] or 1)
        assert int(found[1]) == len(main.rows) + 1
        assert 2 * int(found[2]) + centre == main.last_count, f"{key} {size}: {divided}"
        second = next(one.text for one in told if "With the same face towards you" in one.text)
        skipped = re.search(r"skip the (?:(\d+) sts|st) next", second)
        assert (int(skipped[1] or 1) if skipped else 0) == centre, f"{key} {size}: {second}"
        assert sorted(side.start.first for side in sides) == [0, int(found[2]) + centre]  # type: ignore[union-attr]


def _held_to_rows(lost: dict[str, dict[int, int]], piece: GradedPiece, place: str) -> None:
    for which, strip in zip(("", "first side", "second side"), piece.strips, strict=False):
        first = len(piece.main.rows) if which else 0
        counts = (strip.start.stitches, *strip.counts())
        worked = {first + row: before - after for row, (before, after) in enumerate(zip(counts, counts[1:], strict=False), start=1) if before > after}
        assert lost.get(which, {}) == worked, f"{place} {which}"


def test_stitch_counts_at_the_end_of_rows(name: str) -> None:
    seen = 0
    for key, size, _, piece, told in each_told(name):
        for one in told:
            row = re.search(r"(?:Row|Rnd) (\d+)[:( ]|(?:Row|Rnd) (\d+)$", one.label + " ")
            count = re.search(r"— (\d+) sts?\.$", one.text)
            if row and count:
                seen += 1
                made = all_rows(piece)[int(row[1] or row[2]) - 1].makes
                assert made == int(count[1]), f"{key} {size}: {one.label} {one.text}"
    assert seen


def test_the_rows_told_are_all_the_rows(name: str) -> None:
    for key, size, _, piece, told in each_piece(name):
        ends = [int(number) for one in told for number in re.findall(r"(?:Row|Rnd) (\d+)", one.label)]
        ends += [int(cell) for cell in _spread_rows(name, key, size)]
        assert max(ends) == len(all_rows(piece)), f"{key} {size}"


def _tables(name: str, key: str) -> list[Table]:
    title = graded(name).design.piece(key).title
    return [block for block in document(name).blocks if isinstance(block, Table) and block.caption.startswith(f"{title}: ")]


def _spread_rows(name: str, key: str, size: str) -> list[str]:
    return [row[1] for table in _tables(name, key) if table.header[1] == "Rnd" for row in _lines(name, table, size)]


def _lines(name: str, table: Table, size: str) -> list[tuple[str, ...]]:
    """A table's lines that are for a size."""
    return [row for row in table.rows if size in in_words(row[0], graded(name).bodies.labels)]


def test_the_foundation_gives_the_first_row(name: str) -> None:
    for key, size, _, piece, told in each_told(name):
        if not isinstance(piece.main.start, ChainStart):
            continue
        chains = next(int(found[1]) for one in told if (found := re.search(r"With [^,]+, (?:join with a sl st .*, and )?ch (\d+)[.:]", one.text)))
        first = next(one.text for one in told if re.match(r"(Row|Rnd) 1\b", one.label))
        makes = piece.main.rows[0].makes
        if into := re.search(r"in the (\d+)(?:st|nd|rd|th) ch from the hook( \(the skipped ch count)?", first):
            assert chains - int(into[1]) + 1 + bool(into[2]) == makes, f"{key} {size}: {first}"
        else:
            assert chains == makes, f"{key} {size}: {first}"


def test_a_centre_holds_the_first_round(name: str) -> None:
    for key, size, _, piece, told in each_told(name):
        if isinstance(piece.main.start, CentreStart):
            first = next(one.text for one in told if one.label.startswith(("Rnd 1", "Row 1")))
            found = re.search(r"(?:^|, )(\d+) [a-z ]+ in the ring", first)
            if spaced := re.search(rf"\*(\d+ )?{STITCH} in the ring, ch \d; rep from \* (\d+ more times|once more)", first):
                assert (int(spaced[1] or 1) + 1) * _times(spaced[2]) == piece.main.rows[0].makes, f"{key} {size}: {first}"
                continue
            assert found and int(found[1]) == piece.main.rows[0].makes, f"{key} {size}: {first}"


def test_what_is_drawn_together_is_the_last_round(name: str) -> None:
    for key, size, _, piece, told in each_told(name):
        for one in told:
            if found := re.search(r"through the (\d+) sts of the last rnd", one.text):
                assert int(found[1]) == piece.main.last_count, f"{key} {size}: {one.text}"


def test_picked_up_stitches_add_up(name: str) -> None:
    for key, size, _, piece, told in each_told(name):
        for one in told:
            if "pick-up r" in one.label:
                parts = re.findall(r"(?:[:;]|edge:|reverse:) (\d+) \w+ (?:along|across|spread)", one.text)
                round_it = re.findall(r"in each of the (\d+) (?:sts skipped|ch along)", one.text)
                corners = len(re.findall(r"in the (?:other )?corner", one.text)) if round_it else 0
                if (rim := _round_rim(one.text)) is not None:
                    assert rim == piece.main.rows[0].makes, f"{key} {size}: {one.text}"
                    continue
                assert sum(map(int, parts + round_it)) + corners == piece.main.rows[0].makes, f"{key} {size}: {one.text}"


def _round_rim(text: str) -> int | None:
    """Stitches round joined motifs, added up from the words: those along each side, over each join, at each corner."""
    sides = re.search(r"(?:in each of the (\d+) sts between|(\d+) \w+ spread evenly over).* along each of the (\d+) sides", text)
    if sides is None:
        return None
    each, count = int(sides[1] or sides[2]), int(sides[3])
    more = re.search(r"more along (\d+) of these sides", text)
    corners = re.search(r"at each of the (\d+) outer corners", text)
    assert corners is not None
    joins = re.search(r"over each of the (\d+) joins", text)
    ends = int(joins[1]) + int(corners[1]) if joins else count  # where no number is told, each side still ends in one
    assert ends == count
    return each * count + (int(more[1]) if more else 0) + ends


def across(piece: GradedPiece) -> tuple[int, ...]:
    """Stitches after each row, as shaping leaves them: a stitch pattern may have more or fewer on its way."""
    return tuple(row.across for row in piece.main.rows)


def test_shaping_rows_of_the_tables_are_those_of_the_rows(name: str) -> None:
    seen = 0
    for key, sized in graded(name).grading.pieces.items():
        for table in _tables(name, key):
            if "fall" not in table.caption:
                continue
            column = next(i for i, head in enumerate(table.header) if "fall on" in head)
            for row in table.rows:
                counts = (0, *across(sized[row[0]]))
                numbers = [] if row[column] == "–" else [int(n) for n in row[column].split(", ")]
                before, after = int(row[-2]), int(row[-1])
                seen += 1
                if numbers:
                    inside = range(numbers[0], numbers[-1] + 1)
                    assert [n for n in inside if counts[n] != counts[n - 1]] == numbers, f"{key} {row}"
                    assert (counts[numbers[0] - 1], counts[numbers[-1]]) == (before, after), f"{key} {row}"
                else:
                    assert before == after
    assert seen or not re.search(r"taper", SPECS[name]) or name in ("balloon", "back-loop-rib")


def test_a_taper_that_changes_nothing_is_told_as_plain_rows() -> None:
    texts = pieces_told("corners")["unshaped"]
    assert not [one for one in texts if re.search(r"\binc\b|\bdec\b|fall", one.text, re.IGNORECASE) or "Inc" in one.label]
    assert [one.label for one in texts if one.label.startswith("To the end")] == ["To the end of Row 6:", "To the end of Row 8:"]


def test_a_size_that_changes_nothing_has_its_line_in_the_table() -> None:
    [table] = [table for table in _tables("corners", "some") if "fall" in table.caption]
    assert table.rows[0][0] == "S" and table.rows[0][1:].count("–") >= 1 and table.rows[0][-2:] == ("41", "41")


RATE = re.compile(
    r"(?<!then )on the next (?P<next>row|rnd)(?! and)|then on the next (?P<nextly>row|rnd)(?! by| and)|on each of the next (?P<each>\d+)|once(?: more)?,? after (?P<after>\d+) plain r"
    r"|on every (?P<gap>\d+) r\w+, (?:(?P<times>\d+) times|(?P<once>once))"
    r"|after (?P<even>\d+) and (?P<even2>\d+) plain r\w+ by turns, (?P<turns>\d+) times"
    r"|after (?P<first>\d+) plain r\w+ and then on the next \w+ by turns, (?P<lturns>\d+) times"
    r"|on the next \w+ and then after (?P<then>\d+) plain r\w+ by turns, (?P<nturns>\d+) times"
)


def positions(schedule: str) -> list[int]:
    """The rows that a schedule in words falls on, counted from where it begins."""
    row, found = 0, []

    def go(*gaps: int) -> None:
        nonlocal row
        for gap in gaps:
            row += gap
            found.append(row)

    for rate in RATE.finditer(schedule):
        number = {key: int(value) for key, value in rate.groupdict().items() if value and value.isdigit()}
        if rate["next"] or rate["nextly"]:
            go(1)
        elif "each" in number:
            go(*[1] * number["each"])
        elif "after" in number:
            go(number["after"] + 1)
        elif "gap" in number:
            go(*[number["gap"]] * number.get("times", 1))
        elif "turns" in number:
            go(*[(number["even"], number["even2"])[i % 2] + 1 for i in range(number["turns"])])
        elif "lturns" in number:
            go(*[(number["first"], 0)[i % 2] + 1 for i in range(number["lturns"])])
        elif "nturns" in number:
            go(*[(0, number["then"])[i % 2] + 1 for i in range(number["nturns"])])
        else:
            raise AssertionError(schedule)
    return found


def test_a_schedule_in_words_is_read_as_it_is_meant() -> None:
    assert positions("on every 4 rows, 3 times, then on every 5 rows, 2 times") == [4, 8, 12, 17, 22]
    assert positions("after 1 plain row and then on the next row by turns, 5 times in all, then on the next row") == [2, 3, 5, 6, 8, 9]
    assert positions("on the next row, then once more after 2 plain rows") == [1, 4]
    assert positions("after 1 and 2 plain rnds by turns, 3 times in all") == [2, 5, 7]
    assert positions("on the next row and then after 2 plain rows by turns, 4 times in all") == [1, 4, 5, 8]


def test_schedules_in_words_fall_on_the_shaped_rows(name: str) -> None:
    """Read as the notes say: counted from the shaping row before, or from the beginning of the section."""
    for key, size, _, piece, told in each_told(name):
        counts = across(piece)
        done = 1  # the first row is told by itself, whatever section it belongs to
        for one in told:
            phrase = re.search(r"Work the (inc|dec) (?:row|rnd) (on .*?|once.*?|after .*?)(?:\. |$)", one.text)
            end = re.search(r"(?:Row|Rnd) (\d+)", one.label)
            if phrase:
                assert end
                wanted = [done + n for n in positions(phrase[2])]
                changed = [n + 1 for n in range(done, int(end[1])) if counts[n] != counts[n - 1]]
                assert wanted == changed, f"{key} {size}: {one.label} {one.text}"
            if end:
                done = int(end[1])
            done = max([done, *(int(n) for n in _done_by_table(name, key, size, one))])


def _done_by_table(name: str, key: str, size: str, one: Told) -> list[str]:
    """A table of shaped rounds stands for steps: its last round is where the next section begins."""
    for table in _tables(name, key):
        if table.header[1] == "Rnd" and one.text == table.caption.replace("\u00a0", " "):
            return [row[1] for row in _lines(name, table, size)]
    return []


STITCH = r"(?:[Ss]l st|\w+)"


def _times(again: str) -> int:
    """How often in all: "2 more times" is three times."""
    return 2 if again == "once more" else int(again.split()[0]) + 1


def worked(text: str) -> tuple[int, int]:
    """The stitches that a round's words use and make, groups between asterisks as often as they say."""
    text = re.sub(r", in (back|front) loops", "", text)
    # A corner's middle is a st, or a space that counts as one.
    text = re.sub(rf"\((\d+ )?{STITCH}, ch \d, (\d+ )?{STITCH}\) in the corner space", lambda one: f"corner of {int(one[1] or 1) + 1 + int(one[2] or 1)}", text)
    text = re.sub(rf"(\d+ )?{STITCH} in the corner st", lambda one: f"corner of {int(one[1] or 1)}", text)

    def plain(part: str) -> tuple[int, int]:
        uses = makes = 0
        for piece in filter(None, (p.strip() for p in part.split(","))):
            if found := re.fullmatch(rf"2 {STITCH} in next st", piece):
                uses, makes = uses + 1, makes + 2
            elif found := re.fullmatch(rf"2 {STITCH} in each of next (\d+) sts", piece):
                uses, makes = uses + int(found[1]), makes + 2 * int(found[1])
            elif found := re.fullmatch(r"corner of (\d+)", piece):
                uses, makes = uses + 1, makes + int(found[1])
            elif found := re.fullmatch(r"\w+2tog(?: (\d+) times)?", piece):
                uses, makes = uses + 2 * int(found[1] or 1), makes + int(found[1] or 1)
            elif found := re.fullmatch(rf"{STITCH} in (?:each of (?:next|last) (\d+) sts|(?:next|last) st)", piece):
                uses, makes = uses + int(found[1] or 1), makes + int(found[1] or 1)
            else:
                raise AssertionError(f"{piece!r} of {text!r}")
        return uses, makes

    uses = makes = 0
    while found := re.search(r"(?:then )?(\*{1,2})([^*;]+); work from \1 (\d+) times in all", text):
        group, times = plain(found[2]), int(found[3])
        assert times > 1
        uses, makes = uses + group[0] * times, makes + group[1] * times
        text = text[: found.start()] + text[found.end() :]
    while found := re.search(r"\*([^*;]+); rep from \* (\d+ more times|once more)", text):
        group, times = plain(found[1]), _times(found[2])
        uses, makes = uses + group[0] * times, makes + group[1] * times
        text = text[: found.start()] + text[found.end() :]
    rest = plain(text)
    return uses + rest[0], makes + rest[1]


def test_a_round_in_words_is_read_as_it_is_meant() -> None:
    assert worked("sc in each of next 2 sts, *sc in each of next 3 sts, 2 sc in next st; work from * 4 times in all, 2 sc in next st") == (19, 24)
    assert worked("*hdc2tog, hdc in next st; work from * 3 times in all, then **hdc2tog, hdc in each of next 2 sts; work from ** 2 times in all") == (17, 12)
    assert worked("dc in each of next 5 sts, (2 dc, ch 2, 2 dc) in the corner space, *dc in next st, (dc, ch 1, dc) in the corner space; rep from * once more, dc in last st") == (11, 19)
    assert worked("*sc in next st, 3 sc in the corner st; rep from * 3 more times") == (8, 16)


def _own_stitch(name: str, key: str) -> int:
    """1 where the turning chain is itself the first stitch, which the words after it then leave out: not in a crown."""
    design = graded(name).design
    piece = design.piece(key)
    return int(design.fabric(piece.fabric).counts and not any(isinstance(section, (Crown, Motif)) for section in piece.sections))


def test_spread_rounds_use_and_make_what_the_rows_do(name: str) -> None:
    seen = 0
    for key, sized in graded(name).grading.pieces.items():
        for table in _tables(name, key):
            if table.header[1] != "Rnd":
                continue
            for size, (_, number, words, count) in ((size, row) for size in sized.labels for row in _lines(name, table, size)):
                counts = across(sized[size])
                before, after = counts[int(number) - 2], counts[int(number) - 1]
                assert int(count) == after
                if " in each " in words and "next" not in words:
                    assert before == after
                else:
                    own = _own_stitch(name, key)
                    assert worked(words.replace("\u00a0", " ")) == (before - own, after - own), f"{key} {size} {number}"
                seen += 1
    for key, size, _, piece, told in each_told(name):
        counts = across(piece)
        for one in told:
            if (at := re.fullmatch(r"Rnd (\d+):", one.label)) and "next" in one.text:
                words = re.sub(r"^(Sizes? [\w ]+ only: )?(With [\w ]+: )?([Cc]h \d+ \([^)]*\), )?", "", one.text).partition(", join")[0].partition(", do not join")[0]
                number, own = int(at[1]), _own_stitch(name, key)
                assert worked(words) == (counts[number - 2] - own, counts[number - 1] - own), f"{key} {size}: {one.text}"
                seen += 1
    assert seen or "rounds:" not in SPECS[name] or name in ("picked up", "picked-up-rounds", "taper-in-pairs") or "raglan" in SPECS[name] or name in CORNERED or name.startswith("vest") or name.startswith(("bodies", "patterned"))


CORNERED = ("v-neck-bands", "square-neck-band", "front-band-with-corners", "bordered-panel", "blanket-border", "triangle-shawl", "unlike corners", "vest")


@pytest.mark.parametrize("name", CORNERED, indirect=True)
def test_corner_tables_say_what_each_row_gains_and_loses_and_leaves(name: str) -> None:
    """Each corner's column stands for as many corners as the heading says; the last column counts every row but the first."""
    seen = 0
    for key, size, _, piece, _ in each_told(name):
        title = graded(name).design.piece(key).title
        rows, corners = piece.main.rows, graded(name).grading.plans[key][size].corners
        changes, told = dict.fromkeys(range(2, len(rows) + 1), 0), []
        for table in (block for block in document(name).blocks if isinstance(block, Table) and block.caption == f"{title}: corners"):
            line = next(row for row in table.rows if row[0] == size)
            told += [int(count) for count in line[-1].split(", ")]
            for head, cell in zip(table.header[1:-1], line[1:-1], strict=True):
                kind = re.sub(r"^each | \d+$", "", head.partition(":")[0])
                times = sum({"point": "point", "square": "corner", "underarm": "underarm corner", "hem": "outer corner" if name == "blanket-border" else "corner at the hem", "tip": "tip", "neck start": "start of the neck", "back neck": "end of the back neck"}[c.site.kind] == kind for c in corners)
                for row, stitches in steps_in(cell.replace("Rnd", "Row")).items():
                    changes[row] += (times if head.startswith("each ") else 1) * stitches * (-1 if head.endswith("lose") else 1)
        if told:
            made = [row.makes for row in rows]
            assert [after - before for before, after in zip(made, made[1:], strict=False)] == list(changes.values()), f"{key} {size}"
            assert told == made[1:]
            seen += 1
    assert seen


@pytest.mark.parametrize("name", MANY, indirect=True)
def test_one_size_alone_tells_that_sizes_numbers(name: str) -> None:
    """Each sentence of a copy for one size stands in the pattern of all sizes, with that size's numbers."""
    labels = graded(name).bodies.labels
    for index in {0, len(labels) // 2, len(labels) - 1}:
        size = labels[index]
        for key, texts in pieces_told(name, (size,)).items():
            every = [for_size(one, index, labels) for one in pieces_told(name)[key]]
            known = {without_label(one) for one in sentences(every)}
            told_so = " ".join(one.text for one in every).lower()
            strange = [one for one in sentences(texts) if one != size and without_label(one) not in known and not _told_elsewhere(one, told_so)]
            assert strange == [], f"{key} in {size}"


def without_label(sentence: str) -> str:
    """A sentence without what it begins with where it is the first of its step, or is for some sizes only."""
    return re.sub(r"^(Colour: |Check: |Marker: |Sides: |Dec at a marker: |Inc at a marker: |Wedge: |Further short rows: |Row \d+: (?=Without a ch|A plain row)|Sizes? [^:]* only: )+", "", sentence)


def _told_elsewhere(sentence: str, told_so: str) -> bool:
    """What a copy tells in other words: each of these is held to the rows by a test above.

    Shaped rounds and schedules of unlike structure are sentences in a copy and lines of a table in the
    whole, and so are the steps of shaped edges; a V may leave a stitch at its foot in some sizes only; a neck may be picked up stitch for stitch in one size and
    not in others; a drawing's letters are given to the measures of the size that is drawn; a table whose sizes
    agree has one column for all; a width is checked where it is wide enough in every size.
    """
    if re.match(r"— \d+ sts?\.$|cm$|in$|sts$|g$|m$|Rows$|Rnds$|Yarn$|carry$|cut$|go on$|\d [A-Z]\w+$|\d+( to \d+)?$|[A-Z] [A-Z]\w+( \w+)*$|Join with a .* work (along the edge|all round the opening)|Then work plain \w+ to the end of R\w+ \d+\.$|To the end of R\w+ \d+: Work plain \w+\.$", sentence):
        return True
    shaped = re.match(r"Rnd \d+: (?:With \w+: )?(?:[Cc]h .*?\), )?(.*), (?:join|do not join)", sentence) or re.search(r"Work the (?:inc|dec) \w+ (.*)\.$", sentence)
    if sentence == "Make 1.":
        return "make 1, alike" in told_so  # a single motif, where other sizes have many
    if "between the corners of a motif" in sentence:
        return "sides of motifs that lie outside" in told_so  # over joins, which a single motif has none of
    if re.search(r"of the neck is worked by itself|With the same face towards you", sentence):
        return True
    begun = re.match(r"R\w+ 1[^:]*: With \w+(,? .*)\.$", sentence)
    if begun and f"with the colour of rnd 1{begun[1].lower()}" in told_so:  # stripes may begin with another yarn in each size
        return True
    if steps := re.search(r"(?:leave|decrease) (\d+ sts? on Rows? .*)\.$", sentence):
        return f" {steps[1].lower()} " in f" {told_so} "
    if measured := re.match(r"The piece now measures (.*) from", sentence):
        return f"the piece measures {measured[1].lower()} from" in told_so
    if re.match(r"(Check: )?After Row 4 the piece should be|Up to 2 % more or less", sentence):
        return "the piece should be" not in told_so  # in a smaller size it is too narrow to tell by
    if several := re.match(r"Along the (\w+) edge of the (.*?), ((?:in|pass) .*)\.$", sentence):  # edges that agree in this size are told together
        names = re.split(r", | and ", several[2])
        return len(names) > 1 and all(f"along the {several[1]} edge of the {name.lower()}, {several[3]}." in told_so for name in names)
    if re.match(r"Pattern|From (Row|Rnd) \d+ on|(Size \w+ only: )?At the edge|At each edge|Here there is no room|Keep to the pattern", sentence):
        return "repeats of the pattern" in told_so  # where sizes differ, a table tells what a sentence tells of one size
    return bool(shaped) and all(part in told_so for part in re.split(r", then ", shaped[1].lower()))


@pytest.mark.parametrize("name", MANY, indirect=True)
def test_a_copy_for_one_size_has_no_lists(name: str) -> None:
    from instructions.specs import LIST, told

    size = graded(name).bodies.labels[-1]
    assert [one for one in told(document(name, (size,))) if LIST.search(f"{one.label} {one.text}")] == []
