"""Number words against lists from outside.

Sources:
    Letters: OEIS A005589, the number of letters in the US English name of n, without spaces and hyphens
    (from memory: its first terms, and 100 has ten letters, "one hundred").
    Expanded form: Common Core State Standards for Mathematics (2010), 2.NBT.A.1 and A.3: 706 equals
    7 hundreds, 0 tens and 6 ones; read and write numbers by numerals, number names and expanded form.
    Blocks: ten ones make a ten, ten tens a hundred (2.NBT.A.1), so areas are as 1, 10 and 100.
"""

import pytest

from foldmath.drawing.place_value import blocks, pieces_of
from foldmath.drawing.scenes import Meaning, Stroke
from foldmath.words.number_forms import expanded_form, in_words

LETTERS = [4, 3, 3, 5, 4, 4, 3, 5, 5, 4, 3, 6, 6, 8, 8, 7, 7, 9, 8, 8, 6, 9, 9, 11, 10, 10, 9, 11, 11, 10, 6]


@pytest.mark.parametrize(("value", "letters"), [*enumerate(LETTERS), (100, 10)])
def test_number_words_have_as_many_letters_as_the_list_says(value, letters):
    assert sum(sign.isalpha() for sign in in_words(value, "en-US")) == letters


def test_706_is_7_hundreds_0_tens_and_6_ones():
    assert expanded_form(706) == "700 + 6"
    assert [(piece.value, piece.count) for piece in pieces_of(706)] == [(100, 1)] * 7 + [(1, 6)]


def test_areas_of_drawn_blocks_are_as_their_values():
    scene = blocks(111, 60, 40)
    outlines = [mark for mark in scene.marks if isinstance(mark, Stroke) and mark.meaning is Meaning.GRID]
    areas = sorted(
        (max(x for x, _ in outline.spots) - min(x for x, _ in outline.spots))
        * (max(y for _, y in outline.spots) - min(y for _, y in outline.spots))
        for outline in outlines
    )
    assert [area / areas[0] for area in areas] == pytest.approx([1, 10, 100])
