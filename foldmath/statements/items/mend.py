"""Mend the mistake: a worked answer with one known slip in it, to be put right."""

from enum import Enum
from functools import cache
from typing import ClassVar

from foldmath.statements.answers import working, worth
from foldmath.statements.composing import divided, equation, joined, part_of, plus, times
from foldmath.statements.expressions import Claim, Expression, Sign
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, to_common_denominator, whole_number
from foldmath.statements.rules import Rule
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE
from foldmath.statements.rules.operations import (
    ADD_INSTEAD,
    INVERT_FIRST,
    INVERT_SECOND,
    KEEP_COMMON_DENOMINATOR,
)
from foldmath.statements.rules.problems import CountMended, PartsAdded
from foldmath.statements.rules.wrong_answers import Published, likely_wrong_answers, published
from foldmath.values import frozen


class Told(Enum):
    """What is told of the slip."""

    PRODUCT = "product"
    """Nothing: ``3/5 × 1/4 = 60/20``."""
    HALVED = "halved"
    """A sheet is folded in half several times: ``2 × 2 × 2 = 2 + 2 + 2 = 6``."""
    FOLDED_TWICE = "folded-twice"
    """A sheet is folded into some parts, then into others: ``3 × 4 = 3 + 4 = 7``."""
    PANELS_FOLDED = "panels-folded"
    """Each of some panels is folded into parts: ``4 × 2 = 4 + 2 = 6``, or ``4 × 1/2 = 8``."""


@frozen(kw_only=True)
class MendItem(Item):
    """A false sentence that a pupil wrote, and the true one; the answer is the whole true sentence.

    Args:
        claim: the false sentence, as ``3/5 × 1/4 = 60/20``.
        lines: the worked answer in steps, the claim's sides among them, as the pupil wrote it down.
        asked: the left side, as ``3/5 × 1/4``.
        given: the wrong right side.
        right: the right side that is true.
        rule: the rule behind the slip.
        study: who wrote this very answer to this very item in a study; None where nobody asked it.
        told: what is told of the slip.
        parts: for a slip at folding, into how many parts each fold cuts every panel; the first of two may be
            how many panels there were.
    """

    kind: ClassVar[ItemKind] = ItemKind.MEND

    answer: Claim
    accepted: tuple[Claim, ...]
    claim: Claim
    lines: tuple[Expression, ...]
    asked: Expression
    given: Ratio
    right: Ratio
    rule: Rule
    study: Published | None
    told: Told
    parts: tuple[int, ...]

    @property
    def rewritten(self) -> bool:
        """Whether the whole sentence is put right, and not its right side alone."""
        return self.rule is COUNT_FOR_SIZE


@cache
def make_mend(product: Product, rule: Rule) -> MendItem:
    """Make the item in which a product was worked out by a rule.

    Raises:
        NoSuchItem: the rule gives no wrong answer to this product.
    """
    given = next((wrong for wrong in rule.answers(product) if worth(wrong) != product.value), None)
    if not isinstance(given, Ratio):
        raise NoSuchItem(f"{rule.name} gives no wrong answer to {product.text}")
    right = product.unreduced
    others = [wrong for wrong in likely_wrong_answers(product, most=4) if worth(wrong.answer) != given.value]
    claim = equation(product.asked, given)
    lines = _lines(product, rule, given)
    return MendItem(
        asks=f"mend {claim}",
        difficulty=Difficulty.MEND.of(product.first, product.second),
        answer=equation(product.asked, right),
        working=working(equation(product.asked, *product.forms)),
        accepted=tuple(equation(product.asked, form) for form in product.equivalents if form != right),
        problem=product,
        wrong=tuple(others[:3]),
        shown=figures_in(claim, *lines),
        claim=claim,
        lines=lines,
        asked=product.asked,
        given=given,
        right=right,
        rule=rule,
        study=published(product.text, str(given)),
        told=Told.PRODUCT,
        parts=(),
    )


