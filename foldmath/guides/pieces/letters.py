"""How large what guide pages say is, by the look: words for pupils, numbers of folds, notes, strips."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from foldmath.guides.pieces.check_ruler import Ruler
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.pdf.styles import StyleSheet, style_sheet
from foldmath.phrases import phrase
from foldmath.values import frozen
from foldmath.words.saying import say

LARGE_PT = 18.0
"""In large print nothing that is read is smaller."""

SMALLEST_PT = 7.0
"""Notes are set so small where a sheet full of lines has no room for them otherwise, but in large print."""


@frozen(kw_only=True)
class Letters:
    """Sizes of what is read on a sheet, and on the pages beside the sheets.

    Args:
        look: the name of the style sheet.
        word_pt: of words beside a cut.
        numbers: of the numbers of folds: the size of figures in points, and the radius of their circles in
            mm, the largest first; the last stands on its line where none has room beside it.
        tight_pt: of notes where there is little room; None if they are never smaller.
        ruler: the check ruler.
        join: of the letter at the join of two strips, and of its circle.
        strip_mm: how high a strip is.
        name_lines: how many lines of that its name may take.
        cover_pages: how many pages what comes before the sheets may fill.
    """

    look: str
    word_pt: float
    numbers: tuple[tuple[float, float], ...]
    tight_pt: float | None
    ruler: Ruler
    join: tuple[float, float]
    strip_mm: float
    name_lines: int
    cover_pages: int

    @property
    def sheet(self) -> StyleSheet:
        """The styles of the pages beside the sheets."""
        return style_sheet(self.look)

    @property
    def notes(self) -> tuple[StyleSheet, ...]:
        """The style sheets in which notes are tried, the largest first."""
        return (self.sheet,) if self.tight_pt is None else (self.sheet, _all_at(self.look, self.tight_pt))


def letters_for(look: str, language: str) -> Letters:
    """Give the sizes of a look, with the ruler's inches named in a language."""
    letters = LETTERS[look]
    return replace(letters, ruler=replace(letters.ruler, inches_name=say(phrase("in"), language)))


LETTERS: Mapping[str, Letters] = {
    REGULAR: Letters(
        look="guides",
        word_pt=12.0,
        numbers=((12.0, 3.6), (8.0, 2.4)),
        tight_pt=SMALLEST_PT,
        ruler=Ruler(),
        join=(11.0, 3.0),
        strip_mm=30.0,
        name_lines=1,
        cover_pages=1,
    ),
    LARGE: Letters(
        look="guides-large",
        word_pt=LARGE_PT,
        numbers=((LARGE_PT, 5.2),),
        tight_pt=None,
        ruler=Ruler(LARGE_PT),
        join=(LARGE_PT, 4.6),
        strip_mm=56.0,
        name_lines=2,
        cover_pages=2,
    ),
}


@cache
def _all_at(look: str, size: float) -> StyleSheet:
    sheet = style_sheet(look)
    return replace(sheet, text={name: replace(style, size=size) for name, style in sheet.text.items()})
