"""How large what stands on a guide sheet is, by the look: words for pupils, numbers of folds, notes."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from foldmath.guides.pieces.check_ruler import Ruler
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.pdf.styles import StyleSheet, style_sheet

LOOK = "guides"
"""The name of the style sheet."""

LARGE_PT = 18.0
"""In large print nothing that is read on a sheet is smaller."""

SMALLEST_PT = 7.0
"""Notes are set so small where a sheet full of lines has no room for them otherwise, but in large print."""


@dataclass(frozen=True, kw_only=True)
class Letters:
    """Sizes of what is read on a sheet.

    Args:
        word_pt: of words beside a cut.
        numbers: of the numbers of folds: the size of figures in points, and the radius of their circles in
            mm, the largest first; the last stands on its line where none has room beside it.
        least_pt: of notes, where there is room for them.
        tight_pt: of notes where there is little; None if they are never smaller.
        ruler: the check ruler.
    """

    word_pt: float
    numbers: tuple[tuple[float, float], ...]
    least_pt: float
    tight_pt: float | None
    ruler: Ruler

    @property
    def notes(self) -> tuple[StyleSheet, ...]:
        """The style sheets in which notes are tried, the largest first."""
        sheets = [_at_least(self.least_pt)]
        return tuple(sheets if self.tight_pt is None else [*sheets, _all_at(self.tight_pt)])


LETTERS: Mapping[str, Letters] = {
    REGULAR: Letters(
        word_pt=12.0,
        numbers=((12.0, 3.6), (8.0, 2.4)),
        least_pt=0.0,
        tight_pt=SMALLEST_PT,
        ruler=Ruler(),
    ),
    LARGE: Letters(
        word_pt=LARGE_PT,
        numbers=((LARGE_PT, 5.2),),
        least_pt=LARGE_PT,
        tight_pt=None,
        ruler=Ruler(LARGE_PT),
    ),
}


@cache
def _at_least(size: float) -> StyleSheet:
    sheet = style_sheet(LOOK)
    text = {name: replace(style, size=max(size, style.size)) for name, style in sheet.text.items()}
    return replace(sheet, text=text)


@cache
def _all_at(size: float) -> StyleSheet:
    sheet = style_sheet(LOOK)
    return replace(sheet, text={name: replace(style, size=size) for name, style in sheet.text.items()})
