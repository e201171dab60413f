"""Printed pages as pictures: takes a PDF, gives how many pages it has and each as PNG."""

from io import BytesIO
from threading import Lock

import pypdfium2

from foldmath.drawing.look import POINTS_PER_INCH

FASTEST = 1
"""Of zlib's levels: a page is looked at once, so that time counts more than bytes."""

_ONE_AT_A_TIME = Lock()
"""PDFium may be called by one thread at a time (its header ``fpdfview.h``)."""


def page_count(pdf: bytes) -> int:
    """Count the pages."""
    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(pdf)
        try:
            return len(document)
        finally:
            document.close()


def page_picture(pdf: bytes, number: int, dots_per_inch: int) -> bytes:
    """Draw a page, counted from 1, as PNG.

    Raises:
        IndexError: there is no such page.
    """
    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(pdf)
        try:
            if not 1 <= number <= len(document):
                raise IndexError(number)
            bitmap = document[number - 1].render(scale=dots_per_inch / POINTS_PER_INCH)
            picture = bitmap.to_pil()
            written = BytesIO()
            picture.save(written, "PNG", compress_level=FASTEST)
        finally:
            document.close()
    return written.getvalue()
