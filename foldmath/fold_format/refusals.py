"""Why a FOLD file cannot become a lesson."""

from foldmath.errors import FoldmathError
from foldmath.phrases import Said, phrase


class PatternRefused(FoldmathError):
    """A file that is no crease pattern of straight folds of one rectangular sheet.

    Args:
        message: what is wrong.
        hint: how to mend it.
        at: the key of the file where it stands, such as ``edges_vertices[3]``, or the line and column of
            text that is no JSON; empty if the whole file is meant.
        file: the path as the user gave it; empty while it is not known.
    """

    def __init__(self, message: Said, hint: Said, *, at: Said = "", file: str = "") -> None:
        super().__init__(message, hint)
        self.at = at
        self.file = file

    @property
    def heading(self) -> Said:
        """What is wrong, behind the file and the key that are known."""
        place = self.file or self.at
        if not place:
            return self.message
        if self.file and self.at:
            place = phrase("{file}, {key}", file=self.file, key=self.at)
        return phrase("{place}: {message}", place=place, message=self.message)

    def in_file(self, file: str) -> "PatternRefused":
        """Give the same refusal with its place."""
        return PatternRefused(self.message, self.hint, at=self.at, file=file)
