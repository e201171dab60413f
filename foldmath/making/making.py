"""The one path: a lesson file in, pages out."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.booklet import folding_page, require_booklet, sheet_of_pages
from foldmath.making.hands import hard_for_hands
from foldmath.making.languages import editions, languages_told, one_language, said_in
from foldmath.making.order import EVERY_PART, Made, Order, Part, laying_out, proved_lesson
from foldmath.making.parts import (
    Finish,
    core_worksheet,
    diagrams,
    finished,
    guides,
    in_folder,
    slides,
    worksheets,
)
from foldmath.making.products import told_of_products
from foldmath.making.sets.file_set import Access, FileSet, require_same_origin
from foldmath.making.sets.manifest import Origin, digest, origin_of, read_manifest
from foldmath.making.sets.placing import place, place_part
from foldmath.phrases import Said, phrase


@dataclass(frozen=True)
class Classroom:
    """Who gets pages of their own.

    Args:
        name: of the class, as its folder is called.
        pupils: gives them; called once the lesson is known to be right.
        access: who may read their pages.
    """

    name: str
    pupils: Callable[[], tuple[Pupil, ...]]
    access: Access


def make(
    path: Path, order: Order, picture_process: PictureProcess, report_progress: Callable[[Said], None]
) -> Made:
    """Make the pages and diagrams of one lesson, all of them or those parts that are wanted.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        OtherSet: the parts that are not wanted were made from something else; nothing is changed.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    report_progress(phrase("folding"))
    proved, pages = proved_lesson(path, order.paper)
    folder = order.out / path.stem
    origin = origin_of(proved.lesson, paper=pages, look=order.look, **languages_told(order.languages))
    if order.parts != EVERY_PART:
        require_same_origin(folder, read_manifest(folder), origin)
    if order.parts == {Part.BOOKLET}:
        require_booklet(proved)
    first = (*hard_for_hands(proved), *told_of_products(proved))
    begun, notes = _begin(proved, pages, order, picture_process)
    report_progress(phrase("laying out pages"))
    with laying_out(proved.lesson):
        files = FileSet(lesson_folder=folder, files=finished(begun), origin=origin)
    placed = place(files) if order.parts == EVERY_PART else place_part(files)
    return Made(proved, placed.files, (*first, *notes, *placed.notes))


def _begin(
    proved: ProvedLesson, pages: str, order: Order, picture_process: PictureProcess
) -> tuple[list[Finish], tuple[Said, ...]]:
    """Begin those parts that are wanted, with what the teacher should know of them."""
    begun: list[Finish] = []
    notes: dict[Said, None] = {}
    for folder, said in editions(proved, order.languages).items():
        parts, more = _begin_edition(said, pages, order, picture_process)
        begun += [in_folder(folder, finish) for finish in parts]
        notes |= dict.fromkeys(more)
    if Part.DIAGRAMS in order.parts:
        # Diagrams have no words, so one set of them is for every language.
        begun.append(diagrams(proved, core_worksheet(proved), picture_process))
    return begun, tuple(notes)


def _begin_edition(
    proved: ProvedLesson, pages: str, order: Order, picture_process: PictureProcess
) -> tuple[list[Finish], tuple[Said, ...]]:
    """Begin the parts that speak, in one language."""
    # What lays out pages is brought in only now, while the picture_process fetches his own tools.
    from foldmath.making.papers import papers

    made = papers(proved, pages, order.look)
    notes: tuple[Said, ...] = ()
    begun = []
    wanted = made.only(order.parts)
    if wanted.documents:
        begun.append(worksheets(proved, wanted, picture_process))
    if Part.SLIDES in order.parts:
        begun.append(slides(proved, made.core, picture_process))
    if Part.BOOKLET in order.parts:
        sheet, notes = sheet_of_pages(proved, pages, order.look, picture_process)
        begun += [sheet, folding_page(proved, pages, order.look, picture_process)]
    if Part.TEMPLATES in order.parts:
        begun.append(guides(proved, pages))
    return begun, notes


