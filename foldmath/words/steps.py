"""A step as a sentence: complete, so that it reads back as that step, or for a child beside a picture."""

from collections.abc import Mapping
from typing import Any, assert_never

from foldmath.paper.steps import (
    Axis,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    OpenStep,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
    TurnStep,
)
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, written
from foldmath.values import frozen
from foldmath.words.authored import table
from foldmath.words.languages import DEFAULT, of_one_tongue
from foldmath.words.points import is_corner, is_inside, is_landmark, typed_point

STEPS = "steps.toml"


@frozen(kw_only=True)
class WrittenStep:
    """A step and the sentence that somebody wrote for it; pages say the step in their own words.

    Args:
        text: the sentence, without the spaces round it.
        step: what it asks for.
        line: where the sentence begins in the lesson file, counted from 1; 0 if it stands in none.
        column: the same.
    """

    text: str
    step: Step
    line: int = 0
    column: int = 0


def as_written(step: Step, language: str = DEFAULT) -> WrittenStep:
    """Give a step with its own sentence, as if that had been written."""
    return WrittenStep(text=step_sentence(step, language), step=step)


def for_reader(written: WrittenStep, language: str) -> str:
    """Give a step as it was written to who reads English, as files are; else in the reader's own language."""
    return written.text if of_one_tongue(language, DEFAULT) else step_sentence(written.step, language)


def in_words(
    written: WrittenStep | Step,
    language: str = DEFAULT,
    *,
    after: WrittenStep | None = None,
    crossing: bool = False,
) -> str:
    """Say a step as pages say it, whatever sentence somebody wrote for it.

    Shading columns right after rows, or rows right after columns, takes a part of the part that is shaded.
    A line from a corner through a crossing is told by these two, as children read it.

    Args:
        written: the step.
        language: of the sentence.
        after: the step right before it; None if there is none.
        crossing: whether a line to fold along goes through a crossing of creases.
    """
    step = written.step if isinstance(written, WrittenStep) else written
    if crossing and (told := _through_crossing(step, language)):
        return told
    if isinstance(step, Shade) and after and crosses(step, after.step):
        inside = _words(language)["in_picture"]["shade_inside"]
        return _text(inside, shade=step_sentence(step, language))
    return step_sentence(step, language)


def picture_sentence(
    written: WrittenStep,
    language: str = DEFAULT,
    *,
    after: WrittenStep | None = None,
    crossing: bool = False,
) -> str:
    """Say what a child reads beside a picture of a step: its sentence, unless that tells places by numbers.

    Corners and middles are told by their names, other points and the ends of a cut are shown by the picture.
    The paper has no line yet where a fold along one goes: the corner where the line begins is told.

    Args:
        written: the step.
        language: of the sentence.
        after: the step right before it; None if there is none.
        crossing: whether a line to fold along goes through a crossing of creases, where a child finds it.
    """
    step = written.step
    if isinstance(step, Shade):
        begins = "inside" if after and crosses(step, after.step) else step.axis.value
        return _text(_words(language)["in_picture"][f"shade_{begins}"], shade=step_sentence(step, language))
    if isinstance(step, OpenStep | TurnStep | FoldEdge | FoldBothEdges | FoldAt | Pleat):
        return step_sentence(step, language)
    match step:
        case FoldPoint(point, to) if is_landmark(point) and is_landmark(to):
            return step_sentence(step, language)
        case FoldAlong(start) if is_corner(start):
            words = _words(language)
            from_corner = _text(words["in_picture"]["fold_from"], start=typed_point(start, words))
            return _through_crossing(step, language) if crossing else from_corner
        case FoldPoint() | FoldAlong():
            return str(_words(language)["in_picture"]["fold"])
        case Slit():
            return str(_words(language)["in_picture"]["slit"])
        case Gather():
            return str(_words(language)["in_picture"]["gather"])
        case _:
            assert_never(step)


