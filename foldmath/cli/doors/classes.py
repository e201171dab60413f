"""``make`` for classes: lessons for every class, on the same processes; what fails does not stop the rest."""

import gc
import sys
from collections.abc import Iterator, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from functools import partial
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.cli.doors.making import order_of, tell_lesson, tell_notes
from foldmath.cli.terminal.bar import Bar
from foldmath.cli.terminal.new_files import require_own_folders
from foldmath.cli.terminal.speaking import spoken, tell, tell_error, tell_written
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.errors import FoldmathError, LessonRefused, Unreadable
from foldmath.phrases import Said, counted, phrase
from foldmath.values import frozen

if TYPE_CHECKING:
    from foldmath.making import Made, Order
    from foldmath.making.classes import Classroom, Crew

LIST = ".csv"
"""The files of a folder that are class lists; others may lie beside them."""


@frozen(kw_only=True)
class Asked:
    """Which classes get pages, and who lays them out.

    Args:
        rosters: the files of class lists.
        folder: of class lists; None where files are named.
        pupils: how many, where there is no list; None where they were not asked for by number.
        cluster: the address of a scheduler; None for this machine.

    Raises:
        Unreadable: a cluster is named, and no class.
    """

    rosters: tuple[str, ...] = ()
    folder: str | None = None
    pupils: int | None = None
    cluster: str | None = None

    def __post_init__(self) -> None:
        if self.cluster is not None and not self.of_classes:
            message = phrase("--cluster lays out the pages of classes, and no class is named")
            raise Unreadable(message, phrase("--class 4b.csv --cluster tls://scheduler.example:8786"))

    @property
    def of_classes(self) -> bool:
        """Whether any class is named."""
        return bool(self.rosters) or self.folder is not None or self.pupils is not None


def make_class_sets(
    lessons: list[str],
    out: str,
    paper: str | None,
    *,
    large_print: bool,
    asked: Asked,
    language: str | None = None,
) -> int:
    """Make class sets of lessons, for the pupils of lists or for a number of them; give the exit code."""
    paths, rosters = [Path(name) for name in lessons], _rosters(asked)
    require_own_folders(paths)
    require_own_folders(rosters)
    with PictureProcess() as picture_process:
        from foldmath import making

        order = order_of(out, paper, large_print, language)
        making.one_language(order.languages)
        run = _Run(order, picture_process)
        classrooms = list(run.readable(rosters)) if rosters else [_of_number(asked.pupils or 0)]
        if classrooms:
            with _crew(asked.cluster) as crew:
                try:
                    run.make(paths, classrooms, crew)
                except KeyboardInterrupt:
                    onward = phrase(
                        "sets that are there already are whole: the same command makes the others"
                    )
                    print(spoken(onward), file=sys.stderr)
                    raise
    tell_notes(run.lacking)
    return run.code


def _rosters(asked: Asked) -> list[Path]:
    """Give the files of class lists, in the order in which they were named, those of a folder by class.

    Raises:
        Unreadable: it is no folder, or there are none in it; or a folder is named for a list.
    """
    if asked.folder is None:
        folders = [name for name in asked.rosters if Path(name).is_dir()]
        if folders:
            message = phrase("--class {name}: this is a folder, not a list", name=folders[0])
            raise Unreadable(message, f"--classes {folders[0]}")
        return [Path(name) for name in asked.rosters]
    folder = Path(asked.folder)
    if not folder.is_dir():
        message = phrase("--classes {folder}: this is no folder", folder=str(folder))
        one = f"--class {folder}" if folder.is_file() else phrase("a folder with a list for each class")
        raise Unreadable(message, one)
    found = sorted((path for path in folder.glob(f"[!.~]*{LIST}") if path.is_file()), key=_as_counted)
    if not found:
        message = phrase("--classes {folder}: no class lists (.csv) are there", folder=str(folder))
        raise Unreadable(message, phrase("a folder with a list for each class, such as 4b.csv"))
    return found


def _as_counted(roster: Path) -> list[tuple[int, int, str]]:
    """Give what puts lists in the order of their classes: 4b comes before 10a."""
    runs = (("".join(run), counts) for counts, run in groupby(roster.stem.casefold(), str.isdecimal))
    return [(0, int(run), "") if counts else (1, 0, run) for run, counts in runs]


