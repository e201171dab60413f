"""A document of slides: pages from a template, the pictures that both kinds begin with, each slide's own."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import TypeAlias, assert_never

from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Area, Figure, Hatching, Mark, Scene, Spot, Star, Stroke
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.pdf.styles import SLIDE
from foldmath.pages.templating import render
from foldmath.pages.written import Written
from foldmath.slides.slides import Slide, SlideShow
from foldmath.values import frozen

LARGER = 2.0
"""Pictures are drawn as for a worksheet and made so many times as large, numbers and all."""

WHOLE_MM = 72.0, 50.0
"""The open sheet of the title, before it is made larger."""

Pictures: TypeAlias = Iterator[tuple[str, Scene]]
"""Pictures by their names in a template."""


@frozen
class SlidesInPrint:
    """The document of the slides, and the scenes that it places, by name."""

    document: Written
    pictures: dict[str, Scene]


def in_print(template: str, show: SlideShow, pictures: Callable[[int, Slide], Pictures]) -> SlidesInPrint:
    """Write the slides of a lesson for pages of 16 by 9; its style sheet is the one named ``slides``.

    Args:
        template: of the pages.
        show: the slides.
        pictures: gives the pictures of a slide by its place, from 1.
    """
    lesson = show.proved.lesson
    html = render(template, lesson.language, sheet=show.sheet, slides=show.slides)
    document = Written(html=html, shape=SLIDE, footer=lesson.title, code=show.code, answers=True)
    drawn = dict(_first_pictures(show.proved))
    for place, slide in enumerate(show.slides, start=1):
        drawn.update(pictures(place, slide))
    return SlidesInPrint(document, drawn)


def _first_pictures(proved: ProvedLesson) -> Pictures:
    """Give the pictures of the title and of what is needed."""
    for name in SAMPLES:
        yield f"legend-{name}", enlarged(legend_sample(name))
    yield "slide-whole", enlarged(folded_sheet(proved.states[0], None, *WHOLE_MM))


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