def _through_crossing(step: Step, language: str) -> str:
    """Say a fold along a line from a corner by the crossing that it goes through; nothing of another step."""
    if not isinstance(step, FoldAlong) or not is_corner(step.start):
        return ""
    words = _words(language)
    told = _text(words["in_picture"]["fold_through"], start=typed_point(step.start, words))
    return _behind(told, step.behind, words)


def shows_fraction(step: Step) -> bool:
    """Tell whether a fraction stands in what a child reads beside a picture of a step, in any language."""
    match step:
        case FoldEdge(edge, to):
            return to not in (HALF, edge.opposite.position)
        case FoldAt(at):
            return at != HALF
        case FoldBothEdges() | FoldPoint() | FoldAlong() | Pleat() | Shade() | Slit() | Gather():
            return False
        case Open() | OpenLast() | TurnOver() | TurnQuarter():
            return False
        case _:
            assert_never(step)


def crosses(shade: Shade, before: Step) -> bool:
    """Tell whether strips are said to be shaded inside what the step right before them shaded."""
    return isinstance(before, Shade) and before.axis is not shade.axis


def step_sentence(step: Step, language: str = DEFAULT) -> str:
    """Say a step in one complete sentence of the step language, which reads back as the same step."""
    words = _words(language)
    if isinstance(step, FoldStep):
        return _fold(step, words)
    if isinstance(step, OpenStep | TurnStep):
        return _opening_or_turn(step, words)
    match step:
        case Shade(taken, parts, axis):
            return _text(words["shade"][axis.value], taken=taken, parts=parts)
        case Slit():
            return _slit(step, words)
        case Gather(None):
            return _text(words["gather"])
        case Gather(column):
            return _text(words["gather_with_cover"], column=column)
        case _:
            assert_never(step)


def _words(language: str) -> Mapping[str, Any]:
    return table(language, STEPS)


def _text(words: str, **values: object) -> str:
    return words.format(**values)


def _fold(step: FoldStep, words: Mapping[str, Any]) -> str:
    match step:
        case FoldEdge(edge, to):
            across = to == edge.opposite.position
            place = words["edge"][edge.opposite.value] if across else _place(to, edge.axis, words)
            return _behind(_text(words["edge_to"][edge.value], place=place), step.behind, words)
        case FoldBothEdges(axis):
            return _behind(words["both_edges"][axis.value], step.behind, words)
        case FoldAt(at, moving):
            part = words["part_behind" if step.behind else "part_over"][moving.value]
            return _text(part, place=_place(at, moving.axis, words))
        case FoldPoint(point, to):
            told = _text(words["point"], point=typed_point(point, words), to=typed_point(to, words))
            return _behind(told, step.behind, words)
        case FoldAlong(start, end, moving):
            told = words["along_through" if is_inside(end) else "along"]
            points = {"start": start, "end": end, "moving": moving}
            along = {name: typed_point(point, words) for name, point in points.items()}
            return _behind(_text(told, **along), step.behind, words)
        case Pleat(axis, parts):
            return _text(words["fan"][axis.value], parts=parts)
        case _:
            assert_never(step)


def _opening_or_turn(step: OpenStep | TurnStep, words: Mapping[str, Any]) -> str:
    match step:
        case OpenLast():
            return _text(words["open_last"])
        case Open():
            return _text(words["open"])
        case TurnOver():
            return _text(words["turn_over"])
        case TurnQuarter(left):
            return _text(words["turn"]["left" if left else "right"])
        case _:
            assert_never(step)


def _slit(step: Slit, words: Mapping[str, Any]) -> str:
    low, high = ("bottom", "top") if step.axis is Axis.WIDTH else ("left", "right")
    start = words["edge"][low] if step.start == ZERO else written(step.start)
    end = words["edge"][high] if step.end == ONE else written(step.end)
    return _text(words["slit"][step.axis.value], at=written(step.at), start=start, end=end)


def _behind(fold: str, behind: bool, words: Mapping[str, Any]) -> str:
    return _text(words["behind"], fold=fold) if behind else fold


def _place(position: Exact, axis: Axis, words: Mapping[str, Any]) -> str:
    if position == HALF:
        return str(words["middle"])
    return _text(words["part_of"][axis.value], at=written(position))
