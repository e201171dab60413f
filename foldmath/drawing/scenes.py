"""Pictures as data: marks that say what they mean, with places in millimetres and no ink yet."""

from dataclasses import replace
from enum import Enum
from typing import NamedTuple, TypeAlias, assert_never

from foldmath.phrases import Said
from foldmath.values import frozen
from foldmath.words.saying import say


class Spot(NamedTuple):
    """A place in a picture, in mm from its bottom left corner. Here floats begin."""

    x: float
    y: float


class Meaning(Enum):
    """What a line in a picture stands for; ``look`` says how each is drawn."""

    SHEET_EDGE = "sheet edge"
    FOLDED_EDGE = "folded edge"
    VALLEY = "valley"
    MOUNTAIN = "mountain"
    CREASE = "crease"
    CUT = "cut"
    CUT_ACROSS = "cut across"
    CREASE_TO_COME = "crease to come"
    FLAP_OVER = "flap over"
    FLAP_BEHIND = "flap behind"
    WHOLE = "whole"
    GRID = "grid"
    OUTLINE = "outline"
    HATCH = "hatch"
    ARROW = "arrow"
    ARROW_BEHIND = "arrow behind"
    TICK = "tick"


class Tone(Enum):
    """What an area in a picture stands for."""

    PRINTED_SIDE = "printed side"
    BACK_SIDE = "back side"
    INK = "ink"


class Lean(Enum):
    """Which way a hatch leans: right for the first factor's columns, left for the second's rows."""

    RIGHT = "right"
    LEFT = "left"


@frozen
class Stroke:
    """A line through spots; ``bends`` makes it one smooth curve through control points instead."""

    spots: tuple[Spot, ...]
    meaning: Meaning
    closed: bool = False
    bends: bool = False


@frozen
class Area:
    """A filled polygon."""

    spots: tuple[Spot, ...]
    tone: Tone


@frozen
class Hatching:
    """A polygon filled with slanting lines, all pictures' lines in one register."""

    spots: tuple[Spot, ...]
    lean: Lean


@frozen
class Figure:
    """A number set at a spot, its middle there: a whole number, or a stacked fraction.

    Args:
        middle: where the middle of the bar, or of the digits, stands.
        numerator: the digits above, or the whole number.
        denominator: the digits below; empty for a whole number.
        size_mm: the height of the digits' em.
    """

    middle: Spot
    numerator: str
    denominator: str
    size_mm: float


@frozen
class Star:
    """The star at the sheet's bottom left corner; hollow where the corner itself is out of sight."""

    middle: Spot
    radius_mm: float
    hollow: bool = False


Mark: TypeAlias = Stroke | Area | Hatching | Figure | Star


HATCH_PITCH_MM = 2.4
"""Between the lines of a hatch, measured across them; below 2 mm a copier turns it to mud."""


@frozen(kw_only=True)
class Scene:
    """A picture.

    Args:
        width_mm, height_mm: its size.
        marks: from the back to the front.
        words: what it shows.
        weight: how many times thicker than usual its lines are.
        hatch_pitch_mm: between the lines of a hatch, measured across them.
    """

    width_mm: float
    height_mm: float
    marks: tuple[Mark, ...]
    words: Said
    weight: float = 1.0
    hatch_pitch_mm: float = HATCH_PITCH_MM


def told_in(scene: Scene, language: str) -> Scene:
    """Give the same picture, its words said in a language."""
    return replace(scene, words=say(scene.words, language))


LOW_VISION_WEIGHT = 1.3
"""Makes the lines of creases 1.5 points thick (common practice, no source)."""

LOW_VISION_PITCH_MM = 4.2
"""A hatch for low vision has at least 4 mm between its lines (common practice, no source)."""


def for_low_vision(scene: Scene) -> Scene:
    """Give the same picture in thicker lines and a wider hatch."""
    return replace(scene, weight=LOW_VISION_WEIGHT, hatch_pitch_mm=LOW_VISION_PITCH_MM)


def enlarged(scene: Scene, times: float) -> Scene:
    """Give the same picture so many times as large, figures and stars too; lines are as thick as before."""

    def spots(places: tuple[Spot, ...]) -> tuple[Spot, ...]:
        return tuple(Spot(times * x, times * y) for x, y in places)

    def mark(drawn: Mark) -> Mark:
        match drawn:
            case Stroke() | Area() | Hatching():
                return replace(drawn, spots=spots(drawn.spots))
            case Figure():
                return replace(drawn, middle=spots((drawn.middle,))[0], size_mm=times * drawn.size_mm)
            case Star():
                return replace(drawn, middle=spots((drawn.middle,))[0], radius_mm=times * drawn.radius_mm)
            case _:
                assert_never(drawn)

    return replace(
        scene,
        width_mm=times * scene.width_mm,
        height_mm=times * scene.height_mm,
        marks=tuple(map(mark, scene.marks)),
    )
