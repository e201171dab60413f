"""Count or size? Four sentences about one fold: two say how many panels, two what fraction one panel is."""

from functools import cache
from typing import ClassVar

from foldmath.plane.numbers import ONE, exact
from foldmath.statements.answers import Sorting, working
from foldmath.statements.composing import compared, divided, equation, less, part_of, times
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, Reach, figures_in
from foldmath.statements.ratios import fraction
from foldmath.statements.rules.problems import SentencesSorted, Sorted
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.statements.sentences import About
from foldmath.values import frozen

ARRANGEMENTS = (
    (0, 2, 1, 3),
    (2, 0, 3, 1),
    (0, 2, 3, 1),
    (2, 0, 1, 3),
    (1, 3, 0, 2),
    (3, 0, 2, 1),
    (0, 3, 2, 1),
    (3, 1, 0, 2),
)
"""Orders in which the two sentences of each sort stand, both of one sort never first; each answer twice."""


@frozen(kw_only=True)
class CountOrSizeItem(Item):
    """Four true sentences about one fold, to be sorted.

    Args:
        sentences: in the order in which they stand on the page.
        before: how many equal panels there were.
        parts: into how many the fold cut each of them.
        moment: the index of the step in the lesson; None where the fold is not one of a lesson.
    """

    kind: ClassVar[ItemKind] = ItemKind.COUNT_OR_SIZE

    answer: Sorting
    sentences: tuple[Sorted, ...]
    before: int
    parts: int
    moment: int | None


@cache
def make_count_or_size(
    before: int, parts: int, reach: Reach, *, arrangement: int = 0, moment: int | None = None
) -> CountOrSizeItem:
    """Make the item of a fold that cuts each of ``before`` equal panels into ``parts``.

    Args:
        before: 1 or more equal panels.
        parts: 2 or more.
        reach: which sentences of size a class can read.
        arrangement: which of ``ARRANGEMENTS``, counted round.
        moment: the index of the step in the lesson.

    Raises:
        NoSuchItem: nothing was cut.
    """
    if before < 1 or parts < 2:
        raise NoSuchItem("a fold that cuts no panel has nothing to sort")
    after = before * parts
    counts = [equation(times(before, parts), after), _other_count(before, parts, reach)]
    pairs = [Sorted(claim, About.COUNT) for claim in counts]
    pairs += [Sorted(claim, About.SIZE) for claim in _sizes(before, parts, reach)]
    order = ARRANGEMENTS[arrangement % len(ARRANGEMENTS)]
    sentences = tuple(pairs[index] for index in order)
    problem = SentencesSorted(sentences)
    return CountOrSizeItem(
        asks=f"count or size: {counts[0]}",
        difficulty=Difficulty.COUNT_OR_SIZE.of(more=min(before, 8)),
        answer=problem.value,
        working=working(counts[0], equation(times(after, fraction(1, after)), 1)),
        accepted=(),
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(*(sentence.claim for sentence in sentences)),
        sentences=sentences,
        before=before,
        parts=parts,
        moment=moment,
    )


def _other_count(before: int, parts: int, reach: Reach) -> Claim:
    """Say how many panels there are once more; where sizes are only compared, so are counts."""
    after = before * parts
    if reach is Reach.PAIRS:
        return equation(divided(after, parts), before)
    return compared(after, Comparison.GREATER, before)


def _sizes(before: int, parts: int, reach: Reach) -> list[Claim]:
    """Say the size of one panel in two sentences that a class can read.

    Neither ``1/3 = 2/6`` nor ``2 × 1/6 = 1/3`` is among them: these are about two panels.
    """
    was, now = exact(1, before), exact(1, before * parts)
    if reach is Reach.PAIRS:
        return [equation(part_of(fraction(1, parts), was), now), equation(divided(was, parts), now)]
    return [less(now, was), compared(ONE, Comparison.GREATER, now)]
