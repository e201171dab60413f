"""Pictures of one size: takes a picture that is smaller, and puts it in the middle of its frame."""

from dataclasses import replace
from typing import assert_never

from foldmath.drawing.scenes import Area, Figure, Hatching, Mark, Scene, Spot, Star, Stroke


def framed(scene: Scene, width_mm: float, height_mm: float) -> Scene:
    """Put a picture in the middle of a frame of a given size, all at its own scale."""
    by = Spot((width_mm - scene.width_mm) / 2, (height_mm - scene.height_mm) / 2)
    marks = tuple(_moved(mark, by) for mark in scene.marks)
    return replace(scene, width_mm=width_mm, height_mm=height_mm, marks=marks)


def _moved(mark: Mark, by: Spot) -> Mark:
    match mark:
        case Figure() | Star():
            return replace(mark, middle=Spot(mark.middle.x + by.x, mark.middle.y + by.y))
        case Stroke() | Area() | Hatching():
            return replace(mark, spots=tuple(Spot(x + by.x, y + by.y) for x, y in mark.spots))
        case _:
            assert_never(mark)
