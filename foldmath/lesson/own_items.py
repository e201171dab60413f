"""Items in a teacher's own words: takes what a lesson file has under ``items``, gives them and every slip."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.wanted import LONGEST_ITEM, LONGEST_UNIT, LONGEST_WORD
from foldmath.lesson.labels import plain
from foldmath.lesson.lesson import WrittenItem
from foldmath.phrases import Phrase, phrase
from foldmath.statements.items import Level, OwnItem, make_own
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.sums import parse_sum


def own_items(given: Any) -> tuple[tuple[WrittenItem, ...], tuple[Slip, ...]]:
    """Read every item whose shape is right; what is not of the right shape is passed over.

    Args:
        given: as the file has it, right or not.
    """
    written: list[WrittenItem] = []
    slips: list[Slip] = []
    for index, table in enumerate(given if isinstance(given, list) else ()):
        read = _read(table) if isinstance(table, dict) else None
        if isinstance(read, Slip):
            slips.append(replace(read, path=("items", index, *read.path)))
        elif read and any(read.stands_beside(other) for other in written):
            message = phrase("the same item stands here already")
            hint = phrase("another text or another sum, or other levels")
            slips.append(Slip(("items", index, "text"), message, hint))
        elif read:
            written.append(read)
    return tuple(written), tuple(slips)


def too_long(words: str, most: int) -> tuple[Phrase, Phrase] | None:
    """Tell what is too long about the words of an item for a column of the page, and the remedy."""
    if len(words) > most:
        return phrase("these words have at most {most} characters", most=most), phrase("shorter words")
    if any(len(word) > LONGEST_WORD for word in words.split()):
        message = phrase(
            "a word of an item has at most {most} letters: no column is as wide", most=LONGEST_WORD
        )
        return message, phrase("shorter words, or a space in it")
    return None


def _read(table: Mapping[str, Any]) -> WrittenItem | Slip | None:
    """Read one item; a slip has the way to it from the item on."""
    text, asked, unit = (table.get(key, "") for key in ("text", "sum", "unit"))
    if not all(isinstance(words, str) for words in (text, asked, unit)):
        return None
    text, unit = plain(text), plain(unit)
    if not text or len(text) > LONGEST_ITEM or len(unit) > LONGEST_UNIT:
        return None
    for key, words, most in (("text", text, LONGEST_ITEM), ("unit", unit, LONGEST_UNIT)):
        if wrong := too_long(words, most):
            return Slip((key,), *wrong)
    try:
        item: OwnItem = make_own(text, parse_sum(asked), unit)
    except SentenceRefused as error:
        return Slip(("sum",), error.message, error.hint, column=error.column, words=error.words)
    named = table.get("levels")
    levels = tuple(level for level in Level if not isinstance(named, list) or level.value in named)
    return WrittenItem(item, levels)
