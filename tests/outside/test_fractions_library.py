"""Exact arithmetic agrees with Python's own ``fractions`` module.

Source: docs.python.org/3/library/fractions.html.
"""

from fractions import Fraction
from typing import NamedTuple

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from foldmath.plane.numbers import denominator, exact, numerator, written
from foldmath.statements.checking.claims import check_claim, verdict_json


class Worked(NamedTuple):
    """A side of a claim, with its value worked out by the library; ``None`` where it divides by zero."""

    text: str
    value: Fraction | None


def _joined(left: Worked, sign: str, right: Worked) -> Worked:
    text = f"({left.text}) {sign} ({right.text})"
    if left.value is None or right.value is None or (sign == "÷" and right.value == 0):
        return Worked(text, None)
    return Worked(
        text,
        {
            "+": lambda a, b: a + b,
            "−": lambda a, b: a - b,
            "×": lambda a, b: a * b,
            "of": lambda a, b: a * b,
            "÷": lambda a, b: a / b,
        }[sign](left.value, right.value),
    )


whole_numbers = st.integers(0, 99).map(lambda n: Worked(str(n), Fraction(n)))
fractions = st.builds(lambda a, b: Worked(f"{a}/{b}", Fraction(a, b)), st.integers(0, 99), st.integers(1, 99))
mixed_numbers = st.builds(
    lambda w, a, b: Worked(f"{w} {a}/{b}", w + Fraction(a, b)),
    st.integers(0, 9),
    st.integers(0, 9),
    st.integers(1, 9),
)
decimals = st.builds(
    lambda w, d: Worked(f"{w}.{d:02}", Fraction(f"{w}.{d:02}")), st.integers(0, 9), st.integers(0, 99)
)
sides = st.recursive(
    st.one_of(whole_numbers, fractions, mixed_numbers, decimals),
    lambda inner: st.builds(_joined, inner, st.sampled_from(["+", "−", "×", "÷", "of"]), inner),
    max_leaves=6,
)


@settings(max_examples=200, deadline=None)
@given(sides, sides)
def test_a_claim_is_worked_out_as_the_library_works_it_out(left, right):
    assume(left.value is not None and right.value is not None)
    verdict = check_claim(f"{left.text} = {right.text}")
    assert verdict.true is (left.value == right.value)
    assert verdict_json(verdict)["left"] == str(left.value)
    assert verdict_json(verdict)["right"] == str(right.value)


@settings(max_examples=200, deadline=None)
@given(sides, sides)
def test_sides_are_compared_as_the_library_compares_them(left, right):
    assume(left.value is not None and right.value is not None)
    assert check_claim(f"{left.text} < {right.text}").true is (left.value < right.value)
    assert check_claim(f"{left.text} ≥ {right.text}").true is (left.value >= right.value)


@settings(max_examples=200, deadline=None)
@given(st.integers(-(10**30), 10**30), st.integers(1, 10**30))
def test_lowest_terms_are_the_librarys(above, below):
    number, theirs = exact(above, below), Fraction(above, below)
    assert (numerator(number), denominator(number)) == (theirs.numerator, theirs.denominator)
    assert written(number) == str(theirs)
