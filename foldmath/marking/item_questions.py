"""Items as questions: takes an item of a worksheet, gives what marking must know of it."""

from foldmath.marking.questions import (
    AnyQuestion,
    FoldingQuestion,
    NumberQuestion,
    ReasonQuestion,
    SentenceQuestion,
    SignQuestion,
    TicksQuestion,
)
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import Exact
from foldmath.statements.claim_grammar import parse
from foldmath.statements.expressions import value
from foldmath.statements.items import (
    BiggerOrSmallerItem,
    CountOrSizeItem,
    ExplainItem,
    HowManyPiecesItem,
    Item,
    MendItem,
    MissingFactorItem,
    RepeatedHalvingItem,
    SameSizeItem,
    WhichFoldItem,
)
from foldmath.statements.items.story import StoryItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, whole_number
from foldmath.statements.rules.problems import CountMended, DoublingMended, PartsOfParts, Telling


def question_of(item: Item, column: str) -> AnyQuestion:
    """Give the question that an item asks.

    Args:
        item: of a worksheet.
        column: the name of its column in the answers sheet.
    """
    asks = _asks(item)
    problem = item.problem
    match item:
        case ExplainItem():
            return ReasonQuestion(column=column, asks=asks)
        case CountOrSizeItem():
            about = tuple(sentence.about for sentence in item.sentences)
            return TicksQuestion(column=column, asks=asks, problem=problem, about=about)
        case BiggerOrSmallerItem():
            return SignQuestion(column=column, asks=asks, problem=problem, sign=item.sign)
        case WhichFoldItem():
            sizes = tuple((count, value(parse(area).sides[0])) for count, area in item.tally)
            return FoldingQuestion(column=column, asks=asks, answer=item.answer, sizes=sizes)
        case MendItem() if isinstance(problem, CountMended | DoublingMended):
            return _sentence_question(item, problem, column, asks)
    return NumberQuestion(
        column=column,
        asks=asks,
        problem=problem,
        answer=_answer(item),
        shown=_shown(item),
        over=item.same.denominator if isinstance(item, SameSizeItem) else 0,
    )


def ratio(text: str) -> Ratio:
    """Read a number that the program wrote."""
    side = parse(text).sides[0]
    assert isinstance(side, Ratio)
    return side


def _sentence_question(
    item: MendItem, problem: CountMended | DoublingMended, column: str, asks: Said
) -> SentenceQuestion:
    return SentenceQuestion(
        column=column,
        asks=asks,
        problem=problem,
        answer=item.answer,
        values=frozenset(map(_worth, (item.answer, *item.accepted))),
        # 2 × 2 × 2 = 6 is put right by 8 alone; in 4 × 1/2 = 8 the left side is at fault.
        alone=whole_number(2**problem.folds) if isinstance(problem, DoublingMended) else None,
    )


def _worth(sentence: str) -> Exact:
    return value(parse(sentence).sides[-1])


def _answer(item: Item) -> Ratio:
    return ratio(item.right if isinstance(item, MendItem) else item.answer)


def _shown(item: Item) -> tuple[Ratio, ...]:
    """Give the numbers that a pupil may copy, in the order in which they stand."""
    problem = item.problem
    match problem:
        case Product():
            seen = [problem.first, problem.second]
        case PartsOfParts():
            seen = list(problem.factors)
        case Telling():
            given = problem.filling
            seen = [given.take, given.amount, whole_number(given.total)]
        case _:
            seen = []
    match item:
        case MissingFactorItem():
            seen = [number for number in (item.first, item.second, item.product) if number]
        case SameSizeItem():
            seen = [item.given]
        case HowManyPiecesItem():
            seen = [item.part, whole_number(item.number)]
        case MendItem():
            seen.append(ratio(item.given))
    return tuple(dict.fromkeys(seen))


def _asks(item: Item) -> Said:
    """Say what an item asks, in a cell."""
    match item:
        case CountOrSizeItem():
            sentences = "; ".join(sentence.text for sentence in item.sentences)
            return phrase("c or s: {sentences}", sentences=sentences)
        case MendItem():
            return phrase("correct {claim}", claim=item.claim)
        case ExplainItem():
            return phrase("why {statement}", statement=item.statement)
        case WhichFoldItem():
            return phrase("which fold makes {sizes}", sizes=item.working.partition(" = ")[0])
        case HowManyPiecesItem() if not item.question:
            return phrase("{number} sheets, panels of {part}", number=item.number, part=item.part.text)
        case RepeatedHalvingItem() if not item.question:
            return phrase("{part} of the sheet, {times} times", part=item.factors[0].text, times=item.times)
        case MissingFactorItem() | SameSizeItem() | BiggerOrSmallerItem():
            return item.question
        case HowManyPiecesItem() | RepeatedHalvingItem():
            return item.question
        case StoryItem():
            return item.working.partition(" = ")[0]
    return item.asks.removesuffix("= ").strip()
