"""Rules of problems in figures: a factor is missing, a fraction is renamed or compared, sheets are cut.

No study that is quoted here asked such problems [common practice, no source].
"""

from foldmath.statements.expressions import Comparison
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, whole_number
from foldmath.statements.rules.problems import (
    MissingFactor,
    OtherName,
    PanelCut,
    SheetsCut,
)
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.statements.rules.rule import Act, Rule


def _multiply_what_is_shown(problem: MissingFactor) -> Ratio:
    """2/3 × 16/45 = 8/15 for 2/3 × □ = 8/15."""
    return Product(problem.known, problem.product).unreduced


def _subtract_tops_and_bottoms(problem: MissingFactor) -> Ratio | None:
    """2/3 × 6/12 = 8/15: 8 − 2 over 15 − 3."""
    known, product = problem.known, problem.product
    above, below = product.numerator - known.numerator, product.denominator - known.denominator
    return fraction(above, below) if above > 0 and below > 0 and not product.whole else None


def _subtract_to_undo(problem: MissingFactor) -> Ratio | None:
    """2/3 × 2/15 = 8/15: the smaller from the larger."""
    difference = abs(problem.product.value - problem.known.value)
    return lowest_terms(difference) if difference else None


def _keep_numerator(problem: OtherName) -> Ratio:
    """2/4 = 2/8."""
    return fraction(problem.given.numerator, problem.denominator)


def _add_to_both(problem: OtherName) -> Ratio:
    """2/4 = 6/8: four more above as below."""
    more = problem.denominator - problem.given.denominator
    return fraction(problem.given.numerator + more, problem.denominator)


def _multiplying_makes_more(problem: ProductCompared) -> Comparison | None:
    return problem.seen(Comparison.GREATER) if problem.beside_factor else None


def _fractions_make_less(problem: ProductCompared) -> Comparison | None:
    return problem.seen(Comparison.LESS) if problem.beside_factor else None


def _compare_one_number(problem: ProductCompared) -> Comparison | None:
    """2 × 2/5 > 1, since 2 > 1; 2 × 2/3 < 1, since 2/3 < 1."""
    if problem.beside_factor:
        return None
    less = problem.makes is Comparison.GREATER
    return problem.seen(Comparison.LESS if less else Comparison.GREATER)


def _take_part_of_number(problem: SheetsCut) -> Ratio:
    """3 sheets in fourths: 3/4."""
    return fraction(problem.sheets, problem.parts)


def _count_one_sheet(problem: SheetsCut) -> Ratio:
    """3 sheets in fourths: 4."""
    return whole_number(problem.parts)


def _add_numbers(problem: SheetsCut) -> Ratio:
    """3 sheets in fourths: 7."""
    return whole_number(problem.sheets + problem.parts)


def _multiply_for_divide(problem: PanelCut) -> Ratio:
    """1/4 ÷ 3 = 3/4."""
    return fraction(problem.pieces, problem.parts)


MULTIPLY_WHAT_IS_SHOWN = Rule(
    name="multiply_what_is_shown",
    code="shown",
    acts=(Act(MissingFactor, _multiply_what_is_shown),),
)
SUBTRACT_TOPS_AND_BOTTOMS = Rule(
    name="subtract_tops_and_bottoms",
    code="minus",
    acts=(Act(MissingFactor, _subtract_tops_and_bottoms),),
)
SUBTRACT_TO_UNDO = Rule(
    name="subtract_to_undo",
    code="undo",
    acts=(Act(MissingFactor, _subtract_to_undo),),
)
KEEP_NUMERATOR = Rule(
    name="keep_numerator",
    code="under",
    acts=(Act(OtherName, _keep_numerator),),
)
ADD_TO_BOTH = Rule(
    name="add_to_both",
    code="pair",
    acts=(Act(OtherName, _add_to_both),),
)
MULTIPLYING_MAKES_MORE = Rule(
    name="multiplying_makes_more",
    code="grow",
    acts=(Act(ProductCompared, _multiplying_makes_more),),
)
FRACTIONS_MAKE_LESS = Rule(
    name="fractions_make_less",
    code="small",
    acts=(Act(ProductCompared, _fractions_make_less),),
)
COMPARE_ONE_NUMBER = Rule(
    name="compare_one_number",
    code="alone",
    acts=(Act(ProductCompared, _compare_one_number),),
)
TAKE_PART_OF_NUMBER = Rule(
    name="take_part_of_number",
    code="part",
    acts=(Act(SheetsCut, _take_part_of_number),),
)
COUNT_ONE_SHEET = Rule(
    name="count_one_sheet",
    code="one",
    acts=(Act(SheetsCut, _count_one_sheet),),
)
ADD_NUMBERS = Rule(
    name="add_numbers",
    code="sum",
    acts=(Act(SheetsCut, _add_numbers),),
)
MULTIPLY_FOR_DIVIDE = Rule(
    name="multiply_for_divide",
    code="times",
    acts=(Act(PanelCut, _multiply_for_divide),),
)
