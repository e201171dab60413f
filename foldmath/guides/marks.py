"""Pages of guides as data: marks that say what they mean, with places in millimetres and no ink yet."""

from dataclasses import dataclass
from enum import Enum
from typing import NamedTuple, TypeAlias

from foldmath.drawing.scenes import Meaning, Spot, Star

POINT_MM = 25.4 / 72
"""A typographer's point in PDF is 1/72 in (ISO 32000-1:2008, 8.3.2.3)."""


class Place(NamedTuple):
    """An upright rectangle on a page, in mm from its bottom left corner."""

    left: float
    bottom: float
    right: float
    top: float

    def grown(self, by: float) -> "Place":
        """Give the same place with a rim round it; a negative rim takes one off."""
        return Place(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def meets(self, other: "Place") -> bool:
        """Tell whether two places share area."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )

    def holds(self, other: "Place") -> bool:
        """Tell whether another place lies inside."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.bottom <= other.bottom
            and other.top <= self.top
        )


class Anchor(Enum):
    """Which part of the words stands at their place."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True)
class Rule:
    """A straight line."""

    start: Spot
    end: Spot
    meaning: Meaning


@dataclass(frozen=True)
class Words:
    """One line of words on a baseline; ``turned`` ones read upwards."""

    at: Spot
    text: str
    size_pt: float
    bold: bool = False
    anchor: Anchor = Anchor.START
    turned: bool = False


@dataclass(frozen=True)
class Disc:
    """A circle on white ground."""

    middle: Spot
    radius_mm: float


@dataclass(frozen=True)
class Wedge:
    """A black polygon, such as the head of an arrow."""

    spots: tuple[Spot, ...]


GuideMark: TypeAlias = Rule | Words | Disc | Wedge | Star


@dataclass(frozen=True)
class GuidePage:
    """One printed page.

    Args:
        width_mm, height_mm: its size.
        sheet: where the sheet to fold lies on it; None on a page to read.
        marks: from the back to the front.
    """

    width_mm: float
    height_mm: float
    sheet: Place | None
    marks: tuple[GuideMark, ...]


def round_place(middle: Spot, radius: float) -> Place:
    """Give the place of a circle."""
    return Place(*middle, *middle).grown(radius)
