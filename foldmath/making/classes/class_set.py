"""A class set: every pupil's own worksheet in one file, and one compact key in the same order.

Pupils are taken in batches of a fixed size, so that the files are the same whatever the number of processes.
One process chooses the numbers of the next batch while others lay out the last ones, on this machine or on
others.
"""

from collections import deque
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import dataclass, replace
from functools import partial
from threading import Lock

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Scene
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.classes.crew import Crew
from foldmath.making.languages import said_in
from foldmath.making.order import ClassOrder
from foldmath.pages.page_shapes import upright
from foldmath.pages.parts import Part, flowables_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.binding import Binding
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, FilledPage, PageMaster, filled_pages
from foldmath.pages.pdf.press import Pressed, pressed
from foldmath.pages.pdf.styles import style_sheet
from foldmath.pages.printing import Document, printed_pages
from foldmath.pages.templating import render
from foldmath.phrases import Phrase, phrase
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level
from foldmath.words.saying import say
from foldmath.worksheets.exit_ticket import exit_ticket
from foldmath.worksheets.folding_part import FoldingPart, folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.pupil_pages import PupilPages
from foldmath.worksheets.worksheet import Worksheet, with_items

BATCH = 24
"""Pupils whose pages are laid out together: few enough to share the work, enough to share fonts."""

SCHOOL, SCHOOL_BATCH = 480, 96
"""Past so many pupils batches are larger, since each brings fonts and forms of its own; and the key of so
many is one table, so that a class's has no page that is begun anew."""

ONE_AT_A_TIME = Lock()
"""Workers of a cluster may have threads, and reportlab keeps fonts and forms for a whole process."""

BATCHES_AHEAD = 2
"""Batches waiting for each process; more would only fill memory."""

EMPTY_SIDE = phrase("this side stays empty")
"""At the foot of a back that has nothing on it, so that a printer does not leave it out."""


@dataclass(frozen=True)
class ClassSet:
    """The two files of a class, as PDF, and how many pages all worksheets have."""

    worksheets: bytes
    key: bytes
    pages: int


def class_set(
    proved: ProvedLesson,
    pupils: tuple[Pupil, ...],
    order: ClassOrder,
    crew: Crew,
    picture_process: PictureProcess,
    report_progress: Callable[[int], None],
) -> ClassSet:
    """Make the class set of a lesson.

    Args:
        proved: the lesson.
        pupils: in the order of the roster.
        order: what is wanted.
        crew: lays out the pages.
        picture_process: draws the pictures.
        report_progress: is told how many pupils' pages are ready.
    """
    press = _Press(proved, order, picture_process)
    files = Binding(), Binding()
    begun = ready = 0
    waiting: deque[_Job] = deque()
    for batch in batches(pupils):
        waiting.append(_Job(files[0], len(batch), crew.executor.submit(_print_batch, press.batch(batch))))
        begun += len(batch)
        if begun == len(pupils) or len(press.in_key) >= SCHOOL:
            waiting.append(_Job(files[1], 0, crew.executor.submit(_print_key, press.key())))
        while len(waiting) > BATCHES_AHEAD * crew.size:
            ready = _collect(waiting.popleft(), ready, report_progress)
    for job in waiting:
        ready = _collect(job, ready, report_progress)
    papers = phrase("worksheet"), phrase("answer key")
    worksheets, key = (
        file.closed(_title(proved.lesson, paper), proved.lesson.language)
        for file, paper in zip(files, papers, strict=True)
    )
    return ClassSet(worksheets, key, files[0].page_count)


def batches(pupils: tuple[Pupil, ...]) -> list[tuple[Pupil, ...]]:
    """Give the pupils whose pages are laid out together: more of them where a whole school is printed."""
    size = BATCH if len(pupils) <= SCHOOL else SCHOOL_BATCH
    return [pupils[start : start + size] for start in range(0, len(pupils), size)]


@dataclass(frozen=True)
class _Job:
    """Pages that are being laid out.

    Args:
        file: that they go into.
        pupils: whose worksheets they are; 0 for pages of the key.
        pages: will be there.
    """

    file: Binding
    pupils: int
    pages: Future[Pressed]


def _collect(job: _Job, ready: int, report_progress: Callable[[int], None]) -> int:
    """Put pages into their file, and tell and give of how many pupils the pages are ready."""
    job.file.add(job.pages.result())
    ready += job.pupils
    if job.pupils:
        report_progress(ready)
    return ready


@dataclass(frozen=True)
class _PupilPages:
    """A pupil's worksheet, ready to be laid out.

    Args:
        parts: of it.
        title: of the lesson, in the pupil's language.
        code: ties it to the key.
        language: of its words.
    """

    parts: tuple[Part, ...]
    title: str
    code: str
    language: str


@dataclass(frozen=True, kw_only=True)
class _Batch:
    """What a process needs to lay out a few pupils' pages, and the lesson in the teacher's language."""

    lesson: Lesson
    worksheets: tuple[_PupilPages, ...]
    pictures: dict[str, Recording]
    order: ClassOrder


