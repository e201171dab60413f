"""The pages of a lesson as they are marked: takes a proved lesson, gives what a page of a level asks."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache, cached_property

from foldmath.lesson.kinds import reach
from foldmath.lesson.proving import ProvedLesson
from foldmath.marking.asking.item_questions import question_of
from foldmath.marking.asking.questions import (
    AnyQuestion,
    NumberQuestion,
    NumbersQuestion,
    Page,
    TruthQuestion,
)
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import Exact
from foldmath.practice.choosing import CHOOSING
from foldmath.statements.items import Level, Reach
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, whole_number
from foldmath.statements.rules.problems import PanelsMade
from foldmath.worksheets.exit_ticket import ExitTicket, exit_ticket
from foldmath.worksheets.fold_rows import FoldRow
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.judged import Judged
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.version_code import version_code
from foldmath.worksheets.worksheet import with_items

FOLD, TICKET = "F", "T"
"""``F2 panels`` is the count of the second fold, ``T2`` the second question of the exit ticket."""

PANELS, OF = "panels", "of"


class LessonPages:
    """What each level's page of a lesson asks, and each page with a pupil's own numbers."""

    def __init__(self, proved: ProvedLesson) -> None:
        self.proved = proved
        self.folding = folding_part(proved)
        self.multiplies = reach(proved.lesson.grade, proved.lesson.followed) is Reach.PAIRS
        self.of_class = cache(self._of_class)

    def _of_class(self, level: Level) -> Page:
        """Give the page of a level with the class's numbers."""
        return self._page(level, None)

    def own(self, level: Level, seed: int) -> Page:
        """Give the page of a level with a pupil's own numbers."""
        return self._page(level, seed)

    def code(self, level: Level, seed: int | None = None, version: int = CHOOSING) -> str:
        """Give the code at the foot of a page, as a version of the choosing made it."""
        return version_code(self.proved.lesson, level, "" if seed is None else f"{seed}", version)

    def _page(self, level: Level, seed: int | None) -> Page:
        models = SIZES["regular"].models
        sheet = with_items(self.folding, self.proved, level, models, seed=seed)
        asked = [question_of(placed.item, f"{number}") for number, placed in enumerate(sheet.items, start=1)]
        if sheet.judged:
            asked.append(_of_judged(sheet.judged))
        questions = (*asked, *self._always)
        code, own = self.code(level, seed), seed is not None
        return Page(code=code, level=level, own=own, questions=questions, talked=sheet.talked)

    @cached_property
    def _always(self) -> tuple[AnyQuestion, ...]:
        """What every page asks: the folds and the exit ticket."""
        folds = [question for row in self.folding.rows for question in self._of_fold(row)]
        return (*folds, *self._of_ticket(self.ticket))

    @cached_property
    def ticket(self) -> ExitTicket:
        """The exit ticket, which is the same for all."""
        models = SIZES["regular"].models
        return exit_ticket(
            self.folding, [with_items(self.folding, self.proved, level, models) for level in Level]
        )

    def _of_fold(self, row: FoldRow) -> Iterator[AnyQuestion]:
        """Give what is asked of a fold: how many panels, and what fraction of the sheet each one is."""
        moment = self.proved.moments[row.moment]
        before, after = len(moment.before.panels), len(moment.after.panels)
        even = len(set(moment.parts)) == 1 and after > before
        yield NumberQuestion(
            column=f"{FOLD}{row.number} {PANELS}",
            asks=phrase("panels after fold {fold}", fold=row.number),
            head=phrase("Fold {number}: panels", number=row.number),
            fold=row.number,
            problem=PanelsMade(before, after // before) if even else None,
            answer=whole_number(after),
            shown=(whole_number(before),) if before > 1 else (),
        )
        column = f"{FOLD}{row.number} {OF}"
        one = phrase("Fold {number}: one panel is", number=row.number)
        several = phrase("Fold {number}: sizes", number=row.number)
        if row.tally and not row.one_of_each:
            counts = tuple(whole_number(count) for count, _ in row.tally)
            sizes = ", ".join(area.text for _, area in row.tally)
            asks = phrase("panels of {sizes}", sizes=sizes)
            each = phrase("Fold {number}: of each size", number=row.number)
            yield NumbersQuestion(
                column=column, asks=asks, head=each, fold=row.number, answers=counts, in_order=True
            )
        elif row.sizes and len(moment.cuts) == 1:
            yield replace(self._size(column, *moment.cuts[0]), head=one, fold=row.number)
        elif row.sizes or row.one_of_each:
            answers = tuple(area for _, area in row.tally)
            answers = answers or tuple(lowest_terms(part) for _, part in moment.cuts)
            yield NumbersQuestion(
                column=column,
                asks=_OF_THE_SHEET,
                head=several,
                fold=row.number,
                answers=answers,
                in_order=False,
            )

    def _size(self, column: str, panel: Exact, part: Exact) -> NumberQuestion:
        """Ask what fraction of the sheet a part of a panel is."""
        share, whole = lowest_terms(part / panel), lowest_terms(panel)
        product = Product(share, whole) if self.multiplies else None
        asks: Said = phrase("{share} of {panel}, of the sheet", share=share.text, panel=whole.text)
        return NumberQuestion(
            column=column,
            asks=asks if self.multiplies else _OF_THE_SHEET,
            problem=product,
            answer=lowest_terms(part),
            shown=(share, whole) if self.multiplies else (),
        )

    def _of_ticket(self, ticket: ExitTicket) -> Iterator[AnyQuestion]:
        if ticket.row:
            yield NumberQuestion(
                column=f"{TICKET}1 {PANELS}",
                asks=phrase("ticket: panels"),
                head=phrase("Ticket 1: panels"),
                answer=whole_number(ticket.row.panels),
            )
            if ticket.row.each:
                asks = phrase("ticket: one panel of the sheet")
                head = phrase("Ticket 1: one panel is")
                yield replace(_named_size(f"{TICKET}1 {OF}", ticket.row.panels, asks), head=head)
            elif ticket.row.smallest:
                asks = phrase("ticket: the smallest panel of the sheet")
                head = phrase("Ticket 1: the smallest panel is")
                yield NumberQuestion(
                    column=f"{TICKET}1 {OF}", asks=asks, head=head, answer=ticket.row.smallest
                )
        column = f"{TICKET}2"
        if ticket.product is None:
            asks = phrase("ticket: one of {panels} panels of a sheet", panels=ticket.panels)
            yield replace(_named_size(column, ticket.panels, asks), head=phrase("Ticket 2"))
            return
        product = ticket.product
        yield NumberQuestion(
            column=column,
            asks=phrase("ticket: {product}", product=product.text),
            head=phrase("Ticket 2"),
            problem=product,
            answer=product.unreduced,
            shown=(product.first, product.second),
        )


def _of_judged(judged: Judged) -> AnyQuestion:
    """Ask whether the sentence about a step is true; what it is corrected to is for the talk about it."""
    asks = phrase("true or false: {claim}", claim=judged.claim)
    return TruthQuestion(column=f"{judged.number}", asks=asks, true=judged.true)


_OF_THE_SHEET = phrase("one panel, of the sheet")


def _named_size(column: str, panels: int, asks: Said) -> NumberQuestion:
    """Ask what fraction of the sheet one of so many equal panels is."""
    one: Ratio = fraction(1, panels)
    return NumberQuestion(column=column, asks=asks, answer=one)
