"""Reading a sentence of arithmetic as teachers write it, and saying what stands in the way."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.plane.numbers import written
from foldmath.statements.checking.claims import read_claim
from foldmath.statements.claim_grammar import parse
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Negative,
    Operation,
    Power,
    Sign,
    value,
)
from foldmath.statements.ratios import Ratio, fraction, mixed_number, whole_number
from foldmath.statements.refusals import SentenceRefused


@pytest.mark.parametrize(
    ("typed", "proper"),
    [
        ("4 x 1/2=2", "4 × 1/2 = 2"),
        ("4 * ½ = 2", "4 × 1/2 = 2"),
        ("4·⅔ - 1 = 5/3", "4 × 2/3 − 1 = 5/3"),
        ("1½ of ⅔ = 1", "1 1/2 of 2/3 = 1"),
        ("1 ½ × 2 / 3 = 1", "1 1/2 × 2/3 = 1"),
        ("3 ÷ 4 >= 3/4", "3 ÷ 4 ≥ 3/4"),
        ("1⁄2 != 1/3", "1/2 ≠ 1/3"),
        ("((1/2)) <= (2/3) x (4)", "1/2 ≤ 2/3 × 4"),
        ("(1x1)/(2x3) = 1/6", "(1 × 1)/(2 × 3) = 1/6"),
        ("-1/2 + 1 = 1/2", "−1/2 + 1 = 1/2"),
        ("1 – (2 − 3) = 2", "1 − (2 − 3) = 2"),
        ("3/8 = 0.375", "3/8 = 0.375"),
        ("2^3 = 8", "2³ = 8"),
        ("(1/2) ^ 10 < 1", "(1/2)¹⁰ < 1"),
        ("(2 x 3)² = 36", "(2 × 3)² = 36"),
        ("2/4 OF 4/4 = 2/4", "2/4 of 4/4 = 2/4"),
        ("4 × 2 = 8 panels", "4 × 2 = 8"),
        ("1 × 1 = 1 panel", "1 × 1 = 1"),
        ("1/4 × 1/2 = 1/8 of the sheet", "1/4 × 1/2 = 1/8"),
        ("1/2 of ¼ = ⅛ of the sheet ", "1/2 of 1/4 = 1/8"),
        ("8 × 1/8 = 1 whole", "8 × 1/8 = 1"),
        ("4 × 2 = 8 partes", "4 × 2 = 8"),
        ("1/2 de 1/4 = 1/8 de la hoja", "1/2 of 1/4 = 1/8"),
        ("8 × 1/8 = 1 entero", "8 × 1/8 = 1"),
    ],
)
def test_every_way_to_type_a_sentence_is_written_with_the_trades_signs(typed, proper):
    assert str(read_claim(typed)) == proper


@pytest.mark.parametrize(
    ("side", "worth"),
    [
        ("1 + 2 × 3", "7"),
        ("(1 + 2) × 3", "9"),
        ("8 − 4 − 2", "2"),
        ("8 ÷ 4 ÷ 2", "1"),
        ("8 ÷ 4 × 2", "4"),
        ("1 ÷ 1/2 of 1/4", "8"),
        ("1 ÷ 1/2 de 1/4", "8"),
        ("4 × 1/2 of 6", "12"),
        ("−1/2 × 4", "-2"),
        ("2 × (−3)", "-6"),
        ("(1/2)/(3/4)", "2/3"),
        ("2 1/4 × 2", "9/2"),
        ("2 × 3²", "18"),
        ("−2² ÷ 8", "-1/2"),
        ("(2/3)³", "8/27"),
        ("7⁰", "1"),
    ],
)
def test_of_binds_tighter_than_times_and_times_tighter_than_plus(side, worth):
    assert written(value(parse(side).sides[0])) == worth


REFUSED = [
    ("", 1, "no sentence", "4 × 2 = 8"),
    ("   ", 1, "no sentence", "4 × 2 = 8"),
    ("4 × 1/2", 8, "compares nothing", "4 × 1/2 = 2"),
    ("8", 2, "compares nothing", "4 × 2 = 8"),
    ("4 × = 2", 5, "number is missing", "4 > 2"),
    ("= 2", 1, "number is missing", "4 × 2 = 8"),
    ("5 = 5 =", 8, "stops where a number", "5 = 5"),
    ("(1/2 × 1/4 = 1/8", 1, "not closed", "1/2 × 1/4 = 1/8"),
    ("2 × (1/2 + 1/4 = 3/2", 5, "not closed", "2 × (1/2 + 1/4) = 3/2"),
    ("1/2) × 4 = 2", 4, "never opened", "1/2 × 4 = 2"),
    ("2 3 = 6", 3, "sign is missing", "2 × 3 = 6"),
    ("(2/3)(4/5) = 8/15", 6, "sign is missing", "2/3 × 4/5 = 8/15"),
    ("1/2/3 = 1/6", 4, "second bar", "1/2 ÷ 3 = 1/6"),
    ("4 : 2 = 2", 3, "not arithmetic I can read", "4 ÷ 2 = 2"),
    ("4 × -1/2 = -2", 5, "number is missing", "4 × (−1/2) = −2"),
    ("1/2^3 = 1/8", 4, "a power stands after", "(1/2)³ = 1/8"),
    ("½² = 1/4", 2, "a power stands after", "(1/2)² = 1/4"),
    ("2^2^2 = 16", 4, "a power stands after", "2² ÷ 2 = 2"),
    ("(2²)² = 16", 5, "a power of a power", "(1/2)⁶"),
    ("2^13 = 8192", 2, "at most 12", "a smaller exponent"),
    ("0⁰ = 1", 2, "has no value", "a larger exponent"),
    ("1,000 × 2 = 2,000", 2, "not arithmetic I can read", "1000 × 2 = 2000"),
    ("10,000,000 × 2 = 20,000,000", 3, "not arithmetic I can read", "10000000 × 2 = 20000000"),
    ("1,5 × 2 = 3", 2, "not arithmetic I can read", "1.5 × 2 = 3"),
    ("0,125 × 8 = 1", 2, "not arithmetic I can read", "0.125 × 8 = 1"),
    ("1,2500 × 4 = 5", 2, "not arithmetic I can read", "1.2500 × 4 = 5"),
    ("4 == 4", 4, "number is missing", "4 = 4"),
    ("[1 + 2] × 3 = 9", 1, "not arithmetic I can read", "(1 + 2) × 3 = 9"),
    ("4 times a half equals 2", 3, "not arithmetic I can read", "4 × 1/2 = 2"),
    ("1/2 off 1/4 = 1/8", 5, "not arithmetic I can read", "1/2 of 1/4 = 1/8"),
    ("3 times 4 is 13", 3, "not arithmetic I can read", "3 × 4 = 12"),
    ("half of 8 is 5", 1, "not arithmetic I can read", "1/2 of 8 = 4"),
    ("50% = 1/2", 3, "not arithmetic I can read", "50/100 = 1/2"),
    ("1/2 of 1/4 = 1/8, so 1/4 × 1/2 = 1/8", 17, "not arithmetic I can read", "1/2 of 1/4 = 1/8"),
    ("4 panels × 2 = 8 panels", 3, "not arithmetic I can read", "4 × 2 = 8"),
    ("8 panels = 4 × 2", 3, "not arithmetic I can read", "8 = 4 × 2"),
    ("4 × 2 = 8 sheets", 11, "not arithmetic I can read", "4 × 2 = 8"),
    ("4 × 2 = 8 panels of the sheet", 11, "not arithmetic I can read", "4 × 2 = 8"),
    ("1/4 × 1/2 = 1/8 panels", 17, "panels are counted, so a whole number", "1/4 × 1/2 = 1/8"),
    ("4 × 2 = 8 of the sheet", 11, "a size is a part of the sheet, so a fraction", "4 × 2 = 8"),
    ("4 × 2 = 8 whole", 11, "only 1 stands before this", "4 × 2 = 8"),
    ("a × b = c", 1, "not arithmetic I can read", "4 × 2 = 8"),
    ("1/0 = 1", 1, "cannot be 0", "a number that is not 0, such as 1/2 or 2"),
    ("2 = 1 0/0", 5, "cannot be 0", "a number that is not 0, such as 1/2 or 2"),
    ("3 ÷ 0 = 0", 3, "column 3: nothing can be divided by 0", "a number that is not 0, such as 1/2 or 2"),
    ("1 ÷ (1/2 − 2/4) = 0", 3, "1/2 − 2/4 is 0", "a number that is not 0, such as 1/2 or 2"),
    ("1/(1 − 1) = 0", 2, "divided by 0", "a number that is not 0, such as 1/2 or 2"),
]


@pytest.mark.parametrize(("text", "column", "message", "hint"), REFUSED)
def test_a_sentence_that_cannot_be_read_is_refused_with_its_place_and_the_nearest_one(
    text, column, message, hint
):
    with pytest.raises(SentenceRefused, match=message) as refusal:
        read_claim(text)
    assert (refusal.value.column, str(refusal.value.hint)) == (column, hint)
    assert refusal.value.exit_code == 2
    assert str(refusal.value).startswith(f"column {column}: ")


ratios = st.one_of(
    st.builds(whole_number, st.integers(0, 999)),
    st.builds(fraction, st.integers(0, 99), st.integers(1, 99)),
    st.builds(mixed_number, st.integers(1, 9), st.integers(0, 9), st.integers(1, 9)),
)


def joined(sign: Sign, left: Expression, right: Expression) -> Expression:
    """Join two expressions; a bar between whole numbers makes a fraction, so ÷ stands there."""
    bare = all(isinstance(side, Ratio) and side.whole for side in (left, right))
    return Operation(Sign.DIVIDE if bare and sign is Sign.BAR else sign, left, right)


expressions = st.recursive(
    ratios,
    lambda inner: st.one_of(
        st.builds(joined, st.sampled_from(Sign), inner, inner),
        st.builds(Negative, inner),
        st.builds(Power, inner.filter(lambda base: not isinstance(base, Power)), st.integers(1, 3)),
    ),
    max_leaves=6,
)


@settings(max_examples=100, deadline=None)
@given(expressions, st.sampled_from(Comparison), expressions)
def test_a_sentence_written_out_is_read_as_it_was(left, comparison, right):
    claim = Claim((left, right), (comparison,))
    try:
        values = [value(left), value(right)]
    except ZeroDivisionError:
        with pytest.raises(SentenceRefused, match="0"):
            read_claim(str(claim))
    else:
        again = read_claim(str(claim))
        assert again == claim
        assert [value(side) for side in again.sides] == values
