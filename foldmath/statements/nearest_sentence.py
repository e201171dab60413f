"""The nearest sentence that can be read: tries small repairs of one that cannot, likeliest first."""

import re
from collections.abc import Callable, Iterator

from foldmath.errors import FoldmathError

_SAID_IN_WORDS = {
    r"multiplied\s+by|times|by": " × ",
    r"divided\s+by": " ÷ ",
    r"plus": " + ",
    r"minus|take\s+away": " − ",
    r"equals?|is|makes?|are": " = ",
    r"off|fo|ov|from": " of ",
    r"(?:(?:a|one)[\s-]+)?half": " 1/2 ",
    r"(?:(?:a|one)[\s-]+)?third": " 1/3 ",
    r"(?:(?:a|one)[\s-]+)?(?:quarter|fourth)": " 1/4 ",
    r"(?:(?:a|one)[\s-]+)?fifth": " 1/5 ",
    r"(?:(?:a|one)[\s-]+)?sixth": " 1/6 ",
    r"(?:(?:a|one)[\s-]+)?eighth": " 1/8 ",
}
_WORDS = [(re.compile(rf"\b(?:{words})\b", re.IGNORECASE), sign) for words, sign in _SAID_IN_WORDS.items()]
_SIGNS = str.maketrans({":": " ÷ ", "\\": "/", "|": "/", "[": "(", "]": ")", "{": "(", "}": ")"})
_DOUBLED = (("==", "="), ("=<", "≤"), ("=>", "≥"), ("<>", "≠"))
_NUMBER = r"(?:\([^()]*\)|[0-9]+(?:\s*/\s*[0-9]+)?)"
_FRACTION_RAISED = re.compile(r"([0-9]+\s*[/⁄]\s*[0-9]+|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])\s*(\^\s*[0-9]+|[⁰¹²³⁴⁵⁶⁷⁸⁹]+)")
_MINUS_AFTER_SIGN = re.compile(rf"(?<=[×x*÷/+−-])(\s*)([−-]\s*{_NUMBER})")
_PERCENT = re.compile(r"([0-9]+)\s*%")
_COMMA_IN_NUMBER = re.compile(r"(?<=[0-9])(?<!\b0),(?=[0-9]{3}(?![0-9]))")
_DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")
_LETTERS = re.compile(r"\b(?!of\b|x\b)[^\W\d_]+\b", re.IGNORECASE)
_END_OF_SIDE = re.compile(r"(?=\s*[=<>≤≥≠])")
_ONE_TOKEN = re.compile(r"[^\W\d_]+|[0-9]+|\S|$")

Reading = Callable[[str], str]


def nearest_sentence(text: str, position: int, read: Reading) -> str:
    """Find the first repair of a sentence that can be read.

    Args:
        text: the sentence.
        position: where reading it stopped, counted from 0.
        read: gives a readable sentence as it is properly written, and refuses any other.

    Returns:
        The repaired sentence as ``read`` writes it; empty if no small repair helps.
    """
    for repaired in _repairs(text, position):
        try:
            return read(repaired)
        except FoldmathError:
            continue
    return ""


def _repairs(text: str, position: int) -> Iterator[str]:
    figures = _in_figures(text)
    yield figures
    yield _LETTERS.sub(" ", figures)
    yield _MINUS_AFTER_SIGN.sub(r"\1(\2)", text)
    before, rest = text[:position], text[position:]
    if rest.startswith(","):
        yield before
    yield before + _END_OF_SIDE.sub(")", rest, count=1)
    yield text + ")" * (text.count("(") - text.count(")"))
    yield from (before + inserted + rest for inserted in (" × ", " = "))
    yield before + " ÷ " + rest[1:]
    for begin in (position, len(before.rstrip()) - 1):
        if begin >= 0 and (found := _ONE_TOKEN.match(text, begin)):
            yield text[:begin] + " " + text[found.end() :]


def _in_figures(text: str) -> str:
    """Put figures and the trade's signs for what is said in words or in other signs."""
    for pattern, sign in _WORDS:
        text = pattern.sub(sign, text)
    for wrong, right in _DOUBLED:
        text = text.replace(wrong, right)
    text = _FRACTION_RAISED.sub(r"(\1)\2", _PERCENT.sub(r"\1/100", text).translate(_SIGNS))
    return _DECIMAL_COMMA.sub(".", _COMMA_IN_NUMBER.sub("", text))
