"""One star on paper and on the screen: pictures, exact sheets and slides draw the same outline."""

import re
from io import BytesIO
from math import hypot

import pdfplumber
import pytest

from foldmath.drawing.rendering.recorder import record
from foldmath.drawing.scenes import Scene, Spot, Star
from foldmath.drawing.stars import INSET, POINTS, WAIST, star_in_corner, star_outline
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.exact import ExactPage, Rectangle
from foldmath.slides.motion.marks import star_points

MM = 72 / 25.4
MIDDLE, RADIUS_MM = Spot(10.0, 12.0), 3.0
OUTLINE = star_outline(MIDDLE, RADIUS_MM)


def test_a_star_has_five_points_the_first_of_them_up():
    reaches = [hypot(x - MIDDLE.x, y - MIDDLE.y) for x, y in OUTLINE]
    assert reaches == pytest.approx([RADIUS_MM, RADIUS_MM * WAIST] * POINTS)
    assert OUTLINE[0] == pytest.approx((MIDDLE.x, MIDDLE.y + RADIUS_MM))
    assert max(y for _, y in OUTLINE) == OUTLINE[0].y


def test_a_picture_a_page_at_exact_scale_and_a_slide_draw_the_same_outline():
    ink = (
        record(Scene(width_mm=20, height_mm=24, marks=(Star(MIDDLE, RADIUS_MM),), words="A star."))
        .ink[-1]
        .operators
    )
    drawn = [tuple(map(float, pair)) for pair in re.findall(r"(\S+) (\S+) [ml]\b", ink)]
    assert drawn[: 2 * POINTS] == [pytest.approx((x * MM, y * MM), abs=0.001) for x, y in OUTLINE]

    page = ExactPage(20.0, 24.0, Rectangle(0.0, 0.0, 20.0, 24.0), (Star(MIDDLE, RADIUS_MM),))
    with pdfplumber.open(BytesIO(written([[page]], "A star", "en-US"))) as document:
        (curve,) = document.pages[0].curves
    printed = [(x / MM, 24 - y / MM) for x, y in curve["pts"]]
    assert printed[: 2 * POINTS] == [pytest.approx(spot, abs=0.001) for spot in OUTLINE]

    on_screen = star_points(Spot(MIDDLE.x, 24 - MIDDLE.y), RADIUS_MM)
    assert [(x, 24 - y) for x, y in on_screen] == [pytest.approx(spot) for spot in OUTLINE]


@pytest.mark.parametrize("inside", [(5, 7), (-5, 7), (5, -7), (-5, -7)])
def test_in_a_corner_a_star_stands_inside_as_far_from_one_edge_as_from_the_other(inside):
    star = star_in_corner(Spot(0, 0), Spot(*inside))
    assert (abs(star.middle.x), abs(star.middle.y)) == pytest.approx([INSET * star.radius_mm] * 2)
    assert star.middle.x * inside[0] > 0 < star.middle.y * inside[1]
    assert not star.hollow


def test_a_star_whose_corner_is_out_of_sight_is_hollow():
    assert star_in_corner(Spot(0, 0), Spot(1, 1), hollow=True).hollow
