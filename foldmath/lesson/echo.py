"""The echo of a step: each crease as a fraction of the whole sheet, the panel sizes, and "did you mean …?".

A wrong fold can look right: left edge to the middle, then right edge to the middle, does not make fourths
when the second is measured on the folded sheet. So every command that reads steps says where creases fell.
"""

from typing import assert_never

from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.measures import length_said, share_said, sides_said
from foldmath.paper.moments.moment import CreasePlace, Moment
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import (
    Axis,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldStep,
    Gather,
    OpenStep,
    Shade,
    Slit,
    TurnStep,
)
from foldmath.phrases import Phrase, Said, counted, joined, listed, phrase
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, exact, numerator, written
from foldmath.words.steps import WrittenStep

COMMON_DENOMINATORS = (2, 3, 4, 5, 6, 8, 9, 10, 12)
NEAR = exact(1, 40)
"""Closer than this share of the sheet, a crease may have been meant for a common one: 7 mm of letter."""

MOST_PLACES_LISTED = 11
"""A pleat into twelve is still told crease by crease."""

PART_NAMES = {
    2: phrase("halves"),
    3: phrase("thirds"),
    4: phrase("fourths"),
    5: phrase("fifths"),
    6: phrase("sixths"),
    8: phrase("eighths"),
    9: phrase("ninths"),
    10: phrase("tenths"),
    12: phrase("twelfths"),
}


def places_in_words(moment: Moment) -> Phrase:
    """Say where a step made creases, in fractions of the whole sheet; empty where it made none."""
    parts = []
    for axis in Axis:
        at = [
            share_said(place.at) for place in moment.new_places if place.axis is axis and place.at is not None
        ]
        if at:
            parts.append(_along_width(at) if axis is Axis.WIDTH else _along_height(at))
    parts += [_slant(place) for place in moment.new_places if place.axis is None]
    return joined("; ", parts)


def _along_width(at: list[Said]) -> Phrase:
    if len(at) > MOST_PLACES_LISTED:
        ends = {"first": at[0], "last": at[-1]}
        return phrase("{number} creases, from {first} to {last} of the width", number=len(at), **ends)
    return counted(
        "crease at {places} of the width", "creases at {places} of the width", len(at), places=listed(at)
    )


def _along_height(at: list[Said]) -> Phrase:
    if len(at) > MOST_PLACES_LISTED:
        ends = {"first": at[0], "last": at[-1]}
        return phrase("{number} creases, from {first} to {last} of the height", number=len(at), **ends)
    return counted(
        "crease at {places} of the height", "creases at {places} of the height", len(at), places=listed(at)
    )


def _slant(place: CreasePlace) -> Phrase:
    return phrase("a slanted crease from {start} to {end}", start=place.start, end=place.end)


def sizes_in_words(moment: Moment) -> Said:
    """Say how many panels have which size."""
    return listed(
        [
            counted("{count} panel of {area}", "{count} panels of {area}", count, area=share_said(area))
            for area, count in moment.sizes.items()
        ]
    )


def echo_of(moment: Moment) -> Said:
    """Say what a step did to creases and panels, in one line."""
    made = places_in_words(moment)
    if made.text:
        return joined("; ", (made, sizes_in_words(moment)))
    step = moment.step
    if isinstance(step, FoldStep):
        return phrase("no new crease; still {sizes}", sizes=sizes_in_words(moment))
    if isinstance(step, OpenStep | TurnStep | Shade):
        return ""
    match step:
        case Slit():
            return _slit_echo(step, moment)
        case Gather():
            return _booklet_echo(step, moment)
        case _:
            assert_never(step)


def _slit_echo(step: Slit, moment: Moment) -> Phrase:
    box = moment.before.table.box
    length = (step.end - step.start) * (box.height if step.axis is Axis.WIDTH else box.width)
    told = {"length": length_said(length, moment.before.sheet.unit), "sizes": sizes_in_words(moment)}
    if moment.before.table.layers > 1:
        return phrase("a cut {length} long through all layers there; still {sizes}", **told)
    return phrase("a cut {length} long; still {sizes}", **told)


