"""Count and size are two sentences, and the whole closes every fold."""

from fractions import Fraction
from math import prod

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, moments
from strategies import foldings, often_enough, sheets, step_lists

from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import FoldStep
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.sentences import About, fold_sentences, sentences, shaded_part


def told(*steps):
    return sentences(moments(*steps)[-1])


def texts(about, *steps):
    return [str(sentence.claim) for sentence in told(*steps) if sentence.about is about]


def sizes(*steps):
    return [
        (str(sentence.claim), str(sentence.of)) for sentence in told(*steps) if sentence.about is About.SIZE
    ]


def test_halving_four_quarters_is_said_as_a_count_and_as_a_size():
    """Not 4 × 1/2 = 8: what gives 8 panels is 4 × 2, and half of a quarter is an eighth."""
    assert [(sentence.about, str(sentence.claim), str(sentence.of or "")) for sentence in told(*EIGHTHS)] == [
        (About.COUNT, "4 × 2 = 8", ""),
        (About.SIZE, "1/4 × 1/2 = 1/8", "1/2 of 1/4 = 1/8"),
        (About.WHOLE, "8 × 1/8 = 1", ""),
    ]


@pytest.mark.parametrize(
    ("steps", "count"),
    [
        (EIGHTHS, ["4 × 2 = 8"]),
        (("pleat height into 4", "open", "pleat width into 5"), ["4 × 5 = 20"]),
        (("fold left edge to middle", "fold right edge to 3/4"), ["1 + 1 × 2 = 3"]),
        (("fold left edge to right edge", "open", "fold right edge to left edge"), []),
        (("pleat width into 2", "open", "fold both edges to middle"), ["2 × 2 = 4"]),
        (("fold at 1/3 moving left", "open", "pleat width into 4"), ["2 + 3 = 5"]),
    ],
    ids=["all alike", "a pleat", "only some", "none", "a gate over two", "unlike"],
)
def test_a_count_multiplies_only_what_was_cut_alike(steps, count):
    assert texts(About.COUNT, *steps) == count


def test_a_size_is_said_for_every_different_cut():
    steps = ("pleat width into 2", "open", "fold at 1/3 moving bottom")
    assert sizes(*steps) == [
        ("1/2 × 1/3 = 1/6", "1/3 of 1/2 = 1/6"),
        ("1/2 × 2/3 = 1/3", "2/3 of 1/2 = 1/3"),
    ]


def test_panels_that_were_not_cut_have_no_size_sentence():
    steps = ("fold at 1/3 moving left", "open", "fold right edge to 1/3")
    assert sizes(*steps) == [("2/3 × 1/2 = 1/3", "1/2 of 2/3 = 1/3")]


def test_unequal_panels_are_added_with_their_counts():
    assert texts(About.WHOLE, "fold at 1/3 moving left", "fold top edge to bottom edge") == [
        "2 × 1/6 + 2 × 1/3 = 1"
    ]


@pytest.mark.parametrize("step", ["open", "open last", "turn over", "turn left"])
def test_opening_and_turning_show_nothing(step):
    assert told("fold left edge to right edge", step) == ()


def test_shading_once_counts_the_shaded_and_twice_counts_the_product():
    steps = ("pleat width into 3", "pleat height into 5", "open", "shade 4 of 5 up", "shade 2 of 3 across")
    (once,), (twice,) = told(*steps[:-1]), told(*steps)
    assert (once.about, str(once.counted), once.times, str(once.area)) == (About.SHADED, "12/15", 1, "4/5")
    assert (twice.about, str(twice.counted), twice.times, str(twice.area)) == (
        About.SHADED,
        "8/15",
        2,
        "8/15",
    )


def test_a_shaded_part_is_so_many_of_all_panels_unless_they_differ_in_size():
    (alike,) = told("pleat width into 4", "open", "shade 2 of 4 across")
    (unequal,) = told("pleat width into 2", "open", "fold at 1/4 moving left", "open", "shade 1 of 2 across")
    assert (str(alike.share), str(alike.area)) == ("2/4", "1/2")
    assert (str(unequal.share), str(unequal.counted)) == ("1/2", "2/3")


def test_where_nothing_is_shaded_none_of_the_panels_are():
    bare = shaded_part(moments(*EIGHTHS)[-1].after)
    assert (str(bare.counted), bare.times, str(bare.area)) == ("0/8", 1, "0")


@given(sheets, step_lists)
@often_enough
def test_every_sentence_of_every_fold_is_true(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        for sentence in fold_sentences(Moment(*move)):
            assert holds(str(sentence.claim))
            assert sentence.of is None or holds(str(sentence.of))


def holds(text):
    """Reckon both sides of a sentence by Python's own fractions."""
    left, _, right = text.replace(" of ", " × ").partition(" = ")
    terms = [prod(map(Fraction, term.split(" × "))) for term in left.split(" + ")] if right else []
    return bool(right) and sum(terms) == Fraction(right)


@given(sheets, step_lists)
@often_enough
def test_every_fold_closes_with_the_whole_and_never_multiplies_panels_by_a_fraction(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        said = fold_sentences(Moment(*move))
        if isinstance(move.step, FoldStep):
            assert said[-1].about is About.WHOLE
            assert str(said[-1].claim).endswith(" = 1")
        for sentence in said:
            if sentence.about is About.COUNT:
                assert "/" not in str(sentence.claim)
                assert str(sentence.claim).endswith(f" = {len(move.after.panels)}")


def test_what_a_fold_says_is_what_a_claim_may_say():
    for moment in moments(*EIGHTHS):
        for sentence in fold_sentences(moment):
            assert check_claim(str(sentence.claim)).true
