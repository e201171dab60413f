"""The key of a class: takes the rules that its plan has codes for, gives the mistakes that a key warns of."""

from collections.abc import Iterator

from foldmath.statements.items import Item, MendItem, OwnItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules import RULES, Rule
from foldmath.statements.rules.wrong_answers import WrongAnswer, likely_wrong_answers, without_folding
from foldmath.values import frozen
from foldmath.worksheets.exit_ticket import ExitTicket
from foldmath.worksheets.worksheet import Worksheet


@frozen
class Mistake:
    """What a teacher who marks one pupil's page may meet in an item.

    Args:
        number: of the item on the page.
        answer: the likeliest wrong one that has a code; None where the item itself shows what is wrong.
        rule: the rule behind it.
    """

    number: int
    answer: Ratio | None
    rule: Rule


@frozen
class ClassKey:
    """What the key of a class warns of.

    Args:
        coded: the rules that the grid of the plan has codes for.
        shared: the products with which every page begins, in their order.
        own: the items in the teacher's own words.
        ticket: the exit ticket.
    """

    coded: tuple[Rule, ...]
    shared: tuple[Product, ...]
    own: tuple[OwnItem, ...]
    ticket: ExitTicket

    @property
    def of_shared(self) -> tuple[tuple[WrongAnswer, ...], ...]:
        """The wrong answers with a code to each product that every page begins with."""
        return tuple(self._coded(likely_wrong_answers(product, len(RULES))) for product in self.shared)

    @property
    def of_own(self) -> tuple[tuple[OwnItem, tuple[WrongAnswer, ...]], ...]:
        """The items in the teacher's own words, each with its wrong answers that have a code."""
        return tuple((item, self._coded(item.wrong)) for item in self.own)

    @property
    def of_ticket(self) -> tuple[WrongAnswer, ...]:
        """The wrong answers with a code to the product of the exit ticket."""
        product = self.ticket.product
        return self._coded(without_folding(product)) if product else ()

    def mistakes(self, sheet: Worksheet) -> Iterator[Mistake]:
        """Give what may be met in the items that one pupil alone has, at most one mistake in each."""
        for number, placed in enumerate(sheet.items[len(self.shared) :], start=len(self.shared) + 1):
            if not isinstance(placed.item, OwnItem):
                yield from self._likeliest(number, placed.item)

    def _likeliest(self, number: int, item: Item) -> Iterator[Mistake]:
        if isinstance(item, MendItem):
            yield Mistake(number, None, item.rule)
            return
        for wrong in self._coded(item.wrong)[:1]:
            if isinstance(wrong.answer, Ratio):
                yield Mistake(number, wrong.answer, wrong.rule)

    def _coded(self, wrong: tuple[WrongAnswer, ...]) -> tuple[WrongAnswer, ...]:
        return tuple(one for one in wrong if one.rule in self.coded)


@frozen
class PupilsListed:
    """Whom a table of a key has.

    Args:
        names: of them, in the order of their list.
        before: how many stand before them in the list.
        of: how many the list has.
    """

    names: tuple[str, ...]
    before: int
    of: int

    @property
    def part(self) -> bool:
        """Whether these are not all."""
        return len(self.names) < self.of
