"""All that one step shows, for who asks: what it did, what is true of it, creases, hands, and its booklet."""

from collections.abc import Iterator

from foldmath.desk.folding.paper_now import PaperNow
from foldmath.errors import FoldmathError
from foldmath.lesson.trace import effects
from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import CreaseLine, Kind
from foldmath.paper.steps import Gather
from foldmath.phrases import Said, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, mixed
from foldmath.statements.explaining import Explanation, best_of_each_kind, explanations
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import Details, details
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.limits import judged
from foldmath.values import frozen

MOST_OF_A_KIND = 3
"""Sentences of each kind that are told of a step."""

MOST_CREASES, MOST_FIGURES = 60, 60
"""That are listed; a table of more is read by nobody."""


class NoSuchStep(FoldmathError):
    """A lesson has not so many steps that are done."""


@frozen
class CreaseTold:
    """A crease or cut on the opened sheet: its ends, how it is folded, and whether it is folded now."""

    start: str
    end: str
    kind: Kind
    folded: bool


@frozen(kw_only=True)
class StepDetails:
    """All that one step shows.

    Args:
        number: of the step, counted from 1.
        text: its sentence, as written.
        did: what it did, and how the paper lies after it, a line each.
        hard: what speaks against it in the hand.
        shows: true sentences, the best for the grade first.
        grade: of the class, to which a later standard is later.
        creases: all there are after it, by their lower ends; none if there are too many.
        hands: how far off sizes and creases may be; None before the first crease.
        booklet: what it closed the sheet into, if it did.
    """

    number: int
    text: str
    did: tuple[Said, ...]
    hard: tuple[Said, ...]
    shows: tuple[Explanation, ...]
    grade: int
    creases: tuple[CreaseTold, ...]
    hands: Details | None
    booklet: Booklet | None


def step_details(now: PaperNow, number: int) -> StepDetails:
    """Tell all that a step shows, counted from 1.

    Raises:
        NoSuchStep: it is none of those that are done.
    """
    if not 1 <= number <= now.done:
        raise NoSuchStep(phrase("the lesson has no such step"), phrase("load this page again"))
    lesson, moments = now.lesson, now.moments[:number]
    moment = moments[-1]
    found = explanations(moments, number - 1, grade=lesson.grade, followed=lesson.followed)
    return StepDetails(
        number=number,
        text=now.lines[number - 1].text,
        did=tuple(effects(moment)),
        hard=tuple(one.message for one in judged(moments, lesson.stock) if one.step == number),
        shows=best_of_each_kind(found, MOST_OF_A_KIND),
        grade=lesson.grade,
        creases=tuple(_creases(moment)),
        hands=_hands(now, moments),
        booklet=_booklet(moment),
    )


def _creases(moment: Moment) -> Iterator[CreaseTold]:
    lines = moment.after.creases
    for line in sorted(lines, key=_lower_then_left) if len(lines) <= MOST_CREASES else ():
        start, end = sorted((line.start, line.end), key=_height_then_left)
        yield CreaseTold(_place(start), _place(end), line.kind, line.folded)


def _place(point: Point) -> str:
    return f"({mixed(point.x)}, {mixed(point.y)})"


def _lower_then_left(line: CreaseLine) -> list[tuple[Exact, Exact]]:
    return sorted(map(_height_then_left, (line.start, line.end)))


def _height_then_left(point: Point) -> tuple[Exact, Exact]:
    return point.y, point.x


def _hands(now: PaperNow, moments: tuple[Moment, ...]) -> Details | None:
    made = accuracy(moments, default_spread(now.lesson.grade, now.lesson.stock))
    if not made.creases or len(made.parts) + len(made.creases) > MOST_FIGURES:
        return None
    return details(made)


def _booklet(moment: Moment) -> Booklet | None:
    return booklet(moment.before, moment.step.column) if isinstance(moment.step, Gather) else None
