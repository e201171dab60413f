"""What the sheet's creases give to a page: a number line along an edge, and the board of a game for two."""

import re
from collections.abc import Iterator
from typing import Any

from foldmath.lesson.booklet.matter import Folds, Matter
from foldmath.lesson.booklet.plan import Game, GamePage, NumberLine
from foldmath.lesson.booklet.race import FEWEST_PANELS, MOST_PANELS, Race
from foldmath.lesson.booklet.records import Fold, step_meant
from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.paper.state import CreaseLine, FoldedState, Kind
from foldmath.paper.steps import Axis
from foldmath.phrases import phrase
from foldmath.plane.numbers import ONE, Exact, denominator
from foldmath.statements.ratios import LARGEST_DENOMINATOR

MOST_CREASES = 11
"""A number line on a page of a booklet has room for no more fractions."""

_STEP = re.compile(r"fold|step\s*(?P<step>\d{1,4})", re.IGNORECASE)


def number_line(value: Any, path: Path, matter: Matter, fold: Fold) -> NumberLine | Slip:
    """Read ``width``, ``height``, or ``fold`` and ``step 2`` for the direction that a fold creases.

    Args:
        value: as TOML gives it.
        path: where it stands.
        matter: what the lesson gives to its booklet.
        fold: the step that the page is of.
    """
    text = " ".join(value.split()).casefold() if isinstance(value, str) else ""
    folds = matter.folds
    if text in (Axis.WIDTH.value, Axis.HEIGHT.value):
        axis = Axis(text)
        return _line(axis, folds.creased if folds else None, path)
    if not (found := _STEP.fullmatch(text)):
        message = phrase('a number line is along the "width" or the "height", or of a step')
        return Slip(path, message, 'number_line = "width"')
    step = step_meant(found["step"], path, folds, fold)
    if isinstance(step, Slip) or folds is None:
        return step if isinstance(step, Slip) else NumberLine(Axis.WIDTH, ())
    new = _new_directions(folds, step)
    if len(new) != 1:
        message = phrase("step {step} makes no new crease from edge to edge one way", step=step + 1)
        return Slip(path, message, 'number_line = "width"')
    return _line(new.pop(), folds.states[step + 1], path)


def _new_directions(folds: Folds, step: int) -> set[Axis]:
    """Tell which edges the new creases of a step divide."""
    before, after = (dict(_divided(folds.states[index])) for index in (step, step + 1))
    return {axis for axis in Axis if set(after.get(axis, ())) - set(before.get(axis, ()))}


def _divided(state: FoldedState) -> Iterator[tuple[Axis, tuple[Exact, ...]]]:
    """Give, for each edge, where creases stand upright on it, as parts of its length."""
    sheet = state.sheet
    for axis, length in ((Axis.WIDTH, sheet.width), (Axis.HEIGHT, sheet.height)):
        places = {place / length for crease in state.creases if (place := _place(crease, axis)) is not None}
        yield axis, tuple(sorted(places))


def _place(crease: CreaseLine, axis: Axis) -> Exact | None:
    """Tell where a crease stands on an edge; None if it does not stand upright on it."""
    if crease.kind is Kind.CUT:
        return None
    (one, other) = (crease.start.x, crease.end.x) if axis is Axis.WIDTH else (crease.start.y, crease.end.y)
    return one if one == other else None


def _line(axis: Axis, state: FoldedState | None, path: Path) -> NumberLine | Slip:
    if state is None:
        return NumberLine(axis, ())
    creases = dict(_divided(state))[axis]
    if not 1 <= len(creases) <= MOST_CREASES:
        message = phrase(
            "a number line has 1 to {most} creases, and the {axis} of this sheet has {count}",
            most=MOST_CREASES,
            axis=AXES[axis],
            count=len(creases),
        )
        other = next(one for one in Axis if one is not axis)
        return Slip(path, message, f'number_line = "{other.value}"')
    if any(denominator(crease) > LARGEST_DENOMINATOR for crease in creases):
        message = phrase(
            "a crease here stands at a fraction with more than {most} parts", most=LARGEST_DENOMINATOR
        )
        return Slip(path, message, phrase("leave this out, or fold into fewer parts"))
    return NumberLine(axis, creases)


AXES = {Axis.WIDTH: phrase("width"), Axis.HEIGHT: phrase("height")}


def game(value: Any, path: Path, matter: Matter) -> Game | Slip:
    """Read ``rules`` or ``board``; the sheet must have equal panels, edge to edge."""
    names = {page.value: page for page in GamePage}
    text = value.strip().casefold() if isinstance(value, str) else ""
    if text not in names:
        return Slip(path, phrase('a page of the game holds its "rules" or its "board"'), 'game = "board"')
    if matter.folds is None:
        return Game(names[text], Race(1, 1))
    race = _race(matter.folds.creased)
    if race is None:
        message = phrase(
            "the game needs {fewest} to {most} equal panels in columns and rows, and these folds make none",
            fewest=FEWEST_PANELS,
            most=MOST_PANELS,
        )
        hint = phrase("three halvings make 8 equal panels; or leave this page out")
        return Slip(path, message, hint)
    return Game(names[text], race)


def _race(state: FoldedState) -> Race | None:
    """Give the race over the panels of a sheet; None if they are not equal, or too few or too many."""
    columns, rows = (len(places) + 1 for _, places in _divided(state))
    panels = state.panels
    alike = {panel.area for panel in panels} == {ONE / len(panels)}
    if not alike or len(panels) != columns * rows or not FEWEST_PANELS <= len(panels) <= MOST_PANELS:
        return None
    return Race(columns, rows)
