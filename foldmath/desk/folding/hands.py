"""What the page must know before a hand takes the paper: names, places in the picture, and sentences."""

from math import hypot
from typing import Any

from foldmath.desk.folding.paper_now import PaperNow
from foldmath.drawing.layout import View
from foldmath.measured import as_float
from foldmath.paper.steps import Axis, Edge, FoldBothEdges, Step
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, written
from foldmath.plane.polygons import Box
from foldmath.pointing.acts import Act, Choice
from foldmath.pointing.folds import Held, HeldCorner, HeldEdge, OfferedFold, held_things, offered_folds
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence

FINEST = 12
"""Twelfths and what is finer pull alike."""

PLACES = 3
"""Decimals of a mm in the picture that a screen can show."""


class _Frame:
    """Carries shares of the paper's box into the picture, heights counted from the top."""

    def __init__(self, bounds: Box, view: View) -> None:
        left, bottom = as_float(bounds.left), as_float(bounds.bottom)
        self.left = view.margin_mm + (left - view.left) * view.scale
        self.foot = view.height_mm - view.margin_mm - (bottom - view.bottom) * view.scale
        self.width = as_float(bounds.width) * view.scale
        self.height = as_float(bounds.height) * view.scale

    def spot(self, share: Point) -> tuple[float, float]:
        return self.left + as_float(share.x) * self.width, self.foot - as_float(share.y) * self.height


def offers(now: PaperNow, view: View, language: str) -> dict[str, Any]:
    """Give what can be taken, and every fold that can be done with it, all in mm of the picture.

    Args:
        now: the lesson.
        view: of the picture in which the sheet lies.
        language: of the names; sentences are in that of the lesson, in which they will stand.
    """
    frame = _Frame(now.state.table.box, view)
    held = {thing: number for number, thing in enumerate(held_things(now.state))}
    return {
        "held": [_taken(thing, frame, language) for thing in held],
        "folds": [_fold(fold, held, frame, now.lesson.language) for fold in offered_folds(now.state)],
    }


def _taken(held: Held, frame: _Frame, language: str) -> dict[str, Any]:
    """Tell of an edge or a corner: its name, where the hand has it, and the edge from end to end."""
    return {
        "name": say(name_of(held), language),
        "grip": _rounded(*frame.spot(held.grip)),
        "along": [_rounded(*frame.spot(end)) for end in _ends(held)],
    }


def _ends(held: Held) -> tuple[Point, ...]:
    if isinstance(held, HeldCorner):
        return ()
    at = held.edge.position
    if held.edge.axis is Axis.WIDTH:
        return Point(at, ZERO), Point(at, ONE)
    return Point(ZERO, at), Point(ONE, at)


def _fold(fold: OfferedFold, held: dict[Held, int], frame: _Frame, language: str) -> list[Any]:
    """Write a fold: what travels, where it lands, a point and unit normal of the crease, how plain it is.

    Then the sentences, over and behind. A list and no object, since there are five hundred.
    """
    (x, y), (to_x, to_y) = frame.spot(fold.held.grip), frame.spot(fold.lands)
    away_x, away_y = x - to_x, y - to_y
    length = hypot(away_x, away_y)
    return [
        held[fold.held],
        *_rounded(to_x, to_y),
        *_rounded((x + to_x) / 2, (y + to_y) / 2),
        round(away_x / length, 6),
        round(away_y / length, 6),
        min(fold.plainness, FINEST),
        step_sentence(fold.step, language),
        step_sentence(fold.behind, language),
    ]


def _rounded(x: float, y: float) -> list[float]:
    return [round(x, PLACES), round(y, PLACES)]


def name_of(held: Held) -> Phrase:
    """Name what is in the hand."""
    if isinstance(held, HeldEdge):
        return EDGES[held.edge]
    corner = (held.grip.x, held.grip.y)
    if corner in CORNERS:
        return CORNERS[corner]
    return phrase("corner at {across}, {up}", across=written(held.grip.x), up=written(held.grip.y))


EDGES = {
    Edge.LEFT: phrase("left edge"),
    Edge.RIGHT: phrase("right edge"),
    Edge.TOP: phrase("top edge"),
    Edge.BOTTOM: phrase("bottom edge"),
}
CORNERS = {
    (ZERO, ZERO): phrase("bottom left corner"),
    (ONE, ZERO): phrase("bottom right corner"),
    (ZERO, ONE): phrase("top left corner"),
    (ONE, ONE): phrase("top right corner"),
}


def sayable(now: PaperNow, offered: dict[str, Any], acts: dict[Act, Choice], language: str) -> list[str]:
    """Give all that can be said now, plainest first, for the field in which steps are typed."""
    said = [step_sentence(step, language) for step in _gates(now)]
    said += [step_sentence(step, language) for choice in acts.values() for step in choice.steps]
    folds = [sentence for fold in offered["folds"] for sentence in fold[-2:-1]]
    return list(dict.fromkeys([*folds, *said]))


def _gates(now: PaperNow) -> tuple[Step, ...]:
    return () if now.state.gathered else (FoldBothEdges(Axis.WIDTH), FoldBothEdges(Axis.HEIGHT))
