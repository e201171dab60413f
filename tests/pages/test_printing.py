"""Printing a document, or refusing it whole."""

import gc
from io import BytesIO

import pikepdf
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


def test_words_in_another_language_are_marked_in_the_file_and_all_others_are_not():
    """ISO 32000-1:2008, 14.9.2.3: marked content with Lang."""
    body = '<p class="item">a panel <span lang="uk">частина</span> of the sheet</p>'
    with pikepdf.open(BytesIO(print_body(body))) as printed:
        marked = [
            (str(operands[1].Lang) if str(operands[0]) == "/Span" and "/Lang" in operands[1] else "")
            for operands, operator in pikepdf.parse_content_stream(printed.pages[0])
            if str(operator) == "BDC"
        ]
        assert [language for language in marked if language] == ["uk"]
        assert str(printed.Root.Lang).startswith("en")


def test_pages_leave_nothing_behind_that_garbage_must_be_looked_for():
    """The processes of a class look for none: what they let go must be gone at once."""
    print_body(row_of(lines=1))
    gc.collect()
    gc.disable()
    try:
        print_body(row_of(lines=2) + '<p class="item"><math><mfrac><mn>1</mn><mn>3</mn></mfrac></math></p>')
        assert gc.collect() == 0
    finally:
        gc.enable()
