"""What the grammars call points: corners, middles, places on an edge or inside, and plain coordinates."""

from typing import Any

from lark import Token, Transformer, v_args

from foldmath.paper.steps import Axis, Edge, point_on
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact

EDGES = {"LEFT": Edge.LEFT, "RIGHT": Edge.RIGHT, "TOP": Edge.TOP, "BOTTOM": Edge.BOTTOM}
"""By the names that every grammar has for these words."""


@v_args(inline=True)
class PointRules(Transformer[Token, Any]):
    """What the rules that give a point stand for, in every language alike."""

    def coordinates(self, *words: Any) -> Point:
        """Give the point so far across and so far up; words may stand between."""
        across, up = (word for word in words if not isinstance(word, Token))
        return Point(across, up)

    def point_of_axes(self, *words: Any) -> Point:
        """Give the point at a part of the width and a part of the height, whichever is named first."""
        first, axis, second, _ = (word for word in words if not isinstance(word, Token))
        return Point(first, second) if axis is Axis.WIDTH else Point(second, first)

    def corner(self, *words: Token) -> Point:
        """Give the point where two edges meet."""
        one, other = (EDGES[word.type] for word in words if word.type in EDGES)
        return point_on(one, other.position)

    def middle_of_sheet(self, *_words: Token) -> Point:
        """Give the point that halves both sides."""
        return Point(HALF, HALF)

    def middle_of_edge(self, *words: Any) -> Point:
        """Give the point that halves an edge."""
        edge, _ = side_in(words)
        return point_on(edge, HALF)

    def point_from_end(self, *words: Any) -> Point:
        """Give the point on an edge, so far from one of its ends."""
        edge, end = (EDGES[word.type] for word in words if isinstance(word, Token) and word.type in EDGES)
        at = next(word for word in words if not isinstance(word, Token))
        return point_on(edge, at if end.position == ZERO else ONE - at)

    def point_up_edge(self, _point: Token, at: Exact, _up: Token, side: Token, _edge: Token) -> Point:
        """Give the point on an upright edge, so far from the bottom."""
        return point_on(EDGES[side.type], at)

    def point_down_edge(self, _point: Token, at: Exact, _down: Token, side: Token, _edge: Token) -> Point:
        """Give the point on an upright edge, so far from the top."""
        return point_on(EDGES[side.type], ONE - at)


def side_in(words: tuple[Any, ...]) -> tuple[Edge, Token]:
    """Give the edge that a rule names, with its word."""
    return next(word for word in words if isinstance(word, tuple) and not isinstance(word, Point))
