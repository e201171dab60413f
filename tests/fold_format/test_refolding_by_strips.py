"""The folds found for a pattern make that very pattern, by a folding of strips that shares no code."""

from fractions import Fraction
from itertools import pairwise

from exchanged import file_of
from folded_strips import HEIGHT, WIDTH, Strips
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import edge_folds, folds_at, gates, halvings, pleats

from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.paper.steps import OpenLast, TurnOver

SIDES = (12, 9)
STEPS = st.one_of(edge_folds, halvings, gates, folds_at, pleats, st.just(TurnOver()))


def folded(steps) -> Strips:
    strips = Strips()
    for step in steps:
        strips.do(step)
    return strips


def pattern_of(strips: Strips) -> dict:
    """Write a crease pattern, a vertex wherever two lines meet."""
    across, up = strips.places(WIDTH), strips.places(HEIGHT)
    number = {(x, y): len(up) * i + j for i, x in enumerate(across) for j, y in enumerate(up)}
    edges, letters = [], []
    creases = strips.creases()
    for axis, places, along in ((WIDTH, across, up), (HEIGHT, up, across)):
        for place in places:
            for start, end in pairwise(along):
                ends = ((place, start), (place, end)) if axis == WIDTH else ((start, place), (end, place))
                edges.append([number[one] for one in ends])
                letters.append(creases.get((axis, place, (start, end)), "B"))
    return {
        "file_spec": 1.2,
        "frame_classes": ["creasePattern"],
        "frame_unit": "in",
        "vertices_coords": [[float(x * SIDES[0]), float(y * SIDES[1])] for x, y in number],
        "edges_vertices": edges,
        "edges_assignment": letters,
    }


@given(st.lists(STEPS, min_size=1, max_size=4))
@settings(
    max_examples=30,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
def test_the_folds_found_make_every_crease_of_the_pattern_and_no_other(tmp_path, steps):
    strips = folded(steps)
    assume(strips.creases() and len(strips.areas()) <= 400)
    lesson = imported_lesson(file_of(tmp_path, pattern_of(strips))).proved.lesson
    assert folded(step.step for step in lesson.steps).creases() == strips.creases()


def test_strips_by_hand():
    """A half folded over is a valley; the half above it, folded behind, a mountain and a valley."""
    strips = folded(())
    strips.fold(WIDTH, Fraction(1, 2), low_moves=True, behind=False)
    strips.fold(HEIGHT, Fraction(1, 2), low_moves=True, behind=True)
    assert sorted(strips.creases().items()) == [
        ((WIDTH, Fraction(1, 2), (Fraction(0), Fraction(1, 2))), "V"),
        ((WIDTH, Fraction(1, 2), (Fraction(1, 2), Fraction(1))), "V"),
        ((HEIGHT, Fraction(1, 2), (Fraction(0), Fraction(1, 2))), "V"),
        ((HEIGHT, Fraction(1, 2), (Fraction(1, 2), Fraction(1))), "M"),
    ]
    strips.do(OpenLast())
    assert strips.box(HEIGHT) == (0, 1)
    assert strips.areas() == [Fraction(1, 4)] * 4
