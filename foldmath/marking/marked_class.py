"""Marking a class: takes a filled sheet, the pupils and the lesson's pages, gives every answer's mark."""

from collections import Counter, defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches

from foldmath.errors import Problem
from foldmath.lesson.files.spreadsheet import problem
from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.asking.questions import AnyQuestion, NumberQuestion, Page, TruthQuestion
from foldmath.marking.judging.judging import NOT_DONE, RIGHT, judge
from foldmath.marking.judging.marks import Mark, Verdict
from foldmath.marking.reading.answers import Absent
from foldmath.marking.reading.cells import read_cell
from foldmath.marking.reading.sheet import AnswerRow, AnswersRefused, AnswersSheet, Cell
from foldmath.phrases import Phrase, phrase
from foldmath.practice.choosing import CHOOSING
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.saying import say

SeedOf = Callable[[Pupil], int]
"""Gives what a pupil's own numbers are chosen by."""

PATTERN = 2
"""Answers of one pupil that make a pattern; one answer may be chance."""

MOST_LISTED = 8
"""Of more names a note tells only the number."""

NEAR = 0.6
"""How alike two names must be for one to be offered for the other."""

OLDER_PAGE = phrase("this page was made by an older foldmath, which chose other numbers for it")
BY_HAND = phrase("mark it by hand, or with the foldmath that made it")


@frozen
class MarkedAnswer:
    """One answer with its mark.

    Args:
        question: that was asked.
        answer: as it was typed; empty where the cell was.
        cell: in the sheet; empty where there was none.
        mark: of the answer.
    """

    question: AnyQuestion
    answer: str
    cell: str
    mark: Mark


@frozen
class MarkedPupil:
    """A pupil with all answers marked; none where he or she was absent.

    Args:
        pupil: whose answers they are.
        page: that was marked against.
        answers: in the order of the page.
        absent: whether the pupil was away, or has no row.
    """

    pupil: Pupil
    page: Page
    answers: tuple[MarkedAnswer, ...]
    absent: bool


@frozen
class MarkedClass:
    """All pupils of a class, in the order of the roster, with what the teacher should know of the sheet."""

    pupils: tuple[MarkedPupil, ...]
    notes: tuple[Phrase, ...]

    @property
    def present(self) -> tuple[MarkedPupil, ...]:
        """Those who were there."""
        return tuple(pupil for pupil in self.pupils if not pupil.absent)


def mark_class(
    sheet: AnswersSheet, roster: Sequence[Pupil] | None, pages: LessonPages, seed_of: SeedOf, *, own: bool
) -> MarkedClass:
    """Mark every answer of a class.

    Args:
        sheet: as it was filled in.
        roster: the pupils of the class; None for those of the sheet, all at core unless a code says more.
        pages: of the lesson.
        seed_of: gives what a pupil's own numbers were chosen by.
        own: whether pupils have numbers of their own where no code says so.

    Raises:
        AnswersRefused: the sheet does not fit the class or the lesson; carries every ``Problem`` found.
    """
    return _Marking(sheet, pages, seed_of, own).marked(pupils_of(sheet) if roster is None else roster)


