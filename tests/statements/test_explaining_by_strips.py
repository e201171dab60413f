"""What ``explain`` says of a step is true of paper folded as strips, and by Python's own arithmetic.

Neither the folding nor the reading here shares code with what explains.
"""

import operator
import re
from fractions import Fraction

import pytest
from folded_strips import Strips
from hypothesis import given, settings
from hypothesis import strategies as st
from lessons_in_words import FOLDS, moments

from foldmath.lesson.grammar.step_parser import step_in
from foldmath.statements.explaining import Family, explanations
from foldmath.statements.standards import Followed

FOLDS_BEHIND_TOO = (*FOLDS, "fold at 1/3 moving right, behind")
foldings = st.lists(st.sampled_from(FOLDS_BEHIND_TOO), min_size=1, max_size=3)

NUMBER = re.compile(r"(?:(\d+) )?(\d+)(?:/(\d+))?([⁰¹²³⁴-⁹]*)")
SIGNS = {"+": operator.add, "−": operator.sub, "×": operator.mul, "÷": operator.truediv}
COMPARED = {"=": operator.eq, "<": operator.lt, ">": operator.gt}
RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def value_of(side: str) -> Fraction:
    """Work out numbers and signs: what is multiplied or divided first, all from left to right."""
    side = re.sub(r"\((\d+/\d+)\)", r"\1", side)
    numbers = [value(found) for found in NUMBER.finditer(side)]
    signs = [sign for sign in NUMBER.sub("", side) if sign in SIGNS]
    assert len(numbers) == len(signs) + 1, side
    for tight in ("×÷", "+−"):
        while any(sign in tight for sign in signs):
            at = next(place for place, sign in enumerate(signs) if sign in tight)
            numbers[at : at + 2] = [SIGNS[signs.pop(at)](numbers[at], numbers[at + 1])]
    return numbers[0]


def value(found: re.Match[str]) -> Fraction:
    wholes, above, below, raised = found.groups()
    return (int(wholes or 0) + Fraction(int(above), int(below or 1))) ** int(raised.translate(RAISED) or 1)


def holds(sentence: str) -> bool:
    """Tell whether a sentence with one or more signs between its sides is true."""
    parts = re.split(r" ([=<>]) ", sentence)
    values = [value_of(side) for side in parts[::2]]
    return all(
        COMPARED[sign](left, right)
        for left, sign, right in zip(values, parts[1::2], values[1:], strict=False)
    )


@pytest.mark.parametrize(
    ("sentence", "true"),
    [
        ("1/2 + 1/2 × 1/4 = 5/8", True),
        ("(1/2)³ = 1/8", True),
        ("1/4 ÷ 2 = 1/8", True),
        ("1 1/2 × 2 = 3", True),
        ("2³ = 6", False),
        ("1/4 × 1/2 > 1/4", False),
    ],
)
def test_sentences_are_worked_out_as_schools_do(sentence, true):
    assert holds(sentence) is true


@settings(max_examples=40, deadline=None)
@given(foldings)
def test_all_that_is_told_is_true_by_pythons_fractions(steps):
    folded = moments(*steps)
    for told in explanations(folded, len(folded) - 1, grade=5, followed=Followed.CCSS):
        assert holds(str(told.claim)), told.claim
        if told.of:
            assert holds(str(told.of).replace(" of ", " × ")), told.of


@settings(max_examples=40, deadline=None)
@given(foldings)
def test_counts_and_sizes_are_those_of_paper_folded_as_strips(steps):
    strips = Strips()
    for step in steps[:-1]:
        strips.do(step_in(step))
    before = strips.areas()
    strips.do(step_in(steps[-1]))
    after = strips.areas()
    folded = moments(*steps)
    told = explanations(folded, len(folded) - 1, grade=5, followed=Followed.CCSS)
    assert bool(told) == (len(after) > len(before))
    counts = [str(one.claim) for one in told if one.family is Family.COUNT]
    sizes = [str(one.claim) for one in told if one.family is Family.SIZE]
    alike = len(set(before)) == len(set(after)) == 1
    if alike and told:
        assert counts == [f"{len(before)} × {len(after) // len(before)} = {len(after)}"]
        assert sizes, "one size is the product of the size before and the part that the fold cuts off"
    for size in sizes:
        left, right = size.split(" = ")
        assert value_of(right) in after
        assert value_of(left.split(" × ")[0]) in before


@settings(max_examples=40, deadline=None)
@given(foldings)
def test_whole_sheets_are_made_of_all_panels(steps):
    strips = Strips()
    for step in steps:
        strips.do(step_in(step))
    assert sum(strips.areas()) == 1
    folded = moments(*steps)
    for told in explanations(folded, len(folded) - 1, grade=5, followed=Followed.CCSS):
        if told.family is Family.WHOLE:
            left = str(told.claim).split(" = ")[0]
            counted = sorted(value_of(side) for side in re.split(r" \+ ", left))
            sizes = strips.areas()
            assert counted == sorted(size * sizes.count(size) for size in set(sizes)), told.claim
