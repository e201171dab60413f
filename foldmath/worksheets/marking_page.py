"""The marking page of a key: takes a worksheet and the ticket, gives likely wrong answers, rules down."""

from collections.abc import Iterator

from foldmath.statements.answers import Answer, worth
from foldmath.statements.expressions import Comparison
from foldmath.statements.items import Item, OwnItem, ShadeItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules import RULES, Rule
from foldmath.statements.rules.folds import ALL_SHADED, PART_FOR_WHOLE
from foldmath.statements.rules.operations import ADD_TOPS_AND_BOTTOMS, INVERT_FIRST
from foldmath.statements.rules.wrong_answers import WrongAnswer, without_folding
from foldmath.values import frozen
from foldmath.worksheets.exit_ticket import ExitTicket
from foldmath.worksheets.worksheet import Worksheet

MOST_COLUMNS = 7
"""So many items stand beside the words of the rules; further ones have a table of their own."""

OF_EVERY_PRODUCT = (ADD_TOPS_AND_BOTTOMS, INVERT_FIRST)
"""Looked for in every product of two fractions, shaded or on the ticket, whatever rules are likelier."""

OF_ITS_PICTURE = (PART_FOR_WHOLE, ALL_SHADED)
"""What only a picture to shade leads to."""


@frozen
class MarkingRow:
    """A rule, and what it leads to in each item of its table; often in none."""

    rule: Rule
    cells: tuple[tuple[WrongAnswer, ...], ...]


@frozen
class MarkingTable:
    """Wrong answers by rule and item.

    Args:
        numbers: of the items, as they stand on the worksheet; the last is None for the exit ticket's product.
        rows: the likeliest rule first, so that of two that lead to one answer it is met first.
    """

    numbers: tuple[int | None, ...]
    rows: tuple[MarkingRow, ...]

    def is_shared(self, column: int, answer: Answer) -> bool:
        """Tell whether several rules lead to an answer of an item, so that only asking tells which."""
        return sum(worth(answer) in {worth(one.answer) for one in row.cells[column]} for row in self.rows) > 1


@frozen
class Beside:
    """A rule, and the wrong answers of one item that it leads to and that fit no cell.

    Args:
        number: of the item, as it stands on the worksheet.
        rule: the rule.
        answers: such as whole sentences and steps.
    """

    number: int
    rule: Rule
    answers: tuple[Answer, ...]


@frozen
class MarkingPage:
    """What a teacher finds a wrong answer by.

    Args:
        tables: those answers that fit a narrow cell.
        beside: all others, by item and rule.
    """

    tables: tuple[MarkingTable, ...]
    beside: tuple[Beside, ...]

    @property
    def shares(self) -> bool:
        """Whether several rules lead to one answer of an item anywhere."""
        return any(
            table.is_shared(column, one.answer)
            for table in self.tables
            for row in table.rows
            for column, cell in enumerate(row.cells)
            for one in cell
        )

    @property
    def sources(self) -> list[str]:
        """The studies whose shares stand in the cells."""
        cells = (wrong for table in self.tables for row in table.rows for cell in row.cells for wrong in cell)
        return sorted({wrong.published.source for wrong in cells if wrong.published})


def marking_page(sheet: Worksheet, ticket: ExitTicket | None = None) -> MarkingPage:
    """Sort the likely wrong answers of a worksheet and of the exit ticket."""
    wrong = {number: tuple(_wrong(placed.item)) for number, placed in enumerate(sheet.items, start=1)}
    short: dict[int | None, tuple[WrongAnswer, ...]] = {
        number: tuple(filter(_fits_cell, answers)) for number, answers in wrong.items()
    }
    if ticket and ticket.product:
        short[None] = (*without_folding(ticket.product), *_of_every_product(ticket.product))
    numbers = [number for number, answers in short.items() if answers]
    beside = (one for number, answers in wrong.items() for one in _beside(number, answers))
    tables = (MarkingTable(group, _rows([short[number] for number in group])) for group in _groups(numbers))
    return MarkingPage(tuple(tables), tuple(beside))


def _beside(number: int, answers: tuple[WrongAnswer, ...]) -> Iterator[Beside]:
    """Gather the answers that fit no cell by their rules, the rule of the likeliest answer first."""
    long = [one for one in answers if not _fits_cell(one)]
    for rule in dict.fromkeys(one.rule for one in long):
        yield Beside(number, rule, tuple(one.answer for one in long if one.rule == rule))


def _wrong(item: Item) -> Iterator[WrongAnswer]:
    """Give an item's likely wrong answers, and those that its own picture leads to."""
    yield from item.wrong
    if isinstance(item, ShadeItem | OwnItem) and item.sheets and item.product:
        yield from _of_every_product(item.product)
        yield from _by_rules(item.product, OF_ITS_PICTURE)


def _of_every_product(product: Product) -> Iterator[WrongAnswer]:
    if not (product.first.whole or product.second.whole):
        yield from _by_rules(product, OF_EVERY_PRODUCT)


def _by_rules(product: Product, rules: tuple[Rule, ...]) -> Iterator[WrongAnswer]:
    """Give what rules lead to, even where a likelier rule leads to the same: both are named then."""
    for rule in rules:
        for answer in rule.answers(product):
            if worth(answer) != product.value:
                yield WrongAnswer(answer, rule, None)


def _fits_cell(wrong: WrongAnswer) -> bool:
    return isinstance(wrong.answer, Ratio | Comparison)


def _groups(numbers: list[int | None]) -> list[tuple[int | None, ...]]:
    return [tuple(numbers[start : start + MOST_COLUMNS]) for start in range(0, len(numbers), MOST_COLUMNS)]


def _rows(columns: list[tuple[WrongAnswer, ...]]) -> tuple[MarkingRow, ...]:
    rows = [MarkingRow(rule, tuple(_cell(column, rule) for column in columns)) for rule in RULES]
    return tuple(row for row in rows if any(row.cells))


def _cell(column: tuple[WrongAnswer, ...], rule: Rule) -> tuple[WrongAnswer, ...]:
    """Give the answers of an item that a rule leads to, each once."""
    by_answer: dict[Answer, WrongAnswer] = {}
    for one in column:
        if one.rule == rule:
            by_answer.setdefault(one.answer, one)
    return tuple(by_answer.values())
