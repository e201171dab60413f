"""Pages to read: writes notes and rows from the top down, and turns the page where one is full."""

from collections.abc import Iterable

from foldmath.drawing.scenes import Spot
from foldmath.guides.check_ruler import HEIGHT_MM, WIDTH_MM, ruler_marks
from foldmath.guides.lettering import Note, block
from foldmath.guides.marks import GuidePage, Place
from foldmath.guides.wording import wording
from foldmath.pages.pdf.exact import ExactMark, Words

LEFT_MM, TOP_MM, BOTTOM_MM = 18.0, 15.0, 18.0
FOOT_RISE_MM, SCALE_RISE_MM, RULER_RISE_MM = 8.0, 14.0, 14.0
FOOT_PT = 9.0
HEADING_PT, TITLE_PT, TEXT_PT = 11.0, 14.0, 10.0
BEFORE_HEADING_MM, AFTER_NOTE_MM, AFTER_HEADING_MM = 3.4, 1.2, 0.8


class TextPages:
    """Pages while they are written; every one has the check ruler and what it is for at its foot.

    Args:
        width, height: of a page, in mm.
    """

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.pages: list[list[ExactMark]] = []
        self.depth = 0.0
        self.turn_page()

    @property
    def column(self) -> float:
        """The width of what is written, in mm."""
        return self.width - 2 * LEFT_MM

    @property
    def room(self) -> float:
        """The height left on this page, in mm."""
        return self.height - BOTTOM_MM - HEIGHT_MM - self.depth

    @property
    def top(self) -> float:
        """The place where the next thing begins, in mm from the page's foot."""
        return self.height - self.depth

    def turn_page(self) -> None:
        """Begin a page."""
        left = self.width - LEFT_MM - WIDTH_MM
        ruler = Place(left, RULER_RISE_MM, left + WIDTH_MM, RULER_RISE_MM + HEIGHT_MM)
        scale = Words(Spot(LEFT_MM, SCALE_RISE_MM), wording()["sheet"]["scale"], FOOT_PT, bold=True)
        self.pages.append([*ruler_marks(ruler, turned=False), scale])
        self.depth = TOP_MM

    def write(self, note: Note, *, inset_mm: float = 0.0, after_mm: float = AFTER_NOTE_MM) -> None:
        """Write a note, on the next page if this one has no room."""
        lines = block((note,), self.column - inset_mm)
        self.hold(lines.height_mm)
        left = LEFT_MM + inset_mm
        self.add(lines.marks(Place(left, self.top - lines.height_mm, self.width, self.top)))
        self.depth += lines.height_mm + after_mm

    def head(self, text: str) -> None:
        """Write a heading."""
        self.depth += BEFORE_HEADING_MM
        self.write(Note(text, HEADING_PT, bold=True), after_mm=AFTER_HEADING_MM)

    def hold(self, height: float) -> bool:
        """Turn the page where less than a height is left; tell whether it was turned."""
        if self.room >= height:
            return False
        self.turn_page()
        return True

    def add(self, marks: Iterable[ExactMark]) -> None:
        """Add marks to this page."""
        self.pages[-1].extend(marks)

    def finished(self) -> list[GuidePage]:
        """Give the pages."""
        return [GuidePage(self.width, self.height, None, tuple(marks)) for marks in self.pages]


def foot(text: str) -> Words:
    """Give the words at the foot of a page to read."""
    return Words(Spot(LEFT_MM, FOOT_RISE_MM), text, FOOT_PT)
