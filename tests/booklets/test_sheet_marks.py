"""The marks of a booklet's sheet: where it is slit, scissors lie on the line, in its middle."""

import pytest
from booklet_reading import papers_of, planned

from foldmath.booklets.sheet_marks import sheet_marks
from foldmath.drawing.scenes import Meaning, Stroke
from foldmath.lesson.booklet.plan import Heading, PlannedPage


@pytest.mark.parametrize(("form", "slit"), [("eight-page", True), ("four-page", False)])
def test_scissors_lie_on_the_middle_of_a_slit_where_the_folded_edge_is(form, slit):
    page = PlannedPage((Heading("Seeds"),))
    marks = list(sheet_marks(papers_of(planned((page,), form=form)).layout))
    strokes = [mark for mark in marks if isinstance(mark, Stroke)]
    cuts = [spot for mark in strokes if mark.meaning is Meaning.CUT for spot in mark.spots]
    drawn = [spot for mark in strokes if mark.meaning is Meaning.OUTLINE for spot in mark.spots]
    assert bool(cuts) is bool(drawn) is slit
    if slit:
        middle = (min(cuts).x + max(cuts).x) / 2
        assert min(drawn).x < middle < max(drawn).x
        assert max(abs(spot.y - cuts[0].y) for spot in drawn) < 5
