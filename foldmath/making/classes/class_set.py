"""A class set: every pupil's own worksheet in one file, and one compact key in the same order.

Pupils are taken in batches of a fixed size, so that the files are the same whatever the number of processes.
One process chooses the numbers of the next batch while others lay out the last ones, on this machine or on
others.
"""

from collections import deque
from collections.abc import Callable
from concurrent.futures import Future

from foldmath.lesson.roster import Pupil
from foldmath.making.classes.choosing import Chooser
from foldmath.making.classes.crew import Crew
from foldmath.making.classes.pressing import PrintedBatch, counted_together, print_batch, print_key
from foldmath.pages.pdf.binding import Binding
from foldmath.pages.pdf.imprinted import Imprinted
from foldmath.pages.pdf.press import Pressed
from foldmath.phrases import Phrase, phrase
from foldmath.values import frozen
from foldmath.words.saying import say
from foldmath.worksheets.class_key import PupilsListed

BATCH = 24
"""Pupils whose pages are laid out together: few enough to share the work, enough to share fonts."""

SCHOOL, SCHOOL_BATCH = 480, 96
"""Past so many pupils batches are larger, since each brings fonts and forms of its own; and the key of so
many is one table, so that a class's has no page that is begun anew. Longer ones are laid out in parts, each
of which tells whom it has."""

BATCHES_AHEAD = 2
"""Batches waiting for each process; more would only fill memory."""


@frozen
class ClassSet:
    """The two files of a class, as PDF, and how many pages all worksheets have."""

    worksheets: bytes
    key: bytes
    pages: int


def batches(pupils: tuple[Pupil, ...]) -> list[tuple[Pupil, ...]]:
    """Give the pupils whose pages are laid out together: more of them where a whole school is printed."""
    size = BATCH if len(pupils) <= SCHOOL else SCHOOL_BATCH
    return [pupils[start : start + size] for start in range(0, len(pupils), size)]


@frozen
class _Job:
    """A batch that is being laid out: whose it is, and what will be there."""

    pupils: int
    printed: Future[PrintedBatch]


class ClassPages:
    """The pages of a class under way: its first batches are begun at once, and others as these are done.

    Args:
        chooser: of the lesson.
        pupils: in the order of the roster.
        crew: lays out the pages.
        report_progress: is told how many pupils' pages are ready.
    """

    def __init__(
        self,
        chooser: Chooser,
        pupils: tuple[Pupil, ...],
        crew: Crew,
        report_progress: Callable[[int], None],
    ) -> None:
        self._chooser, self._crew, self._report_progress = chooser, crew, report_progress
        self._pupils = pupils
        self._to_come = deque(batches(pupils))
        self._waiting: deque[_Job] = deque()
        self._worksheets, self._key = Binding(), Binding()
        self._rows: list[Imprinted] = []
        self._keys: list[Future[Pressed]] = []
        self._ready = 0
        self._begin_more()

    def laid_out(self) -> int:
        """Have all worksheets laid out, and the key begun; give how many pages they are."""
        while self._waiting:
            # One that fails stays the first, so that it fails again for whoever asks again.
            printed = self._waiting[0].printed.result()
            self._ready += self._waiting.popleft().pupils
            self._take(printed)
            self._begin_more()
            self._report_progress(self._ready)
        return self._worksheets.page_count

    def finished(self) -> ClassSet:
        """Have all pages laid out, and bind them."""
        pages = self.laid_out()
        for key in self._keys:
            self._key.add(key.result())
        worksheets = self._closed(self._worksheets, phrase("worksheet"))
        return ClassSet(worksheets, self._closed(self._key, phrase("answer key")), pages)

    def _begin_more(self) -> None:
        submit = self._crew.executor.submit
        while self._to_come and len(self._waiting) < BATCHES_AHEAD * self._crew.size:
            pupils = self._to_come.popleft()
            self._waiting.append(_Job(len(pupils), submit(print_batch, self._chooser.batch(pupils))))

    def _take(self, printed: PrintedBatch) -> None:
        """Put pages into their file; the key is begun as soon as all its rows are there."""
        self._rows += printed.key_rows
        if not (self._waiting or self._to_come):
            self._begin_key()
        self._worksheets.add(printed.pages)

    def _begin_key(self) -> None:
        """Have the key laid out, in parts where it is long, and their pages counted as one."""
        parts = []
        for begins in range(0, len(self._rows), SCHOOL):
            part = slice(begins, begins + SCHOOL)
            names = tuple(pupil.on_paper for pupil in self._pupils[part])
            listed = PupilsListed(names, begins, len(self._pupils))
            parts.append(self._chooser.key(tuple(self._rows[part]), listed))
        self._rows.clear()
        submit = self._crew.executor.submit
        self._keys = [submit(print_key, part) for part in counted_together(parts)]

    def _closed(self, file: Binding, paper: Phrase) -> bytes:
        """Close a file, whose title tells worksheets from their key."""
        lesson = self._chooser.proved.lesson
        return file.closed(f"{lesson.title}: {say(paper, lesson.language)}", lesson.language)
