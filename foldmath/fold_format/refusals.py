"""Why a FOLD file cannot become a lesson."""

from foldmath.errors import FoldmathError
from foldmath.phrases import Said, phrase


class PatternRefused(FoldmathError):
    """A file that is no crease pattern of straight folds of one rectangular sheet.

    Args:
        message: what is wrong.
        hint: how to mend it.
        file: the path as the user gave it; empty while it is not known.
    """

    def __init__(self, message: Said, hint: Said, file: str = "") -> None:
        super().__init__(message, hint)
        self.file = file

    @property
    def heading(self) -> Said:
        """What is wrong, with the file."""
        return (
            phrase("{file}: {message}", file=self.file, message=self.message) if self.file else self.message
        )

    def in_file(self, file: str) -> "PatternRefused":
        """Give the same refusal with its place."""
        return PatternRefused(self.message, self.hint, file)
