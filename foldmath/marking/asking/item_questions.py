"""Items as questions: takes an item of a worksheet, gives what marking must know of it."""

from foldmath.marking.asking.questions import (
    AnyQuestion,
    FoldingQuestion,
    NumberQuestion,
    ReasonQuestion,
    SentenceQuestion,
    SignQuestion,
    TicksQuestion,
)
from foldmath.phrases import Said, phrase
from foldmath.statements.expressions import numbers_in, value
from foldmath.statements.items import (
    BiggerOrSmallerItem,
    CountOrSizeItem,
    ExplainItem,
    HowManyPiecesItem,
    Item,
    MendItem,
    MissingFactorItem,
    OwnItem,
    RepeatedHalvingItem,
    SameSizeItem,
    ShadeItem,
    WhichFoldItem,
)
from foldmath.statements.items.story import StoryItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, whole_number
from foldmath.statements.rules.problems import CountMended, PartsAdded, PartsOfParts, Telling
from foldmath.words.steps import step_sentence


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
            sizes = tuple((count, area.value) for count, area in item.tally)
            steps = "; ".join(map(step_sentence, item.steps))
            return FoldingQuestion(column=column, asks=asks, answer=steps, sizes=sizes)
        case MendItem() if isinstance(problem, CountMended | PartsAdded):
            return _sentence_question(item, problem, column, asks)
    return NumberQuestion(
        column=column,
        asks=asks,
        problem=problem,
        answer=_answer(item),
        shown=_shown(item),
        over=item.same.denominator if isinstance(item, SameSizeItem) else 0,
    )


def _sentence_question(
    item: MendItem, problem: CountMended | PartsAdded, column: str, asks: Said
) -> SentenceQuestion:
    return SentenceQuestion(
        column=column,
        asks=asks,
        problem=problem,
        answer=item.answer,
        values=frozenset(value(claim.answer) for claim in (item.answer, *item.accepted)),
        # 2 × 2 × 2 = 6 is put right by 8 alone; in 4 × 1/2 = 8 the left side is at fault.
        alone=whole_number(problem.panels) if isinstance(problem, PartsAdded) else None,
    )


def _answer(item: Item) -> Ratio:
    answer = item.right if isinstance(item, MendItem) else item.answer
    assert isinstance(answer, Ratio)
    return answer


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
            seen.append(item.given)
        case OwnItem():
            seen = [*numbers_in(item.sum), *item.text.numbers]
    return tuple(dict.fromkeys(seen))


def _asks(item: Item) -> Said:
    """Say what an item asks, in a cell."""
    match item:
        case CountOrSizeItem():
            sentences = "; ".join(str(sentence.claim) for sentence in item.sentences)
            return phrase("c or s: {sentences}", sentences=sentences)
        case MendItem():
            return phrase("correct {claim}", claim=item.claim)
        case ExplainItem():
            return phrase("why {statement}", statement=item.statement)
        case WhichFoldItem():
            return phrase("which fold makes {sizes}", sizes=item.working.claims[0].asked)
        case HowManyPiecesItem() if not item.question:
            return phrase("{number} sheets, panels of {part}", number=item.number, part=item.part)
        case RepeatedHalvingItem() if not item.question:
            return _folds_asked(item)
        case (
            MissingFactorItem()
            | SameSizeItem()
            | BiggerOrSmallerItem()
            | HowManyPiecesItem()
            | RepeatedHalvingItem()
        ):
            return str(item.question)
        case StoryItem() | OwnItem():
            return str(item.working.claims[0].asked)
        case ShadeItem():
            return str(item.product.multiplied)
    raise TypeError(f"not an item: {item!r}")


def _folds_asked(item: RepeatedHalvingItem) -> Said:
    if item.base:
        return phrase("{part} of the sheet, {times} times", part=item.base, times=item.times)
    first, second = item.factors
    return phrase("{first} of the sheet, then {second} of that", first=first, second=second)
