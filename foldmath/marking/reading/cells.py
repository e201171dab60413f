"""Reading a cell as a teacher types it: takes its text, gives an ``Answer``. Nothing is guessed."""

import re
import unicodedata
from collections.abc import Callable
from functools import cache, lru_cache

from foldmath.marking.reading.answers import (
    Absent,
    Answer,
    DateMade,
    Judged,
    NoNumber,
    NotDone,
    Number,
    Numbers,
    Sentence,
    SignAnswer,
    Ticks,
    Truth,
    Unread,
    Words,
)
from foldmath.marking.reading.dates import fractions_behind
from foldmath.marking.reading.words import each_language, spelt, typed
from foldmath.phrases import phrase
from foldmath.statements.claim_grammar import parse
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.ratios import Ratio, fraction, mixed_number, percentage, whole_number
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.sentences import About
from foldmath.words.fraction_names import LARGEST_COUNT, MOST_PARTS, also_written, in_words
from foldmath.words.languages import languages

NO_ANSWER = phrase("this is no answer that can be read")
NO_RESULT = phrase("this is worked out no further")

LONGEST_CELL = 200
"""Signs; no answer to an item is longer."""

KEPT = 65_536
"""Readings kept: a school's cells repeat themselves."""

ABOUT = frozenset({"count", "size"})
"""What ticks are of; by itself a letter may be short for something else."""

_SIGNS = {"less": Comparison.LESS, "greater": Comparison.GREATER, "equal": Comparison.EQUAL}
_UNIT = re.compile(
    r"(?P<number>[0-9][0-9\s/⁄.,]*[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]?|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])\s*(?P<unit>[^\W\d_].*)?"
)
_PLAIN_UNIT = re.compile(r"[^\W\d_]+([ ’'.-][^\W\d_]+)*\.?")
_DECIMAL_COMMA = re.compile(r"0,\d+|\d+,(?:\d{1,2}|\d{4,})")
"""Not 2,400, which may be a thousand times as much."""
_PERCENT = re.compile(r"(\d{1,4})\s*%")
_OVER_ZERO = re.compile(r"\d+\s*[/⁄]\s*0+")


@lru_cache(maxsize=KEPT)
def read_cell(text: str) -> Answer:
    """Read a cell that is not empty."""
    plain = " ".join(unicodedata.normalize("NFC", text).split())
    if len(plain) > LONGEST_CELL:
        return Unread(plain, NO_ANSWER)
    for reader in _READERS:
        answer = reader(plain)
        if answer is not None:
            return answer
    return Unread(plain, NO_ANSWER)


def _word(text: str) -> Answer | None:
    key = typed(text)
    if key in _SIGNS:
        return SignAnswer(_SIGNS[key])
    given: dict[str, Answer] = {
        "right": Judged(True),
        "wrong": Judged(False),
        "nothing": NotDone(),
        "absent": Absent(),
        "true": Truth(True),
        "false": Truth(False),
    }
    return given.get(key)


def _ticks(text: str) -> Answer | None:
    """Read ``c s s c``, ``c,s,s,c``, ``count size size count`` or ``cssc``."""
    parts = re.split(r"[\s,;]+", text.casefold())
    if len(parts) == 1 and parts[0].isalpha() and len(parts[0]) <= 6:
        parts = list(parts[0]) if typed(parts[0], ABOUT) not in ABOUT else parts
    keys = [typed(part, ABOUT) for part in parts]
    if not set(keys) <= ABOUT:
        return None
    return Ticks(tuple(About.COUNT if key == "count" else About.SIZE for key in keys))


def _date(text: str) -> Answer | None:
    readings = fractions_behind(text)
    return DateMade(text, readings) if readings else None


def _over_zero(text: str) -> Answer | None:
    return NoNumber(text) if _OVER_ZERO.fullmatch(text) else None


def _number(text: str) -> Answer | None:
    """Read a number in figures or in words, with or without a unit."""
    percent = _PERCENT.fullmatch(text)
    if percent:
        return Number(percentage(int(percent[1])))
    found = _UNIT.fullmatch(text)
    if not found:
        return _number_in_words(text)
    unit = found["unit"] or ""
    ratio = _figures(found["number"].strip())
    if ratio is None:
        return None
    of_all = _out_of(ratio, unit)
    if of_all or _PLAIN_UNIT.fullmatch(unit) or not unit:
        return Number(of_all) if of_all else Number(ratio, unit)
    return None


