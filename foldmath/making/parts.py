"""The parts that a lesson's folder is made of.

Each begins to have its pictures drawn and gives what finishes it, so that one part's pages are laid out while
the next one's pictures are being drawn.
"""

from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import Future
from dataclasses import replace
from typing import TYPE_CHECKING, TypeAlias, TypeVar

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import told_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.looks import REGULAR, SLIDES
from foldmath.pages.sharing import Content, Printing, printed_by_both
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.words.saying import say

if TYPE_CHECKING:
    from foldmath.making.papers import Papers
    from foldmath.slides.slides import SlideShow
    from foldmath.worksheets.worksheet import Worksheet

Name = TypeVar("Name")

Finish: TypeAlias = Callable[[], Mapping[str, Content]]
"""Waits for the pictures and lays out the pages: files by their names in the lesson's folder."""


SHOWS = {"slides.pdf": phrase("slides"), "slides-reveals.pdf": phrase("slides, a page for each reveal")}
"""What the titles of the slides in print say of them."""


def finished(begun: Iterable[Finish]) -> dict[str, bytes]:
    """Finish parts in turn, gather their files, and wait for those that the other process is at."""
    made = {name: content for finish in begun for name, content in finish().items()}
    return {
        name: content.result() if isinstance(content, Future) else content for name, content in made.items()
    }


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

    def finish() -> Mapping[str, Content]:
        language = proved.lesson.language
        pictures = _with_words(made.pictures, recordings, language)
        printings = {
            name: Printing(
                document=document,
                pictures=pictures,
                title=made.title(name, language),
                language=language,
                look=made.looks[name],
            )
            for name, document in made.documents.items()
        }
        return printed_by_both(printings, picture_process)

    return finish


def _with_words(
    names: Iterable[Name], recordings: "Future[list[Recording]]", language: str
) -> dict[Name, Recording]:
    """Give recordings by their names, what they show as words of a language."""
    return {
        name: replace(recording, words=say(recording.words, language))
        for name, recording in zip(names, recordings.result(), strict=True)
    }


def slides(show: "SlideShow", picture_process: PictureProcess) -> Finish:
    """Begin the slides: the page for a browser, and in print with all answers, and with a page a reveal."""
    from foldmath.slides.in_print.printed import slides_document
    from foldmath.slides.in_print.revealed import reveals_document
    from foldmath.slides.page import slides_html

    papers = {"slides.pdf": slides_document(show), "slides-reveals.pdf": reveals_document(show)}
    scenes = {
        (name, picture): scene for name, paper in papers.items() for picture, scene in paper.pictures.items()
    }
    recordings = picture_process.recordings(list(scenes.values()))

    def finish() -> Mapping[str, Content]:
        lesson = show.proved.lesson
        drawn = _with_words(scenes, recordings, lesson.language)
        printings = {
            name: Printing(
                document=paper.document,
                pictures={picture: drawn[name, picture] for picture in paper.pictures},
                title=f"{lesson.title}: {say(SHOWS[name], lesson.language)}",
                language=lesson.language,
                look=SLIDES,
            )
            for name, paper in papers.items()
        }
        in_print = printed_by_both(printings, picture_process)
        return {"slides.html": slides_html(show).encode(), **in_print}

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