@dataclass(frozen=True)
class _Key:
    """What a process needs to lay out the key."""

    html: str
    lesson: Lesson
    order: ClassOrder


class _Press:
    """Chooses pupils' numbers, and has the pictures that they need drawn, each once."""

    def __init__(self, proved: ProvedLesson, order: ClassOrder, picture_process: PictureProcess) -> None:
        self.proved = proved
        self.order = order
        self.picture_process = picture_process
        self.folding = folding_part(proved)
        self.editions = {proved.lesson.language: (proved, self.folding)}
        self.drawn: dict[str, Recording] = {}
        self._draw(folding_pictures(proved, self.folding, order.look))
        self.always = dict(self.drawn)
        self.pages = PupilPages(order.look, tuple(self.always))
        self.in_key: list[Worksheet] = []
        models = SIZES[order.look].models
        masters = (with_items(self.folding, proved, level, models) for level in Level)
        self.ticket = exit_ticket(self.folding, masters)

    def batch(self, pupils: tuple[Pupil, ...]) -> _Batch:
        """Prepare the pages of a few pupils."""
        sheets = tuple(self._sheet(pupil) for pupil in pupils)
        scenes: dict[str, Scene] = {}
        for sheet in sheets:
            scenes |= item_pictures(sheet, self.order.look)
        self._draw(scenes)
        lesson = self.proved.lesson
        worksheets = tuple(
            _PupilPages(self.pages.parts(sheet), sheet.lesson.title, sheet.code, sheet.lesson.language)
            for sheet in sheets
        )
        self.in_key += sheets
        pictures = self.always | {name: self.drawn[name] for name in scenes}
        return _Batch(lesson=lesson, worksheets=worksheets, pictures=pictures, order=self.order)

    def key(self) -> _Key:
        """Give the key of the pupils whose pages were prepared since the last one."""
        lesson, sheets = self.proved.lesson, self.in_key
        self.in_key = []
        html = render(
            "worksheets/class_key.html",
            lesson.language,
            lesson=lesson,
            sheets=sheets,
            ticket=self.ticket,
            folding=self.folding,
        )
        return _Key(html, lesson, self.order)

    def _edition(self, language: str) -> tuple[ProvedLesson, FoldingPart]:
        """Give the lesson as it is said to pupils of a language; empty for the lesson's own."""
        language = language or self.proved.lesson.language
        if language not in self.editions:
            said = said_in(self.proved, language)
            self.editions[language] = said, replace(self.folding, lesson=said.lesson)
        return self.editions[language]

    def _sheet(self, pupil: Pupil) -> Worksheet:
        proved, folding = self._edition(pupil.language)
        return with_items(
            folding,
            proved,
            pupil.level,
            SIZES[self.order.look].models,
            seed=pupil_seed(self.proved.lesson, pupil),
            pupil=pupil.on_paper,
        )

    def _draw(self, scenes: dict[str, Scene]) -> None:
        missing = [name for name in scenes if name not in self.drawn]
        if missing:
            recordings = self.picture_process.recordings([scenes[name] for name in missing]).result()
            self.drawn.update(zip(missing, recordings, strict=True))


def _print_batch(batch: _Batch) -> Pressed:
    """Lay out the worksheets of a batch."""
    with ONE_AT_A_TIME:
        fonts.register_fonts()
        copies = map(partial(_copy, batch), batch.worksheets)
        return pressed(map(leaves, copies), batch.lesson.language, style_sheet(batch.order.look).foot_pt)


def _print_key(key: _Key) -> Pressed:
    """Lay out the key."""
    with ONE_AT_A_TIME:
        master = PageMaster(upright(key.order.page_paper), key.lesson.title, "", "")
        return printed_pages([Document(key.html, master, answers=True)], {}, key.lesson.language)


def _copy(batch: _Batch, pages: _PupilPages) -> Copy:
    """Set a pupil's worksheet."""
    order = batch.order
    master = PageMaster(upright(order.page_paper), pages.title, pages.code, PAGE_WORDS)
    flowables = flowables_of(pages.parts, batch.pictures, order.look, pages.language)
    return Copy(list(flowables), master, language=pages.language)


def leaves(copy: Copy) -> list[FilledPage]:
    """Fill the pages of a pupil's worksheet, so that printed on both sides it shares no leaf with the next.

    One of a single page is printed on one side, and so is the whole class's.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    pages = filled_pages(copy)
    if len(pages) == 1 or len(pages) % 2 == 0:
        return pages
    master = replace(copy.master, page_words=EMPTY_SIDE)
    return [*pages, FilledPage(replace(copy, master=master), ())]


def _title(lesson: Lesson, paper: Phrase) -> str:
    """Give the title of a file, which tells worksheets from their key."""
    return f"{lesson.title}: {say(paper, lesson.language)}"
