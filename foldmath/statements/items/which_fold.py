"""Which fold? Panel sizes are given, and steps that make them are asked; the model proves every answer."""

from collections import Counter
from dataclasses import dataclass
from functools import cache
from typing import ClassVar, TypeAlias

from foldmath.errors import StepRefused
from foldmath.paper.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Step
from foldmath.plane.numbers import ONE, Exact, written
from foldmath.statements.items.item import Band, Item, ItemKind, NoSuchItem, difficulty, figures_in
from foldmath.statements.rules import Rule, Said
from foldmath.statements.rules.wrong_answers import MOST_TOLD, WrongAnswer

MOST_ACCEPTED = 4

Sizes: TypeAlias = tuple[tuple[int, Exact], ...]
"""How many panels have which area, smallest first."""


@dataclass(frozen=True)
class FoldSequence:
    """Steps to do one after the other on an open sheet.

    Args:
        sentences: in the step language.
        steps: what they ask for.
    """

    sentences: tuple[str, ...]
    steps: tuple[Step, ...]

    @property
    def text(self) -> str:
        """All sentences in one line."""
        return "; ".join(self.sentences)


@dataclass(frozen=True, kw_only=True)
class WhichFoldItem(Item):
    """Panel sizes, and the steps that make them.

    Args:
        tally: how many panels have which area, smallest area first, as ``((6, "1/6"),)``.
        panels: how many there are in all.
        steps: the sentences of the expected answer, in the step language.
        accepted_steps: other lists of sentences that make panels of the same sizes.
        equal: whether all panels have the same size.
    """

    kind: ClassVar[ItemKind] = ItemKind.WHICH_FOLD

    tally: tuple[tuple[int, str], ...]
    panels: int
    steps: tuple[str, ...]
    accepted_steps: tuple[tuple[str, ...], ...]
    equal: bool


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
    counted = Counter(panel.area for panel in state.panels)
    return tuple((counted[area], area) for area in sorted(counted))


@cache
def make_which_fold(
    answer: FoldSequence,
    others: tuple[FoldSequence, ...],
    slips: tuple[tuple[Rule, FoldSequence], ...],
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
    tally = tuple((count, written(area)) for count, area in sizes)
    alike = [other for other in others if other.text != answer.text and sizes_after(other.steps) == sizes]
    terms = [f"{count} × {area}" for count, area in tally]
    shown = " + ".join(terms)
    return WhichFoldItem(
        asks=f"which fold: {shown}",
        difficulty=difficulty(Band.WHICH_FOLD, more=3 * len(tally) + len(answer.steps)),
        answer=answer.text,
        working=f"{shown} = 1",
        accepted=tuple(other.text for other in alike[:MOST_ACCEPTED]),
        problem=None,
        wrong=_unlike(sizes, slips),
        shown=figures_in(*(f"{count}" for count, _ in tally), *(area for _, area in tally)),
        tally=tally,
        panels=sum(count for count, _ in tally),
        steps=answer.sentences,
        accepted_steps=tuple(other.sentences for other in alike[:MOST_ACCEPTED]),
        equal=len(tally) == 1,
    )


def _unlike(sizes: Sizes, slips: tuple[tuple[Rule, FoldSequence], ...]) -> tuple[WrongAnswer, ...]:
    """Keep the slips that make panels of other sizes."""
    wrong = [(rule, slip) for rule, slip in slips if sizes_after(slip.steps) != sizes]
    return tuple(WrongAnswer(Said(slip.text), rule, None) for rule, slip in wrong[:MOST_TOLD])
