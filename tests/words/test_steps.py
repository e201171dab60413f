"""A child beside a picture reads no numbers of points; everybody else reads what was written."""

import pytest

from foldmath.lesson.grammar.sentences import written_step
from foldmath.lesson.grammar.suggestions import PATTERNS
from foldmath.paper.steps import FoldAlong, FoldPoint
from foldmath.words.steps import FOLD_IN_PICTURE, as_written, picture_sentence, step_sentence

POINTS = [text for text in PATTERNS if isinstance(written_step(text).step, FoldAlong | FoldPoint)]


@pytest.mark.parametrize("text", [text for text in PATTERNS if text not in POINTS])
def test_beside_its_picture_a_step_is_told_as_it_was_written(text):
    said = f"the {text}"
    assert picture_sentence(written_step(said)) == said


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("fold along (0, 0) (1, 1) moving (0, 1)", FOLD_IN_PICTURE),
        ("fold along bottom left to top right corner moving top left corner", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1/2, 1)", FOLD_IN_PICTURE),
        ("fold top left corner to (1/2, 1/2), behind", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1, 1)", "fold bottom left corner to top right corner"),
        ("fold both edges (left and right) to middle", "fold both edges (left and right) to middle"),
    ],
)
def test_points_are_told_by_their_corners_or_shown_by_the_picture(text, told):
    """It is the kind of step that decides, never a bracket in its words."""
    assert picture_sentence(written_step(text)) == told


@pytest.mark.parametrize("text", PATTERNS)
def test_a_step_that_nobody_wrote_is_told_in_its_own_sentence(text):
    step = written_step(text).step
    assert as_written(step).text == step_sentence(step)
    assert written_step(as_written(step).text).step == step
