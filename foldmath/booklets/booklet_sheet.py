"""The booklet's sheet in print: paints every page where it lies, turned as it lies, on one side or on two."""

from collections.abc import Sequence
from typing import Any

from foldmath.booklets.booklet_page import Heights, paint
from foldmath.booklets.booklet_styles import PageRoom
from foldmath.measured import as_float
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.page_fit import PageFit
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.exact import ExactMark, paint_marks
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.press import Page, Press
from foldmath.pages.pdf.styles import points
from foldmath.pages.pdf.writing import write_middle
from foldmath.values import frozen

NUMBER_PT = {REGULAR: 9.0, LARGE: 18.0}
NUMBER_RISE_MM = 0.8
"""Of a page number's baseline over the page's margin."""


@frozen(kw_only=True)
class SetPage:
    """A page ready to be painted.

    Args:
        label: the number of the page, as it is printed at its foot.
        number_pt: the size of its letters.
        matrix: from the page, in points from its bottom left corner, to the printer's page.
        left_mm, foot_mm: where the room for its contents begins.
        number_mm: the margin at its foot.
        width_mm: of the page.
        flowables: its contents.
        room: for them.
        spacing, heights: how they are stacked.
    """

    label: str
    number_pt: float
    matrix: tuple[float, float, float, float, float, float]
    left_mm: float
    foot_mm: float
    number_mm: float
    width_mm: float
    flowables: Sequence[Painted]
    room: PageRoom
    spacing: float
    heights: Heights


@frozen
class PrintSide(Page):
    """One side of the sheet, printed at exact scale.

    Args:
        lies: how the sheet lies on the printer's page.
        pages: of the booklet that lie on it.
        marks: the sheet's own, in mm on the printer's page.
    """

    lies: PageFit
    pages: Sequence[SetPage]
    marks: Sequence[ExactMark] = ()

    def put(self, press: Press, number: int, pages: int) -> None:  # noqa: ARG002  sheets to fold bear no number
        """Paint the marks, and every page where it lies, turned as it lies."""
        canvas = press.canvas
        canvas.setPageSize((points(as_float(self.lies.width)), points(as_float(self.lies.height))))
        paint_marks(canvas, self.marks)
        for page in self.pages:
            canvas.saveState()
            canvas.transform(*page.matrix)
            with canvas.tags.artifact():
                _number(canvas, page)
            canvas.translate(points(page.left_mm), points(page.foot_mm))
            paint(canvas, page.flowables, page.room, page.spacing, page.heights)
            canvas.restoreState()


def _number(canvas: Any, page: SetPage) -> None:
    middle = points(page.left_mm + page.room.width_mm / 2)
    write_middle(
        canvas, middle, points(page.number_mm + NUMBER_RISE_MM), page.label, fonts.REGULAR, page.number_pt
    )
