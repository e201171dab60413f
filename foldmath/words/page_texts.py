"""Texts of booklets' pages that come with the program, in each language.

A language's ``page_texts.toml`` has what it says beside the American text, with the same names in braces;
what no table has is its author's own, and stays as it is.
"""

from collections.abc import Mapping

from foldmath.phrases import Phrase, Said
from foldmath.words.authored import table
from foldmath.words.saying import say

TABLE = "page_texts.toml"


def page_text(text: Said, language: str, own: Mapping[str, str]) -> str:
    """Say a text of a page in a language, if its lesson or the language has it; else as its author wrote it.

    Args:
        text: as it is written.
        language: of the pages.
        own: what the lesson itself has in that language.
    """
    written = text if isinstance(text, str) else text.text
    told = own.get(written, _known(language).get(written, written))
    return told if isinstance(text, str) else say(Phrase(told, text.values), language)


def _known(language: str) -> Mapping[str, str]:
    try:
        return table(language, TABLE)
    except FileNotFoundError:
        return {}
