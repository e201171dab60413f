"""How an answer is worked out, step by step, the right way or by a rule; and what slips a step leads to."""

from collections.abc import Callable, Iterator
from enum import Enum
from math import prod

from foldmath.statements.products import Product
from foldmath.statements.ratios import to_common_denominator
from foldmath.statements.rules import Rule
from foldmath.statements.rules.folds import ALL_SHADED, COUNT_FOR_SIZE, PART_FOR_WHOLE
from foldmath.statements.rules.operations import (
    ADD_DENOMINATORS,
    ADD_INSTEAD,
    ADD_NUMERATORS,
    ADD_TOPS_AND_BOTTOMS,
    DROP_DENOMINATOR,
    INVERT_FIRST,
    INVERT_SECOND,
    KEEP_COMMON_DENOMINATOR,
    MULTIPLY_BOTH_BY_WHOLE,
    SUBTRACT_INSTEAD,
)
from foldmath.statements.rules.problems import (
    OtherName,
    PanelCut,
    PanelsMade,
    PartsOfParts,
    Problem,
    SheetsCut,
)
from foldmath.values import frozen

BASE = 10
"""Of the figures that numbers are written with."""


class Act(Enum):
    """What is done with two numbers."""

    TIMES = "×"
    PLUS = "+"
    MINUS = "−"
    KEEP = ""
    """The number is there already."""


@frozen
class Step:
    """One number of an answer, worked out from two."""

    act: Act
    left: int
    right: int = 0

    @property
    def result(self) -> int:
        """What comes out."""
        return {
            Act.TIMES: self.left * self.right,
            Act.PLUS: self.left + self.right,
            Act.MINUS: abs(self.left - self.right),
            Act.KEEP: self.left,
        }[self.act]

    @property
    def text(self) -> str:
        """The step as it is written: ``3 × 4``."""
        return f"{self.left} {self.act.value} {self.right}" if self.act is not Act.KEEP else f"{self.left}"

    @property
    def slips(self) -> frozenset[int]:
        """What else may come out by one slip.

        In a times table that is the entry above, below or beside the right one; by 1 nobody slips. In adding
        and subtracting it is one more or less. Two figures may be put beside each other instead.

        Source:
            Most slips in a times table are answers to a table fact with one factor in common and the other
            near: J. I. D. Campbell and D. J. Graham, Canadian Journal of Psychology 39 (1985) 338-366 [from
            memory]. Adding, and figures put beside each other: common practice, no source.
        """
        left, right = self.left, self.right
        near: set[int] = set()
        if self.act is Act.TIMES and min(left, right) > 1:
            near = {left * (right - 1), left * (right + 1), (left - 1) * right, (left + 1) * right}
        elif self.act in (Act.PLUS, Act.MINUS):
            near = {self.result - 1, self.result + 1}
        if self.act is not Act.KEEP and min(left, right) > 0 and max(left, right) < BASE:
            near |= {BASE * left + right, BASE * right + left}
        return frozenset(near - {0, self.result})


@frozen
class Working:
    """A numerator and a denominator, each worked out in one step."""

    above: Step
    below: Step

    @property
    def written(self) -> tuple[int, int]:
        """The answer as it is written."""
        return self.above.result, self.below.result

    def slipped(self) -> Iterator[tuple[Step, tuple[int, int]]]:
        """Give every answer that one slip leads to, with the step at which it happened."""
        above, below = self.written
        yield from ((self.above, (wrong, below)) for wrong in sorted(self.above.slips))
        yield from ((self.below, (above, wrong)) for wrong in sorted(self.below.slips))


def times(left: int, right: int) -> Step:
    """Multiply."""
    return Step(Act.TIMES, left, right)


def plus(left: int, right: int) -> Step:
    """Add."""
    return Step(Act.PLUS, left, right)


def keep(number: int) -> Step:
    """Take a number as it is."""
    return Step(Act.KEEP, number)


def right_working(problem: Problem | None) -> Working | None:
    """Give how a problem is worked out rightly, where that is one step above and one below the bar."""
    match problem:
        case Product(first, second):
            above, below = (
                times(first.numerator, second.numerator),
                times(first.denominator, second.denominator),
            )
            return Working(above, below)
        case PartsOfParts(factors):
            *begun, last = factors
            above = times(prod(factor.numerator for factor in begun), last.numerator)
            return Working(above, times(prod(factor.denominator for factor in begun), last.denominator))
        case OtherName(given, parts):
            return Working(times(given.numerator, parts), keep(problem.denominator))
        case SheetsCut(sheets, parts):
            return Working(times(sheets, parts), keep(1))
        case PanelCut(parts, pieces):
            return Working(keep(1), times(parts, pieces))
        case PanelsMade(before, parts):
            return Working(times(before, parts), keep(1))
    return None


