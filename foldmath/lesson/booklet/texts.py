"""The texts of a booklet: takes a value of a page, gives one line of words, or the slip in it."""

import re
from typing import Any

from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.shape import Slip
from foldmath.phrases import phrase

EXAMPLES = {
    "title": 'title = "My fraction diary"',
    "heading": 'heading = "Fold {fold}"',
    "prompt": 'prompt = "I noticed"',
    "frame": 'frame = "Draw what you see."',
    "cell": '"Word"',
}
NAMES = {
    "title": phrase("the title"),
    "heading": phrase("the heading"),
    "prompt": phrase("a prompt"),
    "frame": phrase("a frame"),
    "cell": phrase("a cell"),
}
FOLD_NUMBER = "{fold}"
"""Stands in a text for the number of the fold, on a page for each fold."""

_BRACES = re.compile(r"\{[^{}]*\}")


def one_line(value: Any, path: Path, name: str, longest: int, fold: tuple[int, int] | None) -> str | Slip:
    """Read words for one line, each run of spaces and line ends taken as one space.

    Args:
        value: as TOML gives it.
        path: where it stands, from the page.
        name: the key in ``EXAMPLES``.
        longest: how many characters it may have.
        fold: the step that the page is of and the fold's number, which ``{fold}`` stands for.
    """
    example = EXAMPLES[name]
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if not text or len(text) > longest:
        message = phrase(
            "{what} must be words in quotes, at most {longest} characters", what=NAMES[name], longest=longest
        )
        return Slip(path, message, example)
    for found in _BRACES.finditer(text):
        if found[0] != FOLD_NUMBER:
            hint = phrase("{{fold}}, or leave the braces out")
            return Slip(path, phrase("only {{fold}} may stand in braces"), hint)
        if fold is None:
            message = phrase("{{fold}} has a number only on a page for each fold")
            return Slip(path, message, phrase("write the number itself, or leave {{fold}} out"))
    return text.replace(FOLD_NUMBER, str(fold[1])) if fold else text


def whole_number(value: Any, least: int, most: int) -> bool:
    """Tell whether a value is a whole number in a range; TOML's true and false are none."""
    return isinstance(value, int) and not isinstance(value, bool) and least <= value <= most
