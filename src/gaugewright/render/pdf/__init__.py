"""The PDF renderer: a `Document` in, the bytes of a tagged and reproducible PDF out.

The only package that imports reportlab, so it is imported only when a PDF is asked for.

```
reading_order ─> compose ─> boxes ─> pages ─> file ─> bytes
                  lines, columns       pen, tags, drawing, operators
```
"""

from gaugewright.render.pdf.file import Paper, one_page, render_pdf
from gaugewright.render.pdf.style import Style, load_style

__all__ = ["Paper", "Style", "load_style", "one_page", "render_pdf"]