def rule_workings(problem: Problem | None) -> Iterator[tuple[Rule, Working]]:
    """Give how pupils who follow a rule work a product out; a rule may be followed in two ways.

    The first way of a rule gives the rule's own answer.
    """
    if isinstance(problem, Product):
        for rule, ways in _WAYS.items():
            for way in ways:
                working = way(problem)
                if working:
                    yield rule, working


def _common(product: Product) -> tuple[int, int, int]:
    return to_common_denominator(product.first, product.second)


def _multiplied_denominators(product: Product) -> tuple[int, int, int]:
    """Give two numerators over the product of the denominators, where that is not the least common one."""
    first, second = product.first, product.second
    return (
        first.numerator * second.denominator,
        second.numerator * first.denominator,
        first.denominator * second.denominator,
    )


def _keep(product: Product) -> Working:
    above, beside, common = _common(product)
    return Working(times(above, beside), keep(common))


def _keep_multiplied(product: Product) -> Working:
    """3/5 × 1/5 = 15/25 × 5/25 = 75/25."""
    above, beside, common = _multiplied_denominators(product)
    return Working(times(above, beside), keep(common))


def _add(product: Product) -> Working:
    above, beside, common = _common(product)
    return Working(plus(above, beside), keep(common))


def _subtract(product: Product) -> Working:
    above, beside, common = _common(product)
    return Working(Step(Act.MINUS, above, beside), keep(common))


def _invert_first(product: Product) -> Working:
    first, second = product.first, product.second
    return Working(times(first.denominator, second.numerator), times(first.numerator, second.denominator))


def _invert_second(product: Product) -> Working:
    first, second = product.first, product.second
    return Working(times(first.numerator, second.denominator), times(first.denominator, second.numerator))


def _tops_and_bottoms(product: Product) -> Working:
    first, second = product.first, product.second
    return Working(plus(first.numerator, second.numerator), plus(first.denominator, second.denominator))


def _tops_and_bottoms_in_common(product: Product) -> Working:
    """3/5 × 1/2 = 6/10 × 5/10 = 11/20."""
    above, beside, common = _common(product)
    return Working(plus(above, beside), plus(common, common))


def _add_denominators(product: Product) -> Working:
    first, second = product.first, product.second
    return Working(times(first.numerator, second.numerator), plus(first.denominator, second.denominator))


def _add_numerators(product: Product) -> Working:
    first, second = product.first, product.second
    return Working(plus(first.numerator, second.numerator), times(first.denominator, second.denominator))


def _both_by_whole(product: Product) -> Working | None:
    first, second = product.first, product.second
    if first.whole == second.whole:
        return None
    whole, part = (first, second) if first.whole else (second, first)
    return Working(times(whole.numerator, part.numerator), times(whole.numerator, part.denominator))


def _count(product: Product) -> Working | None:
    if not COUNT_FOR_SIZE.answers(product):
        return None
    first, second = product.first, product.second
    counted = times(max(first.numerator, first.denominator), max(second.numerator, second.denominator))
    return Working(counted, keep(1))


def _drop(product: Product) -> Working | None:
    first, second = product.first, product.second
    return None if first.whole == second.whole else Working(times(first.numerator, second.numerator), keep(1))


def _part_for_whole(product: Product) -> Working | None:
    if not PART_FOR_WHOLE.answers(product):
        return None
    first, second = product.first, product.second
    return Working(times(first.numerator, second.numerator), times(first.denominator, second.numerator))


def _first_part_shaded(product: Product) -> Working | None:
    if not ALL_SHADED.answers(product):
        return None
    first, second = product.first, product.second
    return Working(times(first.denominator, second.numerator), times(first.denominator, second.denominator))


def _shaded_across(product: Product) -> Working | None:
    if not ALL_SHADED.answers(product):
        return None
    first, second = product.first, product.second
    panels = times(first.denominator, second.denominator)
    blank = times(first.denominator - first.numerator, second.denominator - second.numerator)
    return Working(Step(Act.MINUS, panels.result, blank.result), panels)


_WAYS: dict[Rule, tuple[Callable[[Product], Working | None], ...]] = {
    KEEP_COMMON_DENOMINATOR: (_keep, _keep_multiplied),
    ADD_INSTEAD: (_add,),
    INVERT_FIRST: (_invert_first,),
    ADD_TOPS_AND_BOTTOMS: (_tops_and_bottoms, _tops_and_bottoms_in_common),
    INVERT_SECOND: (_invert_second,),
    SUBTRACT_INSTEAD: (_subtract,),
    ADD_DENOMINATORS: (_add_denominators,),
    ADD_NUMERATORS: (_add_numerators,),
    MULTIPLY_BOTH_BY_WHOLE: (_both_by_whole,),
    DROP_DENOMINATOR: (_drop,),
    PART_FOR_WHOLE: (_part_for_whole,),
    ALL_SHADED: (_first_part_shaded, _shaded_across),
    COUNT_FOR_SIZE: (_count,),
}
