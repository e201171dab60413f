"""Printing a document, or refusing it whole."""

import pytest
from trial_printing import print_body

from foldmath.errors import FoldmathError


def row_of(lines):
    turns = '<p class="plan-tight">Turn left.</p>' * lines
    return f'<table><tr class="plan-row"><td class="plan-what">{turns}</td></tr></table>'


def test_a_row_that_a_page_has_room_for_is_printed():
    assert print_body(row_of(lines=3)).startswith(b"%PDF")


def test_a_row_higher_than_a_page_is_one_clear_error_with_a_remedy():
    with pytest.raises(FoldmathError, match=r"^one part of its pages is \d+\.\d times as high as a"):
        print_body(row_of(lines=200))
