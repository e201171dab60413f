"""All guide pages of a lesson in order: what to print, the guides at exact scale, or distances and strips."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import accumulate, pairwise
from typing import Any

from foldmath.guides.marks.guide_sheet import Guides, GuideSheet, guides
from foldmath.guides.pieces.letters import LETTERS, Letters, letters_for
from foldmath.guides.pieces.setting import blocks
from foldmath.guides.reading.cover import Listed, cover_pages, short
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
from foldmath.pages.pdf.paginating import FilledPage
from foldmath.pages.pdf.press import Page
from foldmath.phrases import Phrase
from foldmath.plane.lines import Point
from foldmath.values import frozen
from foldmath.words.saying import say

PLAIN, SLIT, DISTANCES, STRIPS = "plain", "slit", "distances", "strips"
PAIRS = {f"marks_{turning.value}": turning for turning in Turning}
"""What the parts of the file are called; the marks by how the printer turns them."""


def guide_sheets(proved: ProvedLesson, page_paper: str, look: str = REGULAR) -> bytes:
    """Print the guide sheets of a lesson; the same input gives the same bytes.

    Args:
        proved: the lesson; its sheet may be the printer's paper, smaller or larger.
        page_paper: what the printer prints on, ``letter`` or ``A4``.
        look: ``regular`` or ``large``.
    """
    lesson = proved.lesson
    title = f"{lesson.title}: {say(FOOT, lesson.language)}"
    foot_pt = LETTERS[look].sheet.foot_pt
    return written([guide_pages(proved, page_paper, look)], title, lesson.language, foot_pt)


def guide_pages(proved: ProvedLesson, page_paper: str, look: str = REGULAR) -> list[Page]:
    """Give the pages of the guide sheets."""
    fonts.register_fonts()
    shown, letters = guides(proved), letters_for(look, proved.lesson.language)
    lies = fit(proved.lesson.sheet, page_paper)
    measured: dict[str, Sequence[Page]] = {}
    if shown.folds and not (lies and lies.fills_page):
        measured[DISTANCES] = distance_pages(proved.lesson, shown, page_paper, letters)
    if shown.folds and not lies:
        measured[STRIPS] = strip_pages(proved.lesson, shown, page_paper, letters)
    further = {name: len(pages) for name, pages in measured.items()}

    def listed(before: int) -> list[Listed]:
        return _listed(before, (_sheets(shown, before) if lies else {}) | further)

    def cover(before: int) -> list[FilledPage]:
        return cover_pages(proved, shown, page_paper, listed(before), letters)

    before = len(cover(1))
    pages: list[Page] = [*cover(before)]
    if lies:
        pages += _sheet_pages(shown, listed(before), _Maker(lies, proved, letters))
    return pages + [page for more in measured.values() for page in more]


def _sheets(shown: Guides, before: int) -> dict[str, int]:
    """Name the sheets in order, with how many pages each has, where so many pages come before them.

    Pairs begin on odd pages, so that each lies on one leaf if the whole file is printed on both sides; the
    sheet of one page stands before or after them for that.
    """
    if not shown.folds:
        return {}
    plain, pairs, slit = {PLAIN: 1}, dict.fromkeys(PAIRS, 2), {SLIT: 1} if shown.slit else {}
    return pairs | plain | slit if before % 2 == 0 else plain | pairs | slit


def _listed(before: int, lengths: Mapping[str, int]) -> list[Listed]:
    """Number the pages of parts, where so many pages come before them."""
    ends = accumulate(lengths.values(), initial=before)
    return [Listed(name, start + 1, end) for name, (start, end) in zip(lengths, pairwise(ends), strict=True)]


def _sheet_pages(shown: Guides, listed: Iterable[Listed], maker: "_Maker") -> Iterator[ExactPage]:
    """Lay the guides that are printed at exact scale."""
    for part in listed:
        if part.name == PLAIN:
            yield maker.front(shown.plain, "folds", folds_heard(maker.proved))
        elif part.name in PAIRS:
            pair = Pair(part.first, PAIRS[part.name])
            yield maker.front(shown.marks, "front", marks_heard(shown), pair=pair)
            yield maker.back(shown.marks, pair)
        elif part.name == SLIT and shown.slit:
            from_edge = all(set(cut.begins) <= {cut.start, cut.end} for cut in shown.slit.cuts)
            yield maker.front(shown.slit, "cut", cut_heard(shown.slit), from_edge=from_edge)


@frozen
class Pair:
    """Two pages to print on the two sides of a sheet: the first of them, and how the printer turns it."""

    first: int
    turning: Turning


@frozen
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
