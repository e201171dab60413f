"""The slides in print, for the file: one wide page a slide, all answers on it."""

from functools import partial

from foldmath.drawing.area_models import Grid, shaded_sheets
from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.drawing.sheets.scissors import cut_to_come
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import FoldStep, Slit
from foldmath.slides.gathering import GatherSlide
from foldmath.slides.in_print.documents import LARGER, Pictures, SlidesInPrint, enlarged, in_print
from foldmath.slides.in_print.scenes import resting_scene
from foldmath.slides.slides import ProductSlide, Slide, SlideShow, StepSlide
from foldmath.statements.expressions import Claim, numbers_in, terms
from foldmath.words.steps import shows_fraction

PAGE_ROOM_MM = 152.0
LINE_MM, FRACTION_LINE_MM = 12.5, 19.5
"""What a line of text takes on a page, without fractions and with them."""

HIGHEST_MM, LOWEST_MM = 100.0, 36.0
THIRD_MM, HALF_MM = 96.0, 144.0
"""The most width of a picture where three, or two, stand side by side."""

MODEL_MM, MOST_MODELS_MM = (46.0, 28.0), 140.0
"""Before they are made larger: the model of a product, and several such side by side."""


def slides_document(show: SlideShow) -> SlidesInPrint:
    """Write the slides of a lesson, one page each."""
    return in_print("slides/print.html", show, partial(_pictures, show.proved))


def _pictures(proved: ProvedLesson, place: int, slide: Slide) -> Pictures:
    if isinstance(slide, StepSlide):
        yield from _step_pictures(place, slide, proved.moments[slide.number - 1])
    elif isinstance(slide, GatherSlide):
        for pose in slide.poses:
            if pose.printed:
                yield f"slide-{place}-{pose.shows}", enlarged(pose.printed)
    elif isinstance(slide, ProductSlide) and slide.item.sheets:
        sheets = slide.item.sheets
        grids = tuple(Grid(one.columns, one.rows, one.across, one.up) for one in sheets.sheets)
        width = MODEL_MM[0] if len(grids) == 1 else MOST_MODELS_MM
        yield f"slide-{place}-model", enlarged(shaded_sheets(grids, sheets.beside, width, MODEL_MM[1]))


def _step_pictures(place: int, slide: StepSlide, moment: Moment) -> Pictures:
    folds = isinstance(moment.step, FoldStep)
    room = max(LOWEST_MM, min(HIGHEST_MM, PAGE_ROOM_MM - _text_mm(slide)))
    size = (THIRD_MM if folds else HALF_MM) / LARGER, room / LARGER
    if folds:
        yield f"slide-{place}-before", enlarged(folded_sheet(moment.before, moment.step, *size))
    if slide.does != "shade":
        yield f"slide-{place}-after", enlarged(_after(moment, *size))
    if slide.does == "shade":
        lying = resting_scene(slide.picture.after, slide.picture)
        yield f"slide-{place}-opened", enlarged(lying, min(THIRD_MM / lying.width_mm, room / lying.height_mm))
    else:
        yield f"slide-{place}-opened", enlarged(crease_pattern(moment.after, *size))


def _after(moment: Moment, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the paper after a step; for a slit, the paper with the cut to come."""
    if isinstance(moment.step, Slit):
        return cut_to_come(moment.before, moment.step, width_mm, most_height_mm)
    return folded_sheet(moment.after, None, width_mm, most_height_mm)


def _text_mm(slide: StepSlide) -> float:
    """Reckon what the words of a step take of its page."""
    step = FRACTION_LINE_MM if shows_fraction(slide.step.step) else LINE_MM
    if slide.row is None:
        return step + 2 * LINE_MM
    fold = slide.row.fold
    sizes = len(fold.sizes) if fold and not fold.tally else 1
    counts = 1 if fold and fold.tally else 0
    whole = LINE_MM if slide.row.parts else _whole_mm(slide.row.whole)
    return step + (2 + counts) * LINE_MM + sizes * FRACTION_LINE_MM + whole


def _whole_mm(whole: Claim | None) -> float:
    if whole is None:
        return 0.0
    fractions = [number for term in terms(whole.asked) for number in numbers_in(term) if not number.whole]
    return FRACTION_LINE_MM if fractions else LINE_MM
