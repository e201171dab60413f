"""The word bank of a page with most support: words, what they mean, and a picture."""

from dataclasses import dataclass, replace

from foldmath.phrases import Said, phrase
from foldmath.statements.items import ShadeItem
from foldmath.statements.ratios import Ratio
from foldmath.words.fraction_names import in_words
from foldmath.worksheets.worksheet import Worksheet

MOST_NAMES = 4
"""More fraction names than this crowd the bank."""


@dataclass(frozen=True, kw_only=True)
class BankRow:
    """A row of the bank.

    Args:
        word: in words; empty for a fraction.
        fraction: the fraction that stands in the place of a word, or None.
        told: what the word means, or the fraction's name; empty if the bank does not say.
        picture: its name; empty if there is none.
        home: the word in the language that the class speaks at home; empty if the lesson has none.
    """

    word: Said = ""
    fraction: Ratio | None = None
    told: Said = ""
    picture: str = ""
    home: str = ""


def bank(sheet: Worksheet, language: str) -> tuple[BankRow, ...]:
    """Give the rows of the bank, whose fractions are named in a language.

    The two words of every lesson come first, then the fractions that its first items ask about, and last
    the words that the lesson gives in a home language.
    """
    rows = (
        BankRow(word=phrase("the whole"), told=phrase("one sheet of paper"), picture="whole"),
        BankRow(word=phrase("panel"), told=phrase("a part between creases"), picture="bank-panel"),
        *(BankRow(fraction=ratio, told=name) for ratio, name in _named(sheet, language)),
    )
    home = dict(sheet.lesson.words)
    known = tuple(replace(row, home=home.pop(str(row.fraction or row.word), "")) for row in rows)
    return (*known, *(BankRow(word=word, home=said) for word, said in home.items()))


def _named(sheet: Worksheet, language: str) -> list[tuple[Ratio, str]]:
    """Give the fractions that the first items ask about, with their names."""
    fractions: dict[Ratio, None] = {}
    for placed in sheet.items:
        if isinstance(placed.item, ShadeItem):
            fractions |= dict.fromkeys((placed.item.product.first, placed.item.product.second))
    named = [(ratio, in_words(ratio, language)) for ratio in fractions if not ratio.whole]
    return [(ratio, name) for ratio, name in named if name][:MOST_NAMES]
