"""The one path: a lesson file in, pages out."""

from collections.abc import Callable, Mapping
from pathlib import Path

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.scenes import told_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.booklet import folding_page, require_booklet, sheet_of_pages, with_fitting_booklet
from foldmath.making.hands import hard_for_hands
from foldmath.making.languages import editions, languages_told, told_of_own_words
from foldmath.making.order import EVERY_PART, Made, Order, Part, laying_out, proved_lesson
from foldmath.making.parts import (
    Files,
    core_worksheet,
    diagrams,
    finished,
    guides,
    in_folder,
    slides,
    worksheets,
)
from foldmath.making.products import told_of_products
from foldmath.making.sets.file_set import FileSet, require_same_origin
from foldmath.making.sets.manifest import origin_of, read_manifest
from foldmath.making.sets.placing import place, place_part
from foldmath.pages.sharing import Content
from foldmath.phrases import Said, phrase


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
    if Part.DIAGRAMS in order.parts:
        picture_process.fetch_files()
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
) -> tuple[list[Files], tuple[Said, ...]]:
    """Begin those parts that are wanted, with what the teacher should know of them."""
    begun: list[Files] = []
    notes: dict[Said, None] = {}
    for folder, said in editions(proved, order.languages).items():
        parts, more = _begin_edition(said, pages, order, picture_process)
        begun += [in_folder(folder, files) for files in parts]
        notes |= dict.fromkeys((*told_of_own_words(said.lesson), *more))
    if Part.DIAGRAMS in order.parts:
        # Diagrams have no words, so one set of them is for every language.
        begun.append(diagrams(proved, core_worksheet(proved), picture_process))
    return begun, tuple(notes)


def _begin_edition(
    proved: ProvedLesson, pages: str, order: Order, picture_process: PictureProcess
) -> tuple[list[Files], tuple[Said, ...]]:
    """Begin the parts that speak, in one language."""
    # What lays out pages is brought in only now, while the picture_process fetches his own tools.
    from foldmath.making.papers import Masters, in_order, papers_in_turn

    proved, notes = with_fitting_booklet(proved, pages, order.look)
    masters = Masters(proved, pages, order.look)
    printed: dict[str, Content] = {}
    for made in papers_in_turn(masters, order.parts):
        printed |= worksheets(proved, made, picture_process)
    begun: list[Files] = [in_order(printed)]
    if Part.SLIDES in order.parts:
        from foldmath.slides.slides import slide_show

        begun.append(slides(slide_show(proved, masters.core), picture_process))
    if Part.BOOKLET in order.parts:
        sheet, more = sheet_of_pages(proved, pages, order.look, picture_process)
        notes = (*notes, *more)
        begun += [sheet, folding_page(proved, pages, order.look, picture_process)]
    if Part.TEMPLATES in order.parts:
        begun.append(guides(proved, pages, order.look))
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
    from foldmath.slides.slides import slide_show

    refuse_unprintable(proved.lesson)
    page = slides_html(slide_show(proved, core_worksheet(proved))).encode()
    return _made(proved, out / path.stem, "slides", {"slides.html": page})


def _made(proved: ProvedLesson, folder: Path, name: str, files: Mapping[str, bytes], **options: str) -> Made:
    """Place a set of a lesson in a folder of its own."""
    origin = origin_of(proved.lesson, **options)
    placed = place(FileSet(lesson_folder=folder, name=name, files=files, origin=origin))
    return Made(proved, placed.files, placed.notes)


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

    found = diagrams(proved, core_worksheet(proved))
    scenes = {name: told_in(scene, proved.lesson.language) for name, scene in found.items()}
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
