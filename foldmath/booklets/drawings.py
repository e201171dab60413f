"""The pictures of a booklet, each ready to be drawn as large as its page allows."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from foldmath.booklets.booklet_flowables import Bounds
from foldmath.drawing.area_models import Grid, Guide, blank_model, shaded_model
from foldmath.drawing.game_boards import blank_board, least_height_mm, numbered_board
from foldmath.drawing.number_lines import blank_line, line_height_mm, named_line
from foldmath.drawing.scenes import Figure, Hatching, Scene
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.booklet.matter import uncut
from foldmath.lesson.booklet.race import Race
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState
from foldmath.phrases import phrase
from foldmath.plane.numbers import Exact
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.values import frozen

LEAST_FOLD_MM, MOST_FOLD_MM = 22.0, 75.0
LEAST_CELL_MM = 5.0
"""No cell of a model is smaller, so far as its page allows: a child must be able to shade it."""

LEAST_MODEL_MM, MOST_MODEL_WIDTH_MM = 24.0, 90.0
MODEL_SHAPE = 0.72
"""The height of a model as a share of its width."""

ENDLESS_MM = 1000.0


@frozen(kw_only=True)
class Drawing:
    """A picture without a size yet.

    Args:
        name: that its page's HTML gives it.
        draw: gives its scene for a width and a greatest height, in mm.
        least_mm, most_mm: its height at least and at most, in mm.
    """

    name: str
    draw: Callable[[float, float], Scene]
    least_mm: float
    most_mm: float

    def scene(self, width_mm: float, height_mm: float) -> Scene:
        """Draw it for a width and a greatest height, in mm."""
        return self.draw(width_mm, height_mm)

    def bounds(self, width_mm: float) -> Bounds:
        """Give how high it may be on a page of a width."""
        natural = self.scene(width_mm, max(self.most_mm, self.least_mm)).height_mm
        most = min(natural, self.most_mm)
        return Bounds(min(self.least_mm, most), most)


def fold_drawing(name: str, moment: Moment) -> Drawing:
    """Draw the sheet before a fold, with the fold's arrow."""
    return Drawing(
        name=name,
        draw=lambda width, height: folded_sheet(moment.before, moment.step, width, height),
        least_mm=LEAST_FOLD_MM,
        most_mm=MOST_FOLD_MM,
    )


def model_drawings(name: str, product: Product) -> tuple[Drawing, Drawing]:
    """Draw the area model of a product: empty with ticks, and shaded."""
    first, second = product.first, product.second
    grid = Grid(first.denominator, second.denominator, first.numerator, second.numerator)
    most = MODEL_SHAPE * MOST_MODEL_WIDTH_MM
    least = max(LEAST_MODEL_MM, LEAST_CELL_MM * max(grid.rows, MODEL_SHAPE * grid.columns))
    return (
        Drawing(
            name=name,
            draw=lambda width, height: blank_model(grid, *_model_size(width, height), Guide.TICKS),
            least_mm=least,
            most_mm=most,
        ),
        Drawing(
            name=f"{name}-shaded",
            draw=lambda width, height: shaded_model(grid, *_model_size(width, height)),
            least_mm=least,
            most_mm=most,
        ),
    )


def creased_sheet(proved: ProvedLesson) -> FoldedState:
    """Give a lesson's sheet with all its creases, before it is cut or gathered."""
    return proved.states[uncut([moment.step for moment in proved.moments])]


def opened_drawing(name: str, state: FoldedState) -> Drawing:
    """Draw a sheet open, with its creases; numbers and shading would tell answers of other pages."""
    creased, new = phrase("The opened sheet with its creases."), phrase("The open sheet, not folded yet.")

    def draw(width: float, height: float) -> Scene:
        scene = crease_pattern(state, width, height)
        marks = tuple(mark for mark in scene.marks if not isinstance(mark, Figure | Hatching))
        return replace(scene, marks=marks, words=creased if state.creases else new)

    return Drawing(name=name, draw=draw, least_mm=LEAST_FOLD_MM, most_mm=MOST_FOLD_MM)


def line_drawings(
    name: str, creases: Sequence[Exact], names: Sequence[Ratio], width_mm: float
) -> tuple[Drawing, Drawing]:
    """Draw an edge as a number line for a page of a width: to name its creases, and with their names."""
    height = line_height_mm(creases, width_mm)
    blank = Drawing(
        name=name, draw=lambda width, _: blank_line(creases, width), least_mm=height, most_mm=height
    )
    named = replace(blank, name=f"{name}-named", draw=lambda width, _: named_line(creases, names, width))
    return blank, named


def board_drawings(name: str, race: Race, width_mm: float, height_mm: float) -> tuple[Drawing, Drawing]:
    """Draw the board of a game, its sheet turned as its page stands: empty, and with its numbers."""
    upright = race.columns <= race.rows
    turned = upright is not (width_mm <= height_mm)
    columns, rows = (race.rows, race.columns) if turned else (race.columns, race.rows)
    blank = Drawing(
        name=name,
        draw=lambda width, height: blank_board(columns, rows, width, height),
        least_mm=least_height_mm(rows),
        most_mm=ENDLESS_MM,
    )
    numbered = replace(
        blank,
        name=f"{name}-numbered",
        draw=lambda width, height: numbered_board(columns, rows, width, height),
    )
    return blank, numbered


def _model_size(width_mm: float, height_mm: float) -> tuple[float, float]:
    width = min(width_mm, MOST_MODEL_WIDTH_MM, height_mm / MODEL_SHAPE)
    return width, width * MODEL_SHAPE
