"""Number lines and boards: every fraction stands at its crease, apart from the others, in its panel."""

from itertools import combinations, pairwise

import pytest

from foldmath.drawing.fractions_to_write import BOX_WIDTH_MM, FIGURE_MM
from foldmath.drawing.game_boards import blank_board, least_height_mm, numbered_board
from foldmath.drawing.look import MM_PER_INCH
from foldmath.drawing.number_lines import END_MM, blank_line, line_height_mm, named_line
from foldmath.drawing.scenes import Figure, Meaning, Stroke
from foldmath.plane.numbers import exact
from foldmath.statements.ratios import fraction

NARROW, WIDE = 59.0, 97.0
"""A page of letter paper folded into eight, and one of tabloid, inside their margins."""

LARGE_PRINT_MM = 18 / 72 * MM_PER_INCH


def parts(count: int):
    return [exact(number, count) for number in range(1, count)]


def boxes(scene):
    """Give the left, bottom, right and top of every box."""
    for mark in scene.marks:
        if isinstance(mark, Stroke) and mark.closed and mark.meaning is Meaning.GRID:
            across, up = zip(*mark.spots, strict=True)
            if max(across) - min(across) == pytest.approx(BOX_WIDTH_MM):
                yield min(across), min(up), max(across), max(up)


def touch(one, other):
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


@pytest.mark.parametrize("width", [NARROW, WIDE])
@pytest.mark.parametrize("count", [2, 3, 4, 5, 6, 8, 12])
def test_no_two_fractions_of_a_number_line_touch_and_all_lie_inside_the_picture(width, count):
    scene = blank_line(parts(count), width)
    found = list(boxes(scene))
    assert len(found) == 2 * (count - 1)
    assert not any(touch(one, other) for one, other in combinations(found, 2))
    assert scene.height_mm == line_height_mm(parts(count), width)
    assert all(
        left >= 0 and low >= 0 and right <= width and top <= scene.height_mm
        for left, low, right, top in found
    )


def test_every_fraction_stands_at_its_own_crease():
    creases = [exact(1, 3), exact(1, 2)]
    scene = named_line(creases, [fraction(1, 3), fraction(1, 2)], WIDE)
    long = WIDE - 2 * END_MM
    at = {(mark.numerator, round(mark.middle.x, 6)) for mark in scene.marks if isinstance(mark, Figure)}
    assert {("3", round(END_MM + long / 3, 6)), ("2", round(END_MM + long / 2, 6))} <= at


@pytest.mark.parametrize(("columns", "rows"), [(2, 4), (3, 5), (4, 6)])
def test_a_board_is_one_path_from_panel_to_panel_beside_it(columns, rows):
    scene = numbered_board(columns, rows, NARROW, least_height_mm(rows))
    figures = [mark for mark in scene.marks if isinstance(mark, Figure)]
    numbered = figures[1::2]
    across, up = NARROW / columns, least_height_mm(rows) / rows
    cells = [(int(mark.middle.x // across), int(mark.middle.y // up)) for mark in numbered]
    assert [mark.numerator for mark in numbered] == [str(number) for number in range(1, columns * rows + 1)]
    assert all(abs(a - c) + abs(b - d) == 1 for (a, b), (c, d) in pairwise(cells))
    assert cells[0] == (0, 0)


def test_figures_in_these_pictures_are_never_smaller_than_large_print():
    assert FIGURE_MM >= LARGE_PRINT_MM


def test_pupils_find_the_boxes_empty():
    board = blank_board(2, 4, NARROW, 80.0)
    assert {mark.numerator for mark in board.marks if isinstance(mark, Figure)} == {"8"}
    line = blank_line(parts(4), NARROW)
    assert {mark.numerator for mark in line.marks if isinstance(mark, Figure)} == {"0", "1"}
