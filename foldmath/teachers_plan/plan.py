"""The teacher's plan: takes a proved lesson and its worksheet, gives all that the plan's template lays out.

Nothing here is worded for a reader; figures and sentences come from the model, words from the template.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from foldmath.drawing.crease_patterns import crease_pattern
from foldmath.drawing.folded_sheets import folded_sheet
from foldmath.drawing.scenes import Scene
from foldmath.errors import StepRefused
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.templating import render
from foldmath.paper.booklet import Booklet, Form
from foldmath.paper.moment import Moment
from foldmath.paper.performing import perform
from foldmath.paper.steps import Edge, FoldEdge, FoldStep, Gather, Slit
from foldmath.phrases import Said
from foldmath.plane.numbers import whole_part
from foldmath.statements.expressions import Claim
from foldmath.statements.items import ShadeItem
from foldmath.statements.products import Product
from foldmath.statements.rules import RULES, Rule
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE
from foldmath.statements.sentences import count_sentence, size_sentences, whole_sentence
from foldmath.statements.standards import Standard, standards_of
from foldmath.teachers_plan.copies import CopyList, copy_list
from foldmath.teachers_plan.lesson_time import FOLD, SHADING, Hour, hour
from foldmath.teachers_plan.plan_steps import StepRow, sayable, step_rows, ticked_parts
from foldmath.teachers_plan.starter import Starter, starter
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.limits import judged
from foldmath.tolerance.spread import default_spread
from foldmath.tolerance.telling import advised
from foldmath.words.steps import step_sentence
from foldmath.worksheets.worksheet import Worksheet

MOST_LAYERS = 8
"""More layers are too thick for a child's hands [common practice, no source]."""

MOST_FULL_ROWS = 6
"""So many rows have a picture and questions; those after them only say what to do and to listen for."""

MOST_SHORT_ROWS = 6

MOST_HARD = 2
"""So many warnings on paper and hands are told; later steps have the same trouble."""

SHOW_MM = (26.0, 20.0)
"""The most width and height of the picture of the sheet after a step."""

MOST_CODES = 5
MOST_GRID_ROWS = 18
"""Two pupils stand on a row of the grid; a larger class takes the page twice."""

SLIP_OF_ADDING = "adds"
"""The kind of slip that shows a pupil who adds at each fold."""


@dataclass(frozen=True)
class Halving:
    """One more halving for early finishers, and its sentences; past eight layers it is only predicted."""

    step: str
    count: Claim
    size: Claim
    whole: Claim
    folded: bool


@dataclass(frozen=True)
class Plan:
    """Everything that a teacher's plan says.

    Args:
        sheet: the worksheet that it is for.
        standards: those that the lesson touches, up to its grade.
        copies: what to copy.
        hour: what one lesson has time for.
        rows: the first rows, with picture and questions.
        short_rows: the rows after them.
        unlisted: how many rows there are past those.
        products, later_products: for today, and for next time.
        starter: None where the lesson has no denominators.
        stop: the row of today after which the lesson can stop early, or None.
        thick: the rows with more than eight layers.
        halving: for early finishers, or None where nothing sayable follows.
        rules: the wrong-answer rules of the grid, likeliest first.
        grid_rows: rows of the grid, two pupils to a row.
        ticks: into how many parts the sheet is folded where halving does not lead there.
        cuts: whether a step, or the booklet, needs scissors.
        slit_room_mm: how far past its stops the booklet's slit may run; 0 if it has none.
        gathers: whether the sheet becomes a booklet.
        true: how true the folding comes out, in one line; empty where nothing is folded.
        hard: what paper or hands cannot do, or only with trouble.
    """

    sheet: Worksheet
    standards: tuple[Standard, ...]
    copies: CopyList
    hour: Hour
    rows: tuple[StepRow, ...]
    short_rows: tuple[StepRow, ...]
    unlisted: int
    products: tuple[Product, ...]
    later_products: tuple[Product, ...]
    starter: Starter | None
    stop: StepRow | None
    thick: tuple[StepRow, ...]
    halving: Halving | None
    rules: tuple[Rule, ...]
    grid_rows: int
    ticks: tuple[int, ...]
    cuts: bool
    slit_room_mm: int
    gathers: bool
    true: Said
    hard: tuple[Said, ...]

    @property
    def objective(self) -> StepRow | None:
        """Today's last fold, which the objective is made from."""
        folds = [row for row in self.board if row.fold]
        return folds[-1] if folds else None

    @property
    def board(self) -> tuple[StepRow, ...]:
        """The rows of the board: today's that change the panels, as far as they are told in full."""
        today = self.rows[: max(self.hour.steps, 1)]
        return tuple(row for row in today if row.shaded or (row.fold and row.fold.cut))


