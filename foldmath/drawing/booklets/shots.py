"""A picture taken of standing paper: where the eye is, and how what it sees fits into a picture."""

from collections.abc import Sequence

from foldmath.drawing.booklets.perspective import Eye, Point3D
from foldmath.drawing.scenes import Spot

EYE_ASIDE, EYE_AWAY, EYE_ABOVE = -0.2, 1.7, 1.05
"""Where the eye is, in lengths of the strip: to the right of its middle (so a little left), before the strip,
above half its height."""

MARGIN_MM = 1.6
"""Room for the heads of arrows, and for half of a thick line."""


class Shot:
    """A place for the eye, and the scale that carries what it sees into a picture.

    Args:
        length: of the strip that the eye is set for, in sheet units.
        places: what must stay inside; the eye looks at half their height.
        width_mm, height_mm: the picture's size.
    """

    def __init__(self, length: float, places: Sequence[Point3D], width_mm: float, height_mm: float) -> None:
        level = max(place.z for place in places) / 2
        at = Point3D(EYE_ASIDE * length, -EYE_AWAY * length, level + EYE_ABOVE * length)
        self.eye = Eye(at, Point3D(0.0, 0.0, level))
        seen = [self.eye.sees(place) for place in places]
        left, right = min(spot.x for spot in seen), max(spot.x for spot in seen)
        bottom, top = min(spot.y for spot in seen), max(spot.y for spot in seen)
        self.scale = min(
            (width_mm - 2 * MARGIN_MM) / (right - left), (height_mm - 2 * MARGIN_MM) / (top - bottom)
        )
        self.middle = Spot((left + right) / 2, (bottom + top) / 2)
        self.width_mm, self.height_mm = width_mm, height_mm

    def spot(self, place: Point3D) -> Spot:
        """Carry a place into the picture."""
        seen = self.eye.sees(place)
        return Spot(
            self.width_mm / 2 + (seen.x - self.middle.x) * self.scale,
            self.height_mm / 2 + (seen.y - self.middle.y) * self.scale,
        )
