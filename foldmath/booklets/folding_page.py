"""How a booklet is folded, as one page of pictures: fold, open, slit, gather, close, a sentence each."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import ceil

from foldmath.booklets.folding_steps import FoldingStep, Shows, folding_picture, folding_steps
from foldmath.drawing.booklets.closed_booklets import trimmed_sides
from foldmath.drawing.framing import framed
from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.look import POINT_MM
from foldmath.drawing.scenes import Figure, Scene, Stroke, for_low_vision
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.paper.booklet.booklet import Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Gather
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

CUTTING = {Shows.CUT, Shows.CUT_INSIDE, Shows.TRIM}
BY_THE_WAY = {Shows.OPEN, Shows.OPEN_LAST, Shows.TURN}
"""What can be said with the step that follows it, and needs no picture of its own."""


LARGE_PRINT_MM = 18 * POINT_MM
"""The least size of numbers in large print."""


@frozen(kw_only=True)
class FoldingLook:
    """How pictures are set out.

    Args:
        columns: side by side; so many, or ``few_columns`` where there are no more than ``few``.
        picture_mm: the frame of each picture, by the number of columns.
        most: more pictures than one page (or in large print two) has room for are joined where they can be.
        legend_columns: line styles side by side.
        low_vision: whether lines are thicker.
    """

    columns: int
    few_columns: int
    few: int
    picture_mm: Mapping[int, tuple[float, float]]
    most: int
    legend_columns: int
    low_vision: bool


LOOKS = {
    REGULAR: FoldingLook(
        columns=3,
        few_columns=2,
        few=6,
        picture_mm={3: (57.0, 35.0), 2: (86.0, 50.0)},
        most=12,
        legend_columns=3,
        low_vision=False,
    ),
    LARGE: FoldingLook(
        columns=2,
        few_columns=2,
        few=4,
        picture_mm={2: (86.0, 38.0)},
        most=12,
        legend_columns=2,
        low_vision=True,
    ),
}


@frozen
class ToldPicture:
    """A picture and what is said below it.

    Args:
        number: from 1.
        name: of the picture.
        steps: what is said; the last of them is what the picture shows.
    """

    number: int
    name: str
    steps: tuple[FoldingStep, ...]


@frozen(kw_only=True)
class FoldingInstructions:
    """What the page says.

    Args:
        title: of the booklet.
        language: as in BCP 47.
        placed: the pictures in order.
        columns: of pictures.
        legend: the line styles in them.
        boxes: into how many boxes the slit opens; 0 without one.
        trims: how many sides of the closed booklet are to be trimmed.
    """

    title: str
    language: str
    placed: tuple[ToldPicture, ...]
    columns: int
    legend: tuple[str, ...]
    boxes: int
    trims: int

    @property
    def cuts(self) -> bool:
        """Whether pupils use scissors."""
        return any(step.shows in CUTTING for placed in self.placed for step in placed.steps)


@frozen
class FoldingPage:
    """The document of the page, what it says, and the scenes that it places, by name."""

    document: Document
    instructions: FoldingInstructions
    pictures: Mapping[str, Scene]


def booklet_folding(
    title: str,
    language: str,
    sheet: Sheet,
    steps: Sequence[WrittenStep],
    page_paper: str,
    look: str = REGULAR,
    code: str = "",
) -> FoldingPage:
    """Write the page that shows how a sheet is folded into its booklet.

    Args:
        title: of the booklet or its lesson.
        language: as in BCP 47, such as ``en-US``.
        sheet: what the booklet is made of.
        steps: from the open sheet to ``gather into booklet``; later ones are passed over.
        page_paper: ``letter`` or ``A4``, that the page is printed on.
        look: ``regular`` or ``large``.
        code: at the right of the foot.

    Raises:
        StepRefused, ValueError: as ``folding_steps`` does.
    """
    style = LOOKS[look]
    joined = _joined(folding_steps(sheet, steps), style.most)
    columns = style.few_columns if len(joined) <= style.few else style.columns
    pictures = _pictures([together[-1] for together in joined], style.picture_mm[columns])
    placed = tuple(
        ToldPicture(number, name, together)
        for number, (name, together) in enumerate(zip(pictures, joined, strict=True), start=1)
    )
    legend = _legend(pictures.values())
    said = _instructions(title, language, placed, columns, legend)
    pictures |= {f"legend-{name}": legend_sample(name) for name in legend}
    rows = _rows(legend, style.legend_columns)
    html = render("booklets/booklet_folding.html", language, page=said, legend_rows=rows)
    master = PageMaster(upright(page_paper), title, code, PAGE_WORDS)
    seen = {name: _readable(scene) if style.low_vision else scene for name, scene in pictures.items()}
    return FoldingPage(Document(html, master, answers=False), said, seen)


def _readable(scene: Scene) -> Scene:
    """Draw a picture for low vision: a number that its panel has no room for in large print is left out."""
    large = tuple(
        mark for mark in scene.marks if not isinstance(mark, Figure) or mark.size_mm >= LARGE_PRINT_MM
    )
    return for_low_vision(replace(scene, marks=large))


def _instructions(
    title: str, language: str, placed: tuple[ToldPicture, ...], columns: int, legend: tuple[str, ...]
) -> FoldingInstructions:
    boxes, trims = _boxes_and_trims(placed[-1].steps[-1])
    return FoldingInstructions(
        title=title,
        language=language,
        placed=placed,
        columns=columns,
        legend=legend,
        boxes=boxes,
        trims=trims,
    )


def _pictures(steps: Sequence[FoldingStep], size_mm: tuple[float, float]) -> dict[str, Scene]:
    """Draw every picture in a frame of one size."""
    scenes = (framed(folding_picture(step, *size_mm), *size_mm) for step in steps)
    return {f"folding-{number}": scene for number, scene in enumerate(scenes, start=1)}


def _joined(steps: Sequence[FoldingStep], most: int) -> list[tuple[FoldingStep, ...]]:
    """Say openings and turns with the step after them, the last first, until no more are too many.

    As long as that is enough, no more than two steps are said together.
    """
    joined: list[tuple[FoldingStep, ...]] = [(step,) for step in steps]
    for together in (1, len(steps)):
        for place in reversed(range(len(joined) - 1)):
            here, following = joined[place : place + 2]
            if len(joined) > most and here[-1].shows in BY_THE_WAY and len(following) <= together:
                joined[place : place + 2] = [here + following]
    return joined


def _rows(names: Sequence[str], columns: int) -> list[Sequence[str]]:
    """Share names out to as few rows as will do, all about as long."""
    rows = ceil(len(names) / columns)
    each = ceil(len(names) / rows) if rows else 0
    return [names[row * each : (row + 1) * each] for row in range(rows)]


def _legend(scenes: Iterable[Scene]) -> tuple[str, ...]:
    meanings = {mark.meaning for scene in scenes for mark in scene.marks if isinstance(mark, Stroke)}
    return tuple(name for name, meaning in SAMPLES.items() if meaning in meanings)


def _boxes_and_trims(last: FoldingStep) -> tuple[int, int]:
    """Count the boxes that the slit opens into, one for each four inner panels, and the sides to trim."""
    made = booklet(last.state, last.step.column if isinstance(last.step, Gather) else None)
    boxes = len(made.leaves) // 2 - 1 if made.form is Form.RING else 0
    return boxes, len(trimmed_sides(last.state, made))
