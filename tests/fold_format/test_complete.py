"""On a sheet creased in half both ways, the importer finds folds just where trying all of them finds some."""

from itertools import product

import pytest
from exchanged import file_of

from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.fold_format.refusals import PatternRefused
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldEdge, Open
from foldmath.plane.numbers import exact

MOST_STEPS = 4
PIECES = (((4, 0), (4, 3)), ((4, 3), (4, 6)), ((0, 3), (4, 3)), ((4, 3), (8, 3)))
STEPS = (
    Open(),
    *(
        FoldEdge(edge, edge.opposite.position, behind)
        for edge in (Edge.LEFT, Edge.TOP)
        for behind in (False, True)
    ),
)


def kinds_of(state):
    """Give the letters of the four pieces, if all are creased."""
    found = {(crease.start, crease.end): crease.kind.value[0].upper() for crease in state.creases}
    pieces = [tuple((exact(x), exact(y)) for x, y in piece) for piece in PIECES]
    return "".join(found[piece] for piece in pieces) if found.keys() == set(pieces) else ""


@pytest.fixture(scope="module")
def foldable():
    """Give the letters of every pattern that some sequence of up to four steps makes."""
    states = {(): open_sheet(Sheet(exact(8), exact(6), "in"))}
    patterns = set()
    for _ in range(MOST_STEPS):
        following = {}
        for steps, state in states.items():
            for step in STEPS:
                try:
                    following[*steps, step] = perform(step, state)
                except StepRefused:
                    continue
        states = following
        patterns |= {kinds_of(state) for state in states.values()} - {""}
    return patterns


@pytest.mark.parametrize("letters", ["".join(letters) for letters in product("MV", repeat=4)])
def test_a_cross_is_imported_just_if_some_sequence_of_folds_makes_it(letters, foldable, tmp_path):
    vertices = [[0, 0], [8, 0], [8, 6], [0, 6], [4, 0], [4, 3], [4, 6], [0, 3], [8, 3]]
    pattern = {
        "frame_unit": "in",
        "vertices_coords": vertices,
        "edges_vertices": [[0, 1], [1, 2], [2, 3], [3, 0], [4, 5], [5, 6], [7, 5], [5, 8]],
        "edges_assignment": ["B"] * 4 + list(letters),
    }
    path = file_of(tmp_path, pattern)
    if letters in foldable:
        assert kinds_of(imported_lesson(path).proved.states[-1]) == letters
    else:
        with pytest.raises(PatternRefused, match="no sequence of straight folds through all layers"):
            imported_lesson(path)


def test_some_crosses_can_be_folded_and_some_cannot(foldable):
    assert 0 < len(foldable) < 2 ** len(PIECES)
