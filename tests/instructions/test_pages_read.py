"""What readers stumble over: words that contradict one another, name what isn't there, or leave out what is needed."""

import re

import pytest

from gaugewright.grading.model import PickUp
from gaugewright.instructions.nodes import Figure, Table
from gaugewright.instructions.row_end_words import row_ends_taken
from instructions.specs import SPECS, Told, document, graded, told


def texts(name: str, chapter: str = "") -> list[str]:
    return [one.text for one in told(document(name)) if not chapter or one.chapter == chapter]


def all_text(name: str, chapter: str = "") -> str:
    return " ".join(texts(name, chapter))


def chapters(name: str) -> list[Told]:
    titles = {piece.title for piece in graded(name).design.pieces}
    return [one for one in told(document(name), drawings=False) if one.chapter in titles]


def test_a_pattern_tells_which_ch_counts_and_what_it_stands_on() -> None:
    pattern = all_text("wrap", "Stitch patterns")
    scallops, seed = pattern[: pattern.index("Seed stitch")], pattern[pattern.index("Seed stitch") :]
    assert "Each ch between sts counts as a st." in scallops and "Each ch between sts" not in seed
    assert pattern.count("Its first row is worked on a plain row of sc.") == 2
    assert "the plain row that its first row is worked on" in all_text("wrap", "Gauge")


def test_a_ch_that_counts_in_pattern_rows_is_left_out_of_the_note_that_none_does() -> None:
    assert "but not for the pattern rows whose ch counts as a st" in all_text("wrap", "Notes")
    assert "but not for the pattern rows" not in all_text("shawl", "Notes")


def test_no_plain_row_is_printed_where_none_is_worked() -> None:
    """Every row of the wrap but the first is in a pattern; a piece with plain rows beside its pattern still has its plain row."""
    assert not [one for one in chapters("wrap") if "Plain row" in one.label]
    assert "Plain" not in all_text("wrap", "Notes")
    assert [one for one in chapters("stitch-patterns") if "Plain row" in one.label]
    for one in chapters("stitch-patterns"):
        assert "plain row below" not in one.text


def test_the_fabrics_of_a_piece_are_told_to_its_end() -> None:
    about = next(one.text for one in chapters("wrap") if one.text.startswith("Make 1."))
    assert [m for m in re.findall(r"Seed stitch|Scallops", about)] == ["Seed stitch", "Scallops", "Seed stitch"]
    assert "then again in sc" in next(one.text for one in chapters("cowl") if one.text.startswith("Make 1."))


def test_stripes_are_not_said_to_go_on_where_a_section_has_its_own_colour() -> None:
    stripes = next(one.text for one in chapters("cowl") if one.label == "Stripes:")
    assert "to the end of the piece" not in stripes
    assert "work Rnds 1 to 3 with Slate and Rnds 27 (28, 30) to 29 (30, 32) with Slate, in place of the stripes there" in stripes
    assert "work Row 1 with Oat" in next(one.text for one in chapters("own rows") if one.label == "Stripes:")


@pytest.mark.parametrize("name", [name for name in SPECS if "stripes:" in SPECS[name]])
def test_every_word_and_dash_of_a_table_of_stripes_is_explained(name: str) -> None:
    for table in (block for block in document(name).blocks if isinstance(block, Table) and block.caption.endswith("stripes")):
        cells = [cell for row in table.rows for cell in row]
        last = [row[-1] for row in table.rows]
        assert any("fasten off" in cell for cell in last) and "–" not in last
        assert any("–" in cell for cell in cells) == ("A dash" in table.note)
        assert any("go on" in cell for cell in last) == ("“go on”" in table.note)


def captions(name: str) -> dict[str, str]:
    keys = {piece.key for piece in graded(name).design.pieces}
    return {block.name: block.caption for block in document(name).blocks if isinstance(block, Figure) and block.name in keys}


