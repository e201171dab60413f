"""The booklet round a slit: the ring of panels followed hinge by hinge from the cover.

What the slit leaves joins the panels into a ring. Folded at every hinge, all of them lie on one footprint;
going round from the cover, away from the back of the booklet, each panel lies beneath the one before.
"""

from typing import NamedTuple

from foldmath.paper.booklet.booklet import Booklet, Form, Leaf, Meeting, Opening, SlitRoom, Spine
from foldmath.paper.booklet.grid import Grid, grid, require_slit, slit_limits
from foldmath.paper.booklet.pages import Read, landed, pages
from foldmath.paper.folding.hinges import Hinge, hinges
from foldmath.paper.refusals import NotABooklet
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Gather
from foldmath.phrases import Said, phrase
from foldmath.plane.lines import Line
from foldmath.plane.motions import Motion, reflection
from foldmath.plane.numbers import ONE, ZERO

USUAL_COLUMN = 1
"""Of the cover in the bottom row, counted from 0, if none is said."""

MOST_COLUMNS = 6
"""Columns that are a fan pupils can still push together neatly (common practice, no source)."""


class Ring(NamedTuple):
    """The panels in the order in which they are read, and the hinge that leads from each to the next.

    Args:
        grid: the sheet they come from.
        panels: the cover first.
        joins: the last leads back to the cover.
    """

    grid: Grid
    panels: tuple[int, ...]
    joins: tuple[Hinge, ...]

    def motions(self, first: Motion) -> list[Motion]:
        """Fold every hinge in turn, the cover lying as ``first`` says: give how each panel then lies."""
        lying = [first]
        for hinge in self.joins[:-1]:
            lying.append(reflection(hinge.line).then(lying[-1]))
        return lying


def ring(state: FoldedState, column: int) -> Ring:
    """Follow the hinges round the ring, from the cover away from the hinge at its left.

    Raises:
        NotABooklet: another cut breaks the ring, or there is no hinge at the left of the cover.
    """
    found = grid(state)
    if not 0 <= column < found.columns:
        raise _no_cover(
            column, phrase("the bottom row has columns 0 to {columns}", columns=found.columns - 1)
        )
    ways: dict[int, dict[int, Hinge]] = {index: {} for index in range(len(state.panels))}
    for hinge in hinges(state.panels):
        ways[hinge.one][hinge.other] = ways[hinge.other][hinge.one] = hinge
    if any(len(beside) != 2 for beside in ways.values()):
        raise NotABooklet(
            phrase("another cut or hinge breaks the ring of panels round the slit"),
            phrase("cut only the slit in the middle"),
        )
    cover, before = found.rows[0][column], found.rows[0][column - 1]
    if before not in ways[cover]:
        raise _no_cover(column, phrase("it has no hinge at its left"))
    panels, joins = [cover], []
    while True:
        here = panels[-1]
        behind = panels[-2] if len(panels) > 1 else before
        (onward,) = ways[here].keys() - {behind}
        joins.append(ways[here][onward])
        if onward == cover:
            return Ring(found, tuple(panels), tuple(joins))
        panels.append(onward)


def _no_cover(column: int, why: Said) -> NotABooklet:
    return NotABooklet(
        phrase("the cover cannot be at column {column}: {why}", column=column, why=why),
        instead=Gather(USUAL_COLUMN),
    )


def ring_booklet(state: FoldedState, column: int) -> Booklet:
    """Read the ring of panels as a booklet, all pages on the printed side.

    Raises:
        SlitTooShort: a hinge between the inner columns still holds.
        NotABooklet: the sheet has no such ring, or its pages would not open with the cover in that column.
    """
    found = grid(state)
    warnings = require_slit(state, found)
    if found.columns > MOST_COLUMNS:
        warnings += (
            phrase("{columns} columns make a thick fan: use thin, large paper", columns=found.columns),
        )
    round_slit = ring(state, column)
    lying = round_slit.motions(found.seen)
    spine = Line(ONE, ZERO, -landed(state.panels[round_slit.panels[0]], found.seen).left)
    _require_opening(round_slit, lying, spine)
    turned = reflection(spine)
    reading = [
        Read(panel, motion if motion.upright else motion.then(turned))
        for panel, motion in zip(round_slit.panels, lying, strict=True)
    ]
    last, limits = len(reading), slit_limits(state)
    spines = [
        Spine(number, number % last + 1, hinge.start, hinge.end)
        for number, hinge in enumerate(round_slit.joins, start=1)
        if number % 2 == 0
    ]
    return Booklet(
        form=Form.RING,
        pages=pages(reading, state.panels),
        width=found.width,
        height=found.height,
        leaves=tuple(Leaf(number, number + 1) for number in range(1, last, 2)),
        openings=tuple(Opening(number, number + 1, Meeting.HINGED) for number in range(2, last, 2)),
        spines=tuple(spines),
        slit_room=SlitRoom(limits.harmless, limits.tearing),
        warnings=warnings,
    )


def _require_opening(round_slit: Ring, lying: list[Motion], spine: Line) -> None:
    """Make sure that facing pages, those that meet printed side to printed side, hinge in the back."""
    for number, (motion, hinge) in enumerate(zip(lying, round_slit.joins, strict=True), start=1):
        in_back = all(spine.side(motion.carry(end)) == ZERO for end in (hinge.start, hinge.end))
        if number % 2 == 0 and not in_back:
            column = round_slit.grid.rows[0].index(round_slit.panels[0])
            raise _no_cover(column, phrase("its pages would not hinge at the back of the booklet"))
