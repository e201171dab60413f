"""A step that the house does not know is refused wherever steps are told apart, never taken for a turn."""

from dataclasses import dataclass

import pytest

from foldmath.booklets.folding_steps import FoldingStep, Shows, folding_picture
from foldmath.lesson.echo import echo_of
from foldmath.lesson.remedies import near_steps
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines, perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.plane.numbers import exact
from foldmath.slides.motion.stages import _told
from foldmath.statements.sentences import sentences
from foldmath.tolerance.landmarks.freezing import freeze
from foldmath.words.steps import step_sentence


@dataclass(frozen=True)
class Crumple:
    """No step of the step language."""


PAPER = open_sheet(Sheet(exact(11), exact(17, 2), "in"))
CRUMPLED = Moment(Crumple(), PAPER, PAPER)
ASKED = {
    "perform": lambda: perform(Crumple(), PAPER),
    "fold_lines": lambda: fold_lines(Crumple(), PAPER),
    "step_sentence": lambda: step_sentence(Crumple()),
    "near_steps": lambda: list(near_steps(Crumple())),
    "sentences": lambda: sentences(CRUMPLED),
    "echo": lambda: echo_of(CRUMPLED),
    "freeze": lambda: freeze([CRUMPLED]),
    "folding_picture": lambda: folding_picture(FoldingStep(Shows.TURN, PAPER, Crumple()), 60, 40),
    "stages": lambda: _told(CRUMPLED, []),
}


@pytest.mark.parametrize("question", ASKED)
def test_an_unknown_step_is_refused_loudly(question):
    with pytest.raises(AssertionError, match="Crumple"):
        ASKED[question]()
