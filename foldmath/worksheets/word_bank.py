"""The word bank of a page with most support: words that pupils need to write, and what they mean."""

from dataclasses import dataclass, replace

from foldmath.phrases import Said, phrase
from foldmath.statements.ratios import Ratio
from foldmath.words.fraction_names import in_words
from foldmath.words.saying import say
from foldmath.worksheets.folding_part import FoldingPart
from foldmath.worksheets.worksheet import Worksheet

MOST_NAMES = 4
"""More fraction names than this crowd the bank."""


IN_EVERY_BANK = {
    phrase("the whole"): phrase("one sheet of paper"),
    phrase("panel"): phrase("a part between creases"),
}
"""Words that every class needs, with what they mean."""


@dataclass(frozen=True, kw_only=True)
class BankRow:
    """A row of the bank.

    Args:
        word: in words; empty for a fraction.
        fraction: the fraction that stands in the place of a word, or None.
        told: what the word means, or the fraction's name; empty if the bank does not say.
        home: the word in the language that the class speaks at home; empty if the lesson has none.
    """

    word: Said = ""
    fraction: Ratio | None = None
    told: Said = ""
    home: str = ""


def bank(sheet: Worksheet, language: str) -> tuple[BankRow, ...]:
    """Give the rows of the bank, whose fractions are named in a language.

    The two words of every lesson come first, then the lesson's own, then the fractions that its folds make,
    and last the words that the lesson gives in a home language and nowhere else.
    """
    lesson = sheet.lesson
    known = tuple(BankRow(word=word, told=told) for word, told in IN_EVERY_BANK.items())
    said = {say(row.word, language) for row in known}
    # In another language than its own a lesson's other words would be strange among the page's.
    vocabulary = () if lesson.written_in else lesson.vocabulary
    own = [word for word in (*lesson.trade_words, *vocabulary) if word not in said]
    fractions = (BankRow(fraction=ratio, told=name) for ratio, name in _named(sheet.folding, language))
    rows = (*known, *(BankRow(word=word) for word in own), *fractions)
    home = dict(lesson.words)
    at_home = tuple(replace(row, home=home.pop(str(row.fraction or row.word), "")) for row in rows)
    return (*at_home, *(BankRow(word=word, home=said) for word, said in home.items()))


def _named(folding: FoldingPart, language: str) -> list[tuple[Ratio, str]]:
    """Give the fractions that panels come to be, in the order of the folds, with their names."""
    areas = dict.fromkeys(area for row in folding.rows for area in row.areas if not area.whole)
    named = [(ratio, in_words(ratio, language)) for ratio in areas]
    return [(ratio, name) for ratio, name in named if name][:MOST_NAMES]
