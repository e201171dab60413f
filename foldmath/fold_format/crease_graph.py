"""The crease pattern as a graph: vertices, edges and faces, numbered from zero as FOLD numbers them."""

from collections.abc import Callable, Hashable, Sequence

from foldmath.paper.state import Panel
from foldmath.plane.lines import Point
from foldmath.values import frozen


@frozen(kw_only=True)
class Graph:
    """A planar graph whose faces are panels.

    Args:
        vertices: for each vertex, one corner that it is: a face, and which of its corners.
        edges: for each edge its two vertices; the first face on it runs from the first to the second.
        edges_faces: for each edge the face on its left, and that on its right or None.
        edges_sides: for each edge the place of the edge in the face on its left.
        faces_vertices: for each face its vertices, counter-clockwise on the printed side.
        faces_edges: for each face its edges, each leaving the vertex of the same place.
    """

    vertices: tuple[tuple[int, int], ...]
    edges: tuple[tuple[int, int], ...]
    edges_faces: tuple[tuple[int, int | None], ...]
    edges_sides: tuple[int, ...]
    faces_vertices: tuple[tuple[int, ...], ...]
    faces_edges: tuple[tuple[int, ...], ...]


def graph_of(panels: Sequence[Panel]) -> Graph:
    """Give the graph in which corners at one point are one vertex, cuts being edges like any other."""
    return _graph(panels, lambda face, corner: panels[face].corners[corner], lambda _face, _side: True)


def slit_graph(panels: Sequence[Panel], holds: Callable[[int, int], bool]) -> Graph:
    """Give the graph of a sheet that is slit: corners are one vertex only where paper joins them.

    Args:
        panels: the faces.
        holds: tells of a face and the place of an edge in it whether paper joins it to the next face.
    """
    joined = _Joined()
    across: dict[tuple[Point, Point], tuple[int, int]] = {}
    for face, panel in enumerate(panels):
        for side, start in enumerate(panel.corners):
            following = (side + 1) % len(panel.corners)
            end = panel.corners[following]
            opposite = across.pop((end, start), None)
            if opposite is None:
                across[start, end] = (face, side)
            elif holds(face, side):
                other, other_side = opposite
                joined.join((face, side), (other, (other_side + 1) % len(panels[other].corners)))
                joined.join((face, following), opposite)
    return _graph(panels, lambda face, corner: joined.name((face, corner)), holds)


class _Joined:
    """Corners that are one, each set named by one of them."""

    def __init__(self) -> None:
        self._names: dict[tuple[int, int], tuple[int, int]] = {}

    def name(self, corner: tuple[int, int]) -> tuple[int, int]:
        while (above := self._names.get(corner, corner)) != corner:
            corner = above
        return corner

    def join(self, one: tuple[int, int], other: tuple[int, int]) -> None:
        one, other = sorted((self.name(one), self.name(other)))
        if one != other:
            self._names[other] = one


def _graph(
    panels: Sequence[Panel], name: Callable[[int, int], Hashable], holds: Callable[[int, int], bool]
) -> Graph:
    first: dict[Hashable, tuple[int, int]] = {}
    for face, panel in enumerate(panels):
        for corner in range(len(panel.corners)):
            first.setdefault(name(face, corner), (face, corner))
    ordered = sorted(first.items(), key=lambda item: _up_then_right(panels, item[1]))
    number = {vertex: index for index, (vertex, _) in enumerate(ordered)}
    faces = tuple(
        tuple(number[name(face, corner)] for corner in range(len(panel.corners)))
        for face, panel in enumerate(panels)
    )
    numbering = _Edges()
    faces_edges = tuple(
        tuple(
            numbering.number((face, side), (start, vertices[side + 1 - len(vertices)]), holds(face, side))
            for side, start in enumerate(vertices)
        )
        for face, vertices in enumerate(faces)
    )
    return Graph(
        vertices=tuple(corner for _, corner in ordered),
        edges=tuple(numbering.ends),
        edges_faces=tuple((one, other) for one, other in numbering.faces),
        edges_sides=tuple(numbering.sides),
        faces_vertices=faces,
        faces_edges=faces_edges,
    )


class _Edges:
    """Edges numbered as the faces on them come; a cut is two edges between the same vertices."""

    def __init__(self) -> None:
        self.ends: list[tuple[int, int]] = []
        self.faces: list[tuple[int, int | None]] = []
        self.sides: list[int] = []
        self._waiting: dict[tuple[int, int], int] = {}

    def number(self, place: tuple[int, int], ends: tuple[int, int], holds: bool) -> int:
        start, end = ends
        if holds and (end, start) in self._waiting:
            known = self._waiting.pop((end, start))
            self.faces[known] = (self.faces[known][0], place[0])
            return known
        self.ends.append(ends)
        self.faces.append((place[0], None))
        self.sides.append(place[1])
        if holds:
            self._waiting[ends] = len(self.ends) - 1
        return len(self.ends) - 1


def _up_then_right(panels: Sequence[Panel], corner: tuple[int, int]) -> tuple[Point, tuple[int, int]]:
    x, y = panels[corner[0]].corners[corner[1]]
    return Point(y, x), corner
