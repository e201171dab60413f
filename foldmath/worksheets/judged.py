"""The sentence that is true or false: takes what a page shows of its folds, gives one about a named step."""

from collections.abc import Iterator
from itertools import pairwise
from random import Random

from foldmath.statements.checking.claims import really
from foldmath.statements.composing import compared, equation, less
from foldmath.statements.expressions import Claim, Comparison, Expression
from foldmath.statements.ratios import fraction
from foldmath.values import frozen
from foldmath.worksheets.fold_rows import FoldRow
from foldmath.worksheets.folding_part import FoldingPart, Slip, Talk

ONE_TRUE_IN = 3
"""About one sentence in so many is true, where pupils are asked if it is [common practice, no source]."""


@frozen(kw_only=True)
class Judged:
    """A sentence about a step, to be called true or false.

    Args:
        number: on the page, on from its items.
        row: the number of the fold's row.
        claim: what stands on the page.
        true: whether it is true.
        panels: how many panels the step made.
        count: what is true of their number; None where only sizes are compared.
        size: what is true of size: the multiplication, or the fraction before it is taught, or a comparison.
        also: other true sentences that it may be corrected to.
        talk: what the class says of it; None where only sizes are compared.
    """

    number: int
    row: int
    claim: Claim
    true: bool
    panels: int
    count: Claim | None
    size: Claim | Expression
    also: tuple[Claim, ...]
    talk: Talk | None


def count_judged(slip: Slip, number: int, code: str, *, multiplies: bool) -> Judged:
    """Ask of the count/size slip of a fold; one time in three a true sentence stands in its place.

    Args:
        slip: with what is true instead.
        number: of the sentence on the page.
        code: of the page, by which it is chosen whether the sentence is true.
        multiplies: whether this class multiplies fractions by fractions.
    """
    true = _is_true(code)
    claim = slip.rejoined if true else slip.claim
    return Judged(
        number=number,
        row=slip.row,
        claim=claim,
        true=true,
        panels=slip.panels,
        count=slip.count,
        size=slip.size if multiplies else slip.size.answer,
        also=tuple(other for other in slip.corrections if other != slip.count),
        talk=Talk(
            kind="rejoined" if true else "mixed",
            slip=slip,
            claim=claim,
            really=claim if true else really(claim),
        ),
    )


def sizes_judged(folding: FoldingPart, number: int, code: str) -> Judged | None:
    """Ask a class that multiplies no fractions how panels before and after a fold compare.

    Args:
        folding: the folds of the lesson.
        number: of the sentence on the page.
        code: of the page, by which fold and sentence are chosen.

    Returns:
        None where no fold after the first cut all panels alike.
    """
    asked = [(row, *told) for before, row in pairwise(folding.rows) for told in _told(before, row)]
    if not asked:
        return None
    row, false, rightly, right = Random(f"{code}{len(asked)}").choice(asked)
    true = _is_true(code)
    return Judged(
        number=number,
        row=row.number,
        claim=rightly if true else false,
        true=true,
        panels=row.panels,
        count=None,
        size=right,
        also=(),
        talk=None,
    )


def _told(before: FoldRow, row: FoldRow) -> Iterator[tuple[Claim, Claim, Claim]]:
    """Give a false sentence, a true one that looks like it, and what is true instead.

    ``1/8 > 1/4``, ``1/4 > 1/8`` and ``1/8 < 1/4``; ``1/8 = 2/4``, ``2/8 = 1/4`` and that again, but no
    ``1/4 = 2/2``.
    """
    parts, odd = divmod(row.panels, before.panels)
    if before.each and row.each and parts > 1 and not odd:
        was, now = before.each, row.each
        yield compared(now, Comparison.GREATER, was), compared(was, Comparison.GREATER, now), less(now, was)
        if parts < before.panels:
            same = equation(fraction(parts, row.panels), was)
            yield equation(now, fraction(parts, before.panels)), same, same


def _is_true(code: str) -> bool:
    return Random(code).randrange(ONE_TRUE_IN) == 0
