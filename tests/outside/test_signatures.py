"""Folded signatures against published imposition tables, each folded as the table says.

Sources:
    4 pages: outside 4 | 1, inside 2 | 3 (vesterkopi.dk; docs.hornpenguin.com); pages that face across a
    spine sum to n + 1, even ones at the left.
    16 pages: metacpan.org, PDF::Imposition::Schema1x8x2. 8 pages: the same scheme as sheet 1 of
    PDF::Imposition::Schemaea4x4. ``r`` marks a page upside down; a back is read from behind.
    Which way the sheet lies and folds to give them: worked out here by folding.
"""

import pytest
from creased import A4_UPRIGHT, LETTER, after

from foldmath.paper.booklet.booklet import Face, Form, WayUp
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis, Edge, FoldEdge, Pleat, TurnOver
from foldmath.plane.numbers import ONE, ZERO
from foldmath.plane.polygons import box

UNDER_LEFT, UNDER_TOP = FoldEdge(Edge.LEFT, ONE, behind=True), FoldEdge(Edge.TOP, ZERO, behind=True)
LEFT_OVER, TOP_OVER, RIGHT_OVER = (
    FoldEdge(Edge.LEFT, ONE),
    FoldEdge(Edge.TOP, ZERO),
    FoldEdge(Edge.RIGHT, ZERO),
)

SHEETS = [LETTER, A4_UPRIGHT]
FOUR = ("4 1", "2 3")
EIGHT = ("r5 r4 / 8 1", "r3 r6 / 2 7")
SIXTEEN = ("r5 r12 r9 r8 / 4 13 16 1", "r7 r10 r11 r6 / 2 15 14 3")


def tables(state):
    """Give what must be printed on the front and on the back, each as it is read from its own side."""
    made = booklet(state)
    assert made.form is Form.SIGNATURE
    return tuple(_table(state, made, face) for face in Face)


def _table(state, made, face):
    rows = {}
    for page in made.pages:
        if page.face is face:
            bounds = box(state.panels[page.panel].corners)
            across = bounds.left if face is Face.PRINTED else -bounds.left
            sign = {WayUp.UPRIGHT: "", WayUp.UPSIDE_DOWN: "r"}[page.way_up]
            rows.setdefault(-bounds.bottom, {})[across] = f"{sign}{page.number}"
    return " / ".join(" ".join(row[across] for across in sorted(row)) for _, row in sorted(rows.items()))


@pytest.mark.parametrize("sheet", SHEETS)
class TestTables:
    def test_one_fold_makes_four_pages(self, sheet):
        assert tables(after(open_sheet(sheet), UNDER_LEFT)) == FOUR

    def test_one_fold_over_makes_them_on_the_sheet_face_down(self, sheet):
        assert tables(after(open_sheet(sheet), TurnOver(), LEFT_OVER)) == FOUR

    def test_top_half_under_and_left_half_under_make_eight_pages(self, sheet):
        assert tables(after(open_sheet(sheet), UNDER_TOP, UNDER_LEFT)) == EIGHT

    def test_left_top_and_left_half_under_make_sixteen_pages(self, sheet):
        assert tables(after(open_sheet(sheet), UNDER_LEFT, UNDER_TOP, UNDER_LEFT)) == SIXTEEN

    def test_right_top_and_left_half_over_make_sixteen_pages_on_the_sheet_face_down(self, sheet):
        assert tables(after(open_sheet(sheet), TurnOver(), RIGHT_OVER, TOP_OVER, LEFT_OVER)) == SIXTEEN


@pytest.mark.parametrize(
    "folds", [[UNDER_LEFT], [UNDER_TOP, UNDER_LEFT], [UNDER_LEFT, UNDER_TOP, UNDER_LEFT]]
)
def test_pages_that_face_across_a_spine_sum_to_one_more_than_the_pages(folds):
    made = booklet(after(open_sheet(LETTER), *folds))
    for spine in made.spines:
        assert spine.left + spine.right == len(made.pages) + 1
        assert spine.left % 2 == 0


@pytest.mark.parametrize(("folds", "closed_edges"), [(1, 0), (2, 2), (3, 6)])
def test_a_signature_of_more_than_four_pages_opens_when_its_other_folds_are_trimmed(folds, closed_edges):
    """One, four and ten hinges between 2, 4 and 8 panels, of which 1, 2 and 4 are in the back."""
    steps = [UNDER_LEFT, UNDER_TOP, UNDER_LEFT][3 - folds :]
    assert len(booklet(after(open_sheet(LETTER), *steps)).trims) == closed_edges


@pytest.mark.parametrize("parts", [3, 4])
def test_a_pleat_is_read_from_left_to_right_and_the_turned_sheet_again_from_left_to_right(parts):
    """Panels 1 to n from the left, all upright, and n + 1 … behind the last (common practice, no source)."""
    state = after(open_sheet(LETTER), Pleat(Axis.WIDTH, parts))
    made = booklet(state)
    columns = [int(parts * box(state.panels[page.panel].corners).left / LETTER.width) for page in made.pages]
    assert columns == [*range(parts), *reversed(range(parts))]
    assert {page.way_up for page in made.pages} == {WayUp.UPRIGHT}
