"""What the rules of the grammars stand for: words of a sentence in, one step out, in every language alike."""

from dataclasses import replace
from typing import Any, cast

from lark import Token, Transformer, v_args

from foldmath.lesson.grammar import numerals
from foldmath.lesson.grammar.numerals import LARGEST_NUMBER, MOST_SHADED_PARTS, whole
from foldmath.lesson.grammar.points import EDGES, PointRules, side_in
from foldmath.lesson.grammar.refusals import EdgeOntoNext, FanWithoutDirection, at_token
from foldmath.paper.lengths import plain_fractions
from foldmath.paper.measures import edge_said
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
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, exact
from foldmath.values import frozen
from foldmath.words.authored import table
from foldmath.words.steps import STEPS, step_sentence

_AXES = {"WIDTH": Axis.WIDTH, "HEIGHT": Axis.HEIGHT, "OF_WIDTH": Axis.WIDTH, "OF_HEIGHT": Axis.HEIGHT}


@frozen
class FoldInHalf:
    """A fold in half of which no direction is said: the longer side of the paper as it lies is halved."""

    behind: bool = False


def meaning(language: str) -> Transformer[Token, Any]:
    """Give what turns the rules of a language's grammar into steps."""
    return _Meaning(language)


@v_args(inline=True)
class _Meaning(PointRules):
    """What each rule of a grammar stands for; words that only make it readable are passed over."""

    def __init__(self, language: str) -> None:
        super().__init__()
        self.language = language

    def start(self, step: Step) -> Step:
        return step

    def step(self, fold: Any, behind: bool) -> Step:
        return type(fold)(**{**vars(fold), "behind": behind})  # type: ignore[no-any-return]

    def behind(self, _behind: Token) -> bool:
        return True

    def fold_edge(self, _fold: Token, edge: tuple[Edge, Token], _to: Token, to: Exact, *of: Axis) -> FoldEdge:
        return FoldEdge(_along_its_way(edge, of), to)

    def edge_to_edge(
        self, _fold: Token, start: tuple[Edge, Token], _to: Token, end: tuple[Edge, Token]
    ) -> FoldEdge:
        edge, (other, word) = start[0], end
        if other is edge:
            raise at_token(
                phrase("{edge} lies there already", edge=edge_said(edge)), word, edge.opposite.value
            )
        if other is not edge.opposite:
            raise EdgeOntoNext(edge, other, word, self.language)
        return FoldEdge(edge, other.position)

    def fold_both(self, _fold: Token, *parts: Any) -> FoldBothEdges:
        pairs = _pairs(parts)
        for axis, word in pairs[1:]:
            if axis is not pairs[0][0]:
                raise at_token(phrase("these are not the edges that were named first"), word)
        return FoldBothEdges(pairs[0][0] if pairs else Axis.WIDTH)

    def both_edges(self, *parts: Any) -> tuple[Axis, Token] | None:
        return next(iter(_pairs(parts)), None)

    def pair_in_brackets(self, pair: tuple[Axis, Token]) -> tuple[Axis, Token]:
        return pair

    def width_pair(self, *words: Token) -> tuple[Axis, Token]:
        return Axis.WIDTH, words[0]

    def height_pair(self, *words: Token) -> tuple[Axis, Token]:
        return Axis.HEIGHT, words[0]

    def fold_at(self, *words: Any) -> FoldAt:
        return self.fold_part(*words)

    def fold_part(self, _fold: Token, *words: Any) -> FoldAt:
        at = next(word for word in words if not isinstance(word, Token | tuple | Axis))
        return FoldAt(at, _along_its_way(side_in(words), words))

    def fold_part_behind(self, _fold: Token, *words: Any) -> FoldAt:
        return replace(self.fold_part(_fold, *words), behind=True)

    def fold_from(self, _fold: Token, *words: Any) -> FoldAt:
        place = next(word for word in words if not isinstance(word, Token | tuple | Axis))
        (edge, word), *moving = (word for word in words if isinstance(word, tuple))
        at = place if edge.position == ZERO else ONE - place
        fold = FoldAt(at, _along_its_way(moving[0] if moving else (edge, word), words))
        message = phrase("a place is counted from the left or from the bottom; say which side moves")
        raise at_token(message, word, hint=step_sentence(fold, self.language))

    def fold_half_to(self, _fold: Token, *words: Any) -> FoldEdge:
        start, end = (word for word in words if isinstance(word, tuple))
        return self.edge_to_edge(_fold, start, end[1], end)

    def fold_half(self, *_words: Token) -> FoldInHalf:
        return FoldInHalf()

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
        return _AXES[word.type]

    def parts(self, count: Token) -> int:
        if count.type == "COUNT_WORD":
            words: list[str] = table(self.language, STEPS)["count_words"]
            return words.index(count.lower()) + FEWEST_PLEATS
        return whole(count, FEWEST_PLEATS, MOST_PLEATS, phrase("the parts of a fan"))

    def fan(self, _fold: Token, axis: Axis, _like_a_fan: Token, *words: Any) -> Pleat:
        return Pleat(axis, next(word for word in words if isinstance(word, int)))

    def fold_into(self, *words: Any) -> Pleat:
        name = next(word for word in words if isinstance(word, Token) and word.type == "PART_NAME")
        return self._fan_into(table(self.language, STEPS)["part_names"][name.lower()], name, words)

    def fold_into_parts(self, *words: Any) -> Pleat:
        parts = next(word for word in words if isinstance(word, int))
        return self._fan_into(parts, words[0], words)

    def _fan_into(self, parts: int, word: Token, words: tuple[Any, ...]) -> Pleat:
        axis = next((word for word in words if isinstance(word, Axis)), None)
        if axis is None:
            raise FanWithoutDirection(parts, word)
        return Pleat(axis, parts)

    def open_last(self, *_words: Token) -> OpenLast:
        return OpenLast()

    def open_flat(self, *_words: Token) -> Open:
        return Open()

    def turn_over(self, *_words: Token) -> TurnOver:
        return TurnOver()

    def turn_quarter(self, *words: Token) -> TurnQuarter:
        return TurnQuarter(words[-1].type == "LEFT")

    def columns(self, *_words: Token) -> Axis:
        return Axis.WIDTH

    def rows(self, *_words: Token) -> Axis:
        return Axis.HEIGHT

    def of_axis(self, word: Token) -> Axis:
        return _AXES[word.type]

    def shade(self, _shade: Token, taken: Token, parts: Token, axis: Axis) -> Shade:
        count = whole(parts, 1, MOST_SHADED_PARTS, phrase("the number of parts"))
        return Shade(whole(taken, 1, count, phrase("the parts to shade")), count, axis)

    def shade_fraction(self, _shade: Token, fraction: Token, axis: Axis) -> Shade:
        taken, _, parts = plain_fractions(fraction).partition("/")
        if not (taken.strip().isdecimal() and len(fraction) < 12 and 0 < int(taken) <= int(parts)):
            raise at_token(phrase("shade a fraction from 0 to 1, or say how many parts"), fraction, "1/2")
        if int(parts) > MOST_SHADED_PARTS:
            raise at_token(
                phrase(
                    "the number of parts must be from 1 to {most}",
                    most=MOST_SHADED_PARTS,
                ),
                fraction,
                "1/2",
            )
        return Shade(int(taken), int(parts), axis)

    def direction(self, word: Token) -> Axis:
        return Axis.WIDTH if word.type == "ACROSS" else Axis.HEIGHT

    def slit(self, *words: Any) -> Slit:
        _slit = words[0]
        axis = next(word for word in words if isinstance(word, Axis))
        at, first, last = (word for word in words if not isinstance(word, Token | Axis))
        start, end = (_slit_end(end, axis) for end in (first, last))
        if start == end:
            raise at_token(
                phrase("a slit begins and ends at two different places"),
                _slit,
                hint=step_sentence(Slit(axis, HALF, exact(1, 4), exact(3, 4)), self.language),
            )
        return Slit(axis, at, min(start, end), max(start, end))

    def slit_edge(self, edge: tuple[Edge, Token]) -> tuple[Edge, Token]:
        return edge

    def gather(self, *words: Any) -> Gather:
        columns = [word for word in words if isinstance(word, int)]
        return Gather(*columns)

    def cover(self, *words: Token) -> int:
        return whole(words[-1], 0, LARGEST_NUMBER, phrase("the column of the cover"))

    def edge(self, *words: Any) -> tuple[Edge, Token]:
        return side_in(words)

    def side(self, word: Token) -> tuple[Edge, Token]:
        return EDGES[word.type], word

    def position(self, word: Token) -> Exact:
        return HALF if word.type == "MIDDLE" else numerals.position(word)


