"""Writing on a canvas: letters of any script, which are read back as they were typed."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby
from operator import itemgetter
from typing import Any

from reportlab.lib.rl_accel import escapePDF
from reportlab.pdfbase.ttfonts import ShapeData

from foldmath.pages.lettering.faces import glyph_font
from foldmath.pages.lettering.glyph_fonts import Glyphs, Letter, letters_of
from foldmath.pages.lettering.shaping import EM, runs_of, stands_as_it_is
from foldmath.pages.pdf import fonts
from foldmath.pages.tags import spoken

TEXTS_KEPT = 8192
"""Most texts of a class's pages come again, and most numbers; one is about a hundred bytes."""


def write(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text with its left end on the baseline at (x, y), in points."""
    if stands_as_it_is(text, font):
        _show(canvas, x, y, text, font, size)
        return
    for run in runs_of(text, font):
        with spoken.standing_for(canvas, run.told):
            _show(canvas, x, y, run.signs, run.font, size)
        x += run.width * size / EM


def _show(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    canvas.needs.letters |= _letters(text, font)
    canvas.addLiteral(operators(x, y, text, font, size))


def _letters(text: str, font: str) -> dict[Letter, None]:
    return dict.fromkeys(letters_of(text, font)) if isinstance(text, Glyphs) else _plain_letters(text, font)


@lru_cache(maxsize=TEXTS_KEPT)
def _plain_letters(text: str, font: str) -> dict[Letter, None]:
    """Give the letters of a text that has no glyphs; whoever asks only reads them."""
    return dict.fromkeys(letters_of(text, font))


def operators(x: float, y: float, text: str, font: str, size: float) -> str:
    """Give the operators that show signs of one font (ISO 32000-1:2008, 9.4)."""
    shown = " ".join(_glyphs(text, font, size)) if isinstance(text, Glyphs) else _signs(text, font, size)
    return f"BT {x:.4f} {y:.4f} Td {shown} ET"


@lru_cache(maxsize=TEXTS_KEPT)
def _signs(text: str, font: str, size: float) -> str:
    """Show signs one after the other."""
    return " ".join(
        f"{resource} {size:.6g} Tf ({escapePDF(b''.join(code for _, code in some))}) Tj"
        for resource, some in groupby(map(glyph_font(font).shown, text), key=itemgetter(0))
    )


def _glyphs(text: Glyphs, font: str, size: float) -> Iterator[str]:
    """Show glyphs, each moved to its place, and at its height."""
    face = glyph_font(font)
    shapes: list[ShapeData] = text.__shapeData__  # type: ignore[attr-defined]  # reportlab's
    placed = [(*face.shown(sign), shape) for sign, shape in zip(text, shapes, strict=True)]
    for (resource, rise), some in groupby(placed, key=lambda one: (one[0], one[2].y_offset)):
        moved = " ".join(
            f"{0 - at.x_offset:.6g} ({escapePDF(code)}) {at.width - at.x_advance + at.x_offset:.6g}"
            for _, code, at in some
        )
        yield f"{resource} {size:.6g} Tf {rise * size / EM:.6g} Ts [{moved}] TJ"
    yield "0 Ts"


def write_middle(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text with its middle at x."""
    write(canvas, x - 0.5 * fonts.width_of(text, font, size), y, text, font, size)


def write_right(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text that ends at x."""
    write(canvas, x - fonts.width_of(text, font, size), y, text, font, size)
