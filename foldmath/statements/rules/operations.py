"""Rules of another operation: a pupil adds, subtracts or divides, or does half of one and half of another.

The shares are of the 480 answers to four multiplication items by 120 pupils in R. S. Siegler and A. A. Pyke,
Developmental Psychology 49 (2013) 1994-2004, counted by value from the open data in
github.com/baixiwei/UMA_PR02 (commit d20f3a4). That of ``ADD_TOPS_AND_BOTTOMS`` is of the 96 answers to two
items by 48 pupils in R. S. Siegler, C. A. Thompson and M. Schneider, Cognitive Psychology 62 (2011) 273-296;
in the study of 2013 it is too rare to be listed, and so is one denominator kept without a common one, which
one pupil of those 48 wrote to 3/5 × 1/2. A rule without a share fits problems that neither study
asked [common practice, no source].
"""

from foldmath.plane.numbers import ZERO, denominator, exact
from foldmath.statements.expressions import Claim
from foldmath.statements.products import Product
from foldmath.statements.ratios import (
    Ratio,
    fraction,
    lowest_terms,
    mixed_form,
    to_common_denominator,
    whole_number,
)
from foldmath.statements.rules.problems import InSteps, PanelCut, PartsOfParts, Raised, Sum, Telling
from foldmath.statements.rules.rule import Act, Rule, number
from foldmath.statements.story_numbers import Asks


def _keep_common_denominator(product: Product) -> Ratio | None:
    """3/5 × 1/5 = 3/5, and 3/5 × 1/4 = 12/20 × 5/20 = 60/20."""
    above, beside, common = to_common_denominator(product.first, product.second)
    return number(above * beside, common)


