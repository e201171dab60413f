"""Shaping: takes a text as it is read, gives runs of one font as they are seen, from left to right.

Letters that stand side by side are left as they are; others are joined, stacked and reordered by HarfBuzz.
"""

from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import ShapeData

from foldmath.pages.lettering.faces import face_with, glyph_font, signs_of
from foldmath.pages.lettering.glyph_fonts import NO_TEXT, GlyphFont, Glyphs, registered
from foldmath.pages.lettering.signs import can_shape, is_joined, is_plain, stretches, with_attached
from foldmath.pages.lettering.visual_order import in_visual_order
from foldmath.values import frozen

RUNS_KEPT = 4096
"""A name stands on a page, in the key and in the plan; a run is less than a kilobyte."""

EM = 1000
"""Widths are in thousandths of the em, as PDF has them."""


@frozen
class LetterRun:
    """Signs or glyphs of one font, side by side.

    Args:
        font: its registered name.
        signs: from left to right.
        width: in thousandths of the em.
        told: what they stand for, where that cannot be told sign by sign. Of letters read from right to left
            it can: readers of a page put those in order by themselves, and would turn round what is told.
    """

    font: str
    signs: str
    width: float
    told: str = ""


@lru_cache(maxsize=RUNS_KEPT)
def runs_of(text: str, font: str) -> tuple[LetterRun, ...]:
    """Give the runs of a text from left to right.

    Args:
        text: in the order in which it is read, for a line that is read from left to right.
        font: the registered one that is taken where it has the signs; others are bold if its name says so.
    """
    return tuple(
        _run(stretch, _font_for(stretch, script, font), leftward)
        for seen, leftward in in_visual_order(text)
        for script, stretch in _seen(_stretches(seen, font), leftward)
    )


@lru_cache(maxsize=RUNS_KEPT)
def stands_as_it_is(text: str, font: str) -> bool:
    """Tell whether a font sets a text one sign after the other, as it stands."""
    return is_plain(text) and signs_of(font).issuperset(text)


def draws(text: str, font: str) -> bool:
    """Tell whether each stretch of a text has a font that draws all of its signs."""
    return all(_found(stretch, script, font) for script, stretch in _stretches(text, font))


def _stretches(text: str, font: str) -> list[tuple[str, str]]:
    """Part a text where its script changes, and among signs of no script where the font lacks some.

    Figures beside a tick keep the shape and the width that they have elsewhere.
    """
    return [
        (script, part)
        for script, stretch in stretches(text)
        for part in ([stretch] if script else _parted(stretch, signs_of(font)))
    ]


def _parted(stretch: str, had: frozenset[str]) -> Iterator[str]:
    """Part signs where those that a font has end or begin; what is attached to a sign stays with it."""
    for _, part in groupby(with_attached(stretch), had.issuperset):
        yield "".join(part)


def _seen(parts: list[tuple[str, str]], leftward: bool) -> list[tuple[str, str]]:
    return parts[::-1] if leftward else parts


def _font_for(stretch: str, script: str, font: str) -> str:
    """Give the font for a stretch; where none draws it, the page's own, which shows that it does not."""
    return _found(stretch, script, font) or font


def _found(stretch: str, script: str, font: str) -> str:
    """Give the font that draws a stretch: the page's own, else another that is installed; empty for none."""
    signs = frozenset(stretch)
    if signs <= signs_of(font):
        return font
    face = face_with(signs, script, "Bold" in font)
    return registered(face) if face else ""


def _run(stretch: str, font: str, leftward: bool) -> LetterRun:
    """Set a stretch in its font."""
    if can_shape() and any(map(is_joined, stretch)):
        return _shaped(stretch, glyph_font(font), leftward)
    return LetterRun(font, stretch, pdfmetrics.stringWidth(stretch, font, EM))


def _shaped(stretch: str, font: GlyphFont, leftward: bool) -> LetterRun:
    """Have the letters of a stretch joined, and say of each glyph where it stands and what it stands for."""
    import uharfbuzz

    buffer = uharfbuzz.Buffer()
    buffer.cluster_level = uharfbuzz.BufferClusterLevel.MONOTONE_CHARACTERS
    buffer.add_str(stretch)
    buffer.direction = "rtl" if leftward else "ltr"
    # Else the machine's own language would choose among the shapes of a letter.
    buffer.language = "und"
    buffer.guess_segment_properties()
    uharfbuzz.shape(font.hbFont(), buffer)
    placed = list(zip(buffer.glyph_infos, buffer.glyph_positions, strict=True))
    begins = sorted({info.cluster for info, _ in placed})
    # Readers of a page turn round what they find from right to left, the letters of one glyph too.
    way = -1 if leftward else 1
    words = {begin: stretch[begin:end][::way] for begin, end in zip(begins, [*begins[1:], None], strict=True)}
    signs, shapes, told, width = "", [], [], 0.0
    for info, position in placed:
        sign = font.sign_of(info.codepoint)
        at = (position.x_advance, position.y_advance, position.x_offset, position.y_offset)
        own_width = font.face.charWidths[ord(sign)]
        shapes.append(ShapeData(info.cluster, *map(font.scaled, at), own_width))  # type: ignore[call-arg]
        signs += sign
        told.append(words.pop(info.cluster, NO_TEXT))
        width += font.scaled(position.x_advance)
    glyphs = Glyphs(signs, shapeData=shapes)  # type: ignore[arg-type]
    glyphs.told = tuple(told)
    return LetterRun(font.fontName, glyphs, width, "" if leftward else stretch)
