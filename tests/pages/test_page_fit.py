"""How a sheet lies on the printer's page: every paper, both ways round, on both pages.

Sources of the two pages' sizes:
    letter is 8.5 × 11 in (ASME Y14.1); A4 is 210 × 297 mm (ISO 216:2007).
"""

from fractions import Fraction
from itertools import product

import pytest
from booklet_reading import planned
from guide_reading import fraction

from foldmath.booklets.papers import booklet_papers
from foldmath.drawing.layout import spot
from foldmath.guides.composing import guide_pages
from foldmath.lesson.booklet.plan import Heading, PlannedPage
from foldmath.pages.page_fit import Turning, fit, own_page
from foldmath.paper.sizes import ORIENTATIONS, all_papers, paper_named, sheet
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact

PAGES_MM = {
    "letter": (Fraction(17, 2) * Fraction("25.4"), 11 * Fraction("25.4")),
    "A4": (Fraction(210), Fraction(297)),
}
RIM_MM, SAME_MM = 6, Fraction(1, 2)
CASES = list(product([size.name for size in all_papers()], ORIENTATIONS, PAGES_MM))
SMALLER = ("A5", "half-letter", "B6", "origami 15 cm")
"""Smaller than both pages, and large enough for a booklet of four."""

every = pytest.mark.parametrize(("paper", "orientation", "page"), CASES)


def laid(paper, orientation):
    return sheet(paper_named(paper), orientation)


def sides_mm(paper: Sheet):
    return fraction(paper.width) * fraction(paper.unit_mm), fraction(paper.height) * fraction(paper.unit_mm)


def cuts_if_laid(sides, page):
    """Count the edges to cut where a sheet lies in the middle of a page, or at its edge where room is short.

    None where a line to cut along would lie in the white rim, or outside the page.
    """
    cuts = 0
    for side, whole in zip(sides, page, strict=True):
        spare = whole - side
        if abs(spare) < SAME_MM:
            continue
        if spare < RIM_MM:
            return None
        cuts += 2 if spare >= 2 * RIM_MM else 1
    return cuts


@every
def test_a_sheet_lies_on_a_page_wherever_it_can_with_the_fewest_edges_to_cut(paper, orientation, page):
    sides = sides_mm(laid(paper, orientation))
    ways = {turned: cuts_if_laid(sides, turned) for turned in (PAGES_MM[page], PAGES_MM[page][::-1])}
    possible = {turned: cuts for turned, cuts in ways.items() if cuts is not None}
    lies = fit(laid(paper, orientation), page)
    if not possible:
        assert lies is None
        return
    turned = (fraction(lies.width), fraction(lies.height))
    assert possible[turned] == len(lies.trimmed) == min(possible.values())
    as_the_sheet = [way for way in possible if (way[0] > way[1]) == (sides[0] > sides[1])]
    if len(set(possible.values())) == 1 and as_the_sheet:
        assert turned in as_the_sheet


@every
def test_a_sheet_lies_inside_its_page_as_far_from_one_side_as_from_the_other(paper, orientation, page):
    lies = fit(laid(paper, orientation), page)
    if lies is None:
        return
    for near, side, whole in ((lies.left, lies.across, lies.width), (lies.bottom, lies.up, lies.height)):
        far = whole - near - side
        assert near >= 0
        assert near == far or (near == 0 and RIM_MM <= far < 2 * RIM_MM)


@pytest.mark.parametrize(("paper", "orientation", "page"), list(product(SMALLER, ORIENTATIONS, PAGES_MM)))
def test_guides_and_booklet_lie_alike_on_their_pages(paper, orientation, page):
    """The two papers of a lesson that are folded from the very sheet: one rule lays both."""
    lies = fit(laid(paper, orientation), page)
    made = planned((PlannedPage((Heading("Seeds"),)),), "four-page", paper, orientation)
    booklet = booklet_papers(made, made.lesson.booklet, page, "regular").layout.lies
    plain = guide_pages(made, page)[1]
    assert booklet == lies
    page_mm, corner_mm = spot(Point(lies.width, lies.height)), spot(Point(lies.left, lies.bottom))
    assert (plain.width_mm, plain.height_mm) == pytest.approx(page_mm)
    assert plain.sheet[:2] == pytest.approx(corner_mm)


# The choices, each with its neighbour.


@pytest.mark.parametrize(
    ("spare", "where"),
    [
        ("0.49", Fraction("0.245")),
        ("0.5", None),
        ("5.99", None),
        ("6", 0),
        ("11.99", 0),
        ("12", 6),
        ("-0.49", Fraction("-0.245")),
        ("-0.5", None),
    ],
)
def test_a_side_is_the_pages_own_within_half_a_millimetre_and_else_leaves_six_for_its_trim_line(spare, where):
    left = Fraction(spare)
    width = 210 - left
    paper = Sheet(exact(width.numerator, width.denominator), exact(297), "mm")
    lies = fit(paper, "A4")
    assert (fraction(lies.left) if lies else None) == where
    if lies:
        assert lies.fills_page is (abs(left) < SAME_MM)


def test_letter_paper_told_in_whole_millimetres_is_letter_paper():
    assert fit(Sheet(exact(279), exact(216), "mm"), "letter").fills_page


def test_half_letter_lies_across_an_upright_page_so_that_two_edges_are_cut_and_not_four():
    lies = fit(laid("half-letter", "landscape"), "letter")
    assert lies.height > lies.width
    assert set(lies.trimmed) == {Edge.TOP, Edge.BOTTOM}


def test_where_as_many_edges_are_cut_either_way_the_page_lies_as_the_sheet():
    assert fit(laid("A6", "landscape"), "A4").width == 297
    assert fit(laid("A6", "portrait"), "A4").width == 210
    assert fit(laid("origami 15 cm", "landscape"), "A4").width == 210


def test_a_sheet_on_its_own_page_is_the_page_and_turns_over_its_own_long_edge():
    for orientation, as_book in (("landscape", False), ("portrait", True)):
        own = own_page(laid("tabloid", orientation))
        assert own.fills_page
        assert own.turns_as_book(Turning.LONG_EDGE) is as_book
    assert own_page(laid("origami 15 cm", "portrait")).turns_as_book(Turning.LONG_EDGE)
