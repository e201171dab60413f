"""The pictures of a lesson, by the names that templates use, at the sizes that pages need."""

from collections.abc import Iterator

from foldmath.documents.worksheet import ProductItem, Worksheet
from foldmath.drawing.area_models import Grid, blank_model, shaded_model
from foldmath.drawing.crease_patterns import crease_pattern
from foldmath.drawing.folded_sheets import folded_sheet
from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Scene
from foldmath.lesson.items import ShadedProduct
from foldmath.lesson.proving import ProvedLesson

BEFORE_MM = (38.0, 31.0)
"""The most width and height of the picture beside a prediction."""

WHOLE_MM = (20.0, 15.0)
DIAGRAM_MM = (120.0, 120.0)
FOLDED_MM = (80.0, 80.0)

MODEL_MM = (64.0, 44.0)
LARGEST_MODEL_MM = (86.0, 98.0)
CELL_MM = 8.0
"""No cell of a model is narrower: a child must be able to shade it."""


def page_pictures(proved: ProvedLesson, sheet: Worksheet) -> dict[str, Scene]:
    """Give the scenes that the worksheet and its key place."""
    pictures = {f"legend-{name}": legend_sample(name) for name in SAMPLES}
    pictures["whole"] = folded_sheet(proved.states[0], None, *WHOLE_MM)
    for row in sheet.rows:
        moment = proved.moments[row.moment]
        pictures[f"before-{row.moment}"] = folded_sheet(moment.before, moment.step, *BEFORE_MM)
    for item in sheet.items:
        pictures.update(_model_pictures(item))
    return pictures


def _model_pictures(item: ProductItem) -> Iterator[tuple[str, Scene]]:
    if item.shown:
        grid, size = _grid(item.shown), _model_size(item.shown)
        yield f"model-{item.number}", blank_model(grid, *size)
        yield f"model-{item.number}-shaded", shaded_model(grid, *size)


def diagrams(proved: ProvedLesson, sheet: Worksheet) -> dict[str, Scene]:
    """Give the scenes saved as files: for each step the folded sheet and the creases, and the models."""
    pictures: dict[str, Scene] = {}
    for index, moment in enumerate(proved.moments):
        number = f"{index + 1:02d}"
        following = proved.moments[index + 1].step if index + 1 < len(proved.moments) else None
        pictures[f"step-{number}-before"] = folded_sheet(moment.before, moment.step, *FOLDED_MM)
        pictures[f"step-{number}-creases"] = crease_pattern(moment.after, *DIAGRAM_MM)
        if following is None:
            pictures[f"step-{number}-after"] = folded_sheet(moment.after, None, *FOLDED_MM)
    for item in sheet.items:
        if item.shown:
            pictures[f"product-{item.number}"] = shaded_model(_grid(item.shown), *_model_size(item.shown))
    return pictures


def _grid(shown: ShadedProduct) -> Grid:
    return Grid(shown.columns, shown.rows, shown.across, shown.up)


def _model_size(shown: ShadedProduct) -> tuple[float, float]:
    """Make a model large enough for its cells, so far as the page allows."""
    width = min(max(MODEL_MM[0], CELL_MM * shown.columns + 1), LARGEST_MODEL_MM[0])
    height = min(max(MODEL_MM[1], CELL_MM * shown.rows + 1), LARGEST_MODEL_MM[1])
    return width, height
