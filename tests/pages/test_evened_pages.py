"""Pages are filled from the top, on no more sheets than they need; those after a wanted start are alike."""

import pytest

from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.paginating import Copy, PageMaster, filled_pages
from foldmath.pages.pdf.rows import InColumns
from foldmath.pages.pdf.setting import PageStart
from foldmath.pages.pdf.styles import points

SHAPE = upright("letter")


class Block(Painted):
    """As high as so many tenths of a page, and without ink."""

    def __init__(self, tenths):
        super().__init__()
        self.tenths = tenths

    def wrap(self, aW, aH):  # noqa: ARG002, N803 (Platypus's own names)
        self.height = self.tenths * points(SHAPE.usable_height_mm) / 10
        return aW, self.height

    def paint(self, canvas, x, y):
        """Leave no ink."""


class Question(Block):
    """About what stands above it."""

    asks_above = True


def under_head(tenths):
    """Give a row of a table with a head."""
    row = Block(tenths)
    row.heads = (Block(1),)
    return row


START = PageStart(soft=True)


def filled(*parts):
    """Give for each page how high the blocks on it are, in tenths; a number is a block."""
    flowables = [part if isinstance(part, Painted) else Block(part) for part in parts]
    pages = filled_pages(Copy(flowables, PageMaster(SHAPE, "", "", "")))
    return [[laid.flowable.tenths for laid in page.placed] for page in pages]


def test_a_question_takes_what_it_asks_about_along_where_both_have_room_on_the_next_page():
    assert filled(5, 3, Question(1)) == [[5, 3, 1]]
    assert filled(5, 4, Question(4)) == [[5], [4, 4]]
    assert filled(1, 8, Question(4)) == [[1, 8], [4]]
    assert filled(8, Question(4)) == [[8], [4]]


def test_a_question_under_another_takes_that_along_too_and_what_both_ask_about():
    assert filled(5, 3, Question(1), Question(2)) == [[5], [3, 1, 2]]
    assert filled(1, 7.5, Question(1), Question(2)) == [[1, 7.5, 1], [2]]
    assert filled(8, Question(1), Question(2)) == [[8, 1], [2]]


def test_a_row_that_is_taken_along_stands_under_the_head_of_its_table():
    assert filled(5, under_head(4), Question(4)) == [[5], [1, 4, 4]]
    assert filled(4, under_head(5), Question(4.5)) == [[4, 5], [4.5]]


def test_without_a_wanted_start_pages_are_filled_from_the_top():
    assert filled(4, 4, 2, 4) == [[4, 4, 2], [4]]


def test_pages_after_a_wanted_start_are_filled_alike_and_those_before_it_are_not():
    assert filled(5, 5, START, 4, 3, 2, 4) == [[5, 5], [4, 3], [2, 4]]
    assert filled(5, 5, START, 4, 3, 3, 1) == [[5, 5], [4, 3], [3, 1]]


def test_no_page_is_added_to_fill_them_alike():
    assert filled(5, 5, START, 5, 5, 5, 3) == [[5, 5], [5, 5], [5, 3]]
    assert filled(5, 5, START, 4, 5) == [[5, 5], [4, 5]]


def test_a_start_that_stays_on_a_page_with_little_on_it_has_the_pages_after_that_one_filled_alike():
    assert filled(5, 5, 2, START, 4, 4, 4, 3, 2, 4) == [[5, 5], [2, 4, 4], [4, 3], [2, 4]]


@pytest.mark.parametrize("block", [Block(7), InColumns([Block(7)], 1)], ids=["alone", "in columns"])
def test_a_block_that_only_a_full_page_holds_keeps_its_place(block):
    assert filled(5, 5, START, 2, block, 4) == [[5, 5], [2, 7], [4]]


def test_pages_go_on_where_one_was_wanted_if_that_saves_a_sheet_of_paper_and_not_if_it_saves_a_side():
    assert filled(4, START, 5, 8) == [[4, 5], [8]]
    assert filled(4, START, 5, 8, 8) == [[4], [5], [8], [8]]
    assert filled(4, START, 5, 8, 8, 8) == [[4, 5], [8], [8], [8]]


def test_a_side_that_would_stay_almost_empty_is_saved_too():
    assert filled(4, START, 5, 8, 3) == [[4, 5], [8], [3]]
    assert filled(4, START, 5, 8, 4) == [[4], [5], [8], [4]]
