"""What ink stands for: marked content that says it to those who hear a page.

``ActualText`` has a stacked fraction read as ``1/4`` and an empty box as "blank"; ``Lang`` names the language
of words that are not in the file's own.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.9.2 (natural language), 14.9.4 (replacement text).
"""

import re
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import NamedTuple

from reportlab.pdfgen.canvas import Canvas


def begin(words: str) -> str:
    """Give the operator that begins ink standing for words."""
    return f"/Span <</ActualText {text_string(words)}>> BDC"


def text_string(words: str) -> str:
    """Write words as a text string: hexadecimal, in UTF-16."""
    return f"<FEFF{words.encode('utf-16-be').hex().upper()}>"


def begin_language(language: str) -> str:
    """Give the operator that begins words in a language, named as in BCP 47."""
    return f"/Span <</Lang ({language})>> BDC"


END = "EMC"
"""The operator that ends marked content."""


MARK = re.compile(r"/Span <<(?P<told>/(?P<what>ActualText|Lang) .*)>> BDC")
"""The operator that begins ink standing for words, or words in a language, and what it tells."""


OPEN = "\0"
"""Stands in a page's operators for what is known when the page is whole: the numbers of its marks."""


class Ink(NamedTuple):
    """Ink of which parts stand for words.

    Args:
        code: its operators, without any marks.
        marked: the same with each part marked, but for the first; the marks' numbers are left ``OPEN``.
        marks: how many there are.
    """

    code: str
    marked: str
    marks: int


def ink_of(operators: Iterable[str]) -> Ink:
    """Part ink where what is told of it changes, so that no mark stands inside another.

    There are readers that lose what comes after an inner mark.
    """
    parts = [(told, "\n".join(some)) for told, some in _parted(operators)]
    if parts and parts[0][0]:
        parts.insert(0, ("", ""))
    begun = [code for _, code in parts]
    for place, (told, _) in enumerate(parts[1:], start=1):
        begun[place] = f"{END}\n/Span <</MCID {OPEN}{told}>> BDC\n{begun[place]}"
    return Ink("\n".join(code for _, code in parts), "\n".join(begun), max(len(parts) - 1, 0))


def _parted(operators: Iterable[str]) -> Iterator[tuple[str, list[str]]]:
    """Give operators that follow each other with what is told of them; two of a kind stay apart."""
    around: list[re.Match[str]] = []
    standing = 0
    told, some = "", list[str]()
    for operator in operators:
        if found := operator[:1] == "/" and MARK.fullmatch(operator):
            within = standing
            around.append(found)
            standing += found["what"] == "ActualText"
        elif operator == END:
            standing -= around.pop()["what"] == "ActualText"
            within = standing
        else:
            some.append(operator)
            continue
        if not within:
            if some:
                yield told, some
            some = []
            kinds = [mark["what"] for mark in around]
            heard = around[: kinds.index("ActualText") + 1] if standing else around
            told = "".join(mark["told"] for mark in heard)
    if some:
        yield told, some


@contextmanager
def standing_for(canvas: Canvas, words: str) -> Iterator[None]:
    """Mark what is painted as standing for words; empty ones mark nothing."""
    if words:
        canvas.addLiteral(begin(words))
    yield
    if words:
        canvas.addLiteral(END)


@contextmanager
def in_language(canvas: Canvas, language: str) -> Iterator[None]:
    """Mark what is painted as words in a language; an empty one is the file's, which is not marked."""
    if language:
        canvas.addLiteral(begin_language(language))
    yield
    if language:
        canvas.addLiteral(END)
