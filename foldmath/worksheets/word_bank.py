"""The word bank of a page with most support: words, what they mean, and a picture."""

from foldmath.statements.items import ShadeItem
from foldmath.statements.ratios import Ratio
from foldmath.words.fraction_names import in_words
from foldmath.worksheets.worksheet import Worksheet

MOST_NAMES = 4
"""More fraction names than this crowd the bank."""


def bank(sheet: Worksheet) -> tuple[tuple[str | Ratio, str, str], ...]:
    """Give rows of the bank: a word or a fraction, what it means or its name, and the name of a picture.

    The two words of every lesson come first, then the fractions that its first items ask about, and last
    the words that the lesson gives in a home language.
    """
    rows: list[tuple[str | Ratio, str, str]] = [
        ("the whole", "one sheet of paper", "whole"),
        ("panel", "a part between creases", "bank-panel"),
    ]
    fractions: dict[Ratio, None] = {}
    for placed in sheet.items:
        if isinstance(placed.item, ShadeItem):
            fractions |= dict.fromkeys((placed.item.product.first, placed.item.product.second))
    language = sheet.lesson.language
    named = ((ratio, in_words(ratio, language), "") for ratio in fractions if not ratio.whole)
    rows += [row for row in named if row[1]][:MOST_NAMES]
    known = {str(word) for word, _, _ in rows}
    return (*rows, *((word, "", "") for word in sheet.lesson.words if word not in known))
