"""How long each slide may take: the minutes of the plan, shared out."""

from foldmath.slides.gathering import GatherSlide
from foldmath.slides.slides import ClosingSlide, MaterialsSlide, ProductSlide, Slide, SlipSlide, StepSlide
from foldmath.teachers_plan.lesson_time import EXIT, FOLD, SHADING, SLIP, START, TWO_PRODUCTS

GATHERING = 5
"""A booklet is closed in as long as a fold takes (common practice, no source)."""


def slide_minutes(slides: tuple[Slide, ...]) -> tuple[float, ...]:
    """Give the minutes of each slide; steps that only open or turn belong to the fold before them."""
    return tuple(map(_minutes, slides))


def _minutes(slide: Slide) -> float:
    match slide:
        case MaterialsSlide():
            return START
        case StepSlide() if slide.row:
            return FOLD if slide.row.fold else SHADING
        case GatherSlide():
            return GATHERING
        case ProductSlide():
            return TWO_PRODUCTS / 2
        case SlipSlide():
            return SLIP
        case ClosingSlide():
            return EXIT
        case _:
            return 0
