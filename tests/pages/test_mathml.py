"""Figures in a text become stacked fractions, or boxes to write them in; words stay words."""

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.pages.markup.blocks import Box, Stack, Text
from foldmath.pages.markup.mathml import boxed, boxed_fraction, stacked
from foldmath.pages.markup.reading import blocks_of


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
    assert runs(stacked(text)) == expected


def test_signs_keep_to_their_numbers():
    """A line never ends inside an equation."""
    assert runs(stacked("4 × 2 = 8")) == (Text("4\u00a0×\u00a02\u00a0=\u00a08"),)
    assert [run.text for run in runs(boxed("4 × 2 = 8")) if isinstance(run, Text)] == [
        "\u00a0×\u00a0",
        "\u00a0=\u00a0",
    ]


def test_every_number_is_boxed_with_its_answer():
    boxes = [run for run in runs(boxed("4 × 2 = 8")) if isinstance(run, Box)]
    assert [box.answer for box in boxes] == ["4", "2", "8"]


def test_a_fraction_is_boxed_above_and_below_its_bar():
    first, of, second, equals, third = runs(boxed("1/2 of 1/4 = 1/8"))
    assert first == Stack((Box("part", "1"),), (Box("part", "2"),))
    assert (of.text, equals.text) == (" of ", "\u00a0=\u00a0")
    assert (second.below, third.below) == ((Box("part", "4"),), (Box("part", "8"),))


def test_an_expression_above_a_bar_has_a_box_for_every_number():
    (whole,) = runs(boxed_fraction("2 × 4", "3 × 5"))
    assert [run.answer for run in whole.above if isinstance(run, Box)] == ["2", "4"]
    assert [run.answer for run in whole.below if isinstance(run, Box)] == ["3", "5"]


@given(st.text(alphabet="<>&\"'/ab12 ×=", max_size=20))
def test_no_text_can_become_a_tag(text):
    for markup in (stacked(text), boxed(text)):
        root = ElementTree.fromstring(f"<p>{markup}</p>")
        assert {element.tag for element in root.iter()} <= {
            "p", "math", "mfrac", "mn", "output", "span",
        }  # fmt: skip
