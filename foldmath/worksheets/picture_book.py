"""The pictures of a lesson, by the names that templates use, at the sizes that pages need."""

from functools import cache

from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Scene, for_low_vision
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.drawing.sheets.scissors import cut_to_come
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Slit
from foldmath.values import frozen
from foldmath.worksheets.folding_part import FoldingPart
from foldmath.worksheets.item_pictures import ModelSize
from foldmath.worksheets.worksheet import DRAWING, Worksheet


@frozen(kw_only=True)
class PictureSizes:
    """How large the pictures of one look are: the most width and height of each, in mm.

    Args:
        before: beside a prediction.
        before_sizes: the same over the sizes of several panels, which take the width of the page.
        whole: beside "the whole is one sheet".
        drawing: of an open sheet to draw on.
        models: of items.
        low_vision: whether lines are thicker and hatches wider.
    """

    before: tuple[float, float]
    before_sizes: tuple[float, float]
    whole: tuple[float, float]
    drawing: tuple[float, float]
    models: ModelSize
    low_vision: bool


SIZES = {
    "regular": PictureSizes(
        before=(40, 27),
        before_sizes=(38, 22),
        whole=(20, 15),
        drawing=(31, 21),
        models=ModelSize(
            width=64,
            height=36,
            most_width=98,
            most_height=98,
            cell=8,
            solved_cell=5,
            several_cell=8,
            several_width=172,
            row_width=80,
            beside_width=44,
            column_width=80,
        ),
        low_vision=False,
    ),
    "large": PictureSizes(
        before=(45, 36),
        before_sizes=(45, 36),
        whole=(34, 24),
        drawing=(46, 28),
        models=ModelSize(
            width=74,
            height=48,
            most_width=168,
            most_height=130,
            cell=12,
            solved_cell=8,
            several_cell=8,
            several_width=168,
            row_width=0,
            beside_width=62,
            column_width=168,
        ),
        low_vision=True,
    ),
}
"""By the name of the look."""

DIAGRAM_MM = (120.0, 120.0)
FOLDED_MM = (80.0, 80.0)


def folding_pictures(proved: ProvedLesson, folding: FoldingPart, look: str) -> dict[str, Scene]:
    """Give the scenes that the folding part of a worksheet places."""
    sizes = SIZES[look]
    pictures = {f"legend-{name}": legend_sample(name) for name in SAMPLES}
    pictures["whole"] = folded_sheet(proved.states[0], None, *sizes.whole)
    for row in folding.rows:
        moment = proved.moments[row.moment]
        size = sizes.before_sizes if row.several_sizes else sizes.before
        pictures[f"before-{row.moment}"] = folded_sheet(moment.before, moment.step, *size)
    if folding.slit is not None and isinstance(slit := proved.moments[folding.slit].step, Slit):
        before = proved.moments[folding.slit].before
        pictures["cut"] = cut_to_come(before, slit, *sizes.before)
    return _seen_well(pictures, sizes)


def item_pictures(sheet: Worksheet, look: str) -> dict[str, Scene]:
    """Give the scenes that the items of a worksheet and its key place."""
    drawn = any(DRAWING in one.pictures for one in sheet.placed)
    pictures = {DRAWING: _drawing(sheet.lesson.sheet, SIZES[look].drawing)} if drawn else {}
    for placed in sheet.placed:
        if placed.picture:
            pictures[placed.picture.name] = placed.picture.blank
            pictures[placed.picture.shaded_name] = placed.picture.shaded
    return _seen_well(pictures, SIZES[look])


@cache
def _drawing(sheet: Sheet, most: tuple[float, float]) -> Scene:
    """Draw an open sheet to draw on; all pages of a class have it."""
    return folded_sheet(open_sheet(sheet), None, *most)


def _seen_well(pictures: dict[str, Scene], sizes: PictureSizes) -> dict[str, Scene]:
    if not sizes.low_vision:
        return pictures
    return {name: for_low_vision(scene) for name, scene in pictures.items()}


def diagrams(proved: ProvedLesson, sheet: Worksheet) -> dict[str, Scene]:
    """Give the scenes saved as files: for each step the folded sheet and the creases, and the models."""
    pictures: dict[str, Scene] = {}
    last = len(proved.moments)
    for number, moment in enumerate(proved.moments, start=1):
        pictures[f"step-{number:02d}-before"] = folded_sheet(moment.before, moment.step, *FOLDED_MM)
        pictures[f"step-{number:02d}-creases"] = crease_pattern(moment.after, *DIAGRAM_MM)
        if number == last:
            pictures[f"step-{number:02d}-after"] = folded_sheet(moment.after, None, *FOLDED_MM)
    pictures |= _where_creases_fall(proved)
    shaded = [placed.picture.shaded for placed in sheet.items if placed.picture]
    return pictures | {f"product-{number}": scene for number, scene in enumerate(shaded, start=1)}


def _where_creases_fall(proved: ProvedLesson) -> dict[str, Scene]:
    """Give the sheet with a band for every crease, as wide as hands of the grade make it."""
    # Imported here, since pages show no such picture.
    from foldmath.drawing.sheets.crease_bands import crease_bands
    from foldmath.tolerance.accuracy import accuracy
    from foldmath.tolerance.assumed.spread import default_spread

    lesson = proved.lesson
    made = accuracy(proved.moments, default_spread(lesson.grade, lesson.stock))
    return {"crease-bands": crease_bands(lesson.sheet, made, *DIAGRAM_MM)} if made.creases else {}
