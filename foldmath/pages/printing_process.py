"""The process that draws, when it is to print too: it fetches what prints before the first document comes."""

from typing import Self

from foldmath.drawing.rendering.picture_process import PictureProcess

TICK = "✓"
"""In every key, and in no font of the pages' own."""


class PrintingProcess(PictureProcess):
    """Draws scenes, and prints documents. Use it in a ``with`` block."""

    def __enter__(self) -> Self:
        super().__enter__()
        self.submit(fetch_press)
        return self


def fetch_press() -> None:
    """Import what prints, and read the fonts."""
    import foldmath.pages.printing  # noqa: F401
    from foldmath.pages.pdf import fonts

    fonts.register_fonts()
    for font in (fonts.REGULAR, fonts.BOLD):
        fonts.width_of(TICK, font, 1.0)
