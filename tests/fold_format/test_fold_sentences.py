"""The sentence chosen for a fold line folds along just that line."""

import pytest
from hypothesis import assume, given, settings
from strategies import fold_steps, folded, sheets, step_lists

from foldmath.fold_format.refolding.fold_sentences import step_for
from foldmath.fold_format.refolding.wanted_creases import named
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.folding.folding import fold
from foldmath.paper.moments.performing import fold_lines, perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import Sheet, open_sheet
from foldmath.plane.numbers import exact
from foldmath.words.steps import step_sentence

LETTER = open_sheet(Sheet(exact(11), exact(17, 2), "in"))


@given(sheets, step_lists, fold_steps)
@settings(max_examples=12, deadline=None)
def test_it_folds_what_the_line_folds_and_reads_as_itself(sheet, steps, wanted):
    state = folded(sheet, steps)
    try:
        line, turn = fold_lines(wanted, state)[0]
        after = fold(state, line, turn)
    except StepRefused:
        assume(False)
    step = step_for(line, turn, state)
    if step is not None:
        assert parse_step(step_sentence(step)) == step
        assert perform(step, state) == after
        assert named(fold_lines(step, state)[0].line) == named(line)


@pytest.mark.parametrize(
    "sentence",
    [
        "fold left edge to right edge",
        "fold bottom edge to middle, behind",
        "fold at 1/3 moving left",
        "fold at 2/5 moving top",
        "fold (2/3, 1) to (1, 3/4)",
        "fold along (0, 0) (1/3, 1/4) moving (0, 1)",
    ],
)
def test_a_sentence_of_simple_numbers_is_found_for_each_line(sentence):
    wanted = parse_step(sentence)
    line, turn = fold_lines(wanted, LETTER)[0]
    found = step_sentence(step_for(line, turn, LETTER))
    assert len(found) <= len(step_sentence(wanted)) + len(", behind")


def test_a_square_is_folded_from_corner_to_corner():
    square = open_sheet(Sheet(exact(8), exact(8), "in"))
    line, turn = fold_lines(parse_step("fold along (0, 0) (1, 1) moving (0, 1)"), square)[0]
    assert (
        step_sentence(step_for(line, turn, square)) == "fold the top left corner to the bottom right corner"
    )


def test_no_step_is_given_where_its_numbers_would_be_too_large_to_read():
    line, turn = fold_lines(parse_step("fold at 1/3 moving left"), LETTER)[0]
    odd = line._replace(c=line.c + exact(1, 10_007))
    assert step_for(odd, turn, LETTER) is None
