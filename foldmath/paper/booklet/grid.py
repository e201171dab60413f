"""The open sheet of a slit booklet: two rows of equal panels, and how far the slit between them runs.

The sheet has 2 rows of 2k equal panels and a slit between the rows of the inner 2k - 2 columns.
"""

from foldmath.paper.booklet.pages import landed
from foldmath.paper.folding.hinges import hinges
from foldmath.paper.folding.slitting import slit_between
from foldmath.paper.measures import length_said
from foldmath.paper.refusals import NotABooklet, SlitTooLong, SlitTooShort
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, Slit
from foldmath.phrases import Phrase, Said, listed, phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Point
from foldmath.plane.motions import AT_REST, Motion, quarter_turn, shift
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, written
from foldmath.values import frozen

LEAST_HINGE = HALF
"""So much of the hinge between the two panels of an end column must be left for their leaf to last.

A slit a little too long is harmless (common practice, no source), since the end hinges only hold the two
panels of an end leaf together. This house's rule (no source): with less than half of the hinge left, a
pull can tear the leaf on from the end of the slit; with none left the ring is open and the leaf comes apart.
"""

FEWEST_COLUMNS = 4


@frozen(kw_only=True)
class Grid:
    """Two rows of equal panels, seen so that the rows lie level.

    Args:
        seen: the motion from the opened sheet to where it is seen: at rest, or a quarter turn to the left,
            its bottom left corner at (0, 0).
        columns: how many.
        width, height: of a panel as it is seen.
        rows: for each row from the bottom, its panels from the left.
    """

    seen: Motion
    columns: int
    width: Exact
    height: Exact
    rows: tuple[tuple[int, ...], tuple[int, ...]]

    @property
    def length(self) -> Exact:
        """The length of a row."""
        return self.width * self.columns

    def on_sheet(self, along: Exact) -> Point:
        """Give a point of the line between the rows, on the opened sheet."""
        return self.seen.carry_back(Point(along, self.height))


@frozen
class SlitLimits:
    """How far a slit runs and how far it may: distances from the left end of the line between the rows.

    Args:
        needed: from where to where it must run for the ring to close.
        strong: from where to where it may run while each end leaf keeps ``LEAST_HINGE`` of its hinge.
        torn: where it would reach the ends of the line, and the end leaves come apart.
        hinges: the parts of the line that still hold, in order, each within one column.
    """

    needed: tuple[Exact, Exact]
    strong: tuple[Exact, Exact]
    torn: tuple[Exact, Exact]
    hinges: tuple[tuple[Exact, Exact], ...]

    @property
    def harmless(self) -> Exact:
        """How much too long the slit may be at each end before a page weakens."""
        return self.needed[0] - self.strong[0]

    @property
    def tearing(self) -> Exact:
        """How much too long at an end makes the end leaf come apart."""
        return self.needed[0] - self.torn[0]

    @property
    def too_short(self) -> tuple[tuple[Exact, Exact], ...]:
        """The parts that must still be cut."""
        return tuple(part for part in self.hinges if part[0] < self.needed[1] and part[1] > self.needed[0])

    def left_of_end_hinges(self) -> tuple[Exact, Exact]:
        """Give the length that is left of the hinge at the left end and at the right end."""
        ends = (
            [end - start for start, end in self.hinges if end <= self.needed[0]],
            [end - start for start, end in self.hinges if start >= self.needed[1]],
        )
        return sum(ends[0], ZERO), sum(ends[1], ZERO)