def _figures(text: str) -> Ratio | None:
    if _DECIMAL_COMMA.fullmatch(text):
        text = text.replace(",", ".")
    claim = _claim(text)
    side = claim.sides[0] if claim and not claim.comparisons else None
    return side if isinstance(side, Ratio) else None


def _out_of(ratio: Ratio, unit: str) -> Ratio | None:
    """Read ``8 out of 15``."""
    joint = next((joint for joint in spelt("of_all") if unit.startswith(f"{joint} ")), "")
    below = unit[len(joint) :].strip()
    if not (joint and ratio.whole and below.isdecimal() and int(below)):
        return None
    return fraction(ratio.numerator, int(below))


def _number_in_words(text: str) -> Answer | None:
    """Read ``two thirds``, ``two-thirds of the sheet``, ``one and two fifths``, ``a half``."""
    parts = text.casefold().split(" ")
    for end in range(len(parts), 0, -1):
        said, unit = " ".join(parts[:end]), " ".join(parts[end:])
        ratio = _named(said)
        if ratio and (not unit or _PLAIN_UNIT.fullmatch(unit)):
            return Number(ratio, unit)
    return None


def _named(said: str) -> Ratio | None:
    table = _names()
    plain = said.replace("-", " ")
    if plain in table:
        return table[plain]
    for joint in spelt("joined"):
        wholes, found, rest = plain.partition(f" {joint} ")
        whole, part = table.get(wholes), table.get(rest)
        if found and whole and part and whole.whole and not part.whole:
            return mixed_number(whole.numerator, part.numerator, part.denominator)
    return None


@cache
def _names() -> dict[str, Ratio]:
    """Give all numbers that have names, by their names without hyphens."""
    table: dict[str, Ratio] = {}
    ratios = [whole_number(number) for number in range(LARGEST_COUNT + 1)]
    ratios += [
        fraction(above, below) for below in range(2, MOST_PARTS + 1) for above in range(1, LARGEST_COUNT + 1)
    ]
    for language in languages():
        for ratio in ratios:
            table.setdefault(in_words(ratio, language).replace("-", " "), ratio)
        for name, ratio in also_written(language):
            table.setdefault(name, ratio)
    table.pop("", None)
    for language, written in each_language():
        for name, (above, below) in written["fractions"].items():
            table.setdefault(name, fraction(above, below))
        table |= _with_articles(table, in_words(fraction(1, 3), language), written["typed"]["one"])
    return table


def _with_articles(table: dict[str, Ratio], third: str, articles: list[str]) -> dict[str, Ratio]:
    """Give the numbers that begin with one, as in "one third", with an article instead: "a third"."""
    one = third.partition(" ")[0]
    return {
        f"{article} {name.removeprefix(f'{one} ')}": ratio
        for article in articles
        for name, ratio in table.items()
        if name.startswith(f"{one} ")
    }


def _several(text: str) -> Answer | None:
    """Read ``1/6, 1/3`` or ``1/6; 1/3`` or ``1/6 and 1/3``."""
    joints = "|".join(rf"\s+{re.escape(joint)}\s+" for joint in spelt("joined"))
    parts = re.split(rf"\s*;\s*|,\s+|{joints}", text)
    if len(parts) < 2:
        return None
    ratios = [answer.ratio for part in parts if isinstance(answer := _number(part), Number)]
    return Numbers(tuple(ratios)) if len(ratios) == len(parts) else None


def _sentence(text: str) -> Answer | None:
    claim = _claim(text)
    if claim is None:
        return None
    return Sentence(claim) if claim.comparisons else Unread(text, NO_RESULT)


def _claim(text: str) -> Claim | None:
    try:
        return parse(text)
    except SentenceRefused:
        return None


def _words(text: str) -> Answer | None:
    """Keep words that begin with a letter; only questions that are answered in words take them."""
    return Words(text) if len(re.findall(r"[^\W\d_]{2,}", text)) > 1 else None


_READERS: tuple[Callable[[str], Answer | None], ...] = (
    _word,
    _ticks,
    _date,
    _over_zero,
    _number,
    _several,
    _sentence,
    _words,
)
"""The first that can read a cell reads it."""
