"""One test for each thing we lean on in reportlab: a new release that changes it fails here first."""

from io import BytesIO

import pytest
from pypdf import PdfReader
from reportlab.pdfbase.pdfmetrics import registerFont
from reportlab.pdfgen.canvas import Canvas

from gaugewright.render.pdf import hooks
from gaugewright.resources import find_template

FONT = find_template("fonts/SourceSans3-Regular.ttf")


@pytest.fixture
def canvas() -> Canvas:
    registerFont(hooks.load_font("hook-test", FONT))
    return Canvas(BytesIO(), pagesize=(200, 100), invariant=1, initialFontName="hook-test", lang="en")


def draw(canvas: Canvas, text: str = "40 (43)") -> None:
    canvas.setFont("hook-test", 10)
    canvas.drawString(10, 10, text)


def finished(canvas: Canvas, date: str = "") -> PdfReader:
    info = hooks.PlainInfo({"Title": "A title", "Subject": ""}, date)
    return PdfReader(BytesIO(hooks.finish(canvas, info)), strict=True)


def test_page_keys(canvas: Canvas) -> None:
    draw(canvas)
    hooks.close_page(canvas, 0)
    draw(canvas)
    hooks.close_page(canvas, 1)
    pages = finished(canvas).pages
    assert [(page["/StructParents"], page["/Tabs"]) for page in pages] == [(0, "/S"), (1, "/S")]
    assert [page["/Contents"]["/Filter"] for page in pages] == [["/FlateDecode"]] * 2


def test_to_unicode_leaves_out_codes_without_a_letter(canvas: Canvas) -> None:
    draw(canvas, "½ ⅝")
    hooks.close_page(canvas, 0)
    [font] = finished(canvas).pages[0]["/Resources"]["/Font"].values()
    lines = font["/ToUnicode"].get_data().decode("ascii").splitlines()
    pairs = [line for line in lines if line.startswith("<") and line.count("<") == 2 and " <" in line][1:]
    assert not any(line.endswith(("<0000>", "<007F>")) for line in pairs)
    assert any(line.endswith("<00BD>") for line in pairs) and any(line.endswith("<215D>") for line in pairs)
    counts = [int(line.split()[0]) for line in lines if line.endswith("beginbfchar")]
    assert sum(counts) == len(pairs) and all(0 < count <= 100 for count in counts)


def test_information_without_a_clock(canvas: Canvas) -> None:
    draw(canvas)
    hooks.close_page(canvas, 0)
    assert dict(finished(canvas, "2026-11-25").metadata or {}) == {
        "/Title": "A title",
        "/CreationDate": "D:20261125",
        "/ModDate": "D:20261125",
    }


def test_identifier_from_all_that_is_in_the_file() -> None:
    names = []
    for text, date in (("1", ""), ("1", ""), ("2", ""), ("1", "2026-11-25")):
        registerFont(hooks.load_font("hook-test", FONT))
        canvas = Canvas(BytesIO(), pagesize=(200, 100), invariant=1, initialFontName="hook-test")
        draw(canvas, text)
        hooks.close_page(canvas, 0)
        names.append(finished(canvas, date).trailer["/ID"][0])
    assert names[0] == names[1]
    assert len(set(names)) == 3


def test_objects_that_write_themselves(canvas: Canvas) -> None:
    draw(canvas)
    hooks.close_page(canvas, 0)
    words = hooks.text_string(canvas, "Back (1) – ½ \u2603")
    inner = hooks.Bytes(lambda: f"<< /Words {words} /Page {hooks.page_reference(canvas, 0)} >>")
    name = hooks.reference(canvas, inner)
    hooks.set_catalog(canvas, "StructTreeRoot", hooks.Bytes(lambda: f"<< /Inner {name} >>"))
    reader = finished(canvas)
    found = reader.trailer["/Root"]["/StructTreeRoot"]["/Inner"]  # type: ignore[index]
    assert found["/Words"] == "Back (1) – ½ \u2603"
    assert found["/Page"] == reader.pages[0]
