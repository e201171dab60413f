"""The one path: a lesson file in, pages out."""

from collections import Counter
from collections.abc import Callable
from pathlib import Path

from foldmath.drawing.picture_process import PictureProcess
from foldmath.lesson.roster import Pupil
from foldmath.making.booklet import folding_page, sheet_of_pages
from foldmath.making.hands import hard_for_hands
from foldmath.making.order import Made, Order, proved_lesson
from foldmath.making.parts import core_worksheet, diagrams, guides, slides, worksheets
from foldmath.making.writing import put_in_place


def make(path: Path, order: Order, picture_process: PictureProcess, told: Callable[[str], None]) -> Made:
    """Make all pages and diagrams of one lesson.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: a file could not be put in place.
    """
    told("folding")
    proved, pages = proved_lesson(path, order.paper)
    hard = hard_for_hands(proved)
    # What lays out pages is brought in only now, while the picture_process fetches his own tools.
    from foldmath.making.papers import papers

    made = papers(proved, pages, order.look)
    begun = [
        worksheets(proved, made, picture_process),
        slides(proved, made.core, picture_process),
    ]
    pages_of_booklet, notes = sheet_of_pages(proved, pages, order.look, picture_process)
    begun += [
        pages_of_booklet,
        guides(proved, pages),
        folding_page(proved, pages, order.look, picture_process),
        diagrams(proved, made.core, picture_process),
    ]
    told("laying out pages")
    folder = order.out / path.stem
    files = {folder / name: content for finish in begun for name, content in finish().items()}
    put_in_place(files)
    return Made(proved, tuple(files), (*hard, *notes))


def project(path: Path, out: Path) -> Made:
    """Write the slides of one lesson as a page for a browser."""
    proved, _ = proved_lesson(path)
    from foldmath.pages.printable import refuse_unprintable
    from foldmath.slides.page import slides_html

    refuse_unprintable(proved.lesson)
    page = out / path.stem / "slides.html"
    put_in_place({page: slides_html(proved, core_worksheet(proved)).encode()})
    return Made(proved, (page,))


def make_class(
    path: Path,
    order: Order,
    pupils: Callable[[], tuple[Pupil, ...]],
    picture_process: PictureProcess,
    told: Callable[[str], None],
) -> Made:
    """Make every pupil's own worksheet in one file, its key, the exit ticket and the teacher's plan.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        RosterRefused: the list of pupils cannot be used; nothing is written.
        CannotWrite: a file could not be put in place.
    """
    told("folding")
    proved, pages = proved_lesson(path, order.paper)
    hard = hard_for_hands(proved)
    named = pupils()
    from foldmath.making.class_set import ClassOrder, class_set
    from foldmath.making.papers import teachers_papers

    counts = Counter(pupil.level.value for pupil in named)
    finish = worksheets(proved, teachers_papers(proved, pages, order.look, counts), picture_process)

    def told_ready(ready: int) -> None:
        told(f"{ready} of {len(named)} pupils")

    bundle = class_set(proved, named, ClassOrder(pages, order.look), picture_process, told_ready)
    made = {"class-worksheets.pdf": bundle.worksheets, "class-key.pdf": bundle.key, **finish()}
    files = {order.out / path.stem / name: content for name, content in made.items()}
    put_in_place(files)
    return Made(proved, tuple(files), hard)


def draw(
    path: Path, out: Path, picture_process: PictureProcess, kinds: tuple[str, ...] = ("svg", "png")
) -> Made:
    """Save every diagram of one lesson, in ``out``/name of the lesson file/diagrams.

    Args:
        path: the lesson file.
        out: the folder in which the lesson's own is made.
        picture_process: draws them.
        kinds: of files, ``svg`` or ``png`` or both.
    """
    proved, _ = proved_lesson(path)
    from foldmath.worksheets.picture_book import diagrams

    scenes = diagrams(proved, core_worksheet(proved))
    drawing = {"svg": picture_process.svgs, "png": picture_process.pngs}
    drawn = {kind: drawing[kind](list(scenes.values())) for kind in kinds}
    folder = out / path.stem / "diagrams"
    files = {
        folder / f"{name}.{kind}": content
        for kind in kinds
        for name, content in zip(scenes, drawn[kind].result(), strict=True)
    }
    put_in_place(files)
    return Made(proved, tuple(files))
