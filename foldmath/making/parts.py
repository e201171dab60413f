"""The parts that a lesson's folder is made of.

Each begins to have its pictures drawn and gives what finishes it, so that one part's pages are laid out while
the next one's pictures are being drawn.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, TypeAlias

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.scenes import told_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.looks import REGULAR, SLIDES
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.words.saying import say

if TYPE_CHECKING:
    from foldmath.making.papers import Papers
    from foldmath.worksheets.worksheet import Worksheet

Finish: TypeAlias = Callable[[], Mapping[str, bytes]]
"""Waits for the pictures and lays out the pages: files by their names in the lesson's folder."""


SHOWS = {"slides.pdf": phrase("slides"), "slides-reveals.pdf": phrase("slides, a page for each reveal")}
"""What the titles of the slides in print say of them."""


def finished(begun: Iterable[Finish]) -> dict[str, bytes]:
    """Finish parts in turn, and gather their files."""
    return {name: content for finish in begun for name, content in finish().items()}


def in_folder(folder: str, finish: Finish) -> Finish:
    """Put what a part gives into a folder, whose name ends in a slash; an empty name is no folder."""
    return lambda: {folder + name: content for name, content in finish().items()}


def class_worksheet(proved: ProvedLesson, level: Level) -> "Worksheet":
    """Give the worksheet of a level, with the class's numbers."""
    from foldmath.worksheets.folding_part import folding_part
    from foldmath.worksheets.picture_book import SIZES
    from foldmath.worksheets.worksheet import with_items

    return with_items(folding_part(proved), proved, level, SIZES[REGULAR].models)


def core_worksheet(proved: ProvedLesson) -> "Worksheet":
    """Give the worksheet of most of the class, whose products are drawn and projected."""
    return class_worksheet(proved, Level.CORE)


def worksheets(proved: ProvedLesson, made: "Papers", picture_process: PictureProcess) -> Finish:
    """Begin the worksheets, their keys, the exit ticket and the plan."""
    recordings = picture_process.recordings(list(made.pictures.values()))

    def finish() -> dict[str, bytes]:
        from foldmath.pages.printing import printed

        lesson = proved.lesson
        pictures = dict(zip(made.pictures, recordings.result(), strict=True))
        return {
            name: printed(
                [document], pictures, made.title(name, lesson.language), lesson.language, made.looks[name]
            )
            for name, document in made.documents.items()
        }

    return finish


def slides(proved: ProvedLesson, core: "Worksheet", picture_process: PictureProcess) -> Finish:
    """Begin the slides: the page for a browser, and in print with all answers, and with a page a reveal."""
    from foldmath.slides.in_print.printed import slides_document
    from foldmath.slides.in_print.revealed import reveals_document
    from foldmath.slides.page import slides_html
    from foldmath.slides.slides import slide_show

    show = slide_show(proved, core)
    papers = {"slides.pdf": slides_document(show), "slides-reveals.pdf": reveals_document(show)}
    scenes = {
        (name, picture): scene for name, paper in papers.items() for picture, scene in paper.pictures.items()
    }
    recordings = picture_process.recordings(list(scenes.values()))

    def finish() -> dict[str, bytes]:
        from foldmath.pages.printing import printed

        lesson = proved.lesson
        drawn = dict(zip(scenes, recordings.result(), strict=True))
        made = {"slides.html": slides_html(show).encode()}
        for name, paper in papers.items():
            pictures = {picture: drawn[name, picture] for picture in paper.pictures}
            title = f"{lesson.title}: {say(SHOWS[name], lesson.language)}"
            made[name] = printed([paper.document], pictures, title, lesson.language, SLIDES)
        return made

    return finish


def guides(proved: ProvedLesson, pages: str, look: str) -> Finish:
    """Begin the guide sheets, which need no pictures."""

    def finish() -> dict[str, bytes]:
        from foldmath.guides import guide_sheets

        return {"templates.pdf": guide_sheets(proved, pages, look)}

    return finish


def diagrams(proved: ProvedLesson, core: "Worksheet", picture_process: PictureProcess) -> Finish:
    """Begin the diagrams as SVG."""
    from foldmath.worksheets.picture_book import diagrams

    drawn = diagrams(proved, core)
    svgs = picture_process.svgs([told_in(scene, proved.lesson.language) for scene in drawn.values()])
    return lambda: {
        f"diagrams/{name}.svg": content for name, content in zip(drawn, svgs.result(), strict=True)
    }
