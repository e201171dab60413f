"""The parts that a lesson's folder is made of.

Each begins to be drawn and printed, so that one part's pages are laid out while the next one's are written.
"""

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, TypeAlias

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.scenes import told_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.looks import REGULAR, SLIDES
from foldmath.pages.sharing import Content, Printing, begin, gathered
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.words.saying import say

if TYPE_CHECKING:
    from foldmath.making.papers import Papers
    from foldmath.slides.slides import SlideShow
    from foldmath.worksheets.worksheet import Worksheet

Files: TypeAlias = Mapping[str, Content]
"""Of a part, by their names in the lesson's folder, as far as they are begun."""

GUIDE_SHEETS = "templates.pdf"

SHOWS = {"slides.pdf": phrase("slides"), "slides-reveals.pdf": phrase("slides, a page for each reveal")}
"""What the titles of the slides in print say of them."""


def finished(begun: Iterable[Files]) -> dict[str, bytes]:
    """Finish parts, and gather their files."""
    return gathered({name: content for files in begun for name, content in files.items()})


def in_folder(folder: str, files: Files) -> Files:
    """Put the files of a part into a folder, whose name ends in a slash; an empty name is no folder."""
    return {folder + name: content for name, content in files.items()}


def class_worksheet(proved: ProvedLesson, level: Level) -> "Worksheet":
    """Give the worksheet of a level, with the class's numbers."""
    from foldmath.worksheets.folding_part import folding_part
    from foldmath.worksheets.picture_book import SIZES
    from foldmath.worksheets.worksheet import with_items

    return with_items(folding_part(proved), proved, level, SIZES[REGULAR].models)


def core_worksheet(proved: ProvedLesson) -> "Worksheet":
    """Give the worksheet of most of the class, whose products are drawn and projected."""
    return class_worksheet(proved, Level.CORE)


def worksheets(proved: ProvedLesson, made: "Papers", picture_process: PictureProcess) -> Files:
    """Begin worksheets, their keys, the exit ticket and the plan."""
    language = proved.lesson.language
    return {
        name: begin(
            Printing(
                written=document,
                scenes=made.pictures,
                title=made.title(name, language),
                language=language,
                look=made.looks[name],
            ),
            picture_process,
        )
        for name, document in made.documents.items()
    }


def slides(show: "SlideShow", picture_process: PictureProcess) -> Files:
    """Begin the slides: the page for a browser, and in print with all answers, and with a page a reveal."""
    from foldmath.slides.in_print.printed import slides_document
    from foldmath.slides.in_print.revealed import reveals_document
    from foldmath.slides.page import slides_html

    lesson = show.proved.lesson
    papers = {"slides.pdf": slides_document(show), "slides-reveals.pdf": reveals_document(show)}
    begun = {
        name: begin(
            Printing(
                written=paper.document,
                scenes=paper.pictures,
                title=f"{lesson.title}: {say(SHOWS[name], lesson.language)}",
                language=lesson.language,
                look=SLIDES,
            ),
            picture_process,
        )
        for name, paper in papers.items()
    }
    return {"slides.html": lambda: slides_html(show).encode(), **begun}


def guides(proved: ProvedLesson, pages: str, look: str) -> Files:
    """Give the guide sheets, which need no pictures."""

    def sheets() -> bytes:
        from foldmath.guides import guide_sheets

        return guide_sheets(proved, pages, look)

    return {GUIDE_SHEETS: sheets}


def diagrams(proved: ProvedLesson, core: "Worksheet", picture_process: PictureProcess) -> Files:
    """Begin the diagrams as SVG."""
    from foldmath.worksheets.picture_book import diagrams

    return {
        f"diagrams/{name}.svg": picture_process.svg(told_in(scene, proved.lesson.language))
        for name, scene in diagrams(proved, core).items()
    }
