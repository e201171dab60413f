"""A slip in a lesson file, before its line and column are known."""

from dataclasses import KW_ONLY

from foldmath.lesson.files.positions import Path
from foldmath.phrases import Said
from foldmath.values import frozen


@frozen
class Slip:
    """What does not fit, and where.

    Args:
        path: the way to it.
        message: what is wrong.
        hint: the remedy.
        at_key: whether the key itself is meant.
        column: where the slip stands inside the quoted string, counted from 1; 0 for all of it.
        words: the words that stand there.
    """

    path: Path
    message: Said
    hint: Said
    _: KW_ONLY
    at_key: bool = False
    column: int = 0
    words: str = ""
