"""Previews that are kept while they are looked at: takes a lesson and an order, gives the same one again."""

from collections import OrderedDict
from threading import Lock

from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.proving import prove
from foldmath.making.order import lesson_on, page_paper
from foldmath.making.previews import Preview
from foldmath.making.sets.manifest import Origin, origin_of
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.values import frozen

MOST_KEPT = 6
"""A preview has some megabytes; two windows on two papers need four."""


@frozen
class Wishes:
    """How pages are to be printed.

    Args:
        paper: ``letter`` or ``A4``; None for the lesson's own.
        large: whether in large print.
    """

    paper: str | None = None
    large: bool = False

    @property
    def look(self) -> str:
        """The name of the style sheet."""
        return LARGE if self.large else REGULAR


class KeptPreviews:
    """The previews that were looked at last."""

    def __init__(self, pictures: PictureProcess) -> None:
        self._pictures = pictures
        self._kept: OrderedDict[str, Preview] = OrderedDict()
        self._turn = Lock()

    def of(self, opened: OpenLesson, wishes: Wishes) -> Preview:
        """Give the preview of a lesson as it is now.

        Raises:
            LessonRefused: the lesson cannot be used.
            Unreadable: there are no pages on this paper.
        """
        wanted = None if wishes.paper is None else page_paper(wishes.paper)
        lesson, pages = lesson_on(wanted, opened.read())
        key = repr(_told(origin_of(lesson, paper=pages, look=wishes.look)))
        with self._turn:
            found = self._kept.pop(key, None) or Preview(prove(lesson), pages, wishes.look, self._pictures)
            self._kept[key] = found
            while len(self._kept) > MOST_KEPT:
                self._kept.popitem(last=False)
        return found


def _told(origin: Origin) -> tuple[str, list[tuple[str, str]]]:
    return origin.lesson, sorted(origin.options.items())
