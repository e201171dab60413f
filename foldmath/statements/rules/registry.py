"""All wrong-answer rules, and which of them act on a problem, likeliest first."""

from foldmath.statements.products import Product
from foldmath.statements.rules.figures import (
    ADD_NUMBERS,
    ADD_TO_BOTH,
    COMPARE_ONE_NUMBER,
    COUNT_ONE_SHEET,
    FRACTIONS_MAKE_LESS,
    KEEP_NUMERATOR,
    MULTIPLY_FOR_DIVIDE,
    MULTIPLY_WHAT_IS_SHOWN,
    MULTIPLYING_MAKES_MORE,
    SUBTRACT_TO_UNDO,
    SUBTRACT_TOPS_AND_BOTTOMS,
    TAKE_PART_OF_NUMBER,
)
from foldmath.statements.rules.folds import (
    ADD_FOLDS,
    ALL_SHADED,
    BEGIN_WITH_TWO,
    COUNT_FOR_SIZE,
    CUT_ALL,
    FOLD_ALL_ALIKE,
    MEND_ONLY_THE_ANSWER,
    ONE_SIZE_FOR_ALL,
    PART_FOR_WHOLE,
    SORT_BY_SIGN,
    STOP_ONE_FOLD_EARLY,
    SWAP_COUNT_AND_SIZE,
)
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
    RUN_ON_EQUALS,
    SUBTRACT_INSTEAD,
    TIMES_EXPONENT,
)
from foldmath.statements.rules.problems import (
    CountMended,
    EqualPanels,
    FoldsAsked,
    InSteps,
    MissingFactor,
    OtherName,
    PanelCut,
    PanelsMade,
    PartsAdded,
    PartsOfParts,
    Problem,
    Raised,
    SentencesSorted,
    SheetsCut,
    Sum,
    Telling,
    UnequalPanels,
)
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.statements.rules.rule import Rule
from foldmath.statements.rules.tellings import (
    FIRST_PART_ONLY,
    NO_DIFFERENCE,
    ONE_PART_ONLY,
    PART_OF_EVERYTHING,
    STOPS_AT_PART,
    TAKEN_NOT_LEFT,
    THE_REST,
    UNIT_FOR_PART,
)

LIKELIEST_FIRST: dict[type[Problem | FoldsAsked], tuple[Rule, ...]] = {
    # In the order of the shares in the study of 2013, which does not list ADD_TOPS_AND_BOTTOMS. It stands
    # before INVERT_FIRST: both studies asked grades 6 and 8, and a class that meets products in grade 5 has
    # no dividing by fractions to confuse them with, which comes in grade 6 (6.NS.A.1).
    Product: (
        KEEP_COMMON_DENOMINATOR,
        ADD_INSTEAD,
        ADD_TOPS_AND_BOTTOMS,
        INVERT_FIRST,
        INVERT_SECOND,
        SUBTRACT_INSTEAD,
        ADD_DENOMINATORS,
        ADD_NUMERATORS,
        MULTIPLY_BOTH_BY_WHOLE,
        DROP_DENOMINATOR,
        PART_FOR_WHOLE,
        ALL_SHADED,
        COUNT_FOR_SIZE,
    ),
    Sum: (ADD_TOPS_AND_BOTTOMS,),
    # No study that is quoted here asked the others [common practice, no source].
    MissingFactor: (
        MULTIPLY_WHAT_IS_SHOWN,
        COUNT_FOR_SIZE,
        SUBTRACT_TOPS_AND_BOTTOMS,
        SUBTRACT_TO_UNDO,
    ),
    OtherName: (KEEP_NUMERATOR, ADD_TO_BOTH),
    ProductCompared: (MULTIPLYING_MAKES_MORE, FRACTIONS_MAKE_LESS, COMPARE_ONE_NUMBER),
    SheetsCut: (TAKE_PART_OF_NUMBER, COUNT_ONE_SHEET, ADD_NUMBERS),
    PanelCut: (MULTIPLY_FOR_DIVIDE, COUNT_FOR_SIZE, ADD_DENOMINATORS),
    PartsOfParts: (ADD_FOLDS, COUNT_FOR_SIZE, ADD_TOPS_AND_BOTTOMS, ADD_INSTEAD, STOP_ONE_FOLD_EARLY),
    Raised: (TIMES_EXPONENT,),
    InSteps: (RUN_ON_EQUALS,),
    PanelsMade: (ADD_FOLDS, STOP_ONE_FOLD_EARLY, SWAP_COUNT_AND_SIZE),
    SentencesSorted: (SWAP_COUNT_AND_SIZE, SORT_BY_SIGN),
    CountMended: (MEND_ONLY_THE_ANSWER,),
    PartsAdded: (STOP_ONE_FOLD_EARLY, BEGIN_WITH_TWO),
    EqualPanels: (ADD_FOLDS,),
    UnequalPanels: (FOLD_ALL_ALIKE,),
    Telling: (
        ONE_PART_ONLY,
        PART_OF_EVERYTHING,
        FIRST_PART_ONLY,
        THE_REST,
        INVERT_FIRST,
        TAKEN_NOT_LEFT,
        UNIT_FOR_PART,
        NO_DIFFERENCE,
        STOPS_AT_PART,
    ),
}
"""The rules that act on each kind of problem."""

HEARD = (CUT_ALL, ONE_SIZE_FOR_ALL)
"""Rules of what is said aloud at a fold, where no page asks."""

RULES: tuple[Rule, ...] = tuple(
    dict.fromkeys(rule for rules in (*LIKELIEST_FIRST.values(), HEARD) for rule in rules),
)
"""Every rule once, those of products first."""


def likeliest_rules(problem: Problem | FoldsAsked) -> tuple[Rule, ...]:
    """Give the rules that act on a problem, likeliest first.

    Products of kinds that no study asked have the rules in front that a teacher meets there.
    """
    rules = LIKELIEST_FIRST[type(problem)]
    return tuple(dict.fromkeys((*_first(problem), *rules))) if isinstance(problem, Product) else rules


def _first(product: Product) -> tuple[Rule, ...]:
    if product.first.whole != product.second.whole:
        return MULTIPLY_BOTH_BY_WHOLE, COUNT_FOR_SIZE, DROP_DENOMINATOR
    if product.first.unit_fraction and product.second.unit_fraction:
        return KEEP_COMMON_DENOMINATOR, COUNT_FOR_SIZE
    return ()


def named(name: str) -> Rule:
    """Give the rule of a name.

    Raises:
        KeyError: no rule has it.
    """
    return _BY_NAME[name]


_BY_NAME = {rule.name: rule for rule in RULES}
