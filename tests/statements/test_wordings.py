"""Words that a person wrote: their numbers become values, and nothing that was written is lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.statements.wordings import wording_of


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("Beans grow in 3/4 of 1/2 of it.", ["3/4", "1/2"]),
        ("It takes 1 1/2 kg, or 2½ kg, or ¾.", ["1 1/2", "2 1/2", "3/4"]),
        ("5 trays, 2.50 m each, at 10:05", ["5", "2.50", "10"]),
        ("1⁄2-inch planks", ["1/2"]),
        ("Cut 12/8 of it", ["12/8"]),
        # Parts of something longer are none.
        ("on 3/4/2026, in room 007, of 1,000 or 12345678, x2, 1/2x", []),
        # A denominator of 0 is no fraction, and no fraction is cut out of one.
        ("3/0", []),
        ("", []),
    ],
)
def test_numbers_are_those_that_stand_alone(text, numbers):
    assert [str(number) for number in wording_of(text).numbers] == numbers


@given(st.text("0123456789/ .,½x", max_size=20))
def test_words_without_single_signs_come_out_as_they_were_written(text):
    plain = text.replace("½", "a")
    spaced = " ".join(plain.split())
    assert str(wording_of(spaced)) == spaced


@given(st.text(max_size=40))
def test_any_words_can_be_read(text):
    wording_of(text)
