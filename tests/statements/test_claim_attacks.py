"""What is no arithmetic never runs, never hangs and never shows a traceback: it is refused in one message."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from foldmath.statements.checking.claims import Verdict, check_claim
from foldmath.statements.claim_grammar import MOST_DEPTH, MOST_DIGITS, MOST_NUMBERS, MOST_SIGNS
from foldmath.statements.products import parse_product
from foldmath.statements.refusals import SentenceRefused


@pytest.mark.parametrize(
    "text",
    [
        "__import__('os').system('touch broken') = 0",
        "exec('1') = 1",
        "(lambda: 1)() = 1",
        "1 = 1; import os",
        "2**9**9**9**9 = 1",
        "1e999999999 = 1",
        "9!!!!! = 1",
        "{{ 7 * 7 }} = 49%s%n",
        "\x00",
        "4 × 2 = 8\x00",
        "4 × 2\u202e = 8",
        "\ud800 = 1",
        "😀 × 2 = 😀😀",
        "٣ × ٢ = ٦",
        "(" * 10_000 + "1" + ")" * 10_000 + " = 1",
        "(" * 10_000,
        ")" * 10_000,
        "=" * 10_000,
        "-" * 10_000 + "1 = 1",
        "1" * 5_000 + " = 1",
        "1/" + "9" * 5_000 + " = 1",
        "1 + " * 100_000 + "1 = 1",
        "½" * 1_000 + " = 1",
        "x" * 1_000_000,
        "<script>alert(1)</script> = 1",
        "../../../etc/passwd = 1",
        "NaN = NaN",
        "∞ = ∞",
    ],
)
def test_it_is_refused_in_one_short_message(text):
    for read in (check_claim, parse_product):
        with pytest.raises(SentenceRefused) as refusal:
            read(text)
        said = str(refusal.value)
        assert said.startswith("column ")
        assert len(said) < 400
        assert all(line.isprintable() for line in said.split("\n"))


def test_limits_are_met_exactly():
    assert check_claim("(" * MOST_DEPTH + "1" + ")" * MOST_DEPTH + " = 1").true
    assert check_claim(f"{'9' * MOST_DIGITS} = {'9' * MOST_DIGITS}").true
    assert check_claim(" + ".join(["1"] * (MOST_NUMBERS - 1)) + f" = {MOST_NUMBERS - 1}").true
    assert check_claim("1 = 1".ljust(MOST_SIGNS)).true


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("(" * (MOST_DEPTH + 1) + "1" + ")" * (MOST_DEPTH + 1) + " = 1", "12 deep"),
        (f"{'9' * (MOST_DIGITS + 1)} = 1", "at most 12 digits, and this one has 13"),
        (" + ".join(["1"] * MOST_NUMBERS) + " = 1", "at most 24 numbers"),
        ("1 = 1".ljust(MOST_SIGNS + 1), "at most 300 characters"),
    ],
)
def test_past_a_limit_the_limit_is_named(text, message):
    with pytest.raises(SentenceRefused, match=message):
        check_claim(text)


def verdict_or_refusal(text: str) -> Verdict | SentenceRefused:
    try:
        return check_claim(text)
    except SentenceRefused as refusal:
        return refusal


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(max_size=40), st.text("0123456789/ ½×x÷+-−of=<>≤().,:", max_size=30)))
@example("1 1/2/3=")
@example("x=x")
def test_any_text_is_either_read_or_refused(text):
    outcome = verdict_or_refusal(text)
    if isinstance(outcome, SentenceRefused):
        assert 1 <= outcome.column <= len(text) + 1
    else:
        assert all(check_claim(str(sentence)).true for sentence in (outcome.really, *outcome.meant))
