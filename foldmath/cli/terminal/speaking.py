"""What the terminal is told, in the language that it wants."""

import os
import sys
from collections.abc import Sequence
from pathlib import Path

from foldmath.phrases import Said, phrase
from foldmath.words.languages import terminal_language
from foldmath.words.saying import say, say_error

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from foldmath.errors import FoldmathError
    from foldmath.tolerance.accuracy_in_words import Details


LEAST_LABEL = 7
"""Signs of room for the label before a line."""


def spoken(said: Said) -> str:
    """Say a phrase in the language of the terminal."""
    return say(said, terminal_language(os.environ))


def tell(said: Said = "") -> None:
    """Print a phrase, or an empty line."""
    print(spoken(said))


def tell_written(file: Path | str) -> None:
    """Print which file was written."""
    tell(phrase("wrote {file}", file=str(file)))


def tell_error(error: "FoldmathError") -> int:
    """Say on standard error what is wrong; give the exit code."""
    print(say_error(error, terminal_language(os.environ)), file=sys.stderr)
    return error.exit_code


def in_two_columns(rows: Sequence[tuple[Said, Said]]) -> str:
    """Lay lines out for a screen, each behind its label."""
    said = [(spoken(label), spoken(words)) for label, words in rows]
    width = max(LEAST_LABEL, *(len(label) for label, _ in said))
    return "\n".join(f"{label:{width}} {words}" for label, words in said)


def in_columns(told: "Details") -> str:
    """Lay figures out for a screen: what they are at the left, numbers flush right, the note below."""
    rows = [[spoken(cell) for cell in row] for row in (told.heads, *told.rows)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(told.heads))]
    lines = []
    for what, *figures in rows:
        cells = [figure.rjust(width) for figure, width in zip(figures, widths[1:], strict=True)]
        lines.append("  ".join([what.ljust(widths[0]), *cells]))
    return "\n".join([*lines, spoken(told.note)])
