"""Sheets creased into rows and columns, slit, and gathered, for tests of cutting and of booklets."""

from hypothesis import strategies as st

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Axis, Open, Pleat, Slit, Step
from foldmath.plane.numbers import HALF, ONE, Exact, exact

LETTER = Sheet(exact(11), exact(17, 2), "in")
A4_UPRIGHT = Sheet(exact(210), exact(297), "mm")


def after(state: FoldedState, *steps: Step) -> FoldedState:
    """Do steps, all of which must be possible."""
    for step in steps:
        state = perform(step, state)
    return state


def creased(sheet: Sheet, columns: int, rows: int) -> FoldedState:
    """Give an open sheet with creases between so many columns and rows."""
    state = open_sheet(sheet)
    for axis, parts in ((Axis.WIDTH, columns), (Axis.HEIGHT, rows)):
        if parts > 1:
            state = after(state, Pleat(axis, parts), Open())
    return state


def ring_sheet(
    sheet: Sheet, k: int, *, level: bool = True, beyond: tuple[Exact, Exact] = (exact(0), exact(0))
):
    """Give an open sheet with 2 rows of 2k panels and their slit, longer at each end by a share of the whole.

    ``level`` rows lie across the width; otherwise they stand along the height.
    """
    columns, rows = (2 * k, 2) if level else (2, 2 * k)
    end = exact(1, 2 * k)
    along = Slit(Axis.HEIGHT if level else Axis.WIDTH, HALF, end - beyond[0], ONE - end + beyond[1])
    return after(creased(sheet, columns, rows), along)


papers = st.one_of(
    st.sampled_from([LETTER, A4_UPRIGHT]),
    st.builds(lambda w, h: Sheet(exact(w, 2), exact(h, 3), "in"), st.integers(1, 60), st.integers(1, 60)),
)