def _booklet_echo(step: Gather, moment: Moment) -> Phrase:
    made = booklet(moment.before, step.column)
    page = sides_said(made.width, made.height, moment.before.sheet.unit)
    told = phrase("a booklet of {pages} pages, each {page}", pages=len(made.pages), page=page)
    return joined("; ", (told, *made.warnings))


def did_you_mean(steps: tuple[WrittenStep, ...], moments: tuple[Moment, ...], index: int) -> Said:
    """Ask whether a common fold was meant, where step ``index`` just missed one; empty if it did not."""
    moment = moments[index]
    return _gate_missed(steps, index) or _edge_to_part(moment) or _near_common(moment)


def _gate_missed(steps: tuple[WrittenStep, ...], index: int) -> Said:
    """An edge to the middle, and then the opposite edge to the middle of what is left."""
    step, before = steps[index].step, steps[index - 1].step if index else None
    if not (isinstance(step, FoldEdge) and isinstance(before, FoldEdge)):
        return ""
    if step.to != HALF or before.to != HALF or step.edge is not before.edge.opposite:
        return ""
    return phrase(
        "did you mean {parts}? This middle is of the paper as it lies; '{step}' measures both folds "
        "before the first",
        parts=PART_NAMES[4],
        step=FoldBothEdges(step.edge.axis),
    )


def _edge_to_part(moment: Moment) -> Said:
    """An edge carried to 1/3 creases at 1/6: half of the way; not asked if a crease lies there to meet."""
    step = moment.step
    if not isinstance(step, FoldEdge) or _crease_lies_at(step, moment.before):
        return ""
    part = step.to if step.edge.position == ZERO else ONE - step.to
    name = PART_NAMES.get(denominator(part))
    if numerator(part) != 1 or denominator(part) == len(Axis) or not name or part == ONE:
        return ""
    crease = part * HALF
    at = part if step.edge.position == ZERO else ONE - part
    return phrase(
        "did you mean {parts}? An edge brought to {to} makes its crease halfway, at {crease} from it; "
        "'{step}' makes it at {at}",
        parts=name,
        to=written(step.to),
        crease=written(crease),
        step=FoldAt(at, step.edge),
        at=written(at),
    )


def _crease_lies_at(step: FoldEdge, before: FoldedState) -> bool:
    """Tell whether a panel ends on the line that the edge is carried to."""
    aim = before.table.box.at(step.to, step.to)
    across = step.edge.axis is Axis.WIDTH
    return any(
        (start.x == aim.x == end.x) if across else (start.y == aim.y == end.y)
        for panel in before.panels
        for start, end in zip(panel.lying, (*panel.lying[1:], panel.lying[0]), strict=True)
    )


def _near_common(moment: Moment) -> Said:
    """A crease close to a common fraction of the sheet, yet not on it; on paper aslant that is chance."""
    if not isinstance(moment.step, FoldAt | FoldEdge | FoldBothEdges) or len(moment.sizes) == 1:
        return ""
    if any(place.axis is None for place in moment.new_places):
        return ""
    for place in moment.new_places:
        if place.at is None or denominator(place.at) in COMMON_DENOMINATORS:
            continue
        near = _nearest_common(place.at)
        if abs(near - place.at) <= NEAR:
            return _close(place, place.at, near)
    return ""


def _close(place: CreasePlace, at: Exact, near: Exact) -> Phrase:
    told = {"parts": PART_NAMES[denominator(near)], "at": share_said(at), "near": written(near)}
    if place.axis is Axis.WIDTH:
        return phrase("did you mean {parts}? {at} of the width is close to {near}", **told)
    return phrase("did you mean {parts}? {at} of the height is close to {near}", **told)


def _nearest_common(at: Exact) -> Exact:
    candidates = [exact(part, parts) for parts in COMMON_DENOMINATORS for part in range(1, parts)]
    return min(candidates, key=lambda candidate: (abs(candidate - at), denominator(candidate)))
