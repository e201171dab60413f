"""An item in a teacher's own words: takes her text and the sum behind it, gives its answer and slips."""

from functools import cache
from typing import ClassVar

from foldmath.statements.answers import working
from foldmath.statements.composing import equation
from foldmath.statements.expressions import Expression, Operation, Power, Sign, factors, numbers_in, value
from foldmath.statements.items.item import Difficulty, Item, ItemKind, equal_forms
from foldmath.statements.items.sheets import Sheets, sheets_of
from foldmath.statements.products import LARGEST, Product
from foldmath.statements.ratios import Ratio, lowest_terms, mixed_form
from foldmath.statements.rules.problems import PanelCut, PartsOfParts, Problem, Raised, SheetsCut, Sum
from foldmath.statements.rules.wrong_answers import WrongAnswer, without_folding
from foldmath.statements.wordings import Wording, wording_of
from foldmath.values import frozen


@frozen(kw_only=True)
class OwnItem(Item):
    """What a teacher asks in her own words; its answer is whole, proper or mixed, in lowest terms.

    Args:
        text: her words.
        sum: what is worked out.
        unit: stands after the answer; may be empty.
        sheets: one sheet on which the sum is shaded; None where it is no product that one sheet shows.
    """

    kind: ClassVar[ItemKind] = ItemKind.OWN

    answer: Ratio
    text: Wording
    sum: Expression
    unit: Wording
    sheets: Sheets | None

    @property
    def product(self) -> Product | None:
        """The sum, where it is a product of two numbers."""
        return self.problem if isinstance(self.problem, Product) else None

    @property
    def strange(self) -> bool:
        """Whether none of the sum's numbers stands in the text: the one may belong to other words."""
        told = {number.value for number in self.text.numbers}
        return told.isdisjoint(number.value for number in numbers_in(self.sum))


@cache
def make_own(text: str, asked: Expression, unit: str = "") -> OwnItem:
    """Make the item of a text and the sum behind it, which ``parse_sum`` has read.

    Raises:
        NoSuchItem: the cells of its picture count another answer than arithmetic gives.
    """
    problem, worth = problem_of(asked), value(asked)
    product = problem if isinstance(problem, Product) else None
    answer = mixed_form(worth)
    words = wording_of(text)
    forms = product.forms if product else (lowest_terms(worth), answer)
    return OwnItem(
        asks=f"{text} {asked} = ",
        difficulty=Difficulty.STORY.of(*numbers_in(asked)),
        answer=answer,
        working=working(equation(asked, *dict.fromkeys(forms))),
        accepted=equal_forms(answer, product),
        problem=problem,
        wrong=tuple(filter(_is_written, without_folding(problem))) if problem else (),
        shown=frozenset(words.numbers),
        text=words,
        sum=asked,
        unit=wording_of(unit),
        sheets=_one_sheet(product),
    )


def _is_written(wrong: WrongAnswer) -> bool:
    """Tell whether a pupil may write a wrong answer, and a cell of the key has room for it."""
    answer = wrong.answer
    return not isinstance(answer, Ratio) or max(answer.numerator, answer.denominator) < LARGEST


def _one_sheet(product: Product | None) -> Sheets | None:
    """Shade a product where one sheet is enough: more of them have no room in a column."""
    shown = sheets_of(product) if product else None
    return shown if shown and len(shown.sheets) == 1 and shown.times == 2 else None


def problem_of(asked: Expression) -> Problem | None:
    """Give the kind of problem that a sum is, on which wrong-answer rules act; None where none does."""
    match asked:
        case Operation(Sign.TIMES | Sign.OF as sign, Ratio() as first, Ratio() as second):
            return Product(first, second, sign)
        case Operation(Sign.PLUS, Ratio() as first, Ratio() as second):
            return Sum(first, second)
        case Operation(Sign.DIVIDE, Ratio() as whole, Ratio() as part) if whole.whole and part.unit_fraction:
            return SheetsCut(whole.numerator, part.denominator)
        case Operation(Sign.DIVIDE, Ratio() as part, Ratio() as whole) if part.unit_fraction and whole.whole:
            return PanelCut(part.denominator, whole.numerator)
        case Power(Ratio() as base, exponent):
            return Raised(base, exponent)
    multiplied = tuple(factor for factor in factors(asked) if isinstance(factor, Ratio))
    if len(multiplied) == len(factors(asked)) and multiplied == numbers_in(asked):
        return PartsOfParts(multiplied)
    return None