def project(path: Path, out: Path) -> Made:
    """Write the slides of one lesson as a page for a browser.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    proved, _ = proved_lesson(path)
    from foldmath.pages.printable import refuse_unprintable
    from foldmath.slides.page import slides_html

    refuse_unprintable(proved.lesson)
    page = slides_html(proved, core_worksheet(proved)).encode()
    return _made(proved, out / path.stem, "slides", {"slides.html": page})


def _made(proved: ProvedLesson, folder: Path, name: str, files: Mapping[str, bytes], **options: str) -> Made:
    """Place a set of a lesson in a folder of its own."""
    origin = origin_of(proved.lesson, **options)
    placed = place(FileSet(lesson_folder=folder, name=name, files=files, origin=origin))
    return Made(proved, placed.files, placed.notes)


def make_class(
    path: Path,
    order: Order,
    classroom: Classroom,
    picture_process: PictureProcess,
    report_progress: Callable[[Said], None],
) -> Made:
    """Make every pupil's own worksheet in one file and its key, with all else that the lesson needs.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        RosterRefused: the list of pupils cannot be used; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    report_progress(phrase("folding"))
    proved, pages = proved_lesson(path, order.paper)
    first = (*hard_for_hands(proved), *told_of_products(proved))
    proved = said_in(proved, one_language(order.languages))
    from foldmath.pages.names import told_of_names, with_numbers_for_unprintable

    pupils = with_numbers_for_unprintable(classroom.pupils())
    with laying_out(proved.lesson):
        files = _class_files(proved, pages, order.look, pupils, picture_process, report_progress)
    placed = place(
        FileSet(
            lesson_folder=order.out / path.stem,
            name=f"class-{classroom.name}",
            files=files,
            origin=_class_origin(proved, pages, order, pupils),
            access=classroom.access,
        )
    )
    return Made(proved, placed.files, (*first, *placed.notes), told_of_names(pupils))


def _class_files(
    proved: ProvedLesson,
    pages: str,
    look: str,
    pupils: tuple[Pupil, ...],
    picture_process: PictureProcess,
    report_progress: Callable[[Said], None],
) -> Mapping[str, bytes]:
    """Lay out the pages of a class, and all else that it needs."""
    from foldmath.making.class_set import ClassOrder, class_set

    begun = _begin_for_class(proved, pages, look, pupils, picture_process)

    def report_ready(ready: int) -> None:
        report_progress(phrase("{ready} of {count} students", ready=ready, count=len(pupils)))

    bundle = class_set(proved, pupils, ClassOrder(pages, look), picture_process, report_ready)
    return {"class-worksheets.pdf": bundle.worksheets, "class-key.pdf": bundle.key, **finished(begun)}


def _begin_for_class(
    proved: ProvedLesson, pages: str, look: str, pupils: tuple[Pupil, ...], picture_process: PictureProcess
) -> list[Finish]:
    """Begin all that a class needs beside its own pages: plan, ticket, slides and guide sheets."""
    from foldmath.making.papers import teachers_papers

    teachers = teachers_papers(proved, pages, look, pupils)
    return [
        worksheets(proved, teachers, picture_process),
        slides(proved, teachers.core, picture_process),
        guides(proved, pages),
    ]


def _class_origin(proved: ProvedLesson, pages: str, order: Order, pupils: tuple[Pupil, ...]) -> Origin:
    """Say what a class set is made from: the lesson, how its pages look, and who is in the class."""
    named = repr([(pupil.label, pupil.level.value, pupil.language) for pupil in pupils])
    told = {"paper": pages, "look": order.look, "pupils": digest(named.encode())}
    return origin_of(proved.lesson, **told, **languages_told(order.languages))


def draw(
    path: Path,
    out: Path,
    picture_process: PictureProcess,
    kinds: tuple[str, ...] = ("svg", "png"),
    name: str = "drawings",
) -> Made:
    """Save every diagram of one lesson.

    Args:
        path: the lesson file.
        out: the folder in which the lesson's own is made.
        picture_process: draws them.
        kinds: of files, ``svg`` or ``png`` or both.
        name: of the folder in the lesson's own that they are saved in.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    proved, _ = proved_lesson(path)
    from foldmath.worksheets.picture_book import diagrams

    scenes = diagrams(proved, core_worksheet(proved))
    drawing = {"svg": picture_process.svgs, "png": picture_process.pngs}
    drawn = {kind: drawing[kind](list(scenes.values())) for kind in kinds}
    files = {
        f"{scene}.{kind}": content
        for kind in kinds
        for scene, content in zip(scenes, drawn[kind].result(), strict=True)
    }
    return _made(proved, out / path.stem, name, files)


def export_fold(path: Path, out: Path) -> Made:
    """Write the folding of one lesson in the open FOLD format.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        FoldmathError: the format has no words for its folding.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    proved, _ = proved_lesson(path)
    from foldmath.fold_format.fold_writing import fold_text

    files = {f"{path.stem}.fold": fold_text(proved).encode()}
    return _made(proved, out / path.stem, "export-fold", files)