def _along_its_way(side: tuple[Edge, Token], words: tuple[Any, ...]) -> Edge:
    """Give the edge that travels; the width or height that is named must be what it travels along."""
    edge, word = side
    for axis in (word for word in words if isinstance(word, Axis)):
        if axis is not edge.axis:
            raise at_token(_other_way(axis, edge), word)
    return edge


def _other_way(axis: Axis, edge: Edge) -> Phrase:
    if axis is Axis.WIDTH:
        return phrase("{edge} moves up or down, so its place is a part of the height", edge=edge_said(edge))
    return phrase("{edge} moves left or right, so its place is a part of the width", edge=edge_said(edge))


def _slit_end(end: Any, axis: Axis) -> Exact:
    """Give where a slit ends: a fraction, or an edge of the box that it can reach."""
    if not isinstance(end, tuple):
        return cast(Exact, end)
    edge, word = end
    if edge.axis is axis:
        near = (Edge.LEFT, Edge.RIGHT) if axis is Axis.HEIGHT else (Edge.BOTTOM, Edge.TOP)
        raise at_token(
            _never_reached(axis, edge),
            word,
            near[int(edge.position == 1)].value,
        )
    return cast(Exact, edge.position)


def _never_reached(axis: Axis, edge: Edge) -> Phrase:
    if axis is Axis.WIDTH:
        return phrase("a slit at a place of the width does not run to {edge}", edge=edge_said(edge))
    return phrase("a slit at a place of the height does not run to {edge}", edge=edge_said(edge))


def _pairs(parts: tuple[Any, ...]) -> list[tuple[Axis, Token]]:
    """Give the pairs of edges that a sentence names, each with its first word."""
    return [part for part in parts if isinstance(part, tuple)]