class _Marking:
    """Fits the rows of a sheet to pupils and pages, and gathers what does not fit."""

    def __init__(self, sheet: AnswersSheet, pages: LessonPages, seed_of: SeedOf, own: bool) -> None:
        self.sheet, self.pages, self.seed_of, self.own = sheet, pages, seed_of, own
        self.problems: list[Problem] = []
        self.elsewhere: dict[str, Mapping[tuple[int, int], str]] = {}
        self.judged: dict[tuple[str, str, str], Mark] = {}

    def marked(self, pupils: Sequence[Pupil]) -> MarkedClass:
        """Mark the class.

        Raises:
            AnswersRefused: something does not fit.
        """
        rows = self._rows_of(pupils)
        self._check_asked()
        fitted = [(pupil, row, self._page(pupil, row)) for pupil, row in zip(pupils, rows, strict=True)]
        done = [self._pupil(pupil, row, page) for pupil, row, page in fitted if page]
        if self.problems:
            raise AnswersRefused(self.problems)
        return MarkedClass(tuple(done), tuple(self._notes(rows, done)))

    def _rows_of(self, pupils: Sequence[Pupil]) -> list[AnswerRow | None]:
        """Find each pupil's row; pupils of one name have theirs in the order of the roster."""
        wanted = Counter(pupil.label for pupil in pupils)
        by_label: defaultdict[str, list[AnswerRow]] = defaultdict(list)
        for row in self.sheet.rows:
            by_label[row.label].append(row)
            if row.label not in wanted:
                near = get_close_matches(row.label, wanted, n=1, cutoff=NEAR)
                message = phrase("cell A{line}: this student is not in the roster", line=row.line)
                self._refuse(row.line, message, row.label, near[0] if near else "")
            elif len(by_label[row.label]) > wanted[row.label]:
                message = phrase("cell A{line}: this student already has a row", line=row.line)
                self._refuse(row.line, message, row.label, phrase("keep one of the two rows"))
        for label, count in wanted.items():
            if 0 < len(by_label[label]) < count:
                row = by_label[label][0]
                message = phrase("cell A{line}: {count} students have this name", line=row.line, count=count)
                hint = phrase("a row for each of them, in the order of the roster")
                self._refuse(row.line, message, label, hint)
        rows = {label: iter(found) for label, found in by_label.items()}
        return [next(rows.get(pupil.label, iter(())), None) for pupil in pupils]

    def _check_asked(self) -> None:
        """Compare what the sheet says that its items ask with what the lesson asks."""
        of_pupils = {row.code for row in self.sheet.rows}
        for row in self.sheet.asked:
            levels = [level for level in Level if row.code in ("", self.pages.code(level))]
            differing = [self._differing(row, level) for level in levels]
            if differing and all(differing):
                cell, instead = differing[0][0]
                message = phrase("cell {cell}: the lesson does not ask this", cell=cell.place)
                self._refuse(row.line, message, cell.text, instead)
            elif not levels and row.code not in of_pupils:
                self._refuse_code(row, [self.pages.code(level) for level in Level])

    def _differing(self, row: AnswerRow, level: Level) -> list[tuple[Cell, str]]:
        """Give the cells that say of an item what the page of a level does not, with what that says."""
        language = self.pages.proved.lesson.language
        asked = self.pages.of_class(level).by_column
        said = {column: say(question.asks, language) for column, question in asked.items()}
        return [
            (cell, said.get(column, ""))
            for column, cell in row.cells.items()
            if " ".join(said.get(column, "").split()) != " ".join(cell.text.split())
        ]

    def _page(self, pupil: Pupil, row: AnswerRow | None) -> Page | None:
        """Find the page of a pupil: by the code at its foot, else by the roster."""
        seed = self.seed_of(pupil)
        if row is None or not row.code:
            return self.pages.own(pupil.level, seed) if self.own else self.pages.of_class(pupil.level)
        for level in dict.fromkeys((pupil.level, *Level)):
            if row.code == self.pages.code(level):
                return self.pages.of_class(level)
            if row.code == self.pages.code(level, seed):
                return self.pages.own(level, seed)
        self._refuse_code(row, [self.pages.code(pupil.level), self.pages.code(pupil.level, seed)], seed)
        return None

    def _refuse_code(self, row: AnswerRow, fitting: Sequence[str], seed: int | None = None) -> None:
        """Refuse a code that no page has, or only one whose items were chosen by an earlier version."""
        older = (
            self.pages.code(level, own, version)
            for version in range(1, CHOOSING)
            for level in Level
            for own in (None, seed)
        )
        if row.code in older:
            self._refuse(row.line, OLDER_PAGE, row.code, BY_HAND)
            return
        title = self.pages.proved.lesson.title
        message = phrase("no page of “{title}” has this code at its foot", title=title)
        self._refuse(row.line, message, row.code, phrase("{codes}", codes=", ".join(fitting)))

    def _pupil(self, pupil: Pupil, row: AnswerRow | None, page: Page) -> MarkedPupil:
        if row is None or self._away(row):
            return MarkedPupil(pupil, page, (), absent=True)
        for column, cell in row.cells.items():
            if column not in page.by_column:
                where = {"cell": cell.place, "column": column}
                message = phrase("cell {cell}: this student’s page does not ask {column}", **where)
                hint = phrase("it asks {columns}", columns=", ".join(page.by_column))
                self._refuse(row.line, message, cell.text, hint)
        asked = (question for question in page.questions if self._had_by_the_sheet(question))
        answers = tuple(self._answer(page, question, row) for question in asked)
        return MarkedPupil(pupil, page, self._explained_again(page, answers), absent=False)

    def _had_by_the_sheet(self, question: AnyQuestion) -> bool:
        """Tell whether a sheet asks for it: those of before had no column for true or false."""
        return not isinstance(question, TruthQuestion) or question.column in self.sheet.columns

    def _explained_again(self, page: Page, answers: tuple[MarkedAnswer, ...]) -> tuple[MarkedAnswer, ...]:
        """Look once more at what nothing explains: a rule that the pupil follows is likelier there."""
        wrong = [answer for answer in answers if answer.mark.verdict is Verdict.WRONG]
        if len(wrong) <= PATTERN or all(answer.mark.explanations for answer in wrong):
            return answers
        named = Counter(one.rule for answer in wrong if (one := answer.mark.explanation) and one.rule)
        followed = frozenset(rule for rule, count in named.items() if count >= PATTERN)
        if not followed:
            return answers
        elsewhere = self.elsewhere[page.code]
        return tuple(
            replace(answer, mark=judge(answer.question, read_cell(answer.answer), elsewhere, followed))
            if answer.mark.verdict is Verdict.WRONG and not answer.mark.explanations
            else answer
            for answer in answers
        )

    def _away(self, row: AnswerRow) -> bool:
        """Tell whether a row says that its pupil was absent; then it has no answers."""
        absent = [cell for cell in row.cells.values() if isinstance(read_cell(cell.text), Absent)]
        answers = [cell for cell in row.cells.values() if cell not in absent]
        if absent and answers:
            message = phrase("cell {cell}: an absent student has an answer here", cell=answers[0].place)
            hint = phrase("take the answer out, or the word in {cell}", cell=absent[0].place)
            self._refuse(row.line, message, answers[0].text, hint)
        return bool(absent)

    def _answer(self, page: Page, question: AnyQuestion, row: AnswerRow) -> MarkedAnswer:
        cell = row.cells.get(question.column)
        if cell is None:
            known = question.column in self.sheet.columns and self.sheet.empty_is_right
            return MarkedAnswer(question, "", "", RIGHT if known else NOT_DONE)
        return MarkedAnswer(question, cell.text, cell.place, self._mark(page, question, cell))

    def _mark(self, page: Page, question: AnyQuestion, cell: Cell) -> Mark:
        """Mark an answer, once for all who gave it to the same question."""
        key = (page.code, question.column, cell.text)
        if key not in self.judged:
            if page.code not in self.elsewhere:
                self.elsewhere[page.code] = _right_answers(page)
            self.judged[key] = judge(question, read_cell(cell.text), self.elsewhere[page.code])
        return self.judged[key]

    def _notes(self, rows: Sequence[AnswerRow | None], done: Sequence[MarkedPupil]) -> list[Phrase]:
        """Say what may have been meant otherwise."""
        notes = []
        missing = [pupil.pupil.on_paper for pupil, row in zip(done, rows, strict=True) if row is None]
        if missing:
            notes.append(phrase("No row, so taken as absent: {names}", names=_listed(missing)))
        bare = [pupil.pupil.on_paper for pupil, row in zip(done, rows, strict=True) if row and not row.cells]
        if bare and self.sheet.empty_is_right:
            notes.append(phrase("Nothing typed, so marked as all right: {names}", names=_listed(bare)))
        return notes

    def _refuse(self, line: int, message: Phrase, text: str, hint: Phrase | str) -> None:
        self.problems.append(problem(self.sheet.file, line, message, text, hint))


def _listed(names: Sequence[str]) -> Phrase:
    """List a few names, or say how many they are."""
    if len(names) <= MOST_LISTED:
        return phrase("{names}", names=", ".join(names))
    return phrase("{count} students", count=len(names))


def pupils_of(sheet: AnswersSheet) -> tuple[Pupil, ...]:
    """Give the pupils of a class without a list: those who have a row."""
    return told_apart(Pupil(row.label, Level.CORE) for row in sheet.rows)


def _right_answers(page: Page) -> dict[tuple[int, int], str]:
    """Give the columns of a page by their right answers, fractions alone: whole numbers are often alike."""
    found: dict[tuple[int, int], str] = {}
    for question in page.questions:
        if isinstance(question, NumberQuestion) and not question.answer.whole:
            found.setdefault((question.answer.numerator, question.answer.denominator), question.column)
    return found