def _lines(product: Product, rule: Rule, given: Ratio) -> tuple[Expression, ...]:
    """Write the worked answer out as a pupil would: a middle step where the rule has one."""
    first, second = product.first, product.second
    middle: Expression | None = None
    if rule in (KEEP_COMMON_DENOMINATOR, ADD_INSTEAD) and first.denominator != second.denominator:
        above, beside, common = to_common_denominator(first, second)
        sign = Sign.PLUS if rule == ADD_INSTEAD else Sign.TIMES
        middle = joined(sign, fraction(above, common), fraction(beside, common))
    elif rule == INVERT_FIRST and not first.whole:
        middle = times(fraction(first.denominator, first.numerator), second)
    elif rule == INVERT_SECOND and not second.whole:
        middle = times(first, fraction(second.denominator, second.numerator))
    return (product.asked, given) if middle is None else (product.asked, middle, given)


@cache
def make_mend_count(before: int, parts: int) -> MendItem:
    """Make the item of the count/size slip: ``4 × 1/2 = 8``, where 4 panels were cut in 2 each.

    Raises:
        NoSuchItem: nothing was cut.
    """
    if before < 1 or parts < 2:
        raise NoSuchItem("a fold that cuts no panel shows no slip")
    share, after = fraction(1, parts), before * parts
    divides = equation(divided(before, share), after)
    of = equation(part_of(share, fraction(1, before)), fraction(1, after))
    return _mended(
        lines=(times(before, share),),
        given=after,
        right=after,
        accepted=(divides, of),
        problem=CountMended(before, parts),
        rule=COUNT_FOR_SIZE,
        told=Told.PANELS_FOLDED,
        parts=(before, parts),
    )


@cache
def make_mend_doubling(folds: int) -> MendItem:
    """Make the item of a sheet folded in half several times, its panels counted by adding twos.

    Raises:
        NoSuchItem: with fewer than three folds adding and doubling agree.
    """
    if folds < 3:
        raise NoSuchItem("adding twos and doubling agree up to two folds")
    problem = PartsAdded((2,) * folds)
    return _mended(
        lines=(times(*problem.parts), plus(*problem.parts)),
        given=problem.given.numerator,
        right=problem.panels,
        accepted=(equation(times(2 ** (folds - 1), 2), problem.panels),),
        problem=problem,
        rule=ADD_FOLDS,
        told=Told.HALVED,
        parts=problem.parts,
    )


@cache
def make_mend_adding(first: int, second: int, told: Told) -> MendItem:
    """Make the item of panels counted by adding two numbers that multiply.

    Args:
        first: into how many parts a sheet is folded, or how many panels there were.
        second: into how many parts each of these is folded.
        told: which of these.

    Raises:
        NoSuchItem: nothing is folded, or adding and multiplying agree.
    """
    if min(first, second) < 2 or first == second == 2:
        raise NoSuchItem("adding and multiplying agree, or nothing is folded")
    problem = PartsAdded((first, second))
    return _mended(
        lines=(times(first, second), plus(first, second)),
        given=first + second,
        right=problem.panels,
        accepted=(equation(times(second, first), problem.panels),),
        problem=problem,
        rule=ADD_FOLDS,
        told=told,
        parts=problem.parts,
    )


def _mended(
    *,
    lines: tuple[Expression, ...],
    given: int,
    right: int,
    accepted: tuple[Claim, ...],
    problem: CountMended | PartsAdded,
    rule: Rule,
    told: Told,
    parts: tuple[int, ...],
) -> MendItem:
    asked, wrong = lines[0], whole_number(given)
    claim = equation(asked, wrong)
    return MendItem(
        asks=f"mend {claim}",
        difficulty=Difficulty.MEND.of(more=(right - 1).bit_length() if rule is ADD_FOLDS else 0),
        answer=problem.value,
        working=working(problem.value),
        accepted=accepted,
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(claim, *lines, wrong, *([whole_number(len(parts))] if told is Told.HALVED else [])),
        claim=claim,
        lines=(*lines, wrong),
        asked=asked,
        given=wrong,
        right=whole_number(right),
        rule=rule,
        study=None,
        told=told,
        parts=parts,
    )