def grid(state: FoldedState) -> Grid:
    """See the opened sheet as two rows of panels, whichever way it was creased.

    Raises:
        NotABooklet: it is not 2 rows of 4, 6, 8 … equal panels.
    """
    boxes = [polygons.box(panel.corners) for panel in state.panels]
    sheet, columns = state.sheet, len(boxes) // 2
    sizes = {(box.width, box.height) for box in boxes}
    squares = all(
        polygons.area(panel.corners) == box.width * box.height
        for panel, box in zip(state.panels, boxes, strict=True)
    )
    level = sizes == {(sheet.width / columns, sheet.height / 2)} if columns else False
    upright = sizes == {(sheet.width / 2, sheet.height / columns)} if columns else False
    if not (squares and (level or upright)) or columns % 2 or columns < FEWEST_COLUMNS:
        raise NotABooklet(
            phrase("an open sheet becomes a booklet if it has 2 rows of 4, 6 or 8 equal panels and a slit"),
            phrase("crease 2 by 4 equal panels and slit the middle, or gather the sheet while it is folded"),
        )
    seen = AT_REST if level else quarter_turn(Point(ZERO, ZERO)).then(shift(sheet.height, ZERO))
    placed = [landed(panel, seen) for panel in state.panels]
    order = sorted(range(len(placed)), key=lambda index: (placed[index].bottom, placed[index].left))
    rows = (tuple(order[:columns]), tuple(order[columns:]))
    return Grid(seen=seen, columns=columns, width=placed[0].width, height=placed[0].height, rows=rows)


def slit_limits(state: FoldedState) -> SlitLimits:
    """Tell how far the slit of a sheet with two rows of panels runs, must run, and may run, in sheet units.

    Raises:
        NotABooklet: the sheet is not 2 rows of 4, 6, 8 … equal panels.
    """
    found = grid(state)
    spare = found.width * (ONE - LEAST_HINGE)
    low, high = found.width, found.length - found.width
    return SlitLimits((low, high), (low - spare, high + spare), (ZERO, found.length), _holding(state, found))


def _holding(state: FoldedState, found: Grid) -> tuple[tuple[Exact, Exact], ...]:
    """Give the parts of the line between the rows that still hold, as seen, from the left."""
    column = {panel: index for row in found.rows for index, panel in enumerate(row)}
    spans = []
    for hinge in hinges(state.panels):
        if column[hinge.one] == column[hinge.other]:
            start, end = sorted(found.seen.carry(point).x for point in (hinge.start, hinge.end))
            spans.append((start, end))
    return tuple(sorted(spans))


def require_slit(state: FoldedState, found: Grid) -> tuple[Said, ...]:
    """Make sure that the slit lets the ring close, and give warnings if it is longer than is good.

    Raises:
        SlitTooShort: a hinge between the inner columns still holds.
        SlitTooLong: it runs on to an end of the sheet.
    """
    limits = slit_limits(state)
    if limits.too_short:
        raise _too_short(state, found, limits)
    left = limits.left_of_end_hinges()
    if ZERO in left:
        needed = slit_between(state, *(found.on_sheet(end) for end in limits.needed))
        raise SlitTooLong(
            phrase("the slit runs to the end of the sheet, so an end leaf comes apart"),
            needed,
            length_said(limits.harmless, state.sheet.unit),
        )
    return tuple(
        phrase(
            "the slit leaves {kept} of the hinge in an end leaf; below half it may tear",
            kept=length_said(kept, state.sheet.unit),
        )
        for kept in sorted(set(left))
        if kept < found.width * LEAST_HINGE
    )


def _too_short(state: FoldedState, found: Grid, limits: SlitLimits) -> SlitTooShort:
    wanted = slit_between(state, *(found.on_sheet(end) for end in limits.needed))
    parts = []
    for start, end in _joined(limits.too_short):
        gap = slit_between(state, found.on_sheet(start), found.on_sheet(end))
        parts.append(_gap_said(gap, length_said(end - start, state.sheet.unit)))
    gaps = listed(parts)
    if _joined(limits.hinges) != [limits.torn]:
        return SlitTooShort(
            phrase("the slit is too short: a hinge blocks the closing {gaps}", gaps=gaps), wanted
        )
    return SlitTooShort(phrase("there is no slit: a hinge blocks the closing {gaps}", gaps=gaps), wanted)


def _gap_said(gap: Slit, more: Phrase) -> Phrase:
    places = {"start": written(gap.start), "end": written(gap.end), "more": more}
    if gap.axis is Axis.HEIGHT:
        return phrase("from {start} to {end} of the width ({more} more to cut)", **places)
    return phrase("from {start} to {end} of the height ({more} more to cut)", **places)


def _joined(parts: tuple[tuple[Exact, Exact], ...]) -> list[tuple[Exact, Exact]]:
    joined: list[tuple[Exact, Exact]] = []
    for start, end in parts:
        if joined and joined[-1][1] == start:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined
