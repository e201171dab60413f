"""Upright walls of paper in perspective: where each place falls in the picture, and what hides what."""

from collections.abc import Sequence
from math import atan2, cos, hypot, sin
from typing import NamedTuple

from foldmath.drawing.scenes import Spot


class Point3D(NamedTuple):
    """A point in the room, in sheet units: x to the right, y away from the viewer, z up."""

    x: float
    y: float
    z: float


class Wall(NamedTuple):
    """A panel that stands upright.

    Args:
        panel: its index in the state.
        corners: in the order of the panel's corners on the sheet.
        start, end: its foot, from left to right as the printed side is seen; heights are of no account.
    """

    panel: int
    corners: tuple[Point3D, ...]
    start: Point3D
    end: Point3D

    def before(self, place: Point3D) -> float:
        """Tell how far a place is before the printed side, times the wall's width; below 0 behind it."""
        along_x, along_y = self.end.x - self.start.x, self.end.y - self.start.y
        return along_y * (place.x - self.start.x) - along_x * (place.y - self.start.y)


class Eye(NamedTuple):
    """A viewer at ``at`` who looks at ``towards``; both in sheet units."""

    at: Point3D
    towards: Point3D

    def sees(self, place: Point3D) -> Spot:
        """Project a place onto a screen one unit before the eye: rays through one point (linear perspective).

        Source:
            L. B. Alberti, De pictura (1435): the picture is the cut through the pyramid of rays to the eye.
        """
        ahead = (self.towards.x - self.at.x, self.towards.y - self.at.y, self.towards.z - self.at.z)
        turn = atan2(ahead[0], ahead[1])
        tilt = atan2(ahead[2], hypot(ahead[0], ahead[1]))
        x, y, z = place.x - self.at.x, place.y - self.at.y, place.z - self.at.z
        across, level = x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)
        deep = level * cos(tilt) + z * sin(tilt)
        up = z * cos(tilt) - level * sin(tilt)
        return Spot(across / deep, up / deep)


FLUSH = 1e-9
"""Places no farther apart count as one: in squared sheet units from a wall's plane, and in radians."""


def from_back_to_front(walls: Sequence[Wall], eye: Point3D) -> list[Wall]:
    """Order walls so that each comes before those that may hide it; of flush ones, the printed side last.

    Upright walls that do not cross are parted by the plane of one of them, so their feet alone decide
    (the painter's algorithm: Newell, Newell and Sancha, "A solution to the hidden surface problem", 1972).
    """
    waiting, painted = list(walls), []
    while waiting:
        free = (wall for wall in waiting if not any(_hides(wall, other, eye) for other in waiting))
        last = next(free, waiting[0])
        waiting.remove(last)
        painted.append(last)
    return painted


def _hides(front: Wall, back: Wall, eye: Point3D) -> bool:
    """Tell whether one wall hides a part of another: both are seen in one direction, and it is the nearer."""
    if front is back or not _seen_together(front, back, eye):
        return False
    beyond, nearer = _towards(back, front, eye), _towards(front, back, eye)
    if max(map(abs, beyond)) <= FLUSH:
        return front.before(eye) > 0 > back.before(eye)
    return min(beyond) < -FLUSH and max(nearer) > FLUSH


def _seen_together(one: Wall, other: Wall, eye: Point3D) -> bool:
    """Tell whether some direction from the eye meets the feet of both, which lie before it."""
    spans = [
        sorted(atan2(place.x - eye.x, place.y - eye.y) for place in (wall.start, wall.end))
        for wall in (one, other)
    ]
    return min(spans[0][1], spans[1][1]) - max(spans[0][0], spans[1][0]) > FLUSH


def _towards(wall: Wall, plane: Wall, eye: Point3D) -> tuple[float, float]:
    """Tell how far the ends of a wall are on the eye's side of another's plane; below 0 on the far side."""
    sign = 1 if plane.before(eye) > 0 else -1
    return sign * plane.before(wall.start), sign * plane.before(wall.end)
