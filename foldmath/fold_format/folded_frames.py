"""The frames of a FOLD file: the crease pattern, then the paper after every step that moved it.

All frames share the faces of the last step, so that a frame need say only where they lie now. Where a
slit has parted corners that were one, a frame brings a graph of its own, which later frames inherit.
"""

from collections.abc import Sequence
from typing import Any

from foldmath.fold_format.crease_graph import Graph, graph_of, slit_graph
from foldmath.fold_format.face_orders import face_orders
from foldmath.paper.state import CUT, Crease, FoldedState, Kind, Panel
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ZERO, Exact, denominator, numerator, written
from foldmath.plane.polygons import Polygon
from foldmath.values import frozen

ASSIGNMENT = {Kind.VALLEY: "V", Kind.MOUNTAIN: "M", Kind.CUT: "C"}
FOLD_ANGLE = {"V": 180, "M": -180}
"""Degrees away from flat; every other edge lies flat."""

EXACT_KEY = "vertices_foldmath:exact"
"""Our own key, named as FOLD asks: the coordinates again, as fractions."""

NEIGHBOURS_ONLY = "faceOrders gives neighbours in the stack; the order of the other faces follows from them."

Frame = dict[str, Any]


@frozen
class FramedState:
    """A state and the words that led to it."""

    words: str
    state: FoldedState


def frames_of(framed: Sequence[FramedState], last: FoldedState) -> list[Frame]:
    """Give the frames: first the crease pattern of the last state, then every state framed.

    Args:
        framed: the states after each step, in order, each with ``parents`` that point into the one before.
        last: the state framed last, or the open sheet.
    """
    whole = graph_of(last.panels)
    frames = [_crease_pattern(last, whole)]
    held, parent, graph = frozenset[int](), 0, whole
    for state, ancestors in zip(framed, _ancestors(framed, last), strict=True):
        lying = _Lying(last.panels, state.state.panels, ancestors)
        cut = frozenset(edge for edge, sides in enumerate(whole.edges_faces) if lying.cut(whole, edge, sides))
        inherits = cut == held
        if not inherits:
            graph = slit_graph(last.panels, lying.holds)
        frame = _metadata(state.words, parent, inherits=inherits)
        frames.append(frame | _folded(graph, lying, inherits=inherits))
        if not inherits:
            held, parent = cut, len(frames) - 1
    return frames


def _ancestors(framed: Sequence[FramedState], last: FoldedState) -> list[tuple[int, ...]]:
    """Give for each state framed the panel that every panel of the last state was or was cut from."""
    found = [tuple(range(len(last.panels)))]
    for later in reversed(framed[1:]):
        found.append(tuple(later.state.parents[panel] for panel in found[-1]))
    return found[::-1][: len(framed)]


class _Lying:
    """How the panels of the last state lie at an earlier moment."""

    def __init__(self, panels: Sequence[Panel], then: Sequence[Panel], ancestors: tuple[int, ...]) -> None:
        self.panels = panels
        self.then = then
        self.ancestors = ancestors
        self.placements = [then[ancestor].placements[-1] for ancestor in ancestors]
        self.polygons: list[Polygon] = [
            tuple(placement.motion.carry(corner) for corner in panel.corners)
            for panel, placement in zip(panels, self.placements, strict=True)
        ]
        self._edges = [_edge_lines(panel) for panel in then]

    def crease(self, face: int, side: int) -> Crease | None:
        """Give what the edge of a face carried then; None where the sheet ends or no crease was yet."""
        corners = self.panels[face].corners
        start, end = corners[side], corners[side + 1 - len(corners)]
        ancestor = self.ancestors[face]
        if self.then[ancestor].corners == corners:
            return self.then[ancestor].edges[side]
        along = [
            crease
            for line, (low, high), crease in self._edges[ancestor]
            if line.side(start) == ZERO == line.side(end)
            and max(low, min(start, end)) < min(high, max(start, end))
        ]
        # An edge that a later slit went on to cut was no cut yet while a part of it held.
        return next((crease for crease in along if crease != CUT), CUT if along else None)

    def holds(self, face: int, side: int) -> bool:
        """Tell whether the edge of a face was not cut then."""
        return self.crease(face, side) != CUT

    def cut(self, graph: Graph, edge: int, sides: tuple[int, int | None]) -> bool:
        """Tell whether an edge of the graph was cut then."""
        return sides[1] is not None and not self.holds(sides[0], graph.edges_sides[edge])


