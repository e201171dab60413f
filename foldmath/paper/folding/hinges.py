"""Which panels hang together: the creases between them that no slit has cut."""

from collections.abc import Sequence
from typing import NamedTuple

from foldmath.paper.state import CUT, Panel
from foldmath.plane.lines import Line, Point, line_through


class Hinge(NamedTuple):
    """Paper that joins two panels: a whole edge of each, the ends on the opened sheet.

    Args:
        one: the panel that has the sheet's edge from ``start`` to ``end`` running counter-clockwise.
        other: the panel on the other side.
        start, end: in sheet units, ``start`` before ``end``.
    """

    one: int
    other: int
    start: Point
    end: Point

    @property
    def line(self) -> Line:
        """The line it turns about, on the opened sheet."""
        return line_through(self.start, self.end)

    def across(self, panel: int) -> int:
        """Give the panel on the other side of it."""
        return self.other if panel == self.one else self.one


def hinges(panels: Sequence[Panel]) -> list[Hinge]:
    """Give every hinge between panels; cuts and the edges of the sheet are none."""
    waiting: dict[tuple[Point, Point], int] = {}
    found = []
    for index, panel in enumerate(panels):
        for edge, crease in enumerate(panel.edges):
            if crease in (None, CUT):
                continue
            start, end = panel.corners[edge], panel.corners[edge + 1 - len(panel.corners)]
            opposite = waiting.pop((end, start), None)
            if opposite is None:
                waiting[start, end] = index
            elif start < end:
                found.append(Hinge(index, opposite, start, end))
            else:
                found.append(Hinge(opposite, index, end, start))
    return found


def pieces(panels: Sequence[Panel]) -> list[set[int]]:
    """Give the sets of panels that hang together; a sheet that is not parted has one."""
    beside: dict[int, list[int]] = {index: [] for index in range(len(panels))}
    for hinge in hinges(panels):
        beside[hinge.one].append(hinge.other)
        beside[hinge.other].append(hinge.one)
    found, loose = [], set(beside)
    while loose:
        piece, reached = set(), [loose.pop()]
        while reached:
            panel = reached.pop()
            piece.add(panel)
            reached += (other for other in beside[panel] if other in loose)
            loose.difference_update(beside[panel])
        found.append(piece)
    return found
