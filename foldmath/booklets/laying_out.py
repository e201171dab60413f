"""Laying out: takes a planned booklet, gives every page on its sheet, its words fitted to its room."""

from collections.abc import Sequence

from foldmath.booklets.fitting import Fit, PageToFit, fits, to_fit
from foldmath.booklets.imposing import Imposed, imposed
from foldmath.booklets.page_contents import written_page
from foldmath.lesson.booklet.plan import BookletPlan, PlannedPage
from foldmath.lesson.proving import ProvedLesson
from foldmath.measured import as_float
from foldmath.pages.page_fit import PageFit
from foldmath.pages.pdf.styles import style_sheet
from foldmath.paper.state import Sheet
from foldmath.values import frozen
from foldmath.worksheets.folding_part import FoldingPart


@frozen
class LaidPage:
    """A page as it will be printed.

    Args:
        planned: as the lesson plans it; blank past the last planned page.
        imposed: where it lies.
        content: its words and room.
        fit: how they are set.
    """

    planned: PlannedPage
    imposed: Imposed
    content: PageToFit
    fit: Fit

    @property
    def whole(self) -> bool:
        """Whether all its contents stand on it."""
        return self.fit.kept == len(self.content.written.parts)


@frozen
class Layout:
    """A booklet as it will be printed.

    Args:
        plan: on the lesson's own sheet.
        sheet: the sheet.
        lies: how the sheet lies on the printer's page.
        pages: in reading order.
    """

    plan: BookletPlan
    sheet: Sheet
    lies: PageFit
    pages: tuple[LaidPage, ...]


def lay_out(
    proved: ProvedLesson, folding: FoldingPart, plan: BookletPlan, lies: PageFit, look: str
) -> Layout:
    """Lay out every page.

    Args:
        proved: the lesson.
        folding: the folding part of its worksheets.
        plan: its booklet, folded from the lesson's own sheet.
        lies: how that sheet lies on the printer's page.
        look: the name of the look.
    """
    sheet = proved.lesson.sheet
    places = imposed(plan.booklet, sheet, lies, look)
    planned = all_pages(plan)
    contents = contents_of(planned, places, ruling_mm(plan, look), proved, folding)
    pages = zip(planned, places, contents, fits(contents, look), strict=True)
    return Layout(plan, sheet, lies, tuple(LaidPage(*page) for page in pages))


def contents_of(
    planned: Sequence[PlannedPage],
    places: Sequence[Imposed],
    ruling: float,
    proved: ProvedLesson,
    folding: FoldingPart,
) -> list[PageToFit]:
    """Tell every page for the room that it has."""
    contents = []
    for page, place in zip(planned, places, strict=True):
        room = place.room(ruling)
        contents.append(
            to_fit(written_page(page, place.page.number, proved, folding, room), room, proved.lesson)
        )
    return contents


def all_pages(plan: BookletPlan) -> tuple[PlannedPage, ...]:
    """Give the planned pages, and blank ones up to the last page of the booklet."""
    blank = len(plan.booklet.pages) - len(plan.pages)
    return plan.pages + (PlannedPage(),) * blank


def ruling_mm(plan: BookletPlan, look: str) -> float:
    """Give the distance of ruled lines: the plan's own, or more where the look needs more."""
    own = as_float(plan.ruling.in_millimetres)
    return own if look == "regular" else max(own, style_sheet(look).line_pitch_mm)
