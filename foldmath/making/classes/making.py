"""A class's set of a lesson: every pupil's own pages, their key, and all else that the lesson needs."""

from collections import Counter, deque
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import replace
from functools import cache, cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.errors import FoldmathError
from foldmath.lesson.numbered_pupils import called_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.booklet import folding_page, sheet_of_pages, with_fitting_booklet
from foldmath.making.classes.crew import Crew
from foldmath.making.hands import hard_for_hands
from foldmath.making.languages import languages_told, one_language, said_in, told_of_own_words
from foldmath.making.order import ClassOrder, Made, Order, laying_out, proved_lesson
from foldmath.making.parts import core_worksheet, finished, guides, slides, worksheets
from foldmath.making.products import told_of_products
from foldmath.making.sets.file_set import Access, FileSet
from foldmath.making.sets.manifest import Origin, digest, files_if_whole, origin_of
from foldmath.making.sets.placing import place
from foldmath.phrases import Said
from foldmath.values import frozen

if TYPE_CHECKING:
    from concurrent.futures import Future

    from foldmath.making.classes.class_set import ClassPages

CLASS_SET = "class-"
"""How the folder of a class's pages begins, in that of the lesson; the name of the class follows."""

CLASSES_AHEAD = 2
"""Classes begun before one is finished: while the plan of one is waited for, the key and the plan of the next
are under way, and the pages of the one after it."""


@frozen
class Classroom:
    """Who gets pages of their own.

    Args:
        name: of the class, as its folder is called.
        pupils: in the order of their list.
        access: who may read their pages.
    """

    name: str
    pupils: tuple[Pupil, ...]
    access: Access


