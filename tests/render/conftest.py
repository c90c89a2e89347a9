"""The strained pattern, rendered once for each paper."""

import pytest

from gaugewright.instructions.nodes import Document
from gaugewright.render.pdf import Style, load_style, render_pdf
from render.harbour_coat import document
from render.pdf_reading import TaggedPdf


@pytest.fixture(scope="session")
def style() -> Style:
    return load_style()


@pytest.fixture(scope="session")
def coat() -> Document:
    return document()


@pytest.fixture(scope="session", params=["a4", "letter"])
def pdf_bytes(request: pytest.FixtureRequest, coat: Document, style: Style) -> bytes:
    return render_pdf(coat, request.param, style)


@pytest.fixture(scope="session")
def pdf(pdf_bytes: bytes) -> TaggedPdf:
    return TaggedPdf(pdf_bytes)
