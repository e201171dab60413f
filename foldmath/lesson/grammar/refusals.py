"""Sentences that are no steps: what is wrong, where, and what would do."""

from lark import Token

from foldmath.errors import Unreadable
from foldmath.paper.measures import edge_said
from foldmath.paper.steps import Axis, Edge, FoldPoint
from foldmath.phrases import Said, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, exact
from foldmath.words.steps import step_sentence

SOME_WAY = exact(3, 4)
"""An example, where nothing is known of the paper."""


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


class HalfWithoutSide(StepUnreadable):
    """A fold in half of paper of which is not known how it lies."""

    def __init__(self, text: str) -> None:
        hint = phrase("fold in half left to right")
        super().__init__(phrase("say which side moves"), 1, text.strip(), hint=hint)


class FanWithoutDirection(StepUnreadable):
    """Equal parts of which no direction is said, and which may be meant otherwise than as a fan."""

    def __init__(self, parts: int, words: Token) -> None:
        fan = phrase('"fold into {parts} parts across", or "fold into {parts} parts up"', parts=parts)
        halves = phrase(
            '"fold into 4 parts across" (a fan: × 4 in one row), or "fold in half left to right", then '
            '"fold in half top to bottom" (× 2, twice)'
        )
        message = phrase("equal parts may be folded across or up")
        super().__init__(message, (words.start_pos or 0) + 1, str(words), hint=halves if parts == 4 else fan)


class EdgeOntoNext(StepUnreadable):
    """An edge that is to lie on the one beside it, which only a fold through their corner can do.

    How far along it the other corner comes depends on the paper as it lies; ``on`` says it exactly.
    """

    def __init__(self, edge: Edge, other: Edge, word: Token, language: str) -> None:
        self.edge, self.other, self.language = edge, other, language
        message = phrase(
            "{edge} cannot travel onto {other}, which is next to it",
            edge=edge_said(edge),
            other=edge_said(other),
        )
        example = step_sentence(_far_corner_fold(edge, other, SOME_WAY), language)
        hint = phrase("say how far along it the far corner goes: {step}", step=example)
        super().__init__(message, (word.start_pos or 0) + 1, str(word), hint=hint)

    def on(self, width: Exact, height: Exact) -> StepUnreadable:
        """Give the refusal with the fold that does it on paper of a width and a height.

        The shorter of the two edges is laid along the longer one; the crease is the same.
        """
        along = {Axis.WIDTH: height, Axis.HEIGHT: width}
        edge, other = sorted((self.edge, self.other), key=lambda one: along[one.axis])
        fold = _far_corner_fold(edge, other, along[edge.axis] / along[other.axis])
        hint = step_sentence(fold, self.language)
        return StepUnreadable(self.message, self.column, self.words, hint=hint)


def _far_corner_fold(edge: Edge, other: Edge, way: Exact) -> FoldPoint:
    """Give, for an edge and one beside it, the fold that takes its far end some way along the other."""
    along = edge.position + (edge.opposite.position - edge.position) * way
    start = {edge.axis: edge.position, other.axis: other.opposite.position}
    end = {edge.axis: along, other.axis: other.position}
    one, another = (Point(place[Axis.WIDTH], place[Axis.HEIGHT]) for place in (start, end))
    return FoldPoint(one, another)


def at_token(message: Said, token: Token, instead: str = "", hint: Said = "") -> StepUnreadable:
    """Refuse what one word of a sentence says."""
    return StepUnreadable(message, (token.start_pos or 0) + 1, str(token), instead, hint)
