"""Which fold? Panel sizes are given, and steps that make them are asked; the model proves every answer."""

from collections import Counter
from functools import cache
from typing import ClassVar, TypeAlias

from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import FoldAt, Pleat, Step
from foldmath.plane.numbers import ONE, Exact, denominator
from foldmath.statements.answers import Folds, working
from foldmath.statements.composing import equation, plus, times
from foldmath.statements.expressions import numbers_in
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.statements.rules import Rule
from foldmath.statements.rules.wrong_answers import MOST_TOLD, WrongAnswer
from foldmath.values import frozen

MOST_ACCEPTED = 4

BY_HAND = (2, 3, 4, 8)
"""So many equal parts hands find without a ruler: halves of halves, and thirds rolled until they are alike
(common practice, no source)."""

Sizes: TypeAlias = tuple[tuple[int, Exact], ...]
"""How many panels have which area, smallest first."""


@frozen(kw_only=True)
class WhichFoldItem(Item):
    """Panel sizes, and the steps that make them.

    Args:
        tally: how many panels have which area, smallest area first, as 6 of ``1/6``.
        panels: how many there are in all.
        steps: those of the expected answer.
        equal: whether all panels have the same size.
    """

    kind: ClassVar[ItemKind] = ItemKind.WHICH_FOLD

    answer: Folds
    accepted: tuple[Folds, ...]
    tally: tuple[tuple[int, Ratio], ...]
    panels: int
    steps: tuple[Step, ...]
    equal: bool

    @property
    def with_ruler(self) -> bool:
        """Whether a fold of the expected answer is measured out, since hands do not find its place."""
        return not set(BY_HAND).issuperset((*_fans(self.steps), *_parts_folded_over(self.steps)))

    @property
    def sizes(self) -> Sizes:
        """How many panels have which area, smallest first."""
        return tuple((count, area.value) for count, area in self.tally)


def _fans(steps: tuple[Step, ...]) -> list[int]:
    """Give into how many parts fans are folded."""
    return [step.parts for step in steps if isinstance(step, Pleat)]


def _parts_folded_over(steps: tuple[Step, ...]) -> list[int]:
    """Give of what parts of the paper one is folded over."""
    return [denominator(step.at) for step in steps if isinstance(step, FoldAt)]


@cache
def sizes_after(steps: tuple[Step, ...]) -> Sizes:
    """Fold a sheet and give how many panels have which area, smallest first.

    Raises:
        NoSuchItem: a step cannot be done.
    """
    state = open_sheet(Sheet(ONE, ONE, "sheet"))
    try:
        for step in steps:
            state = perform(step, state)
    except StepRefused as refusal:
        raise NoSuchItem(f"these steps cannot be done: {refusal.message}") from refusal
    return sizes_of(state)


def sizes_of(state: FoldedState) -> Sizes:
    """Give how many panels have which area, smallest first."""
    counted = Counter(panel.area for panel in state.panels)
    return tuple((counted[area], area) for area in sorted(counted))


@cache
def make_which_fold(
    answer: Folds,
    others: tuple[Folds, ...],
    slips: tuple[tuple[Rule, Folds], ...],
) -> WhichFoldItem:
    """Make the item whose panels are those that ``answer`` makes.

    Args:
        answer: the expected steps.
        others: steps that may be accepted; those that make the same sizes are.
        slips: rules, and the steps that a pupil who follows them may name; those of other sizes are kept.

    Raises:
        NoSuchItem: a step cannot be done, or nothing is folded.
    """
    sizes = sizes_after(answer.steps)
    if len(sizes) == 1 and sizes[0][0] == 1:
        raise NoSuchItem("nothing is folded, so there is no fold to find")
    tally = tuple((count, lowest_terms(area)) for count, area in sizes)
    alike = [other for other in others if other != answer and sizes_after(other.steps) == sizes]
    shown = plus(*(times(count, area) for count, area in tally))
    return WhichFoldItem(
        asks=f"which fold: {shown}",
        difficulty=Difficulty.WHICH_FOLD.of(more=3 * len(tally) + len(answer.steps)),
        answer=answer,
        working=working(equation(shown, 1)),
        accepted=tuple(alike[:MOST_ACCEPTED]),
        problem=None,
        wrong=_unlike(sizes, slips),
        shown=figures_in(*numbers_in(shown)),
        tally=tally,
        panels=sum(count for count, _ in tally),
        steps=answer.steps,
        equal=len(tally) == 1,
    )


def _unlike(sizes: Sizes, slips: tuple[tuple[Rule, Folds], ...]) -> tuple[WrongAnswer, ...]:
    """Keep the slips that make panels of other sizes."""
    wrong = [(rule, slip) for rule, slip in slips if sizes_after(slip.steps) != sizes]
    return tuple(WrongAnswer(slip, rule, None) for rule, slip in wrong[:MOST_TOLD])
