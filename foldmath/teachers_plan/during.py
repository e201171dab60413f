"""What a teacher does and says during the lesson: takes the rows of its steps, gives it as values."""

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.booklet.booklet import Booklet, Form
from foldmath.paper.measures import length_said, ruler_length
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.steps import Edge, FoldEdge, Slit, Step
from foldmath.phrases import Phrase
from foldmath.practice.scope import DENOMINATORS
from foldmath.statements.expressions import Claim
from foldmath.statements.items import Reach
from foldmath.statements.sentences import count_sentence, size_sentences, whole_sentence
from foldmath.teachers_plan.plan_steps import StepRow
from foldmath.values import frozen
from foldmath.worksheets.fold_rows import printable

MOST_LAYERS = 8
"""More layers are too thick for a child's hands [common practice, no source]."""

MOST_FULL_ROWS = 6
"""So many rows have a picture and questions; those after them only say what to do and to listen for."""

MOST_SHORT_ROWS = 6


@frozen(kw_only=True)
class Halving:
    """One more halving for early finishers, and its sentences; past eight layers it is only predicted.

    Args:
        step: the fold.
        panels: how many there are then.
        count, size: its sentences.
        whole: the sentence that closes it; None for a class that multiplies no fractions, and where one that
            multiplies them by wholes alone has no such parts yet.
        parts: for a class that multiplies none how many make the whole, where its grade names them; else 0.
        folded: whether it is folded.
    """

    step: Step
    panels: int
    count: Claim
    size: Claim
    whole: Claim | None
    parts: int
    folded: bool


@frozen(kw_only=True)
class During:
    """What a teacher does and says during the lesson.

    Args:
        today: how many rows one lesson has time for.
        rows: the first rows, with picture and questions.
        short_rows: the rows after them.
        unlisted: how many rows there are past those.
        stop: the row of today after which the lesson can stop early, or None.
        thick: the rows with more than eight layers.
        halving: for early finishers, or None where nothing sayable follows.
        cuts: whether a step, or the booklet, needs scissors.
        needed: whether today's folds and shadings show a product, which takes every one of them.
        halves: whether a fold brings an edge to the opposite one, so that its crease is the middle.
        slit_room: how far past its stops the booklet's slit may run; None if it has none.
    """

    today: int
    rows: tuple[StepRow, ...]
    short_rows: tuple[StepRow, ...]
    unlisted: int
    stop: StepRow | None
    thick: tuple[StepRow, ...]
    halving: Halving | None
    cuts: bool
    needed: bool
    halves: bool
    slit_room: Phrase | None

    @property
    def objective(self) -> StepRow | None:
        """Today's last fold, which the objective is made from."""
        folds = [row for row in self.changing if row.fold]
        return folds[-1] if folds else None

    @property
    def changing(self) -> tuple[StepRow, ...]:
        """Today's rows that change the panels, as far as they are told in full."""
        today = self.rows[: max(self.today, 1)]
        return tuple(row for row in today if row.shaded or (row.fold and row.fold.cut))


def during_lesson(proved: ProvedLesson, rows: tuple[StepRow, ...], today: int) -> During:
    """Gather what the plan says of the steps.

    Args:
        proved: the lesson.
        rows: every fold and shading.
        today: how many of them one lesson has time for.
    """
    lesson = proved.lesson
    return During(
        today=today,
        rows=rows[:MOST_FULL_ROWS],
        short_rows=rows[MOST_FULL_ROWS : MOST_FULL_ROWS + MOST_SHORT_ROWS],
        unlisted=len(rows[MOST_FULL_ROWS + MOST_SHORT_ROWS :]),
        stop=_stop(rows[:today]),
        thick=tuple(row for row in rows if row.fold and row.layers > MOST_LAYERS),
        halving=_halving(proved, rows),
        cuts=lesson.has(Slit) or (lesson.booklet is not None and _is_cut(lesson.booklet.booklet)),
        needed=any(row.shaded.twice for row in rows[:today] if row.shaded),
        halves=any(_halves(row.step.step) for row in rows if row.fold),
        slit_room=_slit_room(lesson),
    )


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
    lesson, before = proved.lesson, proved.moments[last].after
    stage = reach(lesson.grade, lesson.followed)
    box = before.table.box
    edges = (Edge.LEFT, Edge.TOP) if box.width >= box.height else (Edge.TOP, Edge.LEFT)
    for edge in edges:
        step = FoldEdge(edge, edge.opposite.position)
        try:
            moment = Moment(step, before, perform(step, before))
        except StepRefused:
            continue
        panels = len(moment.after.panels)
        known = stage is Reach.PAIRS or panels in DENOMINATORS[lesson.grade]
        if set(moment.parts) == {2} and len(moment.cuts) == 1 and printable(moment.sizes):
            return Halving(
                step=step,
                panels=panels,
                count=count_sentence(moment)[0].claim,
                size=size_sentences(moment)[0].read,
                whole=whole_sentence(moment).claim if known and stage is not Reach.NAMING else None,
                parts=panels if known and stage is Reach.NAMING else 0,
                folded=moment.after.table.layers <= MOST_LAYERS,
            )
    return None


def _halves(step: Step) -> bool:
    return isinstance(step, FoldEdge) and step.to == step.edge.opposite.position


def _is_cut(made: Booklet) -> bool:
    """Tell whether a booklet is slit, or trimmed before it opens."""
    return made.form is Form.RING or bool(made.trims)


def _slit_room(lesson: Lesson) -> Phrase | None:
    room = lesson.booklet.booklet.slit_room if lesson.booklet else None
    sheet = lesson.sheet
    return length_said(*ruler_length(room.harmless * sheet.unit_mm, sheet.unit)) if room else None
