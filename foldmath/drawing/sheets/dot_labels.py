"""Fractions beside dots: each stands where it hides least of the picture."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

from foldmath.drawing.look import BAR_OVERHANG, DIGIT_HEIGHT, DIGIT_WIDTH, FIGURE_GAP
from foldmath.drawing.scenes import Area, Figure, Mark, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.plane.numbers import Exact, denominator, numerator

LABEL_MM = 4.2
"""The em of a fraction beside a dot: 12 points, as the words."""

LABEL_GAP_MM = 0.8
"""From a dot, or the sheet's edge, to the fraction."""

GROUND_MM = 0.6
"""White round a fraction, so that lines do not touch its figures."""

SAMPLE_MM = 0.5
"""Between the places of a line that are looked at."""

COSTS = {Meaning.CREASE: 2.0, Meaning.WHOLE: 1.0, Meaning.SHEET_EDGE: 2.0}
MOST_COST, STAR_COST = 4.0, 40.0
"""How bad it is to hide a bit of a line: of the fold to come and its arrow worst, of old creases least."""

CLEAR = 1.2
SIDES = (*((across, up) for up in (CLEAR, -CLEAR, 0.5, -0.5, 0) for across in (1, -1)), (0, 1), (0, -1))
"""Where a fraction may stand, in its own half sizes from the dot; those named first are preferred."""


def half_size(above: int, below: int) -> tuple[float, float]:
    """Give half the width and half the height of a fraction, in mm."""
    digits = max(len(str(above)), len(str(below)))
    return (digits * DIGIT_WIDTH / 2 + BAR_OVERHANG) * LABEL_MM, (DIGIT_HEIGHT + FIGURE_GAP) * LABEL_MM


def labelled(middle: Spot, above: int, below: int) -> list[Mark]:
    """Write a fraction on a white ground."""
    half_width, half_height = half_size(above, below)
    x, y = half_width + GROUND_MM, half_height + GROUND_MM
    ground = tuple(Spot(middle.x + i * x, middle.y + j * y) for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
    return [Area(ground, Tone.PRINTED_SIDE), Figure(middle, str(above), str(below), LABEL_MM)]


def label_beside(dot: Spot, radius_mm: float, fraction: Exact, scene: Scene) -> list[Mark]:
    """Write the fraction of a dot where it hides least."""
    above, below = numerator(fraction), denominator(fraction)
    half_width, half_height = half_size(above, below)
    away = radius_mm + LABEL_GAP_MM
    taken = list(_taken(scene))
    best, least = dot, float("inf")
    for across, up in SIDES:
        x = dot.x + across * (away + half_width)
        y = dot.y + up * (half_height + (0 if across else away))
        x = min(max(x, half_width), scene.width_mm - half_width)
        y = min(max(y, half_height), scene.height_mm - half_height)
        if abs(x - dot.x) < half_width + radius_mm and abs(y - dot.y) < half_height + radius_mm:
            continue
        room = (half_width + GROUND_MM, half_height + GROUND_MM)
        cost = sum(price for spot, price in taken if abs(spot.x - x) < room[0] and abs(spot.y - y) < room[1])
        if cost < least:
            best, least = Spot(x, y), cost
    return labelled(best, above, below)


def _taken(scene: Scene) -> Iterator[tuple[Spot, float]]:
    """Give places of a picture that have ink, and how bad it is to hide each."""
    for mark in scene.marks:
        if isinstance(mark, Star):
            yield mark.middle, STAR_COST
            for sway in (-mark.radius_mm, mark.radius_mm):
                yield Spot(mark.middle.x + sway, mark.middle.y), STAR_COST
                yield Spot(mark.middle.x, mark.middle.y + sway), STAR_COST
        elif isinstance(mark, Stroke):
            price = COSTS.get(mark.meaning, MOST_COST)
            spots = _curve(mark.spots) if mark.bends else mark.spots
            for start, end in pairwise((*spots, spots[0]) if mark.closed else spots):
                steps = int(hypot(end.x - start.x, end.y - start.y) / SAMPLE_MM) + 1
                for step in range(steps):
                    share = step / steps
                    yield (
                        Spot(start.x + share * (end.x - start.x), start.y + share * (end.y - start.y)),
                        price,
                    )


def _curve(controls: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Give places along a curve with one control between its ends."""
    start, control, end = controls
    shares = [number / 16 for number in range(17)]
    return tuple(
        Spot(
            (1 - t) ** 2 * start.x + 2 * t * (1 - t) * control.x + t**2 * end.x,
            (1 - t) ** 2 * start.y + 2 * t * (1 - t) * control.y + t**2 * end.y,
        )
        for t in shares
    )