@pytest.mark.parametrize("name", SPECS)
def test_a_drawing_is_before_sewing_only_where_a_piece_is_sewn(name: str) -> None:
    design = graded(name).design
    for key, caption in captions(name).items():
        seams = any(key in {end.piece for end in (seam.join, *seam.to)} for seam in design.seams)
        sewn = seams or any(key in (one.piece, one.to) for one in design.attachments) or design.piece(key).start.sewn or design.piece(key).grid is not None
        round_motifs = "round the joined motifs" in caption
        assert ("before sewing" in caption) == sewn and ("as worked" in caption) == (not sewn and not round_motifs)
        assert round_motifs == any(edge == "rim" for _, edge in design.piece(key).start.edges)


@pytest.mark.parametrize("name", SPECS)
def test_markers_are_listed_where_they_are_used(name: str) -> None:
    """The notes have rows marked at both ends; all other markers are told in the chapters."""
    line = next(text for text in texts(name, "Materials") if "yarn needle" in text)
    used = any("marker" in one.text for one in told(document(name), drawings=False) if one.chapter != "Materials")
    assert ("marker" in line) == used


@pytest.mark.parametrize(("name", "markers"), [("cowl", ""), ("hat", "A stitch marker"), ("raglan", "4 stitch markers"), ("mitten", "A stitch marker")])
def test_so_many_markers_are_listed_as_move_at_a_time(name: str, markers: str) -> None:
    line = next(text for text in texts(name, "Materials") if "yarn needle" in text)
    assert line.startswith(f"{markers} and" if markers else "A yarn needle"), line


@pytest.mark.parametrize("name", SPECS)
def test_rounds_are_spoken_of_only_where_there_are_some(name: str) -> None:
    rounds = any(piece.worked != "rows" for plans in graded(name).grading.plans.values() for piece in plans)
    rows = [row for block in document(name).blocks if isinstance(block, Table) for row in block.rows]
    assert rounds or not any(row[0] in ("rnd", "rnds") for row in rows)


@pytest.mark.parametrize("name", ["bag", "colour-blocks"])
def test_the_yarn_of_a_block_is_not_told_to_be_cut_each_row(name: str) -> None:
    notes = all_text(name, "Notes")
    assert "Cut the old colour once" not in notes
    assert "nor that of a block which goes on in the next row, cut it" in notes or "last pull" not in notes


def test_row_ends_that_take_several_are_counted() -> None:
    text = next(one.text for one in chapters("shawl") if "pick-up row" in one.label)
    assert "In 64 (99, 134) of the 66 (102, 138) row ends work 2 sc, in the others 1." in text
    assert "about 33 (50, 68) sc in each of the four parts" in text
    assert "the edges it is picked up on" not in all_text("shawl") and "the edge it is picked up on" in all_text("shawl")


@pytest.mark.parametrize(("along", "rows"), [(130, 66), (66, 130), (7, 3), (12, 4), (9, 2)])
def test_what_row_ends_take_comes_to_the_stitches(along: int, rows: int) -> None:
    (others, taken), = row_ends_taken((PickUp("a", "b", along, rows),)).items()
    assert taken.some * (others + 1) + (rows - taken.some) * others == along and 0 < taken.some <= rows == taken.rows


def test_a_triangle_s_letters_close_and_its_last_row_is_explained() -> None:
    """Two halves of the lower edge and the long edge make a triangle with its depth, in every size."""
    table = next(block for block in document("shawl").blocks if isinstance(block, Table) and block.caption.startswith("Shawl: meas"))
    cm = {row[0][0]: [float(cell.replace("½", ".5")) for cell in row[1:]] for row in table.rows if row[0].endswith("cm")}
    for width, depth, lower in zip(cm["A"], cm["B"], cm["C"], strict=True):
        assert (width / 2) ** 2 + depth**2 == pytest.approx(lower**2, rel=0.02)
    end = next(one.text for one in chapters("shawl") if one.label == "End:" and "Laid flat" in one.text)
    assert "each half of the lower edge measures 64.5 (99.5, 135) cm" in end and "its sts alone would measure 66.5 (102.5, 138.5) cm" in end


def test_inc_is_defined_for_more_than_two() -> None:
    how = next(row[2] for block in document("shawl").blocks if isinstance(block, Table) for row in block.rows if row[0] == "inc")
    assert "as many as are told" in how
