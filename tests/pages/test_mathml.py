"""Figures become stacked fractions, or boxes to write them in; words stay words."""

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.pages.markup.blocks import Box, Stack, Text
from foldmath.pages.markup.mathml import boxed, boxed_fraction, prose, stacked, worked
from foldmath.pages.markup.reading import blocks_of
from foldmath.statements.checking.claims import read_claim
from foldmath.statements.composing import equation, times
from foldmath.statements.ratios import decimal, fraction, mixed_number

COUNT = equation(times(4, 2), 8)


def runs(markup):
    (paragraph,) = blocks_of(f"<html><body><p>{markup}</p></body></html>")
    return paragraph.runs


def stack(above, below):
    return Stack((Text(above),), (Text(below),))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("fold at 1/3 moving left", (Text("fold at "), stack("1", "3"), Text(" moving left"))),
        ("11/2", (stack("11", "2"),)),
        ("1 1/5", (Text("1"), stack("1", "5"))),
        ("pleat width into 5", (Text("pleat width into 5"),)),
        ("(0, 1/2)", (Text("(0, "), stack("1", "2"), Text(")"))),
    ],
)
def test_every_fraction_of_a_text_is_stacked(text, expected):
    assert runs(prose(text)) == expected


def test_signs_keep_to_their_numbers():
    """A line never ends inside an equation."""
    assert runs(stacked(COUNT)) == (Text("4\u00a0×\u00a02\u00a0=\u00a08"),)
    assert [run.text for run in runs(boxed(COUNT)) if isinstance(run, Text)] == [
        "\u00a0×\u00a0",
        "\u00a0=\u00a0",
    ]


def test_every_number_is_boxed_with_its_answer():
    boxes = [run for run in runs(boxed(COUNT)) if isinstance(run, Box)]
    assert [box.answer for box in boxes] == ["4", "2", "8"]


def test_a_fraction_is_boxed_above_and_below_its_bar():
    first, of, second, equals, third = runs(boxed(read_claim("1/2 of 1/4 = 1/8")))
    assert first == Stack((Box("part", "1"),), (Box("part", "2"),))
    assert (of.text, equals.text) == (" of ", "\u00a0=\u00a0")
    assert (second.below, third.below) == ((Box("part", "4"),), (Box("part", "8"),))


def test_a_part_of_a_part_is_said_in_the_language_of_the_page():
    _, of, *_ = runs(boxed(read_claim("1/2 of 1/4 = 1/8"), language="es"))
    assert of.text == " de "
    assert Text(" de ") in runs(stacked(read_claim("1/2 of 1/4 = 1/8"), "es"))


def test_an_expression_above_a_bar_has_a_box_for_every_number():
    (whole,) = runs(boxed_fraction(times(2, 4), times(3, 5)))
    assert [run.answer for run in whole.above if isinstance(run, Box)] == ["2", "4"]
    assert [run.answer for run in whole.below if isinstance(run, Box)] == ["3", "5"]


@given(st.text(alphabet="<>&\"'/ab12 ×=", max_size=20))
def test_no_text_can_become_a_tag(text):
    root = ElementTree.fromstring(f"<p>{prose(text)}</p>")
    assert {element.tag for element in root.iter()} <= {"p", "math", "mfrac", "mn"}


def test_a_number_is_set_as_it_is_written():
    assert runs(stacked(mixed_number(1, 1, 5))) == (Text("1"), stack("1", "5"))
    assert runs(stacked(mixed_number(1, 3, 2))) == (Text("1"), stack("3", "2"))
    assert runs(stacked(fraction(2, 1))) == (stack("2", "1"),)
    assert runs(stacked(decimal("0.50"))) == (Text("0.50"),)
    whole, apart, part = runs(boxed(mixed_number(1, 1, 5)))
    assert (whole.answer, part.above, part.below) == ("1", (Box("part", "1"),), (Box("part", "5"),))
    assert apart == Text("\u00a0")


def test_brackets_powers_and_signs_of_comparing_stand_as_they_are_written():
    assert runs(stacked(read_claim("(1/2)³ < 1/4"))) == (
        Text("("),
        stack("1", "2"),
        Text(")³ < "),
        stack("1", "4"),
    )


def test_on_a_narrow_page_a_line_may_end_before_a_sign_and_never_after_it():
    signs = [run.text for run in runs(boxed(COUNT, gap=" ")) if isinstance(run, Text)]
    assert signs == [" ×\u00a0", " =\u00a0"]


def test_in_a_worked_example_everybody_sees_what_stands_in_the_boxes():
    assert all(run.given for run in runs(worked(COUNT)) if isinstance(run, Box))
    assert not any(run.given for run in runs(boxed(COUNT)) if isinstance(run, Box))
