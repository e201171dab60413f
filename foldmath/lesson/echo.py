"""The echo of a step: each crease as a fraction of the whole sheet, the panel sizes, and "did you mean …?".

A wrong fold can look right: left edge to the middle, then right edge to the middle, does not make fourths
when the second is measured on the folded sheet. So every command that reads steps says where creases fell.
"""

from typing import assert_never

from foldmath.paper.booklet.gathering import booklet
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
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, exact, numerator, written
from foldmath.words.steps import WrittenStep

COMMON_DENOMINATORS = (2, 3, 4, 5, 6, 8, 9, 10, 12)
NEAR = exact(1, 40)
"""Closer than this share of the sheet, a crease may have been meant for a common one: 7 mm of letter."""

MOST_PLACES_LISTED = 11
"""A pleat into twelve is still told crease by crease."""

PART_NAMES = {
    2: "halves",
    3: "thirds",
    4: "fourths",
    5: "fifths",
    6: "sixths",
    8: "eighths",
    9: "ninths",
    10: "tenths",
    12: "twelfths",
}


def places_in_words(moment: Moment) -> str:
    """Say where a step made creases, in fractions of the whole sheet."""
    parts = []
    for axis in Axis:
        at = [written(place.at) for place in moment.new_places if place.axis is axis and place.at is not None]
        if len(at) > MOST_PLACES_LISTED:
            parts.append(f"{len(at)} creases, from {at[0]} to {at[-1]} of the {axis.value}")
        elif at:
            parts.append(f"crease{'s' if len(at) > 1 else ''} at {_listed(at)} of the {axis.value}")
    parts += [_slant(place) for place in moment.new_places if place.axis is None]
    return "; ".join(parts)


def _slant(place: CreasePlace) -> str:
    ends = [f"({written(end.x)}, {written(end.y)})" for end in (place.start, place.end)]
    return f"a slanted crease from {ends[0]} to {ends[1]}"


def sizes_in_words(moment: Moment) -> str:
    """Say how many panels have which size."""
    tally = [
        f"{count} panel{'s' if count > 1 else ''} of {written(area)}" for area, count in moment.sizes.items()
    ]
    return _listed(tally)


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def echo_of(moment: Moment) -> str:
    """Say what a step did to creases and panels, in one line."""
    made = places_in_words(moment)
    if made:
        return f"{made}; {sizes_in_words(moment)}"
    step = moment.step
    if isinstance(step, FoldStep):
        return f"no new crease; still {sizes_in_words(moment)}"
    if isinstance(step, OpenStep | TurnStep | Shade):
        return ""
    match step:
        case Slit():
            return _slit_echo(step, moment)
        case Gather():
            return _booklet_echo(step, moment)
        case _:
            assert_never(step)


def _slit_echo(step: Slit, moment: Moment) -> str:
    box = moment.before.table.box
    length = (step.end - step.start) * (box.height if step.axis is Axis.WIDTH else box.width)
    through = " through all layers there" if moment.before.table.layers > 1 else ""
    return f"a cut {written(length)} {moment.before.sheet.unit} long{through}; still {sizes_in_words(moment)}"


def _booklet_echo(step: Gather, moment: Moment) -> str:
    made = booklet(moment.before, step.column)
    pages = f"{len(made.pages)} pages, each {written(made.width)} by {written(made.height)}"
    return "; ".join([f"a booklet of {pages} {moment.before.sheet.unit}", *made.warnings])


def did_you_mean(steps: tuple[WrittenStep, ...], moments: tuple[Moment, ...], index: int) -> str:
    """Ask whether a common fold was meant, where step ``index`` just missed one; empty if it did not."""
    moment = moments[index]
    return _gate_missed(steps, index) or _edge_to_part(moment) or _near_common(moment)


def _gate_missed(steps: tuple[WrittenStep, ...], index: int) -> str:
    """An edge to the middle, and then the opposite edge to the middle of what is left."""
    step, before = steps[index].step, steps[index - 1].step if index else None
    if not (isinstance(step, FoldEdge) and isinstance(before, FoldEdge)):
        return ""
    if step.to != HALF or before.to != HALF or step.edge is not before.edge.opposite:
        return ""
    gate = (
        "fold both edges to middle" if step.edge.axis is Axis.WIDTH else "fold top and bottom edges to middle"
    )
    return (
        f"did you mean fourths? This middle is of the paper as it lies; '{gate}' measures both folds "
        "before the first"
    )


def _edge_to_part(moment: Moment) -> str:
    """An edge carried to 1/3 creases at 1/6: half of the way; not asked if a crease lies there to meet."""
    step = moment.step
    if not isinstance(step, FoldEdge) or _crease_lies_at(step, moment.before):
        return ""
    part = step.to if step.edge.position == ZERO else ONE - step.to
    name = PART_NAMES.get(denominator(part), "")
    if numerator(part) != 1 or denominator(part) == len(Axis) or not name or part == ONE:
        return ""
    crease = part * HALF
    at = part if step.edge.position == ZERO else ONE - part
    return (
        f"did you mean {name}? An edge carried to {written(step.to)} creases half-way, at "
        f"{written(crease)} from it; 'fold at {written(at)} moving {step.edge.value}' "
        f"creases at {written(at)}"
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


def _near_common(moment: Moment) -> str:
    """A crease close to a common fraction of the sheet, yet not on it."""
    if not isinstance(moment.step, FoldAt | FoldEdge | FoldBothEdges) or len(moment.sizes) == 1:
        return ""
    for place in moment.new_places:
        if place.at is None or denominator(place.at) in COMMON_DENOMINATORS:
            continue
        near = _nearest_common(place.at)
        if abs(near - place.at) <= NEAR:
            parts = PART_NAMES[denominator(near)]
            return (
                f"did you mean {parts}? {written(place.at)} of the {_axis(place)} is close to {written(near)}"
            )
    return ""


def _axis(place: CreasePlace) -> str:
    return place.axis.value if place.axis else ""


def _nearest_common(at: Exact) -> Exact:
    candidates = [exact(part, parts) for parts in COMMON_DENOMINATORS for part in range(1, parts)]
    return min(candidates, key=lambda candidate: (abs(candidate - at), denominator(candidate)))
