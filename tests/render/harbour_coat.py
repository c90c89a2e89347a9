"""A made-up pattern in nine sizes that strains the typesetting: long lists, long tables, drawings."""

from gaugewright.drawings.primitives import Drawing, Label, Polygon, Polyline
from gaugewright.instructions.nodes import (
    Block,
    Document,
    Figure,
    Heading,
    Paragraph,
    Span,
    Table,
    plain,
)

SIZES = ("XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X")
NINE = ("right",) * 9


def size_list(first: int, step: int) -> str:
    """`40 (43, 46, ...)`, held together inside the brackets."""
    rest = ",\u00a0".join(str(first + step * n) for n in range(1, 9))
    return f"{first}\u00a0({rest})"


def row(label: str, words: str, count: str = "") -> Paragraph:
    """A step with its stitch count."""
    spans = [Span(words, fact="words")]
    if count:
        spans += [Span(" –\u00a0"), Span(count + "\u00a0sts", "count"), Span(".")]
    return Paragraph(tuple(spans), "step", label)


def piece_drawing(width: float, height: float, hatches: tuple[str, ...]) -> Drawing:
    """An outline in bands, dimension lines with labels, one of them turned."""
    band = (height - 24) / len(hatches)
    items = [
        Polygon(
            ((22, 8 + n * band), (width - 22, 8 + n * band), (width - 22, 8 + (n + 1) * band), (22, 8 + (n + 1) * band)),
            fill="#e6e9e4",
            hatch=hatch,  # type: ignore[arg-type]
        )
        for n, hatch in enumerate(hatches)
    ]
    labels = [Label(width / 2, 8 + band * (n + 0.5), f"{chr(65 + n)}", 3.4, "middle", strong=True) for n in range(len(hatches))]
    lines = [
        Polyline(((22, height - 11), (width - 22, height - 11))),
        Polyline(((14, 8), (14, height - 16)), dash="dashed"),
    ]
    words = [
        Label(width / 2, height - 6, "61.5 (66, 71, 76) cm", anchor="middle"),
        Label(11, height / 2, "58 (59, 60) cm", anchor="middle", angle=90),
        Label(width - 20, 12, "shoulder"),
    ]
    return Drawing(width, height, (*items, *lines, *labels, *words), "Piece", "An outline with its measures.")


def measures_table() -> Table:
    lengths = [(name, 100.5 + 3 * n, 40 + n) for n, name in enumerate(("Finished bust, closed", "Length from the shoulder", "Neck to wrist", "Upper arm", "Armhole depth"))]
    rows = tuple((name, *(f"{cm + 7.5 * k:.1f} / {inch + 3 * k}⅝" for k in range(9))) for name, cm, inch in lengths)
    return Table(
        "Finished measurements, cm / in",
        ("Size", *SIZES),
        rows,
        ("left", *NINE),
        note="Each length is rounded from the same millimetres: centimetres to 0.5, inches to ¼ or, under 5 in, to ⅛.",
    )


def counts_table() -> Table:
    rows = tuple((f"Row {n}", *(str(40 + 4 * k + n % 7) for k in range(9))) for n in range(1, 61))
    return Table("Stitches after each row", ("", *SIZES), rows, ("left", *NINE))


def words_table() -> Table:
    terms = (
        ("ch", "chain"),
        ("hdc", "half double crochet: yarn over, insert hook, yarn over and pull up a loop, yarn over and pull through all three loops on the hook"),
        ("rnd(s)", "round(s)"),
        ("RS", "right side, the face worn outside"),
        ("sc", "single crochet"),
        ("sl st", "slip stitch"),
        ("st(s)", "stitch(es)"),
    )
    return Table("Abbreviations", ("Short", "In full"), terms, ("left", "left"))


