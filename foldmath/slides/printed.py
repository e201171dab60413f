"""The slides in print, for the file: one wide page a slide, all answers on it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import assert_never

from foldmath.drawing.area_models import Grid, shaded_sheets
from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Area, Figure, Hatching, Mark, Scene, Spot, Star, Stroke
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.drawing.sheets.scissors import cut_to_come
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.pdf.paginating import PageMaster
from foldmath.pages.pdf.styles import SLIDE
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import FoldStep, Slit
from foldmath.slides.gathering import GatherSlide
from foldmath.slides.scenes import resting_scene
from foldmath.slides.slides import ProductSlide, Slide, StepSlide, slides
from foldmath.statements.expressions import Claim, numbers_in, terms
from foldmath.worksheets.worksheet import Worksheet

PAGE_WORDS = "{page} / {pages}"
LARGER = 2.0
"""Pictures are drawn as for a worksheet and made so many times as large, numbers and all."""

PAGE_ROOM_MM = 152.0
LINE_MM, FRACTION_LINE_MM = 12.5, 19.5
"""What a line of text takes on a page, without fractions and with them."""

HIGHEST_MM, LOWEST_MM = 100.0, 36.0
THIRD_MM, HALF_MM = 96.0, 144.0
"""The most width of a picture where three, or two, stand side by side."""

WHOLE_MM, MODEL_MM, MOST_MODELS_MM = (72.0, 50.0), (46.0, 28.0), 140.0
"""Before they are made larger: the open sheet, the model of a product, and several such side by side."""


@dataclass(frozen=True)
class SlidesInPrint:
    """The document of the slides, and the scenes that it places, by name."""

    document: Document
    pictures: dict[str, Scene]


def slides_document(proved: ProvedLesson, sheet: Worksheet, page_words: str = PAGE_WORDS) -> SlidesInPrint:
    """Write the slides of a lesson for pages of 16 by 9; its style sheet is the one named ``slides``.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
        page_words: what stands in the middle of the foot, with ``{page}`` and ``{pages}``.
    """
    shown = slides(proved, sheet)
    html = render("slides/print.html", sheet.lesson.language, sheet=sheet, slides=shown)
    master = PageMaster(SLIDE, proved.lesson.title, sheet.code, page_words)
    return SlidesInPrint(Document(html, master, answers=True), dict(_pictures(proved, shown)))


def _pictures(proved: ProvedLesson, shown: tuple[Slide, ...]) -> Iterator[tuple[str, Scene]]:
    for name in SAMPLES:
        yield f"legend-{name}", enlarged(legend_sample(name))
    yield "slide-whole", enlarged(folded_sheet(proved.states[0], None, *WHOLE_MM))
    for place, slide in enumerate(shown, start=1):
        if isinstance(slide, StepSlide):
            yield from _step_pictures(place, slide, proved)
        elif isinstance(slide, GatherSlide):
            for pose in slide.poses:
                if pose.printed:
                    yield f"slide-{place}-{pose.shows}", enlarged(pose.printed)
        elif isinstance(slide, ProductSlide) and slide.item.sheets:
            sheets = slide.item.sheets
            grids = tuple(Grid(one.columns, one.rows, one.across, one.up) for one in sheets.sheets)
            width = MODEL_MM[0] if len(grids) == 1 else MOST_MODELS_MM
            yield f"slide-{place}-model", enlarged(shaded_sheets(grids, sheets.beside, width, MODEL_MM[1]))


def _step_pictures(place: int, slide: StepSlide, proved: ProvedLesson) -> Iterator[tuple[str, Scene]]:
    moment = proved.moments[slide.number - 1]
    folds = isinstance(moment.step, FoldStep)
    room = max(LOWEST_MM, min(HIGHEST_MM, PAGE_ROOM_MM - _text_mm(slide)))
    size = (THIRD_MM if folds else HALF_MM) / LARGER, room / LARGER
    if folds:
        yield f"slide-{place}-before", enlarged(folded_sheet(moment.before, moment.step, *size))
    if slide.does != "shade":
        yield f"slide-{place}-after", enlarged(_after(moment, *size))
    if slide.does == "shade":
        lying = resting_scene(slide.picture.after, slide.picture, slide.step.text)
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
    step = FRACTION_LINE_MM if "/" in slide.step.text else LINE_MM
    if slide.row is None:
        return step + 2 * LINE_MM
    fold = slide.row.fold
    sizes = len(fold.sizes) if fold and not fold.tally else 1
    counts = 1 if fold and fold.tally else 0
    return step + (2 + counts) * LINE_MM + sizes * FRACTION_LINE_MM + _whole_mm(slide.row.whole)


def _whole_mm(whole: Claim | None) -> float:
    if whole is None:
        return 0.0
    fractions = [number for term in terms(whole.asked) for number in numbers_in(term) if not number.whole]
    return FRACTION_LINE_MM if fractions else LINE_MM


def enlarged(scene: Scene, times: float = LARGER) -> Scene:
    """Make a picture so many times larger with all that is in it."""
    return replace(
        scene,
        width_mm=scene.width_mm * times,
        height_mm=scene.height_mm * times,
        marks=tuple(_mark(mark, times) for mark in scene.marks),
        weight=scene.weight * times,
        hatch_pitch_mm=scene.hatch_pitch_mm * times,
    )


def _mark(mark: Mark, times: float) -> Mark:
    match mark:
        case Figure():
            return replace(mark, middle=_spot(mark.middle, times), size_mm=mark.size_mm * times)
        case Star():
            return replace(mark, middle=_spot(mark.middle, times), radius_mm=mark.radius_mm * times)
        case Stroke() | Area() | Hatching():
            return replace(mark, spots=tuple(_spot(spot, times) for spot in mark.spots))
        case _:
            assert_never(mark)


def _spot(spot: Spot, times: float) -> Spot:
    return Spot(spot.x * times, spot.y * times)
