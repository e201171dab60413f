"""A side of the sheet to be parted, and the side across it, so that every way is written down once."""

from foldmath.paper.steps import Axis, Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact
from foldmath.values import frozen


@frozen
class Direction:
    """The axis along which parts are counted; "along" is a fraction on it, "across" one on the other."""

    axis: Axis

    @property
    def near(self) -> Edge:
        """The edge from which parts are counted: along 0."""
        return Edge.LEFT if self.axis is Axis.WIDTH else Edge.BOTTOM

    @property
    def far(self) -> Edge:
        """The edge at which they end: along 1."""
        return self.near.opposite

    @property
    def across(self) -> "Direction":
        """The other direction of the sheet."""
        return Direction(Axis.HEIGHT if self.axis is Axis.WIDTH else Axis.WIDTH)

    def point(self, along: Exact, across: Exact) -> Point:
        """Give a point by its two fractions."""
        return Point(along, across) if self.axis is Axis.WIDTH else Point(across, along)

    def along(self, point: Point) -> Exact:
        """Give the coordinate of a point on this axis."""
        return point.x if self.axis is Axis.WIDTH else point.y
