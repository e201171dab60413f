"""Places on a page: upright rectangles in mm."""

from typing import NamedTuple

from foldmath.drawing.scenes import Spot


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


def round_place(middle: Spot, radius: float) -> Place:
    """Give the place of a circle."""
    return Place(*middle, *middle).grown(radius)
