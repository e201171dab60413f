"""A cell is read as a teacher types it, and nothing is guessed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.marking.reading.answers import (
    Absent,
    Judged,
    NoNumber,
    NotDone,
    Number,
    Numbers,
    Sentence,
    SignAnswer,
    Ticks,
    Truth,
    Unread,
    Words,
)
from foldmath.marking.reading.cells import LONGEST_CELL, NO_RESULT, read_cell
from foldmath.statements.expressions import Comparison
from foldmath.statements.ratios import fraction
from foldmath.statements.sentences import About
from foldmath.words.fraction_names import in_words

C, S = About.COUNT, About.SIZE


@pytest.mark.parametrize(
    ("typed", "written", "unit"),
    [
        ("8/15", "8/15", ""),
        ("16/30", "16/30", ""),
        (" 8 / 15 ", "8/15", ""),
        ("8⁄15", "8/15", ""),
        ("1 1/5", "1 1/5", ""),
        ("1½", "1 1/2", ""),
        ("½", "1/2", ""),
        ("0.5", "0.5", ""),
        ("0,5", "0.5", ""),
        ("0,375", "0.375", ""),
        ("50%", "50%", ""),
        ("8", "8", ""),
        ("8 panels", "8", "panels"),
        ("3/4 m", "3/4", "m"),
        ("3/4m", "3/4", "m"),
        ("8/15 of the sheet", "8/15", "of the sheet"),
        ("8 out of 15", "8/15", ""),
        ("two thirds", "2/3", ""),
        ("Two-thirds of the sheet", "2/3", "of the sheet"),
        ("three quarters", "3/4", ""),
        ("three fourths", "3/4", ""),
        ("a half", "1/2", ""),
        ("half", "1/2", ""),
        ("one and two fifths", "1 2/5", ""),
        ("eight panels", "8", "panels"),
        ("twenty-four", "24", ""),
        ("dos tercios", "2/3", ""),
        ("Tres octavos de la hoja", "3/8", "de la hoja"),
        ("la mitad", "1/2", ""),
        ("media", "1/2", ""),
        ("un doceavo", "1/12", ""),
        ("un duodécimo", "1/12", ""),
        ("tres cuartas partes", "3/4", ""),
        ("la tercera parte", "1/3", ""),
        ("uno y medio", "1 1/2", ""),
        ("dos y un cuarto", "2 1/4", ""),
        ("treinta y dos partes", "32", "partes"),
        ("8 de 15", "8/15", ""),
    ],
)
def test_a_number_is_read_in_figures_and_in_words(typed, written, unit):
    answer = read_cell(typed)
    assert isinstance(answer, Number)
    assert (answer.ratio.text, answer.unit) == (written, unit)
    assert type(answer.ratio.text) is str


@given(st.integers(1, 40), st.integers(2, 24), st.sampled_from(["en-US", "en-GB", "es"]))
def test_a_fraction_in_words_is_read_as_the_fraction_that_it_names(above, below, language):
    answer = read_cell(in_words(fraction(above, below), language))
    assert isinstance(answer, Number)
    # Twenty-one fourths and twenty one-fourths sound alike; either way the value is what is said.
    assert answer.ratio.value == fraction(above, below).value


@pytest.mark.parametrize(
    ("typed", "answer"),
    [
        ("<", SignAnswer(Comparison.LESS)),
        ("less than", SignAnswer(Comparison.LESS)),
        ("bigger", SignAnswer(Comparison.GREATER)),
        ("=", SignAnswer(Comparison.EQUAL)),
        ("menor que", SignAnswer(Comparison.LESS)),
        ("más", SignAnswer(Comparison.GREATER)),
        ("faltó", Absent()),
        ("c t t c", Ticks((C, S, S, C))),
        ("c s s c", Ticks((C, S, S, C))),
        ("C,S,S,C", Ticks((C, S, S, C))),
        ("cssc", Ticks((C, S, S, C))),
        ("count size size count", Ticks((C, S, S, C))),
        ("true", Truth(True)),
        ("T", Truth(True)),
        ("false", Truth(False)),
        ("f", Truth(False)),
        ("verdadero", Truth(True)),
        ("V", Truth(True)),
        ("falso", Truth(False)),
        ("-", NotDone()),
        ("–", NotDone()),
        ("absent", Absent()),
        ("✓", Judged(True)),
        ("wrong", Judged(False)),
        ("3/0", NoNumber("3/0")),
        ("fold the top edge", Words("fold the top edge")),
        ("1/2 of 1/4", Unread("1/2 of 1/4", NO_RESULT)),
    ],
)
def test_signs_ticks_and_words_are_read(typed, answer):
    assert read_cell(typed) == answer


@pytest.mark.parametrize("typed", ["1/6, 1/3", "1/6; 1/3", "1/6 and 1/3", "1/6 y 1/3"])
def test_several_numbers_are_read_where_panels_have_several_sizes(typed):
    answer = read_cell(typed)
    assert isinstance(answer, Numbers)
    assert [ratio.text for ratio in answer.ratios] == ["1/6", "1/3"]


def test_a_whole_sentence_is_read():
    answer = read_cell("4 x 2=8")
    assert isinstance(answer, Sentence)
    assert str(answer.claim) == "4 × 2 = 8"


@pytest.mark.parametrize(
    "typed",
    ["8/", "/15", "x", "?", "dunno", "2,400", "8//15", "1/2/3", "8/15 3/4", "8 ?", "#REF!", "8\x0015"],
)
def test_what_may_mean_two_things_or_nothing_is_left_open(typed):
    assert isinstance(read_cell(typed), Unread)


def test_a_cell_longer_than_any_answer_is_left_open():
    assert not isinstance(read_cell("8" + " panels" * 28), Unread)
    assert isinstance(read_cell("8 " + "p" * (LONGEST_CELL - 1)), Unread)


@given(st.text(max_size=40))
def test_any_text_is_read_or_left_open(text):
    if text.strip():
        read_cell(text)
