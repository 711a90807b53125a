"""Several sheets as one PDF file, each on a page of its own size.

Law: the same sheets give the same bytes.
"""

import io
from collections.abc import Sequence

import matplotlib
from matplotlib.backends.backend_pdf import PdfPages

from baywright.documents.sketch import SETTINGS, Sketch


def book(sheets: Sequence[Sketch], title: str) -> bytes:
    """The sheets in their order as the content of a PDF file; ValueError where there are none."""
    if not sheets:
        raise ValueError("A book needs at least one sheet.")
    target = io.BytesIO()
    # Without dates, so that a file differs only where the plan does.
    facts = {"Title": title, "Creator": "Baywright", "Producer": None, "CreationDate": None}
    # Fonts are written when the book is closed, so the settings must hold until then.
    with matplotlib.rc_context(SETTINGS), PdfPages(target, metadata=facts) as pages:
        for sheet in sheets:
            sheet.onto(pages)
    return target.getvalue()
