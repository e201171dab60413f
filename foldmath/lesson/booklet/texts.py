"""The texts of a booklet: takes a value of a page, gives one line of words, or the slip in it."""

import re
from dataclasses import asdict
from typing import Any

from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import Phrase, Said, phrase
from foldmath.values import frozen

EXAMPLES = {
    "title": 'title = "My fraction diary"',
    "heading": 'heading = "Fold {fold}"',
    "prompt": 'prompt = "I noticed"',
    "frame": 'frame = "Draw what you see."',
    "cell": '"Word"',
    "answer": 'answers = ["1/8 of the sheet"]',
}
NAMES = {
    "title": phrase("the title"),
    "heading": phrase("the heading"),
    "prompt": phrase("a prompt"),
    "frame": phrase("a frame"),
    "cell": phrase("a cell"),
    "answer": phrase("an answer"),
}


@frozen
class Fills:
    """What the names in braces of a page's texts stand for; None where they stand for nothing here.

    Args:
        fold: the number of the fold, on a page for each fold.
        panels: how many panels there are: after that fold, or at the end.
        panel: the fraction of the sheet that each of them is, where all are equal.
    """

    fold: str | None = None
    panels: str | None = None
    panel: str | None = None


WHY_NONE = {
    "fold": phrase("{{fold}} has a number only on a page for each fold"),
    "panels": phrase("{{panels}} is a number only where the steps can be done"),
    "panel": phrase("{{panel}} is one fraction only where all panels are equal"),
}

_BRACES = re.compile(r"\{([^{}]*)\}")


def one_line(value: Any, path: Path, name: str, longest: int, fills: Fills) -> "Said | Slip":
    """Read words for one line, each run of spaces and line ends taken as one space.

    What stands in braces is a value until the language of the page is known.

    Args:
        value: as TOML gives it.
        path: where it stands, from the page.
        name: the key in ``EXAMPLES``.
        longest: how many characters it may have.
        fills: what names in braces stand for.
    """
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if not text or len(text) > longest:
        message = phrase(
            "{what} must be words in quotes, at most {longest} characters", what=NAMES[name], longest=longest
        )
        return Slip(path, message, EXAMPLES[name])
    known = asdict(fills)
    if set(_BRACES.sub("", text)) & {"{", "}"}:
        return Slip(path, phrase("a brace stands alone here"), phrase("leave the brace out"))
    for found in _BRACES.finditer(text):
        if found[1] not in known:
            hint = phrase("{{fold}}, {{panels}} or {{panel}}, or leave the braces out")
            return Slip(path, phrase("no number is called so in braces"), hint)
        if known[found[1]] is None:
            hint = phrase("write the number itself, or leave {{{name}}} out", name=found[1])
            return Slip(path, WHY_NONE[found[1]], hint)
    if not (used := set(_BRACES.findall(text))):
        return text
    return Phrase(text, tuple((name, known[name]) for name in sorted(used)))


def whole_number(value: Any, least: int, most: int) -> bool:
    """Tell whether a value is a whole number in a range; TOML's true and false are none."""
    return isinstance(value, int) and not isinstance(value, bool) and least <= value <= most