def _of_number(number: int) -> "Classroom":
    from foldmath.lesson.numbered_pupils import pupils_without_roster
    from foldmath.making import Access
    from foldmath.making.classes import Classroom

    return Classroom(f"pupils-{number}", pupils_without_roster(number), Access.AS_USUAL)


def _crew(address: str | None) -> "AbstractContextManager[Crew]":
    """Give who lays out pages; before anything is sent to others, say whether names are."""
    from foldmath.making.classes import own_crew

    if address is None:
        # Brought in before processes are forked, so that they have it.
        import foldmath.making.classes.class_set  # noqa: F401

        # What is loaded by now stays, here and in these processes: none of them looks it through for garbage.
        gc.freeze()
        return own_crew()
    from foldmath.making.classes.cluster import cluster_crew, keeps_names

    if keeps_names(address):
        tell(phrase("pages are laid out at {address}, by names", address=address))
    else:
        tell(
            phrase(
                "pages are laid out at {address}; no names are sent there, since others could read them on "
                "the way: pages carry the students' numbers in the list",
                address=address,
            )
        )
    return cluster_crew(address)


@dataclass
class _Run:
    """One command under way: its exit code so far, and what this machine lacks."""

    order: "Order"
    picture_process: PictureProcess
    code: int = 0
    lacking: dict[Said, None] = field(default_factory=dict)

    def readable(self, rosters: list[Path]) -> "Iterator[Classroom]":
        """Read class lists; those that cannot be used are told."""
        from foldmath.lesson.roster import read_roster
        from foldmath.making import Access
        from foldmath.making.classes import Classroom

        for roster in rosters:
            try:
                yield Classroom(roster.stem, read_roster(roster), Access.OWNER)
            except FoldmathError as error:
                self._refuse(error)

    def make(self, lessons: list[Path], classrooms: "list[Classroom]", crew: "Crew") -> None:
        """Make the sets of all lessons for all classes."""
        with Bar(len(lessons) * _pupils(classrooms)) as bar:
            for lesson in lessons:
                self._make_lesson(lesson, classrooms, crew, bar)

    def _make_lesson(self, lesson: Path, classrooms: "list[Classroom]", crew: "Crew", bar: Bar) -> None:
        from foldmath.making.classes import ClassLesson

        try:
            for_classes = ClassLesson(lesson, self.order, crew, self.picture_process)
        except FoldmathError as error:
            bar.tell(partial(self._refuse, error))
            bar.pass_over(_pupils(classrooms))
            return
        told: dict[Said, None] | None = None
        reports = [bar.of(f"{lesson.stem}, {classroom.name}") for classroom in classrooms]
        sets = for_classes.in_turn(zip(classrooms, reports, strict=True))
        for number, (classroom, report_ready, finish) in enumerate(
            zip(classrooms, reports, sets, strict=True)
        ):
            try:
                made = finish()
            except LessonRefused as error:
                # It would be refused for every other class too.
                bar.tell(partial(self._refuse, error))
                bar.pass_over(_pupils(classrooms[number:]))
                return
            except FoldmathError as error:
                bar.tell(partial(self._refuse, error))
            else:
                self.lacking |= dict.fromkeys(made.lacking)
                alone = len(classrooms) == 1
                bar.tell(partial(_tell_set, made, classroom, told, alone=alone))
                told = (told or {}) | dict.fromkeys(made.notes)
            report_ready(len(classroom.pupils))

    def _refuse(self, error: FoldmathError) -> None:
        self.code = max(self.code, tell_error(error))


def _pupils(classrooms: "list[Classroom]") -> int:
    return sum(len(classroom.pupils) for classroom in classrooms)


def _tell_set(made: "Made", classroom: "Classroom", told: Mapping[Said, None] | None, *, alone: bool) -> None:
    """Say which files were written: those of one class by name, of many classes a line each.

    Args:
        made: the set of the class.
        classroom: who it is for.
        told: notes that were told with sets of the same lesson; None before the first of them.
        alone: whether there is one class.
    """
    if told is None:
        tell_lesson(made.proved)
    tell_notes(note for note in made.notes if note not in (told or ()))
    folder = str(made.files[0].parent)
    if made.made_before:
        tell(phrase("{folder}: this set is there already, of this lesson and list", folder=folder))
    elif alone:
        for path in made.files:
            tell_written(path)
    else:
        count = len(classroom.pupils)
        tell(
            counted(
                "wrote {folder}: {count} student", "wrote {folder}: {count} students", count, folder=folder
            )
        )
