"""Notes to pupils: takes a class's evidence, gives each a strip with something right and something to try.

What is to be tried has a picture from the model, on the numbers that the pupil had.
"""

from collections.abc import Sequence
from enum import Enum

from foldmath.drawing.area_models import Grid, Guide, blank_sheets, part_shaded
from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.evidence import ClassEvidence, PupilEvidence
from foldmath.marking.judging.marks import Verdict
from foldmath.marking.marked_class import MarkedAnswer
from foldmath.statements.items import ModelSheet, Sheets, sheets_of
from foldmath.statements.items.sheets import MOST_PARTS
from foldmath.statements.products import Product
from foldmath.statements.rules.problems import (
    CountMended,
    MissingFactor,
    OtherName,
    PanelCut,
    PartsOfParts,
    Problem,
    SheetsCut,
)
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.values import frozen

PICTURE_MM = (54.0, 33.0)
"""Six strips stand on a page, each with a picture."""


class Task(Enum):
    """What kind of thing is to be tried; the words are the template's."""

    PRODUCT = "product"
    SHEETS = "sheets"
    COMPARE = "compare"
    PARTS = "parts"
    MISSING = "missing"
    SAME = "same"
    COUNT = "count"
    CUT = "cut"
    CUT_EACH = "cut each"
    FOLD = "fold"


@frozen
class Try:
    """Something to try.

    Args:
        task: of which kind.
        problem: with which numbers; of a fold its number among the folds.
        picture: its name among the pictures.
        fresh: whether it is new to the pupil, who had nothing wrong that a picture helps with.
    """

    task: Task
    problem: Problem | int
    picture: str
    fresh: bool = False


@frozen
class Note:
    """A pupil's strip.

    Args:
        label: the pupil's name.
        right: an answer that was right; None if there was none.
        task: what to try; None where there is nothing with a picture.
        language: that the pupil reads; empty for the lesson's own.
    """

    label: str
    right: MarkedAnswer | None
    task: Try | None
    language: str = ""


@frozen
class Notes:
    """The strips of a class, in the order of the roster, and the pictures that they place."""

    notes: tuple[Note, ...]
    pictures: dict[str, Scene]


def notes_to_pupils(evidence: ClassEvidence, pages: LessonPages, fresh: Sequence[Product]) -> Notes:
    """Write the strips of all who were there.

    Args:
        evidence: of the class.
        pages: of the lesson.
        fresh: products to try for pupils with nothing wrong; may be empty.
    """
    writing = _Writing(pages, fresh)
    return Notes(tuple(writing.note(pupil) for pupil in evidence.pupils), writing.pictures)


class _Writing:
    """Strips being written, and their pictures, each once."""

    def __init__(self, pages: LessonPages, fresh: Sequence[Product]) -> None:
        self.pages, self.fresh = pages, fresh
        self.pictures: dict[str, Scene] = {}

    def note(self, pupil: PupilEvidence) -> Note:
        """Write one strip."""
        answers = pupil.marked.answers
        right = [answer for answer in answers if answer.mark.verdict.good]
        told = min(right, key=_telling, default=None)
        shown = [answer for thought in pupil.thoughts for answer in thought.answers]
        wrong = [answer for answer in answers if answer.mark.verdict is Verdict.WRONG]
        tried = (self._try(answer) for answer in dict.fromkeys([*shown, *wrong]))
        task = next((one for one in tried if one), None) or self._fresh()
        owner = pupil.marked.pupil
        return Note(owner.on_paper, told, task, owner.language)

    def _fresh(self) -> Try | None:
        """Give a new product to a pupil with nothing wrong; the last fold where none is multiplied."""
        for product in self.fresh:
            made = self._of_problem(product, fresh=True)
            if made:
                return made
        rows = self.pages.folding.rows
        return self._of_fold(rows[-1].number) if rows else None

    def _try(self, answer: MarkedAnswer) -> Try | None:
        question = answer.question
        if question.fold is not None:
            return self._of_fold(question.fold)
        return self._of_problem(question.problem) if question.problem else None

    def _of_fold(self, number: int) -> Try:
        """Fold again, up to a fold that went wrong; the picture is the one before it."""
        name = f"note-fold-{number}"
        if name not in self.pictures:
            row = self.pages.folding.rows[number - 1]
            moment = self.pages.proved.moments[row.moment]
            self.pictures[name] = folded_sheet(moment.before, moment.step, *PICTURE_MM)
        return Try(Task.FOLD, number, name)

    def _of_problem(self, problem: Problem, *, fresh: bool = False) -> Try | None:
        found = _model(problem)
        if found is None:
            return None
        task, sheets = found
        name = f"note-{task.value}-{sheets!r}"
        if name not in self.pictures:
            self.pictures[name] = _picture(task, sheets)
        return Try(task, problem, name, fresh)


def _telling(answer: MarkedAnswer) -> tuple[bool, bool, bool]:
    """Put products first, then other numbers, the folds last, among the answers that were right."""
    question = answer.question
    number = isinstance(question, NumberQuestion)
    plain = question.problem is None
    return question.fold is not None or plain, not number, not isinstance(question.problem, Product)


def _model(problem: Problem) -> tuple[Task, Sheets] | None:
    """Give the sheets on which a problem is shown; None where none shows it."""
    match problem:
        case Product():
            sheets = sheets_of(problem)
            task = Task.PRODUCT if sheets and len(sheets.sheets) == 1 else Task.SHEETS
            return (task, sheets) if sheets else None
        case ProductCompared(first, second):
            sheets = sheets_of(Product(first, second))
            return (Task.COMPARE, sheets) if sheets else None
        case PartsOfParts(factors):
            sheets = sheets_of(Product(factors[0], factors[1]))
            return (Task.PARTS, sheets) if sheets else None
        case MissingFactor(known, _, missing) if not known.whole and not missing.whole:
            return Task.MISSING, _one(known.denominator, missing.denominator)
        case OtherName(given, parts):
            return Task.SAME, _one(given.denominator, parts, given.numerator)
        case SheetsCut(sheets, parts) if max(sheets, parts) <= MOST_PARTS:
            return Task.COUNT, Sheets((ModelSheet(parts, 1, 0, 0),) * sheets, sheets, 1)
        case PanelCut(parts, pieces) if max(parts, pieces) <= MOST_PARTS:
            return Task.CUT, _one(parts, pieces, 1)
        case CountMended(before, parts):
            return Task.CUT_EACH, _one(before, parts)
    return None


def _one(columns: int, rows: int, across: int = 0) -> Sheets:
    return Sheets((ModelSheet(columns, rows, across, rows if across else 0),), 1, 1)


def _picture(task: Task, sheets: Sheets) -> Scene:
    grids = tuple(Grid(one.columns, one.rows, one.across, one.up) for one in sheets.sheets)
    if task in (Task.SAME, Task.CUT):
        return part_shaded(grids[0], *PICTURE_MM)
    return blank_sheets(grids, sheets.beside, *PICTURE_MM, Guide.LINES)