def make_class(
    path: Path,
    order: Order,
    classroom: Classroom,
    crew: Crew,
    picture_process: PictureProcess,
    report_ready: Callable[[int], None],
) -> Made:
    """Make the set of one class.

    Args:
        path: of the lesson file.
        order: what is wanted.
        classroom: who gets pages.
        crew: lays them out.
        picture_process: draws the pictures.
        report_ready: is told of how many pupils the pages are ready.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    return ClassLesson(path, order, crew, picture_process).make(classroom, report_ready)


@frozen
class SetBegun:
    """A class's set under way.

    Args:
        finish: gives it, and raises as ``ClassLesson.make`` does.
        go_on: has its worksheets laid out and its key and plan begun, where that is to be done.
    """

    finish: Callable[[], Made]
    go_on: Callable[[], object]


class ClassLesson:
    """A lesson for any number of classes: proved once, and what all have alike is laid out for the first.

    Args:
        path: of the lesson file.
        order: what is wanted.
        crew: lays out pupils' pages.
        picture_process: draws the pictures.

    Raises:
        LessonRefused: the lesson cannot be used.
    """

    def __init__(self, path: Path, order: Order, crew: Crew, picture_process: PictureProcess) -> None:
        proved, paper = proved_lesson(path, order.paper)
        said = said_in(proved, one_language(order.languages))
        self._proved = _told_to(crew, said)
        self._printed, left_out = with_fitting_booklet(self._proved, paper, order.look)
        told = *hard_for_hands(proved), *told_of_products(proved), *told_of_own_words(said.lesson)
        self._notes = (*told, *left_out)
        self._folder, self._order = order.out / path.stem, order
        self._wanted = ClassOrder(paper, order.look)
        self._crew, self._picture_process = crew, picture_process
        self._alike: _Alike | None = None

    def make(self, classroom: Classroom, report_ready: Callable[[int], None]) -> Made:
        """Make every pupil's own worksheet in one file and its key, with all else that the lesson needs.

        A set that is there already, whole and of the same origin, is not made again: it would be the same.

        Raises:
            LessonRefused: the lesson cannot be used; nothing is written.
            CannotWrite: the set could not be put in place; nothing is changed.
        """
        return self.begin(classroom, report_ready).finish()

    def begin(self, classroom: Classroom, report_ready: Callable[[int], None]) -> "SetBegun":
        """Begin to make a set, so that its first pages are laid out while those of others are finished.

        Raises:
            LessonRefused: the lesson cannot be used.
        """
        proved, paper = self._proved, self._wanted.page_paper
        pupils, lacking = _on_paper(called_in(classroom.pupils, proved.lesson.language), self._crew)
        origin = _origin(proved, paper, self._order, pupils)
        if there := files_if_whole(self._folder / _folder_name(classroom), origin):
            made = Made(proved, there, self._notes, lacking, made_before=True)
            return SetBegun(lambda: made, lambda: made)
        from foldmath.making.classes.class_set import ClassPages

        with laying_out(proved.lesson):
            alike = self._alike = self._alike or _Alike(self._printed, self._wanted, self._picture_process)
            pages = ClassPages(alike.chooser, pupils, self._crew, report_ready)
            alike.handouts.begin(pupils)

        @cache
        def plan() -> "Future[bytes]":
            with laying_out(proved.lesson):
                return self._begin_plan(pupils, pages, alike)

        def finish() -> Made:
            printed_plan = plan()
            with laying_out(proved.lesson):
                files = self._files(pupils, pages, alike, printed_plan)
            placed = place(self._set_of(classroom, files, origin))
            told = *self._notes, *alike.notes, *alike.handouts.notes(pupils)
            return Made(proved, placed.files, (*told, *placed.notes), lacking)

        return SetBegun(finish, plan)

    def _set_of(self, classroom: Classroom, files: Mapping[str, bytes], origin: Origin) -> FileSet:
        return FileSet(
            lesson_folder=self._folder,
            name=_folder_name(classroom),
            files=files,
            origin=origin,
            access=classroom.access,
        )

    def in_turn(
        self, classes: Iterable[tuple[Classroom, Callable[[int], None]]]
    ) -> Iterator[Callable[[], Made]]:
        """Give what finishes the set of each class in turn, while the next ones are begun a little ahead.

        Args:
            classes: and who is told of how many of their pupils the pages are ready.
        """
        ahead: deque[SetBegun] = deque()
        for classroom, report_ready in classes:
            try:
                ahead.append(self.begin(classroom, report_ready))
            except FoldmathError as error:
                refused = partial(_refused, error)
                ahead.append(SetBegun(refused, refused))
            if len(ahead) > CLASSES_AHEAD:
                # What goes wrong with the next one is told in its turn.
                with suppress(FoldmathError):
                    ahead[1].go_on()
                yield ahead.popleft().finish
        yield from (begun.finish for begun in ahead)

    def _begin_plan(self, pupils: tuple[Pupil, ...], pages: "ClassPages", alike: "_Alike") -> "Future[bytes]":
        """Have the worksheets of a class laid out, and begin its plan, which tells how many there are."""
        from foldmath.making.classes.pressing import print_paper
        from foldmath.teachers_plan.copies import OwnPages

        counts = Counter(pupil.level.value for pupil in pupils)
        labels = tuple(pupil.on_paper for pupil in pupils if pupil.namesake)
        own = OwnPages(counts, labels, pages.laid_out(), alike.handouts.shared_out(pupils))
        return self._crew.executor.submit(print_paper, *alike.chooser.plan(own))

    def _files(
        self, pupils: tuple[Pupil, ...], pages: "ClassPages", alike: "_Alike", plan: "Future[bytes]"
    ) -> Mapping[str, bytes]:
        """Bind the pages of a class, with all else that it needs."""
        from foldmath.making.papers import TEACHERS_PLAN

        bundle = pages.finished()
        return {
            "class-worksheets.pdf": bundle.worksheets,
            "class-key.pdf": bundle.key,
            **alike.files,
            **alike.handouts.others(pupils),
            TEACHERS_PLAN: plan.result(),
        }


def _refused(error: FoldmathError) -> Made:
    """Refuse what could not even be begun, in its turn."""
    raise error


def _folder_name(classroom: Classroom) -> str:
    return f"{CLASS_SET}{classroom.name}"


def _told_to(crew: Crew, proved: ProvedLesson) -> ProvedLesson:
    """Give the lesson as a crew may know it: without the names of its stories where it may know none."""
    return proved if crew.knows_names else replace(proved, lesson=replace(proved.lesson, names=()))


def _on_paper(pupils: tuple[Pupil, ...], crew: Crew) -> tuple[tuple[Pupil, ...], tuple[Said, ...]]:
    """Give numbers to pupils whose names cannot be printed, or may not be sent; and what is lacking."""
    from foldmath.pages.names import told_of_names, with_numbers, with_numbers_for_unprintable

    named = with_numbers_for_unprintable(pupils)
    return named if crew.knows_names else with_numbers(named), told_of_names(named)


class _Alike:
    """What is the same for every class: its chooser; slides, guide sheets, booklet and exit ticket.

    Args:
        proved: the lesson.
        order: how pages look.
        picture_process: draws the pictures.
    """

    def __init__(self, proved: ProvedLesson, order: ClassOrder, picture_process: PictureProcess) -> None:
        from foldmath.making.classes.choosing import Chooser
        from foldmath.making.classes.handouts import Handouts
        from foldmath.making.papers import Masters
        from foldmath.slides.slides import slide_show_for_own_pages

        pages, look = order.page_paper, order.look
        masters = Masters(proved, pages, look)
        booklet, self.notes = sheet_of_pages(proved, pages, look, picture_process)
        self._begun = [
            slides(slide_show_for_own_pages(proved, core_worksheet(proved)), picture_process),
            guides(proved, pages, look),
            folding_page(proved, pages, look, picture_process),
            booklet,
            # Pages of pupils' own bear codes of their own, so that there is none for all of them.
            worksheets(proved, masters.ticket_paper(""), picture_process),
        ]
        self.chooser = Chooser(masters, picture_process)
        hers = [name for files in self._begun for name in files]
        self.handouts = Handouts(proved, order, picture_process, hers=hers, told=self.notes)

    @cached_property
    def files(self) -> Mapping[str, bytes]:
        """Those that were begun, finished for the first class."""
        return finished(self._begun)


def _origin(proved: ProvedLesson, pages: str, order: Order, pupils: tuple[Pupil, ...]) -> Origin:
    """Say what a class set is made from: the lesson, how its pages look, and who is in the class."""
    named = repr([(pupil.label, pupil.level.value, pupil.language, pupil.instead) for pupil in pupils])
    told = {"paper": pages, "look": order.look, "pupils": digest(named.encode())}
    return origin_of(proved.lesson, **told, **languages_told(order.languages))
