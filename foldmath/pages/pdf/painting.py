"""Painting a PDF file: one way to begin it and to end it, whatever its pages hold."""

from collections.abc import Callable
from io import BytesIO

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from foldmath.pages.pdf import fonts


def painted(paint: Callable[[Canvas], None], title: str, language: str) -> bytes:
    """Give a PDF file; the same painting gives the same bytes.

    Args:
        paint: paints every page on the canvas, and shows each.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
    """
    fonts.register_fonts()
    # Plain binary streams: smaller files, and no time lost on turning them into letters.
    rl_config.useA85 = 0
    stream = BytesIO()
    canvas = Canvas(
        stream,
        invariant=1,
        lang=language,
        initialFontName=fonts.REGULAR,  # type: ignore[arg-type]  # the stubs take it for a size
    )
    canvas.setTitle(title)
    canvas.setAuthor("")
    canvas.setCreator("foldmath")
    paint(canvas)
    canvas.save()
    return stream.getvalue()