def plan(proved: ProvedLesson, sheet: Worksheet, counts: Mapping[str, int] | None) -> Plan:
    """Gather what the plan of a lesson says.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
        counts: how many pupils have each level; None for a class of 28.
    """
    lesson = proved.lesson
    rows = step_rows(proved, sheet)
    products = tuple(item.product for item in _shading(sheet))
    time = hour(tuple(FOLD if row.fold else SHADING for row in rows), len(products))
    copies = copy_list(counts)
    return Plan(
        sheet,
        standards_of(proved.moments, products, _kinds(sheet), grade=lesson.grade, language=lesson.language),
        copies,
        time,
        rows[:MOST_FULL_ROWS],
        rows[MOST_FULL_ROWS : MOST_FULL_ROWS + MOST_SHORT_ROWS],
        len(rows[MOST_FULL_ROWS + MOST_SHORT_ROWS :]),
        products[: time.products],
        products[time.products :],
        starter(proved, products),
        _stop(rows[: time.steps]),
        tuple(row for row in rows if row.layers > MOST_LAYERS),
        _halving(proved, rows),
        _rules(sheet, rows),
        min(-(-copies.pupils // 2), MOST_GRID_ROWS),
        ticked_parts(proved),
        cuts=_has(proved, Slit) or (lesson.booklet is not None and _is_cut(lesson.booklet.booklet)),
        slit_room_mm=_slit_room_mm(lesson),
        gathers=_has(proved, Gather) or lesson.booklet is not None,
        true=_true(proved),
        hard=tuple(judgement.message for judgement in judged(proved.moments, lesson.stock))[:MOST_HARD],
    )


def plan_html(plan: Plan) -> str:
    """Give the plan as HTML."""
    return render("teachers_plan/plan.html", plan.sheet.lesson.language, plan=plan, sheet=plan.sheet)


def plan_pictures(proved: ProvedLesson, plan: Plan) -> dict[str, Scene]:
    """Give the scenes that the plan places: the sheet after each step, as pupils hold it up."""
    after = {row: proved.moments[row.moment].after for row in plan.rows}
    return {
        row.picture: crease_pattern(state, *SHOW_MM) if row.shaded else folded_sheet(state, None, *SHOW_MM)
        for row, state in after.items()
    }


def _kinds(sheet: Worksheet) -> frozenset[str]:
    """Name the kinds of the worksheet's items that no fold or product shows."""
    return frozenset(placed.item.kind.value for placed in sheet.items)


def _shading(sheet: Worksheet) -> tuple[ShadeItem, ...]:
    return tuple(placed.item for placed in sheet.items if isinstance(placed.item, ShadeItem))


def _stop(rows: tuple[StepRow, ...]) -> StepRow | None:
    """Find the last fold that leaves equal panels in few layers; the last of all only if no other does."""
    folds = [row for row in rows if row.fold]
    good = [row for row in folds if not row.unequal and row.panels > 1 and row.layers <= MOST_LAYERS]
    early = [row for row in good if row is not folds[-1]]
    return (early or good)[-1] if good else None


def _halving(proved: ProvedLesson, rows: tuple[StepRow, ...]) -> Halving | None:
    """Halve the paper as the last fold leaves it, its longer side first, where the sentences can be said."""
    last = next((row.moment for row in reversed(rows) if row.fold), None)
    if last is None:
        return None
    before = proved.moments[last].after
    box = before.table.box
    edges = (Edge.LEFT, Edge.TOP) if box.width >= box.height else (Edge.TOP, Edge.LEFT)
    for edge in edges:
        step = FoldEdge(edge, edge.opposite.position)
        try:
            moment = Moment(step, before, perform(step, before))
        except StepRefused:
            continue
        if set(moment.parts) == {2} and len(moment.cuts) == 1 and sayable(*moment.sizes):
            return Halving(
                step_sentence(step),
                count_sentence(moment)[0].claim,
                size_sentences(moment)[0].read,
                whole_sentence(moment).claim,
                moment.after.table.layers <= MOST_LAYERS,
            )
    return None


def _has(proved: ProvedLesson, kind: type[Slit | Gather]) -> bool:
    return any(isinstance(moment.step, kind) for moment in proved.moments)


def _is_cut(made: Booklet) -> bool:
    """Tell whether a booklet is slit, or trimmed before it opens."""
    return made.form is Form.RING or bool(made.trims)


def _slit_room_mm(lesson: Lesson) -> int:
    room = lesson.booklet.booklet.slit_room if lesson.booklet else None
    return whole_part(room.harmless * lesson.sheet.unit_mm) if room else 0


def _true(proved: ProvedLesson) -> Said:
    """Say how far off the worst panel may be, with the hands of the grade and the paper of the lesson."""
    if not any(isinstance(moment.step, FoldStep) for moment in proved.moments):
        return ""
    spread = default_spread(proved.lesson.grade, proved.lesson.stock)
    return advised(proved.moments, accuracy(proved.moments, spread))


def _rules(sheet: Worksheet, rows: tuple[StepRow, ...]) -> tuple[Rule, ...]:
    """Give the rules behind the wrong answers of this lesson's key, those in most items first."""
    found = [wrong.rule for item in _shading(sheet) for wrong in item.wrong]
    if sheet.slip:
        found.append(COUNT_FOR_SIZE)
    if any(row.slip and row.slip.kind == SLIP_OF_ADDING for row in rows):
        found.append(ADD_FOLDS)
    last = [rule for rule in (COUNT_FOR_SIZE, ADD_FOLDS) if rule in found]
    likeliest = sorted(RULES, key=lambda rule: -found.count(rule))
    kept = [rule for rule in likeliest if rule in found and rule not in last]
    return (*kept[: MOST_CODES - len(last)], *last)