def _edge_lines(panel: Panel) -> list[tuple[Line, tuple[Point, Point], Crease | None]]:
    found = []
    for side, crease in enumerate(panel.edges):
        start, end = panel.corners[side], panel.corners[side + 1 - len(panel.corners)]
        found.append((line_through(start, end), (min(start, end), max(start, end)), crease))
    return found


def _metadata(words: str, parent: int, *, inherits: bool) -> Frame:
    return {
        "frame_title": words,
        "frame_classes": ["foldedForm"],
        "frame_parent": parent,
        "frame_inherit": inherits,
    }


def _crease_pattern(state: FoldedState, graph: Graph) -> Frame:
    assignments = []
    for (face, right), side in zip(graph.edges_faces, graph.edges_sides, strict=True):
        crease = state.panels[face].edges[side]
        assignments.append(ASSIGNMENT[crease.kind] if crease and right is not None else "B")
    return {
        "frame_classes": ["creasePattern"],
        "frame_attributes": _attributes(assignments, touching=False),
        "frame_unit": state.sheet.unit,
        **_coordinates(graph, [panel.corners for panel in state.panels]),
        **_topology(graph),
        **_assigned(assignments),
    }


def _folded(graph: Graph, lying: _Lying, *, inherits: bool) -> Frame:
    assignments = [
        _assignment(lying.crease(face, side), border=right is None)
        for (face, right), side in zip(graph.edges_faces, graph.edges_sides, strict=True)
    ]
    orders = face_orders(lying.polygons, lying.placements)
    frame: Frame = {} if orders.complete else {"frame_description": NEIGHBOURS_ONLY}
    frame |= {"frame_attributes": _attributes(assignments, touching=bool(orders.triples))}
    frame |= _coordinates(graph, lying.polygons)
    if not inherits:
        frame |= _topology(graph)
    return frame | _assigned(assignments) | {"faceOrders": orders.triples}


def _assignment(crease: Crease | None, *, border: bool) -> str:
    """A crease that lies flat now, or will only be made later, is flat paper."""
    if border:
        return "B"
    return ASSIGNMENT[crease.kind] if crease and (crease.fold or crease == CUT) else "F"


def _attributes(assignments: list[str], *, touching: bool) -> list[str]:
    return [
        "2D",
        "manifold",
        "orientable",
        "selfTouching" if touching else "nonSelfTouching",
        "nonSelfIntersecting",
        "cuts" if "C" in assignments else "noCuts",
        "noJoins",
        "convexFaces",
    ]


def _coordinates(graph: Graph, polygons: Sequence[Polygon]) -> Frame:
    points = [polygons[face][corner] for face, corner in graph.vertices]
    return {
        "vertices_coords": [[_measured(point.x), _measured(point.y)] for point in points],
        EXACT_KEY: [[written(point.x), written(point.y)] for point in points],
    }


def _measured(number: Exact) -> float:
    return numerator(number) / denominator(number)


def _topology(graph: Graph) -> Frame:
    return {
        "edges_vertices": graph.edges,
        "edges_faces": graph.edges_faces,
        "faces_vertices": graph.faces_vertices,
        "faces_edges": graph.faces_edges,
    }


def _assigned(assignments: list[str]) -> Frame:
    return {
        "edges_assignment": assignments,
        "edges_foldAngle": [FOLD_ANGLE.get(assignment, 0) for assignment in assignments],
    }
