"""From a crease pattern to the straight folds that make it: takes the pattern, gives steps, or says why not.

A folding is a run of folds that begins with the open sheet and ends with opening it. All creases of the last
folding are as the pattern has them; where they run, an earlier folding may have creased the paper either
way. So foldings are sought from the last to the first: each must crease only where creases are wanted, of the
kind wanted there, and each one found only frees the ones before it. No choice is ever regretted, and where
no folding makes a crease that is still missing, no sequence of folds makes the pattern.
"""

from heapq import heappop, heappush

from foldmath.fold_format.refolding.crease_pattern import CreasePattern
from foldmath.fold_format.refolding.cutting import cutting
from foldmath.fold_format.refolding.fold_choices import Choice, Chooser, new_creases
from foldmath.fold_format.refolding.wanted_creases import WantedCreases
from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.files.wanted import MOST_STEPS
from foldmath.lesson.grammar.numerals import LARGEST_NUMBER
from foldmath.paper.state import CreaseLine, FoldedState, open_sheet
from foldmath.paper.steps import FoldStep, Open, Step
from foldmath.phrases import Phrase, phrase
from foldmath.plane.numbers import ZERO, Exact, written
from foldmath.plane.polygons import Box
from foldmath.values import frozen

MOST_TRIED = 2_000
"""Folds tried for one folding before the search ends without an answer."""

ENOUGH_TRIED = 250
"""Folds tried for one folding once one is found: the first found is seldom the one that makes most."""

MOST_IN_ALL = 3_000
"""Folds tried for a whole pattern: some seconds."""


@frozen
class Folding:
    """Folds from the open sheet.

    Args:
        steps: the folds.
        creases: all that they make.
        state: the paper after them.
        gain: how many pieces of crease they make that were missing.
    """

    steps: tuple[FoldStep, ...]
    creases: tuple[CreaseLine, ...]
    state: FoldedState
    gain: int

    def then(self, choice: Choice) -> "Folding | None":
        """Add a fold, or give None if no step can say it."""
        step = choice.as_step(self.state)
        if step is None:
            return None
        creases = new_creases(self.state, choice.after)
        steps, gain = (*self.steps, step), self.gain + choice.gain
        return Folding(steps, (*self.creases, *creases), choice.after, gain)


def refolded(pattern: CreasePattern, most_tried: int = MOST_TRIED) -> tuple[Step, ...]:
    """Give steps after which the opened sheet has just these creases, of these kinds, and these slits.

    Raises:
        PatternRefused: there are none, or none was found within ``most_tried`` tries for one folding,
            ``MOST_IN_ALL`` tries in all, and ``MOST_STEPS`` steps.
    """
    if not pattern.creases:
        raise PatternRefused(phrase("has no creases"), phrase("mark creases with M, V or U"))
    wanted = WantedCreases(pattern.creases)
    chooser = Chooser(wanted)
    steps: list[Step] = []
    while wanted.missing:
        folding = _last_folding(pattern, chooser, most_tried)
        wanted.make(folding.creases)
        steps = [*folding.steps, Open(), *steps]
        if len(steps) > MOST_STEPS:
            raise PatternRefused(
                phrase("needs more than {most} steps, and a lesson has no more", most=MOST_STEPS),
                phrase("use a simpler crease pattern"),
            )
    return (*steps, *cutting(pattern.sheet, steps, wanted))


def _last_folding(pattern: CreasePattern, chooser: Chooser, most_tried: int) -> Folding:
    """Find the folding that makes most of the creases still missing, among those looked at."""
    search, began = _Search(open_sheet(pattern.sheet), chooser), chooser.tried
    while search.waiting:
        tried = chooser.tried - began
        if search.best.gain and tried > (most_tried if search.bettered else ENOUGH_TRIED):
            break
        if tried > most_tried or chooser.tried > MOST_IN_ALL:
            raise _not_found(chooser.wanted, chooser.tried)
        search.look_further()
    if search.best.gain:
        return search.best
    raise _impossible(chooser.wanted) if search.all_said else _unsayable(chooser.wanted)


class _Search:
    """Foldings looked at, those that make most first, and shorter ones before longer ones."""

    def __init__(self, sheet: FoldedState, chooser: Chooser) -> None:
        self.chooser = chooser
        self.best = Folding((), (), sheet, 0)
        self.waiting: list[tuple[int, int, Exact, int, Folding]] = [(0, 0, ZERO, 0, self.best)]
        self.all_said = True
        self.bettered = False
        # Which creases are made says how the paper lies, but for how it is turned and which layer is where.
        self._seen: set[tuple[frozenset[CreaseLine], Box]] = set()

    def look_further(self) -> None:
        """Look at every fold that may follow the best folding that waits."""
        *_, folding = heappop(self.waiting)
        self.bettered = False
        for choice in self.chooser.choices(folding.state):
            following = folding.then(choice)
            if following is None:
                self.all_said = False
                continue
            mark = frozenset(following.creases), following.state.table.box
            if mark in self._seen:
                continue
            self._seen.add(mark)
            if following.gain > self.best.gain:
                self.best, self.bettered = following, True
                if following.gain == len(self.chooser.wanted.missing):
                    self.waiting.clear()
                    return
            place = (-following.gain, len(following.steps), choice.off_centre, len(self._seen))
            heappush(self.waiting, (*place, following))


def _missing(wanted: WantedCreases) -> Phrase:
    start, end = wanted.spans[min(wanted.missing)]
    places = [f"({written(point.x)}, {written(point.y)})" for point in (start, end)]
    return phrase("the crease from {start} to {end}", start=places[0], end=places[1])


def _impossible(wanted: WantedCreases) -> PatternRefused:
    return PatternRefused(
        phrase(
            "no sequence of straight folds through all layers makes {wanted} as it is",
            wanted=_missing(wanted),
        ),
        phrase("change its kind (M or V) or that of creases it meets, or leave it unassigned (U)"),
    )


def _unsayable(wanted: WantedCreases) -> PatternRefused:
    return PatternRefused(
        phrase(
            "the folds that might make {wanted} need numbers above {largest} to be said",
            wanted=_missing(wanted),
            largest=f"{LARGEST_NUMBER:,}",
        ),
        phrase("use creases through simple fractions of the sheet"),
    )


def _not_found(wanted: WantedCreases, tried: int) -> PatternRefused:
    return PatternRefused(
        phrase(
            "no sequence of straight folds was found in {tried} tries; {wanted} is still missing",
            tried=tried,
            wanted=_missing(wanted),
        ),
        phrase("use a simpler crease pattern, or give M or V to creases that are unassigned"),
    )
