"""Rules of folding: a pupil says of a fold what it did not do, or folds what was not asked.

No study that is quoted here asked such problems [common practice, no source].
"""

from foldmath.paper.steps import MOST_PLEATS, Axis, fold_into
from foldmath.statements.answers import Folds, Sorting
from foldmath.statements.composing import equation
from foldmath.statements.expressions import Claim, Expression, Operation, Sign
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.problems import (
    CountMended,
    EqualPanels,
    MissingFactor,
    PanelCut,
    PanelsMade,
    PartsAdded,
    PartsOfParts,
    SentencesSorted,
    UnequalPanels,
)
from foldmath.statements.rules.rule import Act, Rule, number
from foldmath.statements.sentences import About


def _count_for_size(product: Product) -> Ratio | None:
    """1/4 × 1/2 = 8 and 4 × 1/2 = 8: the panels are counted, 4 × 2."""
    first, second = product.first, product.second
    if not (first.unit_fraction or second.unit_fraction):
        return None
    if not all(factor.unit_fraction or factor.whole for factor in (first, second)):
        return None
    return number(max(first.numerator, first.denominator) * max(second.numerator, second.denominator), 1)


def _part_taken_for_whole(product: Product) -> Ratio | None:
    """2/3 of 4/5 = 8/12: 8 panels are shaded twice, of the 12 that were shaded at first.

    Of a unit fraction it gives no more than the first factor, copied.
    """
    first, second = product.first, product.second
    if second.unit_fraction or not _both_within_one_sheet(product):
        return None
    return number(first.numerator * second.numerator, first.denominator * second.numerator)


def _first_part_shaded(product: Product) -> Ratio | None:
    """2/3 of 4/5 = 12/15: all panels that are shaded, once or twice, where 2/3 is shaded inside the 4/5."""
    if not _both_within_one_sheet(product):
        return None
    first, second = product.first, product.second
    return number(first.denominator * second.numerator, first.denominator * second.denominator)


def _shaded_across(product: Product) -> Ratio | None:
    """2/3 of 4/5 = 14/15: all panels that are shaded, once or twice, where both are shaded right across."""
    if not _both_within_one_sheet(product):
        return None
    first, second = product.first, product.second
    panels = first.denominator * second.denominator
    blank = (first.denominator - first.numerator) * (second.denominator - second.numerator)
    return number(panels - blank, panels)


def _both_within_one_sheet(product: Product) -> bool:
    return all(factor.numerator < factor.denominator for factor in (product.first, product.second))


def _parts_for_missing(problem: MissingFactor) -> Ratio | None:
    """1/4 × 2 = 1/8: the parts that the fold cut each panel into."""
    return whole_number(problem.missing.denominator) if problem.missing.unit_fraction else None


def _pieces_counted(problem: PanelCut) -> Ratio:
    """1/4 ÷ 3 = 12."""
    return whole_number(problem.parts * problem.pieces)


def _panels_counted(problem: PartsOfParts) -> Ratio | None:
    """1/2 × 1/2 × 1/2 = 8."""
    answer = problem.multiplied
    return whole_number(answer.denominator) if answer.unit_fraction else None


def _add_folds(problem: PartsOfParts) -> Ratio | None:
    """Folded in half three times, one panel is 1/6, and there are 2 × 2 × 2 = 6; into 2 and then 3, 1/5."""
    factors = problem.factors
    if all(factor.unit_fraction for factor in factors):
        return fraction(1, sum(factor.denominator for factor in factors))
    counts = problem.alike and factors[0].whole
    return whole_number(sum(factor.numerator for factor in factors)) if counts else None


def _add_parts(made: PanelsMade) -> Ratio:
    """4 panels cut into 2 each: 4 + 2 = 6."""
    return whole_number(made.before + made.parts)


def _panels_before(made: PanelsMade) -> Ratio:
    """4 panels cut into 2 each: 4."""
    return whole_number(made.before)


def _size_for_count(made: PanelsMade) -> Ratio:
    """4 panels cut into 2 each: 1/8, which is the size of one."""
    return fraction(1, made.before * made.parts)


