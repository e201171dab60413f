"""Gathering as a movement: the ring of panels is pushed together, turned into leaves and closed.

Every panel is stood up by its rigid motion at each moment that is kept, and seen by one eye; between two of
these moments, a few degrees apart, a browser goes straight on.
"""

from collections.abc import Sequence
from math import ceil, dist

from foldmath.drawing.booklets.gathering import Strips, leaves_at, met, pushed, walls
from foldmath.drawing.booklets.gathering_pictures import (
    COVER_DEGREES,
    LEAF_SPREAD_DEGREES,
    PUSHES,
    push_arrows,
    turning_arrow,
)
from foldmath.drawing.booklets.perspective import Point3D, Wall, from_back_to_front
from foldmath.drawing.booklets.shots import Shot
from foldmath.drawing.scenes import Spot
from foldmath.measured import as_float
from foldmath.paper.booklet.ring import USUAL_COLUMN, Ring, ring
from foldmath.paper.state import CUT, FoldedState
from foldmath.paper.steps import Gather
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO
from foldmath.values import frozen

MOST_DEGREES = 8.0
"""Between two moments that are kept, so that a chord is true to three thousandths of a panel's width."""

RIGHT = 90.0
"""The degrees that a panel turns while the ends are pushed all the way."""

PUSHED_HOME = 1 / 3
"""Of the third part: how much of it pushes the ends home; the rest turns the leaves."""

STAR_IN_MM = 3.0
"""How far the star's middle is from the sides of its panel."""

LAST_DEGREES = 0.4
"""Between leaves at the end, so that each still lies behind the one before."""


@frozen
class StandingPanel:
    """One panel that stands.

    Args:
        page: its page number, on the printed side.
        star: the star's middle, in mm from its top left, the printed side in front; None if it has none.
        cuts: for the edge that leaves each corner, whether it was cut.
        frame: which corners are at the bottom left, bottom right and top left, the printed side in front.
    """

    page: int
    star: Spot | None
    cuts: tuple[bool, ...]
    frame: tuple[int, int, int]


@frozen
class StandingMoment:
    """All panels at one moment: the order in which they are painted, and the corners of each."""

    order: tuple[int, ...]
    corners: tuple[tuple[Spot, ...], ...]


@frozen(kw_only=True)
class GatherMotion:
    """The whole movement, in mm from the picture's top left.

    Args:
        width, height: of the picture.
        panels: in the order of the pages.
        page_mm: width and height of a panel, at the scale of the picture's middle.
        parts: how many moments each part has; the next part begins with the moment after its last.
        moments: of all parts, and the end.
        arrows: at the beginning of each part, outlines of arrows that say how the hands go on.
    """

    width: float
    height: float
    panels: tuple[StandingPanel, ...]
    page_mm: tuple[float, float]
    parts: tuple[int, ...]
    moments: tuple[StandingMoment, ...]
    arrows: tuple[tuple[tuple[Spot, ...], ...], ...]


