"""Sentences that are no steps: what is wrong, where, and what would do."""

from lark import Token

from foldmath.errors import Unreadable
from foldmath.phrases import Said, phrase


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


def at_token(message: Said, token: Token, instead: str = "", hint: Said = "") -> StepUnreadable:
    """Refuse what one word of a sentence says."""
    return StepUnreadable(message, (token.start_pos or 0) + 1, str(token), instead, hint)
