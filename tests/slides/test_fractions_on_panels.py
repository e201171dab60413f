"""Where the fraction of each panel stands on the opened sheet: in it, or at a line's end beside the sheet."""

from itertools import pairwise

import pytest
from lessons_in_words import core_sheet, proved

from foldmath.drawing.layout import reach
from foldmath.drawing.stars import SLIDE_STAR_MM
from foldmath.slides.motion.opened import LABEL_PITCH_MM, MOST_LEADERS
from foldmath.slides.slides import StepSlide, slide_show


def opened(*steps):
    made = proved(*steps)
    told = [slide for slide in slide_show(made, core_sheet(made)).slides if isinstance(slide, StepSlide)]
    return told[-1].picture.opened, told[-1].picture


def box_of(figure):
    across, up = reach(figure)
    x, y = figure.middle
    return x - across, y - up, x + across, y + up


@pytest.mark.parametrize(
    "steps",
    [
        ("pleat width into 3",),
        ("pleat width into 4", "pleat height into 3"),
        ("pleat width into 12",),
        ("fold at 1/3 moving left", "fold at 1/4 moving bottom"),
        ("fold bottom left corner to top right corner",),
        ("fold at 1/12 moving left", "open", "fold at 1/6 moving left", "open"),
    ],
    ids=" ".join,
)
def test_no_panel_that_can_be_said_is_without_its_fraction(steps):
    made = proved(*steps)
    sheet, _ = opened(*steps)
    beside = {(label.figure.numerator, label.figure.denominator): label for label in sheet.beside}
    small = [panel for panel in made.states[-1].panels if numbers(panel.area) in beside]
    assert len(sheet.figures) + len(small) == len(made.states[-1].panels)
    for label in sheet.beside:
        pointed = sum(numbers(panel.area) == numbers_of(label.figure) for panel in small)
        assert len(label.lines) == (pointed if pointed <= MOST_LEADERS else 1)


def numbers(area):
    return str(area.numerator), str(area.denominator)


def numbers_of(figure):
    return figure.numerator, figure.denominator


def test_a_line_leads_from_inside_the_panel_to_its_fraction_beside_the_sheet():
    sheet, picture = opened("pleat width into 12")
    (label,) = sheet.beside
    ((start, end),) = label.lines
    left, top, right, _ = (min, min, max, max)
    xs, ys = zip(*sheet.outline, strict=True)
    assert left(xs) < start.x < right(xs)
    assert top(ys) < start.y < max(ys)
    assert right(xs) < end.x < box_of(label.figure)[0] + 1
    assert picture.aside[1] > 0


def test_fractions_of_panels_spread_evenly_stand_at_the_right_beside_the_words():
    for steps in (("pleat width into 12",), ("pleat width into 12", "pleat height into 2")):
        sheet, picture = opened(*steps)
        assert [label.figure.middle.x > picture.width for label in sheet.beside] == [True]


def test_fractions_beside_the_sheet_stand_clear_of_each_other():
    sheet, _ = opened(
        "fold at 1/12 moving left", "open", "fold at 1/6 moving left", "fold at 1/5 moving right"
    )
    heights = sorted(label.figure.middle.y for label in sheet.beside)
    assert all(two - one >= LABEL_PITCH_MM - 1e-9 for one, two in pairwise(heights))


def test_the_fraction_of_the_stars_panel_stands_in_its_middle_as_in_the_others_if_the_star_leaves_room():
    sheet, _ = opened("pleat width into 3")
    heights = {round(figure.middle.y, 6) for figure in sheet.figures}
    xs = sorted(figure.middle.x for figure in sheet.figures)
    assert len(heights) == 1
    assert xs[1] - xs[0] == pytest.approx(xs[2] - xs[1])


@pytest.mark.parametrize(
    "steps", [("pleat height into 4",), ("pleat width into 8",), ("pleat height into 7",)]
)
def test_no_fraction_lies_on_the_star(steps):
    sheet, _ = opened(*steps)
    star_x = sum(x for x, _ in sheet.star) / len(sheet.star)
    star_y = sum(y for _, y in sheet.star) / len(sheet.star)
    for figure in sheet.figures:
        left, top, right, bottom = box_of(figure)
        clear_x = right <= star_x - SLIDE_STAR_MM + 1e-9 or left >= star_x + SLIDE_STAR_MM - 1e-9
        clear_y = bottom <= star_y - SLIDE_STAR_MM + 1e-9 or top >= star_y + SLIDE_STAR_MM - 1e-9
        assert clear_x or clear_y