def gather_motion(state: FoldedState, step: Gather, width_mm: float, height_mm: float) -> GatherMotion:
    """Give the movement by which an open sheet, halved along its slit, is gathered.

    Args:
        state: the open sheet, printed side up, its cover in the bottom row.
        step: the step that gathers it.
        width_mm: of the picture.
        height_mm: of the picture.
    """
    found = ring(state, USUAL_COLUMN if step.column is None else step.column)
    poses = _poses(found)
    parts = tuple(map(len, poses))
    stood = [_by_page(found, walls(state, found, strips)) for part in poses for strips in part]
    arrows = [push_arrows(found, pushed(found, share)) for share in PUSHES]
    turn = turning_arrow(found)
    places = [place for panels in stood for wall in panels for place in wall.corners]
    places += [*turn, *(place for pair in arrows for arrow in pair for place in arrow)]
    shot = Shot(as_float(found.grid.length), places, width_mm, height_mm)
    scale = shot.scale / _distance(shot)
    page_mm = as_float(found.grid.width) * scale, as_float(found.grid.height) * scale
    panels = tuple(
        _standing(state, found, number, wall, page_mm) for number, wall in enumerate(stood[parts[0] // 2])
    )
    return GatherMotion(
        width=width_mm,
        height=height_mm,
        panels=panels,
        page_mm=page_mm,
        parts=(*parts[:-1], parts[-1] - 1),
        moments=tuple(_moment(panels, shot) for panels in stood),
        arrows=(*(tuple(_seen(arrow, shot) for arrow in pair) for pair in arrows), (_seen(turn, shot),)),
    )


def _poses(found: Ring) -> list[list[Strips]]:
    """Give the joints at every moment that is kept, part by part; the last part has its end too."""
    first, second, third = PUSHES
    plus = met(found)
    between = LEAF_SPREAD_DEGREES / (len(plus) - 1)
    spread = [COVER_DEGREES + between * leaf for leaf in range(len(plus))]
    closed = [LAST_DEGREES * leaf for leaf in range(len(plus))]
    turning = _shares(_widest(plus, spread) / (1 - PUSHED_HOME))
    closing = [*_shares(_widest(spread, closed)), 1.0]
    return [
        [pushed(found, first + share * (second - first)) for share in _shares(RIGHT * (second - first))],
        [pushed(found, second + share * (third - second)) for share in _shares(RIGHT * (third - second))],
        [_home_and_turned(found, plus, spread, share) for share in turning],
        [leaves_at(found, _between(spread, closed, share)) for share in closing],
    ]


def _home_and_turned(found: Ring, plus: list[float], spread: list[float], share: float) -> Strips:
    third = PUSHES[-1]
    if share <= PUSHED_HOME:
        return pushed(found, third + share / PUSHED_HOME * (1 - third))
    return leaves_at(found, _between(plus, spread, (share - PUSHED_HOME) / (1 - PUSHED_HOME)))


def _shares(degrees: float) -> list[float]:
    """Share a part out, by how far it turns what turns farthest: in threes, since a third is pushed home."""
    moments = 3 * ceil(degrees / MOST_DEGREES / 3)
    return [moment / moments for moment in range(moments)]


def _widest(some: Sequence[float], others: Sequence[float]) -> float:
    return max(abs(other - one) for one, other in zip(some, others, strict=True))


def _between(some: Sequence[float], others: Sequence[float], share: float) -> list[float]:
    return [one + share * (other - one) for one, other in zip(some, others, strict=True)]


def _by_page(found: Ring, upright: list[Wall]) -> list[Wall]:
    by_panel = {wall.panel: wall for wall in upright}
    return [by_panel[panel] for panel in found.panels]


def _standing(
    state: FoldedState, found: Ring, number: int, wall: Wall, page_mm: tuple[float, float]
) -> StandingPanel:
    panel = state.panels[found.panels[number]]
    top = max(place.z for place in wall.corners)
    ends = (wall.start, wall.end, Point3D(wall.start.x, wall.start.y, top))
    left, right, above = (_nearest(wall, corner) for corner in ends)
    star = None
    if Point(ZERO, ZERO) in panel.corners:
        corner = panel.corners.index(Point(ZERO, ZERO))
        width, height = page_mm
        star = Spot(
            STAR_IN_MM if corner in (left, above) else width - STAR_IN_MM,
            height - STAR_IN_MM if corner in (left, right) else STAR_IN_MM,
        )
    cuts = tuple(crease == CUT for crease in panel.edges)
    return StandingPanel(number + 1, star, cuts, (left, right, above))


def _nearest(wall: Wall, place: Point3D) -> int:
    def apart(index: int) -> float:
        corner = wall.corners[index]
        return (corner.x - place.x) ** 2 + (corner.y - place.y) ** 2 + (corner.z - place.z) ** 2

    return min(range(len(wall.corners)), key=apart)


def _moment(upright: list[Wall], shot: Shot) -> StandingMoment:
    painted = from_back_to_front(upright, shot.eye.at)
    return StandingMoment(
        tuple(upright.index(wall) for wall in painted), tuple(_seen(wall.corners, shot) for wall in upright)
    )


def _seen(places: Sequence[Point3D], shot: Shot) -> tuple[Spot, ...]:
    return tuple(Spot(x, shot.height_mm - y) for x, y in map(shot.spot, places))


def _distance(shot: Shot) -> float:
    return dist(shot.eye.at, shot.eye.towards)
