"""Everything true that a step shows: nothing false, nothing twice, nothing left out of what it promises."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lessons_in_words import EIGHTHS, FOLDS, moments

from foldmath.plane.numbers import exact
from foldmath.statements.checking.claims import check_claim, read_claim
from foldmath.statements.explaining import Family, explanations
from foldmath.statements.explaining.found import reduced
from foldmath.statements.explaining.parts_of_parts import Nested, sentences_between
from foldmath.statements.sameness import form
from foldmath.statements.standards import Followed

SHADED = ("pleat width into 3", "pleat height into 5", "open", "shade 2 of 3 across", "shade 4 of 5 up")
UNEQUAL = ("fold at 1/3 moving left", "fold at 1/4 moving bottom")

slanted = st.sampled_from(
    ["fold bottom left corner to top right corner", "fold along (0, 0) (1, 1) moving (0, 1)"]
)
foldings = st.one_of(
    st.lists(st.sampled_from(FOLDS), min_size=1, max_size=3),
    st.builds(lambda first, last: [first, last], slanted, st.sampled_from(FOLDS)),
    st.builds(lambda fold, last: [fold, "open", last], st.sampled_from(FOLDS), slanted),
)


def told(*steps, index=-1, grade=5, followed=Followed.CCSS):
    folded = moments(*steps)
    return explanations(folded, index % len(folded), grade=grade, followed=followed)


def texts(*steps, **asked):
    return [str(explanation.claim) for explanation in told(*steps, **asked)]


@settings(max_examples=40, deadline=None)
@given(foldings)
def test_every_sentence_is_true(steps):
    for explanation in told(*steps):
        assert check_claim(str(explanation.claim)).true, explanation.claim
        if explanation.of:
            assert check_claim(str(explanation.of)).true, explanation.of


@settings(max_examples=40, deadline=None)
@given(foldings)
def test_no_sentence_comes_twice_in_another_order_or_other_terms(steps):
    forms = [form(reduced(read_claim(text))) for text in texts(*steps)]
    assert len(forms) == len(set(forms))


def test_the_third_halving_shows_its_count_first_and_its_size_second():
    assert texts(*EIGHTHS)[:2] == ["4 × 2 = 8", "1/4 × 1/2 = 1/8"]


@pytest.mark.parametrize(
    ("family", "text"),
    [
        (Family.WHOLE, "8 × 1/8 = 1"),
        (Family.EQUIVALENT, "3/4 = 6/8"),
        (Family.PRODUCT, "1/2 × 1/2 × 1/2 = 1/8"),
        (Family.PRODUCT, "2 × 1/8 = 1/4"),
        (Family.COMPARISON, "1/4 × 1/2 < 1/4"),
        (Family.SUM, "1/8 + 1/8 = 1/4"),
        (Family.QUOTIENT, "1/4 ÷ 2 = 1/8"),
        (Family.QUOTIENT, "1 ÷ 1/8 = 8"),
        (Family.POWER, "(1/2)³ = 1/8"),
        (Family.POWER, "2³ = 8"),
    ],
)
def test_the_third_halving_shows_a_sentence_of_every_kind(family, text):
    assert (family, text) in [(explanation.family, str(explanation.claim)) for explanation in told(*EIGHTHS)]


@settings(max_examples=30, deadline=None)
@given(st.integers(2, 12), st.integers(2, 12))
def test_three_things_make_every_product_and_quotient_whose_things_meet(panels, parts):
    """Ratios carry their two things; x × y = z is tried for all of them, and so is z ÷ x = y."""
    sizes = {"sheet": exact(1), "panel": exact(1, panels), "part": exact(1, panels * parts)}
    ratios = [(of, to, sizes[of] / sizes[to]) for of, to in product(sizes, repeat=2)]
    wanted = set()
    for (a, b, x), (c, d, y), (e, f, z) in product(ratios, repeat=3):
        if b == c and (a, d) == (e, f) and a != b and c != d:
            assert x * y == z
            wanted |= {("×", *sorted((x, y)), z), ("÷", z, x, y), ("÷", z, y, x)}
    found = set()
    for sentence in sentences_between(Nested(sizes["panel"], sizes["part"], counted=True)):
        worked, answer = sentence.claim.sides
        pair = [worked.left.value, worked.right.value]
        found.add((worked.sign.value, *(sorted(pair) if worked.sign.value == "×" else pair), answer.value))
    assert found == wanted


def test_unequal_panels_are_not_counted_into_the_sheet():
    assert "12 × 1/12 = 1" not in texts(*UNEQUAL)
    assert "1/12 + 1/4 = 1/3" in texts(*UNEQUAL)
    assert "1 × 1/12 + 1 × 1/6 + 1 × 1/4 + 1 × 1/2 = 1" in texts(*UNEQUAL)


def test_fractions_that_tell_no_size_are_in_no_sentence():
    """Of letter paper the fold makes 1/8, 773/4624, 1539/4624 and 3/8 [computed]; halvings stay."""
    slanted = texts("fold along (0, 0) (1, 1) moving (0, 1)", "fold left edge to right edge")
    assert "1/2 × 1/4 = 1/8" in slanted
    assert not [text for text in slanted if "4624" in text or "2312" in text]
    assert texts(*["fold left edge to right edge"] * 8)[:2] == ["128 × 2 = 256", "1/128 × 1/2 = 1/256"]


def test_crossing_shadings_show_a_product_and_the_division_that_undoes_it():
    assert {"2/3 × 4/5 = 8/15", "2 × 4 = 8", "3 × 5 = 15", "8/15 ÷ 4/5 = 2/3", "2/3 = 10/15"} <= set(
        texts(*SHADED)
    )


def test_a_shaded_part_of_more_panels_than_it_needs_has_two_names():
    steps = ("pleat width into 4", "pleat height into 3", "open", "shade 1 of 2 across", "shade 1 of 3 up")
    assert "1/6 = 2/12" in texts(*steps)


@pytest.mark.parametrize("step", ["turn over", "shade 2 of 3 across", "pleat width into 3"])
def test_a_step_that_cuts_nothing_says_nothing_of_cutting(step):
    families = {explanation.family for explanation in told("pleat width into 3", "open", step)}
    assert not {Family.COUNT, Family.QUOTIENT, Family.POWER} & families


@pytest.mark.parametrize(("grade", "code"), [(3, "3.NF.A.3"), (5, "5.NF.B.4"), (6, "6.EE.A.1")])
def test_after_count_and_size_the_grades_own_sentences_come_first(grade, code):
    standards = [explanation.standard for explanation in told(*EIGHTHS, grade=grade)[2:]]
    own = [standard for standard in standards if standard and standard.grade == grade]
    assert own == standards[: len(own)]
    assert code in {standard.code for standard in own}


def test_sentences_of_later_grades_come_last():
    grades = [one.standard.grade if one.standard else 0 for one in told(*EIGHTHS, grade=4)[2:]]
    later = [grade > 4 for grade in grades]
    assert any(later)
    assert later == sorted(later)
