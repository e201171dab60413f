"""Finding marks in scenes, and the plain geometry of a picture in millimetres."""

from math import hypot

from foldmath.drawing.scenes import Figure, Meaning, Scene, Spot, Star, Stroke


def strokes(scene: Scene, *meanings: Meaning) -> list[Stroke]:
    """Give the lines of some meanings, from the back to the front."""
    return [mark for mark in scene.marks if isinstance(mark, Stroke) and mark.meaning in meanings]


def of_kind(scene: Scene, kind: type) -> list:
    """Give the marks of one kind: Area, Hatching, Figure or Star."""
    return [mark for mark in scene.marks if isinstance(mark, kind)]


def spots_of(mark: object) -> list[Spot]:
    """Give every spot that a mark's ink reaches; of a curve, points along it."""
    if isinstance(mark, Star):
        x, y = mark.middle
        return [Spot(x - mark.radius_mm, y - mark.radius_mm), Spot(x + mark.radius_mm, y + mark.radius_mm)]
    if isinstance(mark, Figure):
        return corners_of(mark)
    if isinstance(mark, Stroke) and mark.bends:
        return [curve_at(mark.spots, step / 20) for step in range(21)]
    return list(mark.spots)


def curve_at(spots: tuple[Spot, ...], share: float) -> Spot:
    """Give a point of a quadratic Bézier curve."""
    start, control, end = spots
    one, two, three = (1 - share) ** 2, 2 * share * (1 - share), share**2
    return Spot(
        one * start.x + two * control.x + three * end.x, one * start.y + two * control.y + three * end.y
    )


def corners_of(figure: Figure) -> list[Spot]:
    """Give the corners of the room that a number takes: figures of DejaVu Sans are 0.636 em by 0.729 em."""
    em, (x, y) = figure.size_mm, figure.middle
    across = max(len(figure.numerator), len(figure.denominator)) * 0.636 * em / 2
    up = (0.729 + 0.1) * em if figure.denominator else 0.729 * em / 2
    return [Spot(x + sign * across, y + other * up) for sign in (1, -1) for other in (1, -1)]


def distance(one: Spot, other: Spot) -> float:
    """Give the distance of two spots, in mm."""
    return hypot(one.x - other.x, one.y - other.y)


def inside(spot: Spot, polygon: tuple[Spot, ...], by_mm: float = 1e-6) -> bool:
    """Tell whether a spot lies in a convex polygon, whichever way its corners run, give or take ``by_mm``."""
    reach = [_reach(spot, start, end) for start, end in zip(polygon, (*polygon[1:], polygon[0]), strict=True)]
    return min(reach) >= -by_mm or max(reach) <= by_mm


def _reach(spot: Spot, start: Spot, end: Spot) -> float:
    return ((end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x)) / distance(
        start, end
    )


def mirrored(spot: Spot, line: Stroke) -> Spot:
    """Give the mirror image of a spot in a straight line."""
    start, end = line.spots
    dx, dy = end.x - start.x, end.y - start.y
    share = ((spot.x - start.x) * dx + (spot.y - start.y) * dy) / (dx * dx + dy * dy)
    foot = Spot(start.x + share * dx, start.y + share * dy)
    return Spot(2 * foot.x - spot.x, 2 * foot.y - spot.y)
