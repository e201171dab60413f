"""Readable words: takes what a page says, gives sentences that are too long and words that are not common.

The lists of each language in ``words/locale/`` are our own; a test holds every page to them.
"""

import re
from collections.abc import Collection, Iterable, Iterator
from functools import cache

from foldmath.pages.markup.blocks import (
    Block,
    Box,
    Columns,
    Paragraph,
    Row,
    Run,
    Stack,
    Text,
    Together,
    WritingLines,
)
from foldmath.words.authored import authored
from foldmath.words.languages import DEFAULT

MOST_WORDS = 12
"""A sentence that pupils read has no more (common practice, no source)."""

_SENTENCE_END = re.compile(r"(?<=[.?!…])[\"'”’)]*\s+")
_COUNTED = re.compile(r"[^\W_]")
_WORD = re.compile(r"[^\W\d_]+(?:['’](?!s\b)[^\W\d_]+)*²?")
_CODE = re.compile(r"\d|^[A-Z]{3,}\b")
_POSSESSIVE = re.compile(r"['’]s\b")


def long_sentences(text: str, most: int = MOST_WORDS) -> tuple[str, ...]:
    """Give the sentences of a text with more than ``most`` words; a number is a word, a sign is none."""
    return tuple(sentence for sentence in sentences_of(text) if words_in(sentence) > most)


def sentences_of(text: str) -> tuple[str, ...]:
    """Take a text apart after full stops, question marks and exclamation marks."""
    return tuple(sentence for sentence in _SENTENCE_END.split(" ".join(text.split())) if sentence)


def words_in(sentence: str) -> int:
    """Count the words and numbers of a sentence; ``2/3`` and ``well-known`` are one each."""
    return sum(bool(_COUNTED.search(word)) for word in sentence.split())


def uncommon_words(text: str, allowed: Collection[str]) -> tuple[str, ...]:
    """Give the words of a text that are not allowed, in small letters, each once.

    Figures are passed over, and so are codes in figures and capitals; ``class's`` is read as ``class``.

    Args:
        text: any text.
        allowed: words in small letters.
    """
    spoken = (token for token in _POSSESSIVE.sub("", text).split() if not _CODE.search(token))
    found = (word.replace("’", "'").lower() for token in spoken for word in _WORD.findall(token))
    return tuple(dict.fromkeys(word for word in found if word not in allowed))


def common_words(language: str = DEFAULT) -> frozenset[str]:
    """Give the words that pages for pupils are made of."""
    return _listed(language, "common_words.txt")


def teacher_words(language: str = DEFAULT) -> frozenset[str]:
    """Give the words that pages for teachers are made of: the common ones, and those of the trade."""
    return common_words(language) | _listed(language, "teacher_words.txt")


def texts_of(blocks: Iterable[Block]) -> Iterator[tuple[str, str]]:
    """Give the words of every paragraph, with its style: fractions as ``2/3``, and what is written in boxes.

    A paragraph is read whole, wherever its lines end; the rows of a table's head are read once. Words in
    another language than the page's, such as those of a lesson's author, are passed over.
    """
    for block in blocks:
        if isinstance(block, Paragraph):
            yield block.style, _said(block.runs)
        elif isinstance(block, WritingLines):
            yield "lines", _said(block.answer)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from texts_of(cell.blocks)
        elif isinstance(block, Together | Columns):
            yield from texts_of(block.blocks)


def _said(runs: Iterable[Run]) -> str:
    """Run words together as they are read; an end of line is a space."""
    said = ""
    for run in runs:
        if isinstance(run, Text):
            said += "" if run.language else run.text
        elif isinstance(run, Stack):
            said += f"{_said(run.above).strip()}/{_said(run.below).strip()}"
        elif isinstance(run, Box):
            said += run.answer
        else:
            said += " "
    return " ".join(said.split())


@cache
def _listed(language: str, name: str) -> frozenset[str]:
    lines = (line for line in authored(language, name).splitlines() if not line.startswith("#"))
    return frozenset(word for line in lines for word in line.split())
