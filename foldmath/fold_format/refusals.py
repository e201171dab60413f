"""Why a FOLD file cannot become a lesson."""

from foldmath.errors import FoldmathError


class PatternRefused(FoldmathError):
    """A file that is no crease pattern of straight folds of one rectangular sheet.

    Args:
        message: what is wrong.
        hint: how to mend it.
        file: the path as the user gave it; empty while it is not known.
    """

    def __init__(self, message: str, hint: str, file: str = "") -> None:
        super().__init__(f"{file}: {message}" if file else message, hint)
        self.message = message

    def in_file(self, file: str) -> "PatternRefused":
        """Give the same refusal with its place."""
        return PatternRefused(self.message, self.hint, file)
