"""The one refusal of a sentence that cannot be read: where, what, and the nearest thing that would work."""

from foldmath.errors import Unreadable
from foldmath.phrases import Said, phrase


class SentenceRefused(Unreadable):
    """A sentence of arithmetic that cannot be read.

    Args:
        column: where, counted from 1.
        message: what is wrong.
        words: the offending words, as written; empty if something is missing.
        hint: the nearest sentence that would work, or advice.
    """

    def __init__(self, column: int, message: Said, words: str = "", hint: Said = "") -> None:
        super().__init__(message, hint)
        self.column = column
        self.words = printable(words)

    @property
    def heading(self) -> Said:
        """What is wrong, with its column."""
        return phrase("column {column}: {message}", column=self.column, message=self.message)

    def with_hint(self, hint: Said) -> "SentenceRefused":
        """Give the same refusal with a hint."""
        return SentenceRefused(self.column, self.message, self.words, hint)


def printable(words: str, longest: int = 40) -> str:
    """Show words of unknown origin: invisible signs by their codes, long words shortened."""
    shown = "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in words[: longest + 1])
    return shown if len(shown) <= longest else shown[:longest] + "…"
