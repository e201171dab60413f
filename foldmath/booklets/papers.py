"""The booklet's papers: takes a proved lesson, gives its booklet ready to print, and the teacher's notes."""

from collections.abc import Iterator, Mapping
from itertools import chain

from foldmath.booklets.booklet_sheet import NUMBER_PT, PrintSide, SetPage
from foldmath.booklets.fitting import page_html, set_page
from foldmath.booklets.laying_out import LaidPage, Layout, lay_out
from foldmath.booklets.notes import Adviser, paper_notes, said
from foldmath.booklets.sheet_marks import sheet_marks
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Scene, for_low_vision
from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.booklet.plan import BookletPlan
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import fit, own_page
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.styles import points
from foldmath.pages.printable import refuse_unprintable
from foldmath.paper.booklet.booklet import Face
from foldmath.phrases import Said, phrase
from foldmath.values import frozen
from foldmath.words.saying import say
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES

BOOKLET, BOOKLET_KEY = "booklet.pdf", "booklet-key.pdf"
"""The files: to fill in, and filled in where the program knows the answers."""

SHEET_OF_BOOKLET, KEY_OF_BOOKLET = phrase("booklet"), phrase("booklet key")
"""What the titles of the files say of them."""

LEAST_MM = 20
"""A page with less room than this, across or up, has none for a line of a child's writing."""


@frozen(kw_only=True)
class BookletPapers:
    """What is printed of a lesson's booklet.

    Args:
        title: of the lesson.
        language: of its pages.
        look: the name of the look.
        layout: its pages, laid out.
        pictures: that are to be drawn, by the names that pages give them.
        notes: for the teacher.
    """

    title: str
    language: str
    look: str
    layout: Layout
    pictures: Mapping[str, Scene]
    notes: tuple[Said, ...]

    @property
    def html(self) -> tuple[str, ...]:
        """Every page as a document, in reading order."""
        return tuple(
            page_html(page.content.written.parts[: page.fit.kept], page.content.lesson)
            for page in self.layout.pages
        )


def booklet_papers(proved: ProvedLesson, plan: BookletPlan, page_paper: str, look: str) -> BookletPapers:
    """Lay out the booklet of a lesson.

    Args:
        proved: the lesson.
        plan: its booklet.
        page_paper: of the printer, ``letter`` or ``A4``; the sheet itself keeps the lesson's own size.
        look: the name of the style sheet.

    Raises:
        LessonRefused: the fonts of the pages lack letters of the lesson's words, or the pages have no room;
            ``TooSmallForLargePrint`` where larger paper would do.
    """
    lesson = proved.lesson
    refuse_unprintable(lesson)
    shared = folding_part(proved)
    lies = fit(lesson.sheet, page_paper) or own_page(lesson.sheet)
    layout = lay_out(proved, shared, plan, lies, look)
    rooms = [page.content.room for page in layout.pages]
    if min(min(room.width_mm, room.height_mm) for room in rooms) < LEAST_MM:
        raise LessonRefused([Problem(file=lesson.file, message=said("tiny"), hint=said("tiny_hint"))])
    adviser = Adviser(layout, proved, shared, look)
    adviser.refuse_smaller_print()
    notes = chain(paper_notes(layout.sheet, page_paper), adviser.notes())
    return BookletPapers(
        title=lesson.title,
        language=lesson.language,
        look=look,
        layout=layout,
        pictures=dict(_pictures(layout, look)),
        notes=tuple(notes),
    )


def printed_booklet(papers: BookletPapers, recordings: Mapping[str, Recording], answers: bool) -> bytes:
    """Print the sheet of a booklet, one side or two.

    Args:
        papers: the booklet.
        recordings: of ``papers.pictures``, by their names.
        answers: whether the answers that the program knows show.
    """
    layout = papers.layout
    pages = [(page.imposed.page.face, _set(page, papers.look, recordings, answers)) for page in layout.pages]
    fronts = [page for face, page in pages if face is Face.PRINTED]
    backs = [page for face, page in pages if face is Face.BACK]
    front = PrintSide(layout.lies, fronts, tuple(sheet_marks(layout)))
    sides = [front, PrintSide(layout.lies, backs)] if backs else [front]
    kind = KEY_OF_BOOKLET if answers else SHEET_OF_BOOKLET
    return written([sides], f"{papers.title}: {say(kind, papers.language)}", papers.language)


def _pictures(layout: Layout, look: str) -> Iterator[tuple[str, Scene]]:
    """Draw every picture as large as its page allows."""
    for page in layout.pages:
        drawings = {drawing.name: drawing for drawing in page.content.written.drawings}
        for name, height in page.fit.drawn_pt:
            if name in drawings:
                scene = drawings[name].scene(page.content.room.width_mm, height / points(1))
                yield name, for_low_vision(scene) if SIZES[look].low_vision else scene


def _set(page: LaidPage, look: str, recordings: Mapping[str, Recording], answers: bool) -> SetPage:
    imposed, fit, content = page.imposed, page.fit, page.content
    flowables = set_page(content, fit.setting, fit.kept, recordings.__getitem__, answers=answers)
    return SetPage(
        label=_label(imposed.page.number, answers, content.lesson.language),
        number_pt=NUMBER_PT[look],
        matrix=(*imposed.turned, points(imposed.left_mm), points(imposed.bottom_mm)),
        left_mm=imposed.margins.left,
        foot_mm=imposed.foot_mm,
        number_mm=imposed.margins.bottom,
        width_mm=imposed.width_mm,
        flowables=flowables,
        room=content.room,
        spacing=fit.setting.spacing,
        heights=fit.heights,
    )


def _label(number: int, answers: bool, language: str) -> str:
    """Give what stands at the foot of a page; the key says that it is one, or it is copied for a class."""
    return say(said("key_page", page=number), language) if answers else str(number)
