"""Pictures as data: marks that say what they mean, with places in millimetres and no ink yet."""

from dataclasses import dataclass
from enum import Enum
from typing import NamedTuple, TypeAlias


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
    WHOLE = "whole"
    GRID = "grid"
    OUTLINE = "outline"
    HATCH = "hatch"
    ARROW = "arrow"
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


@dataclass(frozen=True)
class Stroke:
    """A line through spots; ``bends`` makes it one smooth curve through control points instead."""

    spots: tuple[Spot, ...]
    meaning: Meaning
    closed: bool = False
    bends: bool = False


@dataclass(frozen=True)
class Area:
    """A filled polygon."""

    spots: tuple[Spot, ...]
    tone: Tone


@dataclass(frozen=True)
class Hatching:
    """A polygon filled with slanting lines, all pictures' lines in one register."""

    spots: tuple[Spot, ...]
    lean: Lean


@dataclass(frozen=True)
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


@dataclass(frozen=True)
class Star:
    """The star at the sheet's bottom left corner; hollow where the corner itself is out of sight."""

    middle: Spot
    radius_mm: float
    hollow: bool = False


Mark: TypeAlias = Stroke | Area | Hatching | Figure | Star


@dataclass(frozen=True)
class Scene:
    """A picture: its size in mm, its marks from the back to the front, and what it shows, in words."""

    width_mm: float
    height_mm: float
    marks: tuple[Mark, ...]
    words: str
