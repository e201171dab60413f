"""Contrast and size of the slides, against published rules for screens in rooms."""

import re
from importlib.resources import files

import pytest

CSS = files("foldmath.slides").joinpath("templates/slides.css").read_text(encoding="utf-8")
COLOURS = dict(re.findall(r"--([a-z]+): (#[0-9a-f]{3,6});", CSS))

ON_WHAT = [
    ("ink", "page"),
    ("ink", "sheet"),
    ("green", "page"),
    ("green", "sheet"),
    ("line", "page"),
    ("line", "sheet"),
    ("ink", "back"),
]


def light(colour: str) -> float:
    """Give the relative luminance of an sRGB colour: W3C, WCAG 2.2 (2023), glossary."""
    digits = colour.removeprefix("#")
    digits = "".join(2 * digit for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[place : place + 2], 16) / 255 for place in (0, 2, 4)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Give the contrast ratio of two colours: W3C, WCAG 2.2 (2023), glossary."""
    dark, bright = sorted((light(one), light(other)))
    return (bright + 0.05) / (dark + 0.05)


@pytest.mark.parametrize(("front", "ground"), ON_WHAT)
def test_what_is_to_be_read_has_a_contrast_of_seven_to_one(front, ground):
    """W3C, WCAG 2.2 (2023), success criterion 1.4.6."""
    assert contrast(COLOURS[front], COLOURS[ground]) >= 7


def test_the_notes_have_it_too():
    """W3C, WCAG 2.2 (2023), success criterion 1.4.6."""
    ground = re.search(r"#mirrored \{[^}]*background: (#[0-9a-f]+)", CSS)[1]
    assert contrast(COLOURS["ink"], ground) >= 7


def test_printed_side_and_back_side_differ_in_grey_alone():
    """A projector's washed-out grey must still be told from white [common practice, no source]."""
    assert contrast(COLOURS["sheet"], COLOURS["back"]) >= 1.5


def test_no_colour_is_red_or_blue():
    """Meaning never rests on red and blue creases [common practice, no source]."""
    for colour in set(re.findall(r"#[0-9a-f]{6}", CSS)):
        red, green, blue = (int(colour[place : place + 2], 16) for place in (1, 3, 5))
        assert blue <= max(red, green)
        assert not (red > 2 * green and red > 2 * blue)


def test_letters_reach_the_viewer_six_picture_heights_away():
    """The farthest viewer of text sits six picture heights away (the 4/6/8 rule), and an element must be
    FV / (200 IH) of the picture's height: ANSI/AVIXA V202.01:2016, basic decision making.

    A small letter of Arial is 0.519 of the em high (the font's own table; from memory).
    """
    least = float(re.search(r"\.board \{ --least: ([0-9.]+); \}", CSS)[1]) / 100
    assert 0.519 * least >= 6 / 200
