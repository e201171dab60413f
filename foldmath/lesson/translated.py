"""What a lesson file says in other languages: takes its table of words, gives every slip in it.

A text stands beside what it is in another language. One that its lesson has no longer is passed over, since
whoever changes a title does not look at the end of the file; ``make`` tells of it.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.wanted import LONGEST_ITEM, LONGEST_LINE, LONGEST_UNIT
from foldmath.lesson.labels import plain
from foldmath.lesson.lesson import WrittenItem
from foldmath.lesson.own_items import too_long
from foldmath.phrases import Phrase, phrase
from foldmath.statements.ratios import Ratio
from foldmath.statements.wordings import Wording, wording_of

TRANSLATED = "translated"


def translation_slips(table: dict[str, Any], items: tuple[WrittenItem, ...]) -> Iterator[Slip]:
    """Give what does not fit in the words of other languages, so far as their shape is right.

    Args:
        table: of the whole file, its shape right or not.
        items: in the author's own words.
    """
    given = table.get(TRANSLATED)
    for language, words in given.items() if isinstance(given, dict) else ():
        for text, said in words.items() if isinstance(words, dict) else ():
            if isinstance(said, str) and (wrong := _wrong(text, plain(said), table, items)):
                yield Slip((TRANSLATED, language, text), *wrong)


def _wrong(
    text: str, said: str, table: Mapping[str, Any], items: tuple[WrittenItem, ...]
) -> tuple[Phrase, Phrase] | None:
    """Tell what is wrong about a text in another language, and the remedy."""
    title = table.get("title")
    if isinstance(title, str) and plain(text) == plain(title) and len(said) > LONGEST_LINE:
        message = phrase("a title has at most {most} characters, in this language too", most=LONGEST_LINE)
        return message, phrase("shorter words")
    wording = wording_of(plain(text))
    texts = (written.item.text for written in items)
    units = (written.item.unit for written in items if written.item.unit.parts)
    for wanted, most in ((texts, LONGEST_ITEM), (units, LONGEST_UNIT)):
        if wording in wanted:
            return too_long(said, most) or _other_numbers(wording, said)
    return None


def _other_numbers(wording: Wording, said: str) -> tuple[Phrase, Phrase] | None:
    """Refuse an item that is told with other numbers: one key marks every language."""
    if _numbers(wording) == _numbers(wording_of(said)):
        return None
    told = ", ".join(number.text for number in wording.numbers) or "–"
    message = phrase("the item has other numbers here than in the file's own language")
    return message, phrase("the same numbers: {numbers}", numbers=told)


def _numbers(wording: Wording) -> list[Ratio]:
    return sorted(wording.numbers, key=lambda number: number.text)
