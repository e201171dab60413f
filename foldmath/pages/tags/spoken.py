"""What ink stands for: marked content that says it to those who hear a page.

``ActualText`` has a stacked fraction read as ``1/4`` and an empty box as "blank"; ``Lang`` names the language
of words that are not in the file's own.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.9.2 (natural language), 14.9.4 (replacement text).
"""

from collections.abc import Iterator
from contextlib import contextmanager

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
