"""Which face lies over which: the ``faceOrders`` of a folded state.

Source:
    FOLD 1.2, "Layer information: faceOrders and edgeOrders" (github.com/edemaine/fold, doc/spec.md).
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

from foldmath.paper.state import Placement
from foldmath.plane.lines import Point
from foldmath.plane.overlaps import counter_clockwise, pairs_that_share_area
from foldmath.plane.polygons import Polygon

MOST_ORDERS = 20_000
"""A frame that would need more orders than this gives neighbours in the stack only; the rest follow."""


class FaceOrders(NamedTuple):
    """The orders of one frame.

    Args:
        triples: ``(f, g, s)``: s is +1 if face f lies on the side that the printed side of g looks to.
        complete: whether every overlapping pair is given, not only neighbours.
    """

    triples: list[tuple[int, int, int]]
    complete: bool


def face_orders(lying: Sequence[Polygon], placements: Sequence[Placement]) -> FaceOrders:
    """Give the order of every two faces that overlap or, past ``MOST_ORDERS``, of neighbours.

    Args:
        lying: for each face, its corners on the table.
        placements: for each face, how it lies.
    """
    stacks = _stacks(lying, placements)
    meetings = _meetings(stacks)
    pairs = sum(len(stack.faces) * (len(stack.faces) - 1) // 2 for stack in stacks)
    pairs += sum(len(one.faces) * len(other.faces) for one, other in meetings)
    complete = pairs <= MOST_ORDERS
    found = _every_pair(stacks, meetings) if complete else _neighbours(stacks, meetings, placements)
    return FaceOrders([_triple(one, other, placements) for one, other in sorted(found)], complete)


class _Stack(NamedTuple):
    """The faces on one footprint, bottom to top."""

    footprint: Polygon
    faces: list[int]


def _stacks(lying: Sequence[Polygon], placements: Sequence[Placement]) -> list[_Stack]:
    found: dict[frozenset[Point], list[int]] = defaultdict(list)
    for face, corners in enumerate(lying):
        found[frozenset(corners)].append(face)
    return [
        _Stack(counter_clockwise(lying[faces[0]]), sorted(faces, key=lambda face: placements[face].place))
        for faces in found.values()
    ]


def _meetings(stacks: list[_Stack]) -> list[tuple[_Stack, _Stack]]:
    """Give every two stacks that share area."""
    pairs = pairs_that_share_area([stack.footprint for stack in stacks])
    return [(stacks[one], stacks[other]) for one, other in pairs]


def _every_pair(stacks: list[_Stack], meetings: list[tuple[_Stack, _Stack]]) -> Iterator[tuple[int, int]]:
    for stack in stacks:
        yield from combinations(sorted(stack.faces), 2)
    for one, other in meetings:
        for face in one.faces:
            yield from ((min(face, beside), max(face, beside)) for beside in other.faces)


def _neighbours(
    stacks: list[_Stack], meetings: list[tuple[_Stack, _Stack]], placements: Sequence[Placement]
) -> set[tuple[int, int]]:
    """Give pairs with nothing between them, one on the other, in one stack or in two that overlap."""
    runs = [stack.faces for stack in stacks]
    runs += [
        sorted(one.faces + other.faces, key=lambda face: placements[face].place) for one, other in meetings
    ]
    return {(min(pair), max(pair)) for run in runs for pair in pairwise(run)}


def _triple(one: int, other: int, placements: Sequence[Placement]) -> tuple[int, int, int]:
    above = placements[one].place > placements[other].place
    return one, other, 1 if above is placements[other].printed_side_up else -1
