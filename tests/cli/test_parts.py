"""``parts`` tells the ways to fold equal parts in short, and writes one page that shows them."""

import re

import pytest
from page_reading import text_of

from foldmath.cli.doors.parts import tell_parts
from foldmath.errors import Unreadable
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import exact
from foldmath.planning.parts.equal_parts import ways
from foldmath.planning.parts.ways_in_words import in_words
from foldmath.words.languages import DEFAULT

LETTER = ("letter", "landscape", "width", "1 mm")


def said_of(parts, paper, orientation, axis, wanted_mm=1):
    """Give what is told of one sheet, without its page."""
    folded = sheet(paper_named(paper), orientation)
    return in_words(ways(folded, parts, axis, exact(wanted_mm)), paper, folded, DEFAULT)


def test_the_ways_are_told_and_one_page_is_written_by_the_name_of_the_parts(tmp_path, capsys):
    assert tell_parts(5, *LETTER, str(tmp_path)) == 0
    said = capsys.readouterr().out
    page = tmp_path / "fifths.pdf"
    assert said == f"{said_of(5, 'letter', 'landscape', Axis.WIDTH)}\n\nwrote {page}\n"
    assert list(tmp_path.iterdir()) == [page]
    assert text_of(page)[0].startswith("Fifths of the width: two creases that cross")


def test_exact_ways_are_told_in_the_step_language_or_by_what_moved_with_their_landmarks():
    said = said_of(5, "letter", "landscape", Axis.WIDTH)
    assert said.startswith(
        "5 equal parts of the width of letter paper, 11 by 8 1/2 in: one part is 2 1/5 in (55.9 mm)\n"
    )
    assert "    1.  fold the bottom edge to the top edge, open the sheet\n" in said
    assert "    5.  the slanted creases cross at 1/5 of the width\n" in said
    assert "    6.  fold the right edge to 1/5 of the width\n" in said
    assert "    7.  fold the right edge to the same place again, open the sheet\n" in said
    assert "creases exactly at 1/5, 2/5, 3/5, 4/5 of the width\n" in said
    assert "cut along the straight crease; the square is 8 1/2 in wide\n" in said
    assert "    1.  fold the left edge onto the bottom edge\n" in said
    assert "    2.  fold the other part behind, along the moved edge, open the sheet\n" in said
    assert "    7.  fold the top right corner over the moved edge, open the sheet\n" in said
    assert "the new crease meets the top edge at 3/5 of the width of the square\n" in said
    assert said.endswith("creases exactly at 1/5, 2/5, 3/5, 4/5 of the width of the square")


def test_of_ten_parts_a_fifth_is_guessed_and_is_not_called_one_part():
    said = said_of(10, "letter", "landscape", Axis.WIDTH)
    assert "guess 1/5 from the left edge" in said
    assert "a guess of 1/5 is taken to be off by at most a quarter of that: 14 mm\n" in said


def test_the_rounds_that_a_guess_needs_are_told_with_the_error_after_each():
    said = said_of(3, "letter", "landscape", Axis.WIDTH)
    assert "steps 2 to 3 are one round, and divide the error by 4\n" in said
    # 279.4 mm in thirds: a quarter of a third is 23.28 mm, then 5.82, 1.46 and 0.36.
    assert "a guess of 1/3 is taken to be off by at most a quarter of that: 23.3 mm\n" in said
    rounds = [line.strip() for line in said.splitlines() if line.strip().startswith("after round")]
    assert rounds == [
        "after round 1: at most 5.9 mm",
        "after round 2: at most 1.5 mm",
        "after round 3: at most 0.4 mm",
    ]
    assert "rounds needed for 1 mm: 3\n" in said


def test_lengths_in_millimetres_are_told_once():
    said = said_of(3, "A4", "portrait", Axis.HEIGHT, 5)
    assert "one part is 99 mm\n" in said
    assert "rounds needed for 5 mm: 2\n" in said


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_no_way_names_a_place_that_no_hand_finds(paper):
    for parts in range(3, 13):
        for axis, orientation in ((Axis.WIDTH, "landscape"), (Axis.HEIGHT, "portrait")):
            said = said_of(parts, paper, orientation, axis)
            assert not re.search(r"\(\d[^)]*, |/\d{3}", said), said


def test_powers_of_two_are_told_as_halvings_alone():
    said = said_of(8, "letter", "portrait", Axis.HEIGHT)
    assert "\n1. in half, and in half again: exact, on any sheet\n" in said
    assert "\n2. " not in said


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((2, *LETTER), "foldmath parts 3"),
        ((13, *LETTER), "foldmath parts 12"),
        ((5, "leter", "landscape", "width", "1 mm"), "letter"),
        ((5, "letter", "sideways", "width", "1 mm"), "--orientation landscape"),
        ((5, "letter", "landscape", "depth", "1 mm"), "--along width"),
        ((5, "letter", "landscape", "width", "near"), '--accuracy "1 mm"'),
        ((5, "letter", "landscape", "width", "1"), '--accuracy "1 mm"'),
        ((5, "letter", "landscape", "width", "0 mm"), '--accuracy "1 mm"'),
        ((5, "letter", "landscape", "width", "-2 mm"), '--accuracy "1 mm"'),
        ((5, "letter", "landscape", "width", "0.01 mm"), "nobody folds finer"),
    ],
)
def test_words_that_cannot_be_read_are_told_with_what_works_and_nothing_is_written(words, told, tmp_path):
    with pytest.raises(Unreadable) as refusal:
        tell_parts(*words, str(tmp_path))
    assert told in str(refusal.value)
    assert list(tmp_path.iterdir()) == []
