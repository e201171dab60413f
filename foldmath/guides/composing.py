"""All guide pages of a lesson in order: what to print, the guides at exact scale, or distances and strips."""

from dataclasses import dataclass, replace

from foldmath.guides.cover import Listed, cover, short
from foldmath.guides.distances import distance_pages
from foldmath.guides.guide_pages import guide_pdf
from foldmath.guides.guide_sheet import Guides, GuideSheet, guides
from foldmath.guides.lettering import Note
from foldmath.guides.marks import GuidePage
from foldmath.guides.sheet_layout import Face, laid
from foldmath.guides.strips import strip_pages
from foldmath.guides.text_pages import foot
from foldmath.guides.wording import wording
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import Carry, PageFit, Turning, fit
from foldmath.pages.pdf import fonts
from foldmath.plane.lines import Point

CAUTION_PT = 12.0
PLAIN_PAGE = 2
FIRST_PAIR_PAGE = 3
"""The pairs begin on odd pages, so that each lies on one leaf if the whole file is printed on both sides."""


def guide_sheets(proved: ProvedLesson, page_paper: str) -> bytes:
    """Print the guide sheets of a lesson; the same input gives the same bytes.

    Args:
        proved: the lesson; its sheet may be the printer's paper, smaller or larger.
        page_paper: what the printer prints on, ``letter`` or ``A4``.
    """
    fonts.register_fonts()
    lesson = proved.lesson
    return guide_pdf(guide_pages(proved, page_paper), lesson.title, lesson.language)


def guide_pages(proved: ProvedLesson, page_paper: str) -> list[GuidePage]:
    """Give the pages of the guide sheets, as values."""
    fonts.register_fonts()
    shown = guides(proved)
    lies = fit(proved.lesson.sheet, page_paper)
    if not shown.folds:
        return _footed(proved, [cover(proved, shown, page_paper, [])])
    listed: list[Listed] = []
    pages: list[GuidePage] = []
    if lies:
        pages, listed = _sheets(proved, shown, lies)
    if lies is None or not lies.fills_page:
        distances = distance_pages(proved.lesson, shown, page_paper)
        _append(pages, listed, "distances", distances)
    if lies is None:
        _append(pages, listed, "strips", strip_pages(proved.lesson, shown, page_paper))
    return _footed(proved, [cover(proved, shown, page_paper, listed), *pages])


def _append(pages: list[GuidePage], listed: list[Listed], name: str, more: list[GuidePage]) -> None:
    first = len(pages) + 2
    pages += more
    listed.append(Listed(name, first, first + len(more) - 1))


def _sheets(proved: ProvedLesson, shown: Guides, lies: PageFit) -> tuple[list[GuidePage], list[Listed]]:
    """Lay the guides that are printed at exact scale, from page 2 on."""
    words = wording()["sheet"]
    maker = _Maker(lies, proved)
    pages = [maker.front(shown.plain, [words["plain"], *maker.may_lose])]
    listed = [Listed("plain", PLAIN_PAGE, PLAIN_PAGE)]
    for turning in Turning:
        first = FIRST_PAIR_PAGE + len(pages) - 1
        told = {"first": first, "second": first + 1, "edge": wording()["edge"][turning.value]}
        pages.append(maker.front(shown.marks, [words["front"].format(**told), words["keep"]]))
        pages.append(maker.back(shown.marks, turning, [words["back"].format(**told), words["light"]]))
        listed.append(Listed(f"marks_{turning.value}", first, first + 1))
    if shown.slit:
        pages.append(maker.slit(shown.slit))
        listed.append(Listed("slit", len(pages) + 1, len(pages) + 1))
    return pages, listed


@dataclass(frozen=True)
class _Maker:
    """Lays guides on pages.

    Args:
        lies: how the sheet lies on the page.
        proved: the lesson.
    """

    lies: PageFit
    proved: ProvedLesson

    def front(self, guide: GuideSheet, told: list[str]) -> GuidePage:
        """Lay a guide that is printed on the printed side."""
        return self._laid(guide, self.lies.on_front, True, told)

    def back(self, guide: GuideSheet, turning: Turning, told: list[str]) -> GuidePage:
        """Lay a guide on the back."""

        def carry(point: Point) -> Point:
            return self.lies.on_back(point, turning)

        return self._laid(guide, carry, False, told)

    def slit(self, guide: GuideSheet) -> GuidePage:
        """Lay the guide of the cut, with its caution in letters for pupils."""
        words = wording()
        opened = all(set(cut.begins) <= {cut.start, cut.end} for cut in guide.cuts)
        how = tuple(Note(text, CAUTION_PT) for text in words["slit"]["how_open" if opened else "how"])
        told = [words["sheet"]["slit"], *self.may_lose]
        return self._laid(guide, self.lies.on_front, True, told, how)

    @property
    def may_lose(self) -> list[str]:
        """What is said of the ends of lines where the sheet reaches the edge of the page."""
        return [wording()["sheet"]["may_lose"]] if self.lies.reaches_edge else []

    def _laid(
        self, guide: GuideSheet, carry: Carry, front: bool, told: list[str], *more: tuple[Note, ...]
    ) -> GuidePage:
        words = wording()["sheet"]
        scale = words["scale_trimmed" if front and self.lies.trimmed else "scale"]
        title = short(self.proved.lesson.title)
        notes = (Note(scale, bold=True), *(Note(text) for text in (*told, title)))
        return laid(guide, self.lies, Face(carry, front, (notes, *more)))


def _footed(proved: ProvedLesson, pages: list[GuidePage]) -> list[GuidePage]:
    """Name and number the pages to read; the sheets to fold keep their edge clear."""
    words, total = wording()["sheet"]["foot"], len(pages)
    title = short(proved.lesson.title)
    return [
        page
        if page.sheet
        else replace(
            page,
            marks=(*page.marks, foot(words.format(title=title, page=number, pages=total))),
        )
        for number, page in enumerate(pages, start=1)
    ]
