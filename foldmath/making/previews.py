"""Looking before printing: the documents of a lesson, each made when first looked at, and none written."""

from collections.abc import Mapping
from functools import cached_property
from threading import RLock

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.rendering.recording import Recording
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.booklet import folding_page, folding_steps, sheet_of_pages, with_fitting_booklet
from foldmath.making.hands import hard_for_hands
from foldmath.making.languages import said_in
from foldmath.making.papers import Papers, papers
from foldmath.making.parts import Files, finished, guides, slides
from foldmath.pages.printing import printed
from foldmath.phrases import Said

GUIDES = ("templates.pdf",)
BOOKLET, FOLDING = ("booklet.pdf", "booklet-key.pdf"), ("booklet-folding.pdf",)
SLIDES = ("slides.pdf", "slides-reveals.pdf")


class Preview:
    """The documents of one lesson under one order, the same to the byte as ``make`` writes them.

    Several threads may ask at once; one document is made at a time.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
        pictures: draws them.

    Raises:
        LessonRefused: a step cannot be folded from this paper at all.
    """

    def __init__(self, proved: ProvedLesson, page_paper: str, look: str, pictures: PictureProcess) -> None:
        self.proved, self.page_paper, self.look = said_in(proved, None), page_paper, look
        self.notes: tuple[Said, ...] = hard_for_hands(proved)
        self._pictures = pictures
        self._made: dict[str, bytes] = {}
        self._turn = RLock()

    @cached_property
    def papers(self) -> Papers:
        """What the worksheets, their keys, the exit ticket and the plan say."""
        return papers(self._printed, self.page_paper, self.look)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The names of the documents, in the order in which they are shown."""
        with self._turn:
            booklet = BOOKLET if self._printed.lesson.booklet else ()
            folding = FOLDING if folding_steps(self._printed) else ()
            return (*self.papers.documents, *GUIDES, *booklet, *folding, *SLIDES)

    def pdf(self, name: str) -> bytes:
        """Give a document.

        Raises:
            KeyError: there is none of this name.
        """
        with self._turn:
            if name not in self.names:
                raise KeyError(name)
            if name not in self._made:
                self._made.update(finished([self._files(name)]))
            return self._made[name]

    def _files(self, name: str) -> Files:
        if name in self.papers.documents:
            return {name: self._page(name)}
        if name in GUIDES:
            return guides(self.proved, self.page_paper, self.look)
        if name in FOLDING:
            return folding_page(self._printed, self.page_paper, self.look, self._pictures)
        return self._slides() if name in SLIDES else self._booklet()

    def _slides(self) -> Files:
        from foldmath.slides.slides import slide_show

        return slides(slide_show(self.proved, self.papers.core), self._pictures)

    @cached_property
    def _printed(self) -> ProvedLesson:
        """The lesson, without a booklet where large print does not fit on its pages."""
        return with_fitting_booklet(self.proved, self.page_paper, self.look)[0]

    def _booklet(self) -> Files:
        sheet, _ = sheet_of_pages(self._printed, self.page_paper, self.look, self._pictures)
        return sheet

    @cached_property
    def _recordings(self) -> Mapping[str, Recording]:
        scenes = self.papers.pictures
        return dict(zip(scenes, self._pictures.recordings(list(scenes.values())).result(), strict=True))

    def _page(self, name: str) -> bytes:
        lesson = self.proved.lesson
        title, look = self.papers.title(name, lesson.language), self.papers.looks[name]
        return printed(
            [self.papers.documents[name].document()], self._recordings, title, lesson.language, look
        )
