"""What a teacher does after the lesson: takes a worksheet, gives the grid of who said what."""

from itertools import zip_longest

from foldmath.statements.rules import Rule
from foldmath.statements.rules.folds import COUNT_FOR_SIZE
from foldmath.teachers_plan.plan_steps import SLIP_RULES, StepRow
from foldmath.values import frozen
from foldmath.worksheets.worksheet import Worksheet

MOST_CODES = 5
MOST_GRID_ROWS = 18
"""Two pupils stand on a row of the grid; a larger class takes the page twice."""

MOST_ROWS_TOGETHER = 30
"""So many rows, with the codes above and the groups below, fit on one page of a letter; more go on."""


@frozen
class After:
    """What a teacher does after the lesson.

    Args:
        rules: the wrong-answer rules of the grid, likeliest first.
        on_sheets: those of them that lead astray only where the same part is shaded on several sheets.
        grid_rows: rows of the grid, two pupils to a row.
        labels: of the pupils, down the left half and then down the right; empty where no list was given.
    """

    rules: tuple[Rule, ...]
    on_sheets: frozenset[Rule]
    grid_rows: int
    labels: tuple[str, ...] = ()

    @property
    def goes_on(self) -> bool:
        """Whether the grid is too long to stand on one page with its codes and groups."""
        return self.grid_rows > MOST_ROWS_TOGETHER

    def label(self, row: int, half: int) -> str:
        """Give who stands in a row, in the left half or the right; empty where nobody does."""
        place = row + half * self.grid_rows
        return self.labels[place] if place < len(self.labels) else ""


def after_lesson(
    sheet: Worksheet, rows: tuple[StepRow, ...], pupils: int, labels: tuple[str, ...] = ()
) -> After:
    """Gather what the grid of the plan has.

    Args:
        sheet: the core worksheet.
        rows: every fold and shading.
        pupils: of the class.
        labels: of the pupils, in the order of their list; empty where there is none.
    """
    grid_rows = -(-len(labels) // 2) if labels else min(-(-pupils // 2), MOST_GRID_ROWS)
    return After(grid_rules(sheet, rows), _on_sheets(sheet), grid_rows, labels)


def _on_sheets(sheet: Worksheet) -> frozenset[Rule]:
    """Give the rules that act on products by a whole number, and on none of two fractions."""
    by_wholes: dict[bool, set[Rule]] = {True: set(), False: set()}
    for item in sheet.shading:
        whole = item.product.first.whole or item.product.second.whole
        by_wholes[whole] |= {wrong.rule for wrong in item.wrong if not wrong.rule.at_folds}
    return frozenset(by_wholes[True] - by_wholes[False])


def grid_rules(sheet: Worksheet, rows: tuple[StepRow, ...]) -> tuple[Rule, ...]:
    """Give the rules of the grid: those behind the wrong answers of this lesson's key, then of its folds.

    Those in most products come first, and then the likeliest of each product.
    """
    by_place = zip_longest(*(item.wrong for item in sheet.shading))
    found = [wrong.rule for wrongs in by_place for wrong in wrongs if wrong]
    likeliest = sorted(dict.fromkeys(found), key=lambda rule: -found.count(rule))
    heard = {SLIP_RULES.get(row.slip.kind) for row in rows if row.slip} | {*found}
    if sheet.slip:
        heard.add(COUNT_FOR_SIZE)
    last = [rule for rule in dict.fromkeys(SLIP_RULES.values()) if rule in heard]
    kept = [rule for rule in likeliest if rule not in last]
    return (*kept[: MOST_CODES - len(last)], *last)
