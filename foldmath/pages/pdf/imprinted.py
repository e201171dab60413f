"""Imprinted flowables: set and painted by one process, shared out to pages and placed there by another."""

# ruff: noqa: N802 (Platypus's own names)

from collections.abc import Iterable, Sequence

from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.press import Imprint, PressCanvas


class Imprinted(Painted):
    """A flowable that is painted already, for one width.

    Args:
        imprint: what it leaves on a page.
        height: that it needs, in points.
        before, after: the spaces above and below it, in points.
    """

    def __init__(self, imprint: Imprint, height: float, before: float, after: float) -> None:
        super().__init__()
        self.height = height
        self._imprint, self._before, self._after = imprint, before, after

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return self._before

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return self._after

    def imprint(self, canvas: PressCanvas) -> Imprint:  # noqa: ARG002  as all flowables are asked
        """Give what it leaves on any page."""
        return self._imprint

    def paint(self, canvas: PressCanvas, x: float, y: float) -> None:
        """Place it."""
        canvas.place(self._imprint, x, y)


def imprinted(flowables: Iterable[Painted], width: float, room: float, language: str) -> list[Imprinted]:
    """Paint flowables for pages of which so much is filled, in points, in a file of a language."""
    canvas = PressCanvas(language)
    made = []
    for flowable in flowables:
        height = flowable.high(width, room)
        before, after = flowable.getSpaceBefore(), flowable.getSpaceAfter()
        made.append(Imprinted(flowable.imprint(canvas), height, before, after))
    return made


def under(heads: tuple[Painted, ...], rows: Sequence[Imprinted]) -> Sequence[Imprinted]:
    """Give rows of a table, on every further page of which its heads stand again."""
    for row in rows:
        row.heads = heads
    return rows
