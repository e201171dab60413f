"""The one refusal of a sentence that cannot be read: where, what, and the nearest thing that would work."""

from foldmath.errors import Unreadable


class SentenceRefused(Unreadable):
    """A sentence of arithmetic that cannot be read.

    Args:
        column: where, counted from 1.
        message: what is wrong.
        words: the offending words, as written; empty if something is missing.
        hint: the nearest sentence that would work, or advice.
    """

    def __init__(self, column: int, message: str, words: str = "", hint: str = "") -> None:
        self.column = column
        self.message = message
        self.words = printable(words)
        self.hint = hint
        said = f"column {column}: {message}"
        if self.words:
            said += f"\n    here: {self.words}"
        if hint:
            said += f"\n    try:  {hint}"
        super().__init__(said)

    def with_hint(self, hint: str) -> "SentenceRefused":
        """Give the same refusal with a hint."""
        return SentenceRefused(self.column, self.message, self.words, hint)


def printable(words: str, longest: int = 40) -> str:
    """Show words of unknown origin: invisible signs by their codes, long words shortened."""
    shown = "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in words[: longest + 1])
    return shown if len(shown) <= longest else shown[:longest] + "…"
