"""The one path: a lesson file in, pages out."""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.drawing.draughtsman import Draughtsman
from foldmath.errors import Unreadable
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.roster import Pupil
from foldmath.statements.items import Level
from foldmath.writing import put_in_place

if TYPE_CHECKING:
    from foldmath.documents.worksheet import Worksheet

PAGES = {"letter": "letter", "a4": "A4"}
"""The paper that pages are printed on, by its name in small letters."""


@dataclass(frozen=True)
class Order:
    """What is wanted of a lesson.

    Args:
        out: the folder in which a folder of the lesson's name is made.
        paper: to print on, ``letter`` or ``A4``; None for the lesson's own.
        look: the name of the style sheet.
    """

    out: Path
    paper: str | None = None
    look: str = "regular"


@dataclass(frozen=True)
class Made:
    """What was made of one lesson."""

    proved: ProvedLesson
    files: tuple[Path, ...]


def page_paper(name: str) -> str:
    """Read the name of a paper to print on.

    Raises:
        Unreadable: pages are not laid out for it.
    """
    paper = PAGES.get(name.strip().lower())
    if paper is None:
        raise Unreadable(
            f"--paper {name}: pages are laid out for letter and A4\n    try:  --paper letter, or --paper A4"
        )
    return paper


def lesson_on(paper: str | None, lesson: Lesson) -> tuple[Lesson, str]:
    """Choose the paper to print on, and fold that paper too where the lesson folds the other one.

    Without a choice, a lesson in millimetres is printed on A4 and one in inches on letter.
    """
    from foldmath.paper.sizes import paper_named, sheet

    if paper is None:
        return lesson, "letter" if lesson.sheet.unit == "in" else "A4"
    if lesson.paper.lower() in PAGES and lesson.paper.lower() != paper.lower():
        lesson = replace(lesson, paper=paper, sheet=sheet(paper_named(paper), lesson.orientation))
    return lesson, paper


def proved_lesson(path: Path, paper: str | None = None) -> tuple[ProvedLesson, str]:
    """Read and prove a lesson file; give it with the paper to print on.

    Raises:
        LessonRefused: the file cannot be read, or a step cannot be done.
    """
    chosen = None if paper is None else page_paper(paper)
    lesson, pages = lesson_on(chosen, read_lesson(path))
    return prove(lesson), pages


def make(path: Path, order: Order, draughtsman: Draughtsman, told: Callable[[str], None]) -> Made:
    """Make all pages and diagrams of one lesson.

    Raises:
        LessonRefused: the lesson cannot be used; nothing is written.
        CannotWrite: a file could not be put in place.
    """
    told("folding")
    proved, pages = proved_lesson(path, order.paper)
    # What lays out pages is brought in only now, while the draughtsman fetches his own tools.
    from foldmath.documents.papers import papers
    from foldmath.documents.picture_book import diagrams

    made = papers(proved, pages, order.look)
    drawn = diagrams(proved, made.core)
    recordings = draughtsman.recordings(list(made.pictures.values()))
    slides = _slides_begun(proved, made.core, draughtsman)
    svgs = draughtsman.svgs(list(drawn.values()))
    told("laying out pages")
    from foldmath.documents.printing import printed

    lesson, folder = proved.lesson, order.out / path.stem
    pictures = dict(zip(made.pictures, recordings.result(), strict=True))
    files = {
        folder / name: printed([manuscript], pictures, lesson.title, lesson.language, made.looks[name])
        for name, manuscript in made.manuscripts.items()
    }
    files |= {folder / name: content for name, content in slides().items()}
    told("drawing diagrams")
    for name, content in zip(drawn, svgs.result(), strict=True):
        files[folder / "diagrams" / f"{name}.svg"] = content
    put_in_place(files)
    return Made(proved, tuple(files))


def _slides_begun(
    proved: ProvedLesson, core: "Worksheet", draughtsman: Draughtsman
) -> Callable[[], dict[str, bytes]]:
    """Begin to draw the slides in print; gives what finishes both forms of the slides."""
    from foldmath.documents.projection.manuscript import slides_manuscript
    from foldmath.documents.projection.page import slides_html

    shown = slides_manuscript(proved, core)
    recordings = draughtsman.recordings(list(shown.pictures.values()))

    def finish() -> dict[str, bytes]:
        from foldmath.documents.printing import SLIDES, printed

        lesson = proved.lesson
        pictures = dict(zip(shown.pictures, recordings.result(), strict=True))
        pages = printed([shown.manuscript], pictures, lesson.title, lesson.language, SLIDES)
        return {"slides.html": slides_html(proved, core).encode(), "slides.pdf": pages}

    return finish


def _core(proved: ProvedLesson) -> "Worksheet":
    """Give the worksheet of most of the class, whose products are drawn and projected."""
    from foldmath.documents.picture_book import SIZES
    from foldmath.documents.worksheet import folding_part, with_items

    return with_items(folding_part(proved), proved, Level.CORE, SIZES["regular"].models)


def project(path: Path, out: Path) -> Made:
    """Write the slides of one lesson as a page for a browser."""
    proved, _ = proved_lesson(path)
    from foldmath.documents.printable import refuse_unprintable
    from foldmath.documents.projection.page import slides_html

    refuse_unprintable(proved.lesson)
    page = out / path.stem / "slides.html"
    put_in_place({page: slides_html(proved, _core(proved)).encode()})
    return Made(proved, (page,))


def make_class(
    path: Path,
    order: Order,
    pupils: Callable[[], tuple[Pupil, ...]],
    draughtsman: Draughtsman,
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
    named = pupils()
    from foldmath.documents.class_set import ClassOrder, class_set
    from foldmath.documents.papers import TEACHERS, papers
    from foldmath.documents.printing import printed

    made = papers(proved, pages, order.look, Counter(pupil.level.value for pupil in named))
    recordings = draughtsman.recordings(list(made.pictures.values()))

    def told_ready(ready: int) -> None:
        told(f"{ready} of {len(named)} pupils")

    bundle = class_set(proved, named, ClassOrder(pages, order.look), draughtsman, told_ready)
    lesson, folder = proved.lesson, order.out / path.stem
    pictures = dict(zip(made.pictures, recordings.result(), strict=True))
    files = {folder / "class-worksheets.pdf": bundle.worksheets, folder / "class-key.pdf": bundle.key}
    for name in TEACHERS:
        manuscript, look = made.manuscripts[name], made.looks[name]
        files[folder / name] = printed([manuscript], pictures, lesson.title, lesson.language, look)
    put_in_place(files)
    return Made(proved, tuple(files))


def draw(path: Path, out: Path, draughtsman: Draughtsman) -> Made:
    """Save every diagram of one lesson as SVG and as PNG, in ``out``/name of the lesson file/diagrams."""
    proved, _ = proved_lesson(path)
    from foldmath.documents.picture_book import diagrams

    drawn = diagrams(proved, _core(proved))
    scenes = list(drawn.values())
    svgs, pngs = draughtsman.svgs(scenes), draughtsman.pngs(scenes)
    folder = out / path.stem / "diagrams"
    files = {}
    for name, svg, png in zip(drawn, svgs.result(), pngs.result(), strict=True):
        files[folder / f"{name}.svg"] = svg
        files[folder / f"{name}.png"] = png
    put_in_place(files)
    return Made(proved, tuple(files))
