"""Same size: one shaded fraction under two names, by folding the sheet again the other way."""

from functools import cache
from typing import ClassVar

from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS, Axis, Step, fold_into
from foldmath.plane.numbers import ONE, ZERO
from foldmath.statements.answers import working
from foldmath.statements.composing import equation
from foldmath.statements.items.item import BOX, Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.items.sheets import ModelSheet
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.problems import OtherName
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.values import frozen


@frozen(kw_only=True)
class SameSizeItem(Item):
    """An equal fraction to name: ``2/4 = □/8``, where the sheet in fourths is folded once more.

    Args:
        given: the fraction that is shaded.
        parts: into how many parts the fold cuts every panel.
        same: the equal fraction; the pupil writes its numerator.
        question: the sentence, as ``2/4 = □/8``.
        fold: the fold that shows it.
        before: the shaded sheet: columns, ``given`` of them taken.
        after: the same sheet with the new creases.
    """

    kind: ClassVar[ItemKind] = ItemKind.SAME_SIZE

    answer: Ratio
    given: Ratio
    parts: int
    same: Ratio
    question: str
    fold: Step
    before: ModelSheet
    after: ModelSheet


@cache
def make_same_size(given: Ratio, parts: int) -> SameSizeItem:
    """Make the item in which every panel of the sheet is cut into ``parts``.

    Raises:
        NoSuchItem: no pleat makes these parts, or the fraction is no part of one sheet.
    """
    if not (FEWEST_PLEATS <= parts <= MOST_PLEATS and ZERO < given.value < ONE):
        raise NoSuchItem(f"{given} of a sheet cannot be cut into {parts} parts a panel")
    above, below = given.numerator, given.denominator
    same = fraction(above * parts, below * parts)
    question = f"{given} = {BOX}/{same.denominator}"
    return SameSizeItem(
        asks=question,
        difficulty=Difficulty.SAME_SIZE.of(given, more=parts),
        answer=same,
        working=working(equation(given, same)),
        accepted=(),
        problem=OtherName(given, parts),
        wrong=likely_wrong_answers(OtherName(given, parts)),
        shown=figures_in(given, whole_number(same.denominator)),
        given=given,
        parts=parts,
        same=same,
        question=question,
        fold=fold_into(Axis.HEIGHT, parts),
        before=ModelSheet(below, 1, above, 1),
        after=ModelSheet(below, parts, above, parts),
    )
