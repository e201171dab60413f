"""Gathering a sheet round its slit: how its panels stand while its ends are pushed together, and after.

The sheet is folded in half along its slit, printed side outside, and stood up with the slit on top: every
panel stays upright, a front strip of the bottom row and a back strip of the top row. So a pose is told by
the joints between columns, seen from above; each panel is stood between two of them by a rigid motion.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import atan2, cos, degrees, pi, radians, sin
from typing import NamedTuple

from foldmath.drawing.booklets.perspective import Point3D, Wall
from foldmath.measured import as_float
from foldmath.paper.booklet.booklet import Booklet, Face
from foldmath.paper.booklet.ring import Ring
from foldmath.paper.state import FoldedState
from foldmath.plane.lines import Point

SAME_DEGREES = 1e-6
"""Leaves that point this near to one way count as pointing alike."""


class Joint(NamedTuple):
    """The upright line between two columns, seen from above, in sheet units; y is away from the viewer."""

    x: float
    y: float


class Strips(NamedTuple):
    """The joints of both strips, from the left: one more than there are columns."""

    front: tuple[Joint, ...]
    back: tuple[Joint, ...]


def pushed(ring: Ring, share: float) -> Strips:
    """Push the ends together: the inner panels bow out into boxes, which then close again.

    The end columns stay flat; each inner panel makes an angle of ``share`` × 90° with the strip. A box is a
    rhombus of four panels seen from above, so every width is kept.

    Args:
        ring: the panels round the slit.
        share: 0 for the flat strip, 1/2 for square boxes, 1 for boxes closed into leaves.
    """
    width, columns = as_float(ring.grid.width), ring.grid.columns
    angle = share * pi / 2
    step, bow = width * cos(angle), width * sin(angle)
    across = [0.0, *(width + step * joint for joint in range(columns - 1))]
    across.append(across[-1] + width)
    middle = across[-1] / 2
    bows = [bow if joint % 2 == 0 and 0 < joint < columns else 0.0 for joint in range(columns + 1)]
    front = tuple(Joint(x - middle, -y) for x, y in zip(across, bows, strict=True))
    return Strips(front, tuple(Joint(x, -y) for x, y in front))


def fanned(ring: Ring, angle_degrees: float) -> Strips:
    """Fold all columns to and fro, both strips together, each panel turned by an angle from the strip."""
    joints = _to_and_fro(as_float(ring.grid.width), ring.grid.columns, angle_degrees)
    return Strips(joints, joints)


def _to_and_fro(width: float, columns: int, angle_degrees: float) -> tuple[Joint, ...]:
    """Zigzag, the first joint towards the viewer: the first crease is a valley, as a pleat's is."""
    step, bow = width * cos(radians(angle_degrees)), width * sin(radians(angle_degrees))
    return tuple(Joint(step * (joint - columns / 2), (joint % 2 - 0.5) * bow) for joint in range(columns + 1))


def leafed(ring: Ring, first_degrees: float, between_degrees: float) -> Strips:
    """Turn all leaves round the back of the booklet, one after the other, the cover first.

    Args:
        ring: the panels round the slit; two of them, one after the other, are a leaf.
        first_degrees: where the cover's leaf points, counter-clockwise from the right, seen from above.
        between_degrees: from each leaf to the next.
    """
    return leaves_at(ring, [first_degrees + between_degrees * leaf for leaf in range(len(ring.panels) // 2)])


def leaves_at(ring: Ring, angles_degrees: Sequence[float]) -> Strips:
    """Turn each leaf about the back of the booklet to point where its angle says, the cover first."""
    width, columns = as_float(ring.grid.width), ring.grid.columns
    strips = [[Joint(0.0, 0.0)] * (columns + 1) for _ in ring.grid.rows]
    for leaf, (row, tip) in enumerate(_tips(ring)):
        angle = radians(angles_degrees[leaf // 2])
        strips[row][tip] = Joint(width * cos(angle), width * sin(angle))
    return Strips(tuple(strips[0]), tuple(strips[1]))


def met(ring: Ring) -> list[float]:
    """Give where each leaf points once the ends are pushed home, in degrees, ever on from the cover's."""
    strips = pushed(ring, 1)
    angles: list[float] = []
    for row, tip in list(_tips(ring))[::2]:
        x, y = strips[row][tip]
        angle = degrees(atan2(y, x))
        angles.append(
            angles[-1] + (angle - angles[-1] + SAME_DEGREES) % 360 - SAME_DEGREES if angles else angle
        )
    return angles


def _tips(ring: Ring) -> Iterator[tuple[int, int]]:
    """Give for each panel of the ring its row, and the joint of that row that is the free end of its leaf."""
    places = {
        panel: (row, column)
        for row, panels in enumerate(ring.grid.rows)
        for column, panel in enumerate(panels)
    }
    for panel in ring.panels:
        row, column = places[panel]
        yield row, column + column % 2


def walls(state: FoldedState, ring: Ring, strips: Strips) -> list[Wall]:
    """Stand every panel between the joints of its column, the back strip first."""
    return [*_back(state, ring, strips.back), *_front(state, ring, strips.front)]


def _front(state: FoldedState, ring: Ring, joints: tuple[Joint, ...]) -> Iterator[Wall]:
    for column, (left, right) in enumerate(pairwise(joints)):
        panel = ring.grid.rows[0][column]
        yield _wall(state, ring, panel, column, (left, right))


def _back(state: FoldedState, ring: Ring, joints: tuple[Joint, ...]) -> Iterator[Wall]:
    """The printed side of the back strip looks away, so its foot runs from right to left."""
    for column, (left, right) in enumerate(pairwise(joints)):
        wall = _wall(state, ring, ring.grid.rows[1][column], column, (left, right))
        yield wall._replace(start=wall.end, end=wall.start)


def _wall(state: FoldedState, ring: Ring, panel: int, column: int, between: tuple[Joint, Joint]) -> Wall:
    corners = tuple(stood(ring, column, between, corner) for corner in state.panels[panel].corners)
    foot = [Point3D(joint.x, joint.y, 0.0) for joint in between]
    return Wall(panel, corners, foot[0], foot[1])


def fan_walls(state: FoldedState, booklet: Booklet, angle_degrees: float) -> list[Wall]:
    """Stand the panels of a pleat side by side, printed side in front, each turned from the strip."""
    width = as_float(booklet.width)
    pages = [page for page in booklet.pages if page.face is Face.PRINTED]
    joints = _to_and_fro(width, len(pages), angle_degrees)
    made = []
    for page, (left, right) in zip(pages, pairwise(joints), strict=True):
        corners = []
        for corner in state.panels[page.panel].corners:
            x, y = page.motion.carry(corner)
            at = _between(left, right, as_float(x) / width)
            corners.append(Point3D(at.x, at.y, as_float(y)))
        made.append(Wall(page.panel, tuple(corners), Point3D(*left, 0.0), Point3D(*right, 0.0)))
    return made


def stood(ring: Ring, column: int, between: tuple[Joint, Joint], point: Point) -> Point3D:
    """Carry a point of a panel to where it stands: both rows hang down from the line between them."""
    seen = ring.grid.seen.carry(point)
    height = as_float(ring.grid.height)
    at = _between(*between, as_float(seen.x) / as_float(ring.grid.width) - column)
    return Point3D(at.x, at.y, height - abs(as_float(seen.y) - height))


def _between(left: Joint, right: Joint, share: float) -> Joint:
    return Joint(left.x + share * (right.x - left.x), left.y + share * (right.y - left.y))
