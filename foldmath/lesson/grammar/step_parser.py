"""One sentence in, one step out: the grammar is in ``step.lark``, the meaning of its rules is here."""

import re
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any, cast

from lark import Lark, Token, Transformer, UnexpectedCharacters, UnexpectedToken, v_args

from foldmath.errors import Unreadable
from foldmath.grammars import compiled
from foldmath.paper.lengths import NumberRefused, plain_fractions, read_number
from foldmath.paper.steps import (
    FEWEST_PLEATS,
    MOST_PLEATS,
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.phrases import Said
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, Exact, denominator, numerator

LARGEST_NUMBER = 10_000
"""No numerator or denominator in a step is larger: no crease is placed more finely by hand."""

MOST_SHADED_PARTS = MOST_PLEATS * MOST_PLEATS
"""A pleat of a pleat makes this many parts at most."""

LONGEST_SENTENCE = 200
"""No sentence of the step language has more characters than this."""

COUNT_WORDS = ["two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]


class StepUnreadable(Unreadable):
    """A sentence that is no step.

    Args:
        message: what is wrong.
        column: where in the sentence, counted from 1.
        words: the offending words, as written.
        instead: what would work in the place of ``words``; empty if that is not known.
        hint: a whole sentence that would work, or advice.
    """

    def __init__(self, message: Said, column: int, words: str, instead: str = "", hint: Said = "") -> None:
        super().__init__(message, hint)
        self.column = column
        self.words = words
        self.instead = instead


def step_in(text: str) -> Step:
    """Read one sentence.

    Raises:
        StepUnreadable: it is no sentence of the step language, or one of its numbers cannot be used.
    """
    if len(text) > LONGEST_SENTENCE:
        raise StepUnreadable(
            f"a step has at most {LONGEST_SENTENCE} characters",
            1,
            text[:40],
            hint="write one fold in each step",
        )
    if not text.strip():
        raise StepUnreadable("this step is empty", 1, "", hint="leave this step out")
    try:
        return cast(Step, _parser().parse(text))
    except UnexpectedCharacters as error:
        raise _at_word(text, error.pos_in_stream or 0, "'{}' is not a word that steps use") from None
    except UnexpectedToken as error:
        if error.token.type == "$END":
            raise _at_word(text, len(text.rstrip()) - 1, "the step stops too early, after '{}'") from None
        raise _at_word(text, error.token.start_pos or 0, "'{}' does not fit here") from None


def _at_word(text: str, position: int, message: str) -> StepUnreadable:
    """Say what is wrong with the word that stands at or ends at a position."""
    words = [word for word in re.finditer(r"[\w/.\-−]+|\S", text) if word.start() <= position < word.end()]
    start, word = (words[0].start(), words[0].group()) if words else (position, text[position : position + 1])
    return StepUnreadable(message.format(word), start + 1, word)


def _at_token(message: Said, token: Token, instead: str = "", hint: Said = "") -> StepUnreadable:
    return StepUnreadable(message, (token.start_pos or 0) + 1, str(token), instead, hint)


def _whole(token: Token, fewest: int, most: int, of_what: str) -> int:
    number = int(token.replace("−", "-")) if len(token) <= len(str(LARGEST_NUMBER)) else LARGEST_NUMBER + 1
    if not fewest <= number <= most:
        nearest = fewest if number < fewest else most
        raise _at_token(f"{of_what} must be from {fewest} to {most}", token, str(nearest))
    return number


def _number(token: Token) -> Exact:
    """Read a position, and refuse what is too fine to fold."""
    try:
        number = read_number(token)
    except NumberRefused as error:
        raise _at_token(error.message, token, "1/2") from None
    above, below = numerator(number), denominator(number)
    if max(abs(above), below) > LARGEST_NUMBER:
        near = Fraction(above, below).limit_denominator(MOST_PLEATS)
        near = near if 0 < near < 1 else Fraction(1, 2)
        raise _at_token(f"numbers in a step go up to {LARGEST_NUMBER:,}", token, str(near))
    return number


@v_args(inline=True)
class _Meaning(Transformer[Token, Any]):
    """What each rule of the grammar stands for; words that only make it readable are passed over."""

    def start(self, step: Step) -> Step:
        return step

    def step(self, fold: Any, behind: bool) -> Step:
        return type(fold)(**{**vars(fold), "behind": behind})  # type: ignore[no-any-return]

    def behind(self, _behind: Token) -> bool:
        return True

    def fold_edge(self, _fold: Token, edge: tuple[Edge, Token], _to: Token, to: Exact) -> FoldEdge:
        return FoldEdge(edge[0], to)

    def edge_to_edge(
        self, _fold: Token, start: tuple[Edge, Token], _to: Token, end: tuple[Edge, Token]
    ) -> FoldEdge:
        edge, (other, word) = start[0], end
        if other is edge:
            raise _at_token(f"the {edge.value} edge lies there already", word, edge.opposite.value)
        if other is not edge.opposite:
            raise _at_token(
                f"the {edge.value} edge cannot travel onto the {other.value} edge beside it",
                word,
                hint=_corner_fold(edge, other),
            )
        return FoldEdge(edge, other.position)

    def fold_both(self, _fold: Token, *parts: Any) -> FoldBothEdges:
        pairs = _pairs(parts)
        for axis, word in pairs[1:]:
            if axis is not pairs[0][0]:
                raise _at_token("these are not the edges that were named first", word)
        return FoldBothEdges(pairs[0][0] if pairs else Axis.WIDTH)

    def both_edges(self, *parts: Any) -> tuple[Axis, Token] | None:
        return next(iter(_pairs(parts)), None)

    def pair_in_brackets(self, pair: tuple[Axis, Token]) -> tuple[Axis, Token]:
        return pair

    def width_pair(self, *words: Token) -> tuple[Axis, Token]:
        return Axis.WIDTH, words[0]

    def height_pair(self, *words: Token) -> tuple[Axis, Token]:
        return Axis.HEIGHT, words[0]

    def fold_at(
        self, _fold: Token, _at: Token, at: Exact, _moving: Token, edge: tuple[Edge, Token]
    ) -> FoldAt:
        return FoldAt(at, edge[0])

    def fold_point(self, _fold: Token, point: Point, _to: Token, to: Point) -> FoldPoint:
        return FoldPoint(point, to)

    def fold_along(self, _fold: Token, _along: Token, *rest: Any) -> FoldAlong:
        start, end, moving = (part for part in rest if isinstance(part, Point))
        return FoldAlong(start, end, moving)

    def between(self, *_words: Token) -> None:
        return None

    def pleat(self, _pleat: Token, axis: Axis, _into: Token, parts: int, *_words: Token) -> Pleat:
        return Pleat(axis, parts)

    def axis(self, word: Token) -> Axis:
        return Axis(word.lower())

    def parts(self, count: Token) -> int:
        if count.type == "COUNT_WORD":
            return COUNT_WORDS.index(count.lower()) + FEWEST_PLEATS
        return _whole(count, FEWEST_PLEATS, MOST_PLEATS, "the parts of a pleat")

    def open_last(self, *_words: Token) -> OpenLast:
        return OpenLast()

    def open_flat(self, *_words: Token) -> Open:
        return Open()

    def turn_over(self, *_words: Token) -> TurnOver:
        return TurnOver()

    def turn_quarter(self, *words: Token) -> TurnQuarter:
        return TurnQuarter(words[-1].type == "LEFT")

    def shade(self, _shade: Token, taken: Token, parts: Token, axis: Axis) -> Shade:
        count = _whole(parts, 1, MOST_SHADED_PARTS, "the number of parts")
        return Shade(_whole(taken, 1, count, "the parts to shade"), count, axis)

    def shade_fraction(self, _shade: Token, fraction: Token, axis: Axis) -> Shade:
        taken, _, parts = plain_fractions(fraction).partition("/")
        if not (taken.strip().isdecimal() and len(fraction) < 12 and 0 < int(taken) <= int(parts)):
            raise _at_token("shade a fraction from 0 to 1, or say how many parts", fraction, "1/2")
        if int(parts) > MOST_SHADED_PARTS:
            raise _at_token(f"the number of parts must be from 1 to {MOST_SHADED_PARTS}", fraction, "1/2")
        return Shade(int(taken), int(parts), axis)

    def direction(self, word: Token) -> Axis:
        return Axis.WIDTH if word.type == "ACROSS" else Axis.HEIGHT

    def slit(self, *words: Any) -> Slit:
        _slit, _at, axis, at, _from, *ends, last = words
        start, end = (_slit_end(end, axis) for end in (ends[0], last))
        if start == end:
            raise _at_token("a slit begins and ends at two different places", _slit, hint=_usual_slit(axis))
        return Slit(axis, at, min(start, end), max(start, end))

    def slit_edge(self, edge: tuple[Edge, Token]) -> tuple[Edge, Token]:
        return edge

    def gather(self, *words: Token) -> Gather:
        number = words[-1]
        if number.type != "INTEGER":
            return Gather()
        return Gather(_whole(number, 0, LARGEST_NUMBER, "the column of the cover"))

    def edge(self, word: Token, *_edge: Token) -> tuple[Edge, Token]:
        return Edge(word.lower()), word

    def coordinates(self, across: Exact, up: Exact) -> Point:
        return Point(across, up)

    def corner(self, *words: Token) -> Point:
        edges = {Edge(word.lower()).axis: Edge(word.lower()).position for word in words[:2]}
        return Point(edges[Axis.WIDTH], edges[Axis.HEIGHT])

    def position(self, word: Token) -> Exact:
        return HALF if word.type == "MIDDLE" else _number(word)


def _slit_end(end: Any, axis: Axis) -> Exact:
    """Give where a slit ends: a fraction, or an edge of the box that it can reach."""
    if not isinstance(end, tuple):
        return cast(Exact, end)
    edge, word = end
    if edge.axis is axis:
        near = (Edge.LEFT, Edge.RIGHT) if axis is Axis.HEIGHT else (Edge.BOTTOM, Edge.TOP)
        raise _at_token(
            f"a slit at a {axis.value} does not run to the {edge.value} edge",
            word,
            near[int(edge.position == 1)].value,
        )
    return cast(Exact, edge.position)


def _usual_slit(axis: Axis) -> str:
    return f"slit at {axis.value} 1/2 from 1/4 to 3/4"


def _pairs(parts: tuple[Any, ...]) -> list[tuple[Axis, Token]]:
    """Give the pairs of edges that a sentence names, each with its first word."""
    return [part for part in parts if isinstance(part, tuple)]


def _corner_fold(edge: Edge, other: Edge) -> str:
    """Offer, for an edge and one beside it, the fold of its far end to the far end of the other."""
    far_start = {edge.axis: edge.value, other.axis: other.opposite.value}
    far_end = {edge.axis: edge.opposite.value, other.axis: other.value}
    return (
        f"fold {far_start[Axis.HEIGHT]} {far_start[Axis.WIDTH]} corner"
        f" to {far_end[Axis.HEIGHT]} {far_end[Axis.WIDTH]} corner"
    )


@cache
def _parser() -> Lark:
    grammar = files(__package__).joinpath("step.lark").read_text(encoding="utf-8")
    return compiled("steps", grammar, lexer="basic", transformer=_Meaning())