def wide_table() -> Table:
    sizes = tuple(f"{n} years" for n in range(2, 22))
    rows = tuple((name, *(f"{50.5 + 2 * n + k} cm" for n in range(20))) for k, name in enumerate(("Chest", "Length")))
    return Table("Twenty sizes", ("Size", *sizes), rows, ("left", *("right",) * 20), note="Measured flat.")


def piece(title: str, new_page: bool = False) -> list[Block]:
    """A chapter of instructions, with a drawing."""
    blocks: list[Block] = [
        Heading(2, title, new_page),
        Paragraph(plain("Make 1, from the hem up. The turning chain does not count as a stitch."), "note"),
        Figure(
            piece_drawing(150, 96, ("diagonal", "dots", "cross")),
            f"{title}: an outline in three bands, A at the top, C at the hem; 58 cm high.",
            f"{title}, with the measures of the four smallest sizes",
        ),
        Heading(3, "Hem and body"),
        row("Foundation:", f"With kelp and the larger hook, ch {size_list(48, 5)}.", size_list(48, 5)),
        row("Row 1 (RS):", "Hdc in 2nd ch from hook and in each ch across, turn.", size_list(47, 5)),
    ]
    blocks += [
        row(
            f"Rows {2 + 4 * n}-{5 + 4 * n}:",
            f"Ch 1, hdc in each st across, turn. The piece should now be {size_list(6 + 6 * n, 1)} cm high, "
            "measured flat and without pulling it to shape.",
            size_list(47, 5),
        )
        for n in range(6)
    ]
    blocks += [
        Heading(3, "Shoulders"),
        Paragraph(plain("Work each shoulder on its own. The neck edge is the edge nearest the middle of the back:")),
        Paragraph(plain("leave the stitches of the neck unworked,"), "bullet"),
        Paragraph((Span("mark "), Span("the last stitch", "strong"), Span(" of each shoulder with a marker that can't slip out while the piece is being carried about, or sewn,")), "bullet"),
        Paragraph(plain("cut the yarn, leaving a tail of about 20 cm."), "bullet"),
        row("Next row:", f"Ch 1, hdc in next {size_list(14, 1)} sts, turn; leave remaining sts unworked.", size_list(14, 1)),
    ]
    return blocks


def document() -> Document:
    """Ten pages or so."""
    about = (
        "A roomy coat in very thick yarn, worked in one piece to the armholes and then divided. "
        "Broad bands of colour meet across the side seams, and the sleeves are gathered into deep cuffs. "
    )
    blocks: list[Block] = [
        Heading(1, "Harbour Coat"),
        Paragraph(plain(about), "lead"),
        Figure(piece_drawing(120, 70, ("vertical", "back-diagonal")), "The coat laid flat, in two bands."),
        Heading(2, "Sizes"),
        Paragraph(plain("Numbers for the sizes are given as smallest (others). " + about * 5)),
        measures_table(),
        Heading(2, "Materials and gauge"),
        Paragraph((Span("Gauge: ", "strong"), Span("18 sts and 14 rows over 20.5 × 19.5 cm in hdc. ", fact="gauge"), Span(about * 3))),
        Paragraph(plain(f"Buttons smaller than 3 cm can be swallowed: leave them off for children under three. {about}"), "caution", "Caution."),
        words_table(),
        *piece("Back"),
        *piece("Right Front", new_page=True),
        *piece("Sleeve"),
        Heading(2, "Row by row"),
        counts_table(),
        wide_table(),
        Heading(2, "Finishing"),
        Paragraph(plain(about * 4)),
        Paragraph(plain("Harbour Coat, version 1.0. Ferry Lane Workshop. CC BY 4.0."), "small"),
    ]
    return Document(
        "Harbour Coat",
        "Ferry Lane Workshop",
        "en",
        "2026-11-25",
        "Harbour Coat · XS (S, M, L, 1X, 2X, 3X, 4X, 5X)",
        "Ferry Lane Workshop · version 1.0 · US terms",
        tuple(blocks),
        "A crochet pattern in nine sizes",
        ("crochet", "coat"),
    )
