"""The editable copy: worksheets and keys of all levels as Word files, a set in a folder of its own."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path, PurePath

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.scenes import told_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.languages import editions, languages_told
from foldmath.making.making import make
from foldmath.making.order import Made, Order, Part, lesson_on, page_paper
from foldmath.making.sets.file_set import FileSet
from foldmath.making.sets.manifest import origin_of
from foldmath.making.sets.placing import place
from foldmath.phrases import Said, phrase

EDITABLE = frozenset({Part.WORKSHEET, Part.KEY})
"""What a teacher changes before printing it; the rest follows from the lesson."""


def make_with_copy(
    path: Path, order: Order, picture_process: PictureProcess, report_progress: Callable[[Said], None]
) -> Made:
    """Make all pages of one lesson, and then its editable copy.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: a set could not be put in place; it is as it was.
    """
    made = make(path, order, picture_process, report_progress)
    report_progress(phrase("writing the editable copy"))
    # The very lesson that the pages were made from, whatever has become of the file since.
    proved = made.proved
    _, pages = lesson_on(order.paper and page_paper(order.paper), proved.lesson)
    told = {"paper": pages, "look": order.look, **languages_told(order.languages)}
    files = FileSet(
        lesson_folder=order.out / path.stem,
        name="editable",
        files={
            folder + name: content
            for folder, said in editions(proved, order.languages).items()
            for name, content in word_files(said, pages, order.look, picture_process).items()
        },
        origin=origin_of(proved.lesson, **told),
    )
    placed = place(files)
    return replace(made, files=(*made.files, *placed.files), notes=(*made.notes, *placed.notes))


def word_files(
    proved: ProvedLesson, page_paper: str, look: str, picture_process: PictureProcess
) -> dict[str, bytes]:
    """Write the worksheets and keys of one lesson as Word files, by name.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
        picture_process: draws their pictures.
    """
    from foldmath.making.papers import papers
    from foldmath.pages.editable.pictures import DrawnPicture
    from foldmath.pages.editable.writing import word_file
    from foldmath.pages.markup.blocks import pictures_in
    from foldmath.pages.markup.reading import blocks_of

    made = papers(proved, page_paper, look, EDITABLE)
    placed = {
        picture.answer_name if document.answers else picture.name
        for document in made.documents.values()
        for picture in pictures_in(blocks_of(document.html))
    }
    language = proved.lesson.language
    scenes = {name: told_in(scene, language) for name, scene in made.pictures.items() if name in placed}
    pngs, svgs = (drawn(list(scenes.values())) for drawn in (picture_process.fine_pngs, picture_process.svgs))
    pictures = {
        name: DrawnPicture(png, svg, scene.width_mm, str(scene.words))
        for (name, scene), png, svg in zip(scenes.items(), pngs.result(), svgs.result(), strict=True)
    }
    return {
        PurePath(name).with_suffix(".docx").name: word_file(
            written.document(), pictures, made.looks[name], language
        )
        for name, written in made.documents.items()
    }