def _sums(panels: EqualPanels) -> list[Folds]:
    """For 6 equal panels, 3 columns and 3 rows; then 2 and 4: parts that add up, the most alike first."""
    wanted = panels.columns * panels.rows
    pairs = [(share, wanted - share) for share in range(wanted // 2, 1, -1)]
    return [_across(*pair) for pair in pairs if max(pair) <= MOST_PLEATS]


def _nearest_sum(panels: EqualPanels) -> Folds | None:
    return next(iter(_sums(panels)), None)


def _one_more_each_time(panels: EqualPanels) -> Folds | None:
    """For 3 equal panels, two halvings: as if each fold made one panel more."""
    return _across(2, 2) if panels.columns * panels.rows == 3 else None


def _next_sum(panels: EqualPanels) -> Folds | None:
    return next(iter(_sums(panels)[1:]), None)


def _all_alike(panels: UnequalPanels) -> Folds:
    """All columns as wide as the narrow one."""
    return _across(panels.columns, panels.rows)


def _two_alike(panels: UnequalPanels) -> Folds:
    """Two columns, both as wide."""
    return _across(2, panels.rows)


def _across(columns: int, rows: int) -> Folds:
    crossing = (fold_into(Axis.HEIGHT, rows),) if rows > 1 else ()
    return Folds((fold_into(Axis.WIDTH, columns), *crossing))


def _stop_one_fold_early(problem: PartsOfParts) -> Ratio:
    """1/2 × 1/2 × 1/2 = 1/4."""
    return PartsOfParts(problem.factors[:-1]).multiplied


def _swap_count_and_size(problem: SentencesSorted) -> Sorting:
    """4 × 2 = 8 is put with the sizes."""
    return Sorting(tuple(_other(sentence.about) for sentence in problem.sentences))


def _other(about: About) -> About:
    return About.SIZE if about is About.COUNT else About.COUNT


def _sort_by_sign(problem: SentencesSorted) -> Sorting:
    """8 ÷ 2 = 4 is put with the sizes, as it does not multiply."""
    multiplied = (_multiplies(sentence.claim.asked) for sentence in problem.sentences)
    return Sorting(tuple(About.COUNT if multiplies else About.SIZE for multiplies in multiplied))


def _multiplies(asked: Expression) -> bool:
    return isinstance(asked, Operation) and asked.sign is Sign.TIMES


def _mend_the_product(problem: CountMended) -> Claim:
    """4 × 1/2 = 8 becomes 4 × 1/2 = 2, which is true of no fold."""
    product = Product(whole_number(problem.before), fraction(1, problem.parts))
    return equation(product.asked, product.lowest)


def _multiplied_once_less(problem: PartsAdded) -> Ratio | None:
    """2 × 2 × 2 = 4; not 2 × 2 × 2 × 2 = 8, which is the very answer to be put right."""
    less = whole_number(problem.panels // problem.parts[-1])
    return None if less == problem.given else less


def _doubled_from_two(problem: PartsAdded) -> Ratio | None:
    """2 × 2 × 2 = 16: 2, doubled at each of three folds."""
    return whole_number(2 * problem.panels) if set(problem.parts) == {2} else None


COUNT_FOR_SIZE = Rule(
    name="count_for_size",
    code="count",
    acts=(
        Act(Product, _count_for_size),
        Act(MissingFactor, _parts_for_missing),
        Act(PanelCut, _pieces_counted),
        Act(PartsOfParts, _panels_counted),
    ),
    at_folds=True,
)
PART_FOR_WHOLE = Rule(
    name="part_for_whole",
    code="inner",
    acts=(Act(Product, _part_taken_for_whole),),
    at_folds=True,
)
ALL_SHADED = Rule(
    name="all_shaded",
    code="all",
    # Pages ask to shade inside the part that is shaded first, so that is likelier.
    acts=(Act(Product, _first_part_shaded), Act(Product, _shaded_across)),
    at_folds=True,
)
ADD_FOLDS = Rule(
    name="add_folds",
    code="plus",
    acts=(
        Act(PartsOfParts, _add_folds),
        Act(PanelsMade, _add_parts),
        Act(EqualPanels, _nearest_sum),
        Act(EqualPanels, _next_sum),
        Act(EqualPanels, _one_more_each_time),
    ),
    at_folds=True,
)
FOLD_ALL_ALIKE = Rule(
    name="fold_all_alike",
    code="alike",
    acts=(Act(UnequalPanels, _all_alike), Act(UnequalPanels, _two_alike)),
)
CUT_ALL = Rule(name="cut_all", code="every", acts=(), at_folds=True)
ONE_SIZE_FOR_ALL = Rule(name="one_size_for_all", code="size", acts=(), at_folds=True)
STOP_ONE_FOLD_EARLY = Rule(
    name="stop_one_fold_early",
    code="early",
    acts=(
        Act(PartsOfParts, _stop_one_fold_early),
        Act(PanelsMade, _panels_before),
        Act(PartsAdded, _multiplied_once_less),
    ),
    at_folds=True,
)
BEGIN_WITH_TWO = Rule(
    name="begin_with_two",
    code="start",
    acts=(Act(PartsAdded, _doubled_from_two),),
    at_folds=True,
)
SWAP_COUNT_AND_SIZE = Rule(
    name="swap_count_and_size",
    code="swap",
    acts=(Act(SentencesSorted, _swap_count_and_size), Act(PanelsMade, _size_for_count)),
    at_folds=True,
)
SORT_BY_SIGN = Rule(
    name="sort_by_sign",
    code="sign",
    acts=(Act(SentencesSorted, _sort_by_sign),),
    at_folds=True,
)
MEND_ONLY_THE_ANSWER = Rule(
    name="mend_only_the_answer",
    code="half",
    acts=(Act(CountMended, _mend_the_product),),
    at_folds=True,
)
