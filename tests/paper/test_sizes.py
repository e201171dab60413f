"""A sheet of paper has an exact size, by name or by measure."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.paper.lengths import Length, NumberRefused, read_length, read_number
from foldmath.paper.sizes import (
    PaperRefused,
    all_papers,
    nearest_names,
    paper_measured,
    paper_named,
    papers_to_choose_from,
    sheet,
)
from foldmath.paper.state import Sheet
from foldmath.plane.numbers import exact


@pytest.mark.parametrize(
    "spelling", ["letter", "Letter", " LETTER ", "us-letter", "ANSI A", "ansi_a", "U.S. letter"]
)
def test_a_paper_has_one_size_however_its_name_is_spelt(spelling):
    size = paper_named(spelling)
    assert (size.name, size.width, size.height, size.unit) == ("letter", exact(17, 2), exact(11), "in")


def test_tabloid_and_ledger_are_the_same_sheet_turned():
    assert paper_named("tabloid") == paper_named("ledger")


def test_every_paper_stands_on_its_narrow_side_and_is_found_by_its_own_name():
    papers = all_papers()
    assert len(papers) == len({paper.name for paper in papers}) > 40
    for paper in papers:
        assert paper.width <= paper.height
        assert paper_named(paper.name) == paper
        assert paper.series


def test_the_two_orientations_are_one_sheet_turned():
    size = paper_named("A4")
    assert sheet(size, "portrait") == Sheet(exact(210), exact(297), "mm")
    assert sheet(size, "landscape") == Sheet(exact(297), exact(210), "mm")


@pytest.mark.parametrize(
    ("wrong", "right"), [("leter", "letter"), ("legl", "legal"), ("archb1", "Arch B"), ("A44", "A4")]
)
def test_a_misspelt_name_is_answered_by_the_nearest(wrong, right):
    with pytest.raises(PaperRefused) as caught:
        paper_named(wrong)
    assert wrong in str(caught.value.message)
    assert right in str(caught.value.hint)
    assert right in nearest_names(wrong)


@pytest.mark.parametrize(
    "text", ["8.5 in", "8 1/2 in", "17/2 in", "8½ in", '8.5"', "8.50inches", "17 / 2 inch"]
)
def test_a_length_is_the_same_however_it_is_written(text):
    assert read_length(text) == Length(exact(17, 2), "in")


@pytest.mark.parametrize(
    ("spanish", "english"),
    [
        ("8 1/2 pulgadas", "8 1/2 in"),
        ("1 pulgada", "1 in"),
        ("8.5 pulg", "8.5 in"),
        ("8.5 pulg.", "8.5 in"),
        ("21.5 centímetros", "21.5 cm"),
        ("21,5 centímetros", "21.5 cm"),
        ("0,25 pulg", "0.25 in"),
        ("1 milímetro", "1 mm"),
    ],
)
def test_a_length_is_read_in_spanish_too(spanish, english):
    assert read_length(spanish) == read_length(english)


def test_an_inch_is_two_centimetres_and_fifty_four_hundredths_exactly():
    assert read_length("1 in").in_millimetres == read_length("2.54 cm").in_millimetres == exact(127, 5)


@given(st.integers(0, 10**6), st.integers(0, 5))
def test_a_decimal_is_read_exactly(digits, places):
    whole, rest = divmod(digits, 10**places)
    text = f"{whole}.{rest:0{places}d}" if places else str(whole)
    assert read_number(text) == exact(digits, 10**places)


@pytest.mark.parametrize(
    "text", ["", "in", "8.5", "8.5 ft", "1,000 mm", "1e3 in", "8/0 in", "0x10 in", "nan in", "9" * 99 + "in"]
)
def test_what_is_no_length_is_refused(text):
    with pytest.raises(NumberRefused):
        read_length(text)


def test_a_measured_sheet_keeps_its_unit_unless_its_sides_have_two():
    assert paper_measured(read_length("24 in"), read_length("32 in")).unit == "in"
    mixed = paper_measured(read_length("1 in"), read_length("2 cm"))
    assert (mixed.unit, mixed.width, mixed.height) == ("mm", exact(20), exact(127, 5))


@pytest.mark.parametrize(
    ("shortest", "refused"), [("5 mm", False), ("4.9 mm", True), ("5000 mm", False), ("5001 mm", True)]
)
def test_a_side_is_from_five_millimetres_to_five_metres(shortest, refused):
    sides = read_length(shortest), read_length("20 cm")
    if refused:
        with pytest.raises(PaperRefused):
            paper_measured(*sides)
    else:
        assert paper_measured(*sides).unit == "mm"


def test_paper_of_schools_stands_first_where_one_is_chosen_and_none_is_left_out():
    offered = papers_to_choose_from()
    assert [paper.name for paper in offered[:4]] == ["letter", "A4", "tabloid", "A3"]
    assert len(offered) == len(set(offered)) == len(all_papers())
