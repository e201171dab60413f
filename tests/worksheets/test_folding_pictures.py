"""The pictures of folding beside their words: none reaches over, in any look, of any paper."""

import pytest

from foldmath.pages.pdf.styles import style_sheet
from foldmath.worksheets.picture_book import SIZES

SMALLEST_GAP_MM = {"regular": 0.0, "large": 4.0}
"""In regular print boxes to write in stand in a column of their own, in large print words begin here."""


@pytest.mark.parametrize("look", SIZES)
def test_the_widest_picture_of_a_fold_stays_in_its_column_clear_of_the_words(look):
    sizes, cell = SIZES[look], style_sheet(look).cells["picture"]
    room = cell.width_mm - 2 * cell.padding_mm
    for width, _ in (sizes.before, sizes.before_sizes):
        assert width + SMALLEST_GAP_MM[look] <= room


@pytest.mark.parametrize("look", SIZES)
def test_the_widest_picture_of_a_cut_stays_in_its_column(look):
    cell = style_sheet(look).cells["cut-picture"]
    assert SIZES[look].before[0] <= cell.width_mm - 2 * cell.padding_mm
