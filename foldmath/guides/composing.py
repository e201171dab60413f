"""All guide pages of a lesson in order: what to print, the guides at exact scale, or distances and strips."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from foldmath.guides.marks.guide_sheet import Guides, GuideSheet, guides
from foldmath.guides.pieces.letters import LETTERS, Letters
from foldmath.guides.pieces.setting import blocks
from foldmath.guides.reading.cover import Listed, cover_page, short
from foldmath.guides.reading.distances import distance_pages
from foldmath.guides.reading.heard import BACK_HEARD, cut_heard, folds_heard, marks_heard
from foldmath.guides.reading.strips import strip_pages
from foldmath.guides.reading.text_pages import FOOT
from foldmath.guides.sheets.note_places import Group
from foldmath.guides.sheets.sheet_layout import Face, laid
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.blocks import Together
from foldmath.pages.page_fit import Carry, PageFit, Turning, fit
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.exact import ExactPage
from foldmath.pages.pdf.press import Page
from foldmath.phrases import Phrase
from foldmath.plane.lines import Point
from foldmath.words.saying import say

FIRST_SHEET, FIRST_PAIR = 2, 3
"""The pages where sheets and pairs begin.

Pairs begin on odd ones, so that each lies on one leaf if the whole file is printed on both sides.
"""


def guide_sheets(proved: ProvedLesson, page_paper: str, look: str = REGULAR) -> bytes:
    """Print the guide sheets of a lesson; the same input gives the same bytes.

    Args:
        proved: the lesson; its sheet may be the printer's paper, smaller or larger.
        page_paper: what the printer prints on, ``letter`` or ``A4``.
        look: of the sheets themselves; what a teacher reads beside them has its own size.
    """
    lesson = proved.lesson
    title = f"{lesson.title}: {say(FOOT, lesson.language)}"
    return written([guide_pages(proved, page_paper, look)], title, lesson.language)


def guide_pages(proved: ProvedLesson, page_paper: str, look: str = REGULAR) -> list[Page]:
    """Give the pages of the guide sheets."""
    fonts.register_fonts()
    shown = guides(proved)
    lies = fit(proved.lesson.sheet, page_paper)
    listed: list[Listed] = []
    pages: list[Page] = []

    def add(name: str, more: Sequence[Page]) -> None:
        first = FIRST_SHEET + len(pages)
        pages.extend(more)
        listed.append(Listed(name, first, first + len(more) - 1))

    if shown.folds and lies:
        for name, sheets in _sheets(shown, _Maker(lies, proved, LETTERS[look])).items():
            add(name, sheets)
    if shown.folds and not (lies and lies.fills_page):
        add("distances", distance_pages(proved.lesson, shown, page_paper))
    if shown.folds and not lies:
        add("strips", strip_pages(proved.lesson, shown, page_paper))
    return [cover_page(proved, shown, page_paper, lies, listed), *pages]


def _sheets(shown: Guides, maker: "_Maker") -> dict[str, list[ExactPage]]:
    """Lay the guides that are printed at exact scale."""
    sheets = {"plain": [maker.front(shown.plain, "folds", folds_heard(maker.proved))]}
    for number, turning in enumerate(Turning):
        pair = Pair(FIRST_PAIR + 2 * number, turning)
        front = maker.front(shown.marks, "front", marks_heard(shown), pair=pair)
        sheets[f"marks_{turning.value}"] = [front, maker.back(shown.marks, pair)]
    if shown.slit:
        from_edge = all(set(cut.begins) <= {cut.start, cut.end} for cut in shown.slit.cuts)
        sheets["slit"] = [maker.front(shown.slit, "cut", cut_heard(shown.slit), from_edge=from_edge)]
    return sheets


@dataclass(frozen=True)
class Pair:
    """Two pages to print on the two sides of a sheet: the first of them, and how the printer turns it."""

    first: int
    turning: Turning


@dataclass(frozen=True)
class _Maker:
    """Lays guides on pages.

    Args:
        lies: how the sheet lies on the page.
        proved: the lesson.
        letters: how large what is read on them is.
    """

    lies: PageFit
    proved: ProvedLesson
    letters: Letters

    def front(self, guide: GuideSheet, shows: str, heard: Phrase, **told: Any) -> ExactPage:
        """Lay a guide that is printed on the printed side: the folds, the front of marks, or the cut."""
        framed = bool(self.lies.trimmed)
        notes = self._notes(shows, framed=framed, **told)
        return laid(guide, self.lies, self._face(self.lies.on_front, True, heard, notes))

    def back(self, guide: GuideSheet, pair: Pair) -> ExactPage:
        """Lay a guide on the back."""

        def carry(point: Point) -> Point:
            return self.lies.on_back(point, pair.turning)

        notes = self._notes("back", framed=False, pair=pair)
        return laid(guide, self.lies, self._face(carry, False, BACK_HEARD, notes))

    def _face(self, carry: Carry, front: bool, heard: Phrase, notes: tuple[Group, ...]) -> Face:
        return Face(
            carry=carry,
            front=front,
            notes=notes,
            heard=heard,
            language=self.proved.lesson.language,
            letters=self.letters,
        )

    def _notes(self, shows: str, **told: Any) -> tuple[Group, ...]:
        """Say what stands on a sheet, in groups that stand together."""
        lesson = self.proved.lesson
        title, may_lose = short(lesson.title), self.lies.reaches_edge
        read = blocks("sheet_notes", lesson.language, title=title, may_lose=may_lose, shows=shows, **told)
        return tuple(group.blocks for group in read if isinstance(group, Together))
