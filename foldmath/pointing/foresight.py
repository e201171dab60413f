"""Whether a fold can be done, told without folding: panels are counted by footprint, and none is cut."""

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import cached_property

from foldmath.paper.folding.folding import MOST_BITS, MOST_PANELS
from foldmath.paper.moments.performing import MOST_HANDLED
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import MOST_PLEATS
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import ONE, ZERO, Exact, bit_length
from foldmath.plane.polygons import Polygon

PLAIN_BITS = 40
"""Of a box whose numbers are no longer, every line between places that a step can name is short enough.

A step names places by shares of up to 14 bits, so a line's normal (a, b) has at most 28 + 40 bits, its middle
at most 110; the mirror's numbers have at most twice those of a and b and those of two coordinates, 512.
"""


class Foresight:
    """The paper as it lies, asked about many lines: some five hundred folds are offered of every state."""

    def __init__(self, state: FoldedState) -> None:
        self.handled = state.handled
        self.panels = len(state.panels)
        self.box = state.table.box
        self.footprints = Counter(panel.lying for panel in state.panels)
        self.corners = _hull({corner for cover in state.table.covers for corner in cover.polygon})
        """Those that stick out, which a hand can take; counter-clockwise."""

    @property
    def fills_its_box(self) -> bool:
        """Whether the paper sticks out to the four corners of its box, and nowhere else."""
        return set(self.corners) == {self.box.at(across, up) for across in (ZERO, ONE) for up in (ZERO, ONE)}

    @cached_property
    def is_easy(self) -> bool:
        """Whether one fold along any line between places that a step can name keeps within all limits."""
        return self._has_room(2 * self.panels) and self._has_plain_box

    @property
    def is_easy_for_fans(self) -> bool:
        """Whether a fan of any number of parts keeps within all limits, if each fold cuts every panel."""
        return self._has_room(MOST_PLEATS * self.panels, MOST_PLEATS - 1) and self._has_plain_box

    @property
    def _has_plain_box(self) -> bool:
        numbers = (*self.box, self.box.width, self.box.height)
        return all(bit_length(number) <= PLAIN_BITS for number in numbers)

    def allows(self, *lines: Line) -> bool:
        """Tell whether the paper can be folded along a line, or along parallel ones one after the other.

        Args:
            lines: in table coordinates; of several, each has paper on both hands when its turn comes.
        """
        if not all(self.is_parted_by(line) and _is_short(line) for line in lines):
            return False
        return self._has_room(self._panels_after(lines), folds=len(lines))

    def _has_room(self, panels: int, folds: int = 1) -> bool:
        return panels <= MOST_PANELS and self.handled + panels * folds <= MOST_HANDLED

    def is_parted_by(self, line: Line) -> bool:
        """Tell whether there is paper on both hands of a line."""
        return _crosses(line, self.corners)

    def _panels_after(self, lines: Sequence[Line]) -> int:
        """Count the panels after folding along parallel lines; what has moved is not cut by a later one."""
        return sum(
            count * (1 + sum(_crosses(line, lying) for line in lines))
            for lying, count in self.footprints.items()
        )


def _is_short(line: Line) -> bool:
    return all(bit_length(number) <= MOST_BITS for number in reflection(line)[:4])


def _crosses(line: Line, lying: Polygon) -> bool:
    sides = [line.side(corner) for corner in lying]
    return max(sides) > ZERO > min(sides)


def _hull(places: Iterable[Point]) -> Polygon:
    """Give the corners of the smallest convex polygon that holds some places.

    Source:
        A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", Information
        Processing Letters 9 (1979) 216-219.
    """
    ordered = sorted(places)
    return (*_lower_chain(ordered)[:-1], *_lower_chain(reversed(ordered))[:-1])


def _lower_chain(places: Iterable[Point]) -> list[Point]:
    chain: list[Point] = []
    for place in places:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], place) <= ZERO:
            chain.pop()
        chain.append(place)
    return chain


def _turn(start: Point, middle: Point, end: Point) -> Exact:
    """Give a number that is positive where the way through three points turns left."""
    return (middle.x - start.x) * (end.y - start.y) - (middle.y - start.y) * (end.x - start.x)