def _keep_second_denominator(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 3/4: the numerators over one denominator, with no step to a common one."""
    above = product.first.numerator * product.second.numerator
    return number(above, product.second.denominator) if _has_two_denominators(product) else None


def _keep_first_denominator(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 3/5."""
    above = product.first.numerator * product.second.numerator
    return number(above, product.first.denominator) if _has_two_denominators(product) else None


def _has_two_denominators(product: Product) -> bool:
    first, second = product.first, product.second
    return not (first.whole or second.whole) and first.denominator != second.denominator


def _add_instead(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 17/20."""
    above, beside, common = to_common_denominator(product.first, product.second)
    return number(above + beside, common)


def _add_all(problem: PartsOfParts) -> Ratio:
    """1/2 × 1/3 × 1/6 = 1."""
    return lowest_terms(sum((factor.value for factor in problem.factors), ZERO))


def _subtract_instead(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 7/20; the smaller from the larger, whichever comes first."""
    above, beside, common = to_common_denominator(product.first, product.second)
    return number(abs(above - beside), common)


def _invert_first(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 5/3 × 1/4 = 5/12."""
    first, second = product.first, product.second
    return number(first.denominator * second.numerator, first.numerator * second.denominator)


def _invert_part_of_quantity(telling: Telling) -> Ratio | None:
    """3/5 of 30 boats = 50 boats, where they come out whole."""
    if telling.asks is not Asks.QUANTITY:
        return None
    inverted = exact(telling.filling.total) / telling.filling.take.value
    return mixed_form(inverted) if denominator(inverted) == 1 else None


def _invert_second(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 3/5 × 4/1 = 12/5, also got by multiplying crosswise."""
    first, second = product.first, product.second
    return number(first.numerator * second.denominator, first.denominator * second.numerator)


def _add_tops_and_bottoms(problem: Product | Sum) -> Ratio | None:
    """3/5 × 1/4 = 4/9, and 3/5 + 1/4 = 4/9."""
    first, second = problem.first, problem.second
    return number(first.numerator + second.numerator, first.denominator + second.denominator)


def _add_all_tops_and_bottoms(problem: PartsOfParts) -> Ratio | None:
    """1/2 × 1/3 × 2/3 = 4/8; with one fold repeated, adding folds is likelier."""
    tops = sum(factor.numerator for factor in problem.factors)
    bottoms = sum(factor.denominator for factor in problem.factors)
    return None if problem.alike else fraction(tops, bottoms)


def _add_denominators(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 3/9."""
    first, second = product.first, product.second
    return number(first.numerator * second.numerator, first.denominator + second.denominator)


def _add_numerators(product: Product) -> Ratio | None:
    """3/5 × 1/4 = 4/20."""
    first, second = product.first, product.second
    return number(first.numerator + second.numerator, first.denominator * second.denominator)


def _add_parts(problem: PanelCut) -> Ratio:
    """1/4 ÷ 3 = 1/7."""
    return fraction(1, problem.parts + problem.pieces)


def _multiply_both_by_whole(product: Product) -> Ratio | None:
    """3 × 2/5 = 6/15."""
    first, second = product.first, product.second
    if first.whole == second.whole:
        return None
    whole, part = (first, second) if first.whole else (second, first)
    return number(whole.numerator * part.numerator, whole.numerator * part.denominator)


def _drop_denominator(product: Product) -> Ratio | None:
    """3 × 2/5 = 6: the whole number times the numerator, with nothing below it."""
    first, second = product.first, product.second
    return None if first.whole == second.whole else whole_number(first.numerator * second.numerator)


def _times_exponent(power: Raised) -> Ratio | None:
    """2³ = 6, and (1/2)³ = 3/2."""
    base, exponent = power.base, power.exponent
    return number(base.numerator * exponent, base.denominator)


def _bottom_times_exponent(power: Raised) -> Ratio | None:
    """(1/2)³ = 1/6: three halvings, the twos added up."""
    return fraction(1, power.base.denominator * power.exponent) if power.base.unit_fraction else None


def _run_on(problem: InSteps) -> Claim:
    """1/2 × 1/2 = 1/4 × 1/2 = 1/8: the equals sign is read as "and then"."""
    return problem.written


KEEP_COMMON_DENOMINATOR = Rule(
    name="keep_common_denominator",
    code="keep",
    acts=(Act(Product, _keep_common_denominator),),
    rare=(Act(Product, _keep_second_denominator), Act(Product, _keep_first_denominator)),
    per_mille=285,
)
ADD_INSTEAD = Rule(
    name="add_instead",
    code="add",
    acts=(Act(Product, _add_instead), Act(PartsOfParts, _add_all)),
    per_mille=46,
)
INVERT_FIRST = Rule(
    name="invert_first",
    code="flip",
    acts=(Act(Product, _invert_first), Act(Telling, _invert_part_of_quantity)),
    per_mille=42,
)
ADD_TOPS_AND_BOTTOMS = Rule(
    name="add_tops_and_bottoms",
    code="tops",
    acts=(
        Act(Product, _add_tops_and_bottoms),
        Act(Sum, _add_tops_and_bottoms),
        Act(PartsOfParts, _add_all_tops_and_bottoms),
    ),
    per_mille=62,
)
INVERT_SECOND = Rule(
    name="invert_second",
    code="cross",
    acts=(Act(Product, _invert_second),),
    per_mille=23,
)
SUBTRACT_INSTEAD = Rule(
    name="subtract_instead",
    code="less",
    acts=(Act(Product, _subtract_instead),),
    per_mille=10,
)
ADD_DENOMINATORS = Rule(
    name="add_denominators",
    code="base",
    acts=(Act(Product, _add_denominators), Act(PanelCut, _add_parts)),
    per_mille=8,
)
ADD_NUMERATORS = Rule(
    name="add_numerators",
    code="over",
    acts=(Act(Product, _add_numerators),),
)
MULTIPLY_BOTH_BY_WHOLE = Rule(
    name="multiply_both_by_whole",
    code="both",
    acts=(Act(Product, _multiply_both_by_whole),),
)
DROP_DENOMINATOR = Rule(
    name="drop_denominator",
    code="drop",
    acts=(Act(Product, _drop_denominator),),
)
TIMES_EXPONENT = Rule(
    name="times_exponent",
    code="power",
    acts=(Act(Raised, _times_exponent), Act(Raised, _bottom_times_exponent)),
)
RUN_ON_EQUALS = Rule(
    name="run_on_equals",
    code="chain",
    acts=(Act(InSteps, _run_on),),
)
