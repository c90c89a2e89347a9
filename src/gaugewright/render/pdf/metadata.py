"""What the file says about itself: XMP with the PDF/UA claim, and the information dictionary.

In: a `Document`. Out: XMP as text, and the dictionary's entries. Both say the same; dates only
come from the document.
"""

from html import escape

from gaugewright.instructions.nodes import Document
from gaugewright.render.pdf.faces import NO_BREAK

PRODUCER = "Gaugewright"
NAMESPACES = (
    ("rdf", "http://www.w3.org/1999/02/22-rdf-syntax-ns#"),
    ("dc", "http://purl.org/dc/elements/1.1/"),
    ("xmp", "http://ns.adobe.com/xap/1.0/"),
    ("pdf", "http://ns.adobe.com/pdf/1.3/"),
    ("pdfuaid", "http://www.aiim.org/pdfua/ns/id/"),
)


def info_entries(document: Document) -> dict[str, str]:
    """Entries of the information dictionary; empty ones are left out later."""
    return {
        "Title": _plain(document.title),
        "Author": _plain(document.author),
        "Subject": _plain(document.subject),
        "Keywords": _plain(", ".join(document.keywords)),
        "Creator": PRODUCER,
        "Producer": PRODUCER,
    }


def xmp_packet(document: Document) -> str:
    """The metadata stream."""
    names = " ".join(f'xmlns:{short}="{long}"' for short, long in NAMESPACES)
    lines = "\n".join(f"   {line}" for line in _properties(document))
    return (
        '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>\n'
        '<x:xmpmeta xmlns:x="adobe:ns:meta/">\n <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">\n'
        f'  <rdf:Description rdf:about="" {names}>\n{lines}\n  </rdf:Description>\n'
        ' </rdf:RDF>\n</x:xmpmeta>\n<?xpacket end="r"?>\n'
    )


def _properties(document: Document) -> list[str]:
    lines = [
        "<pdfuaid:part>1</pdfuaid:part>",
        f"<dc:title>{_alternative(document.title)}</dc:title>",
        f"<dc:language><rdf:Bag><rdf:li>{escape(document.language)}</rdf:li></rdf:Bag></dc:language>",
        f"<pdf:Producer>{PRODUCER}</pdf:Producer>",
        f"<xmp:CreatorTool>{PRODUCER}</xmp:CreatorTool>",
    ]
    if document.author:
        lines.append(f"<dc:creator><rdf:Seq><rdf:li>{_text(document.author)}</rdf:li></rdf:Seq></dc:creator>")
    if document.subject:
        lines.append(f"<dc:description>{_alternative(document.subject)}</dc:description>")
    if document.keywords:
        lines.append(f"<pdf:Keywords>{_text(', '.join(document.keywords))}</pdf:Keywords>")
    if document.date:
        date = escape(document.date)
        lines += [f"<xmp:CreateDate>{date}</xmp:CreateDate>", f"<xmp:ModifyDate>{date}</xmp:ModifyDate>"]
    return lines


def _alternative(text: str) -> str:
    return f'<rdf:Alt><rdf:li xml:lang="x-default">{_text(text)}</rdf:li></rdf:Alt>'


def _text(text: str) -> str:
    return escape(_plain(text))


def _plain(text: str) -> str:
    return text.replace(NO_BREAK, " ")
