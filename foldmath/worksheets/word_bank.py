"""The word bank of a page with most support: words and fractions that pupils need to write."""

from dataclasses import replace

from foldmath.phrases import Said, phrase
from foldmath.statements.ratios import Ratio
from foldmath.values import frozen
from foldmath.words.fraction_names import in_words
from foldmath.words.saying import say
from foldmath.worksheets.fold_rows import FoldRow
from foldmath.worksheets.folding_part import FoldingPart
from foldmath.worksheets.worksheet import Worksheet

MOST_NAMES = 8
"""More fraction names than these take more than two lines."""

IN_EVERY_BANK = (phrase("whole"), phrase("panel"))
"""Words that every class needs; what they mean stands at the top of every page."""


@frozen(kw_only=True)
class BankRow:
    """A row of the bank.

    Args:
        word: in words; empty for a fraction.
        fraction: the fraction that stands in the place of a word, or None.
        name: of the fraction, in words.
        home: the word in the language that the class speaks at home; empty if the lesson has none.
    """

    word: Said = ""
    fraction: Ratio | None = None
    name: str = ""
    home: str = ""


def bank(sheet: Worksheet, language: str) -> tuple[BankRow, ...]:
    """Give the rows of the bank, whose fractions are named in a language.

    The two words of every lesson come first, then the lesson's own, then the fractions that its folds make,
    and last the words that the lesson gives in a home language and nowhere else.
    """
    lesson = sheet.lesson
    known = tuple(BankRow(word=word) for word in IN_EVERY_BANK)
    said = {say(row.word, language) for row in known}
    # In another language than its own a lesson's other words would be strange among the page's.
    vocabulary = () if lesson.written_in else lesson.vocabulary
    own = [word for word in (*lesson.trade_words, *vocabulary) if word not in said]
    fractions = (BankRow(fraction=ratio, name=name) for ratio, name in _named(sheet.folding, language))
    rows = (*known, *(BankRow(word=word) for word in own), *fractions)
    home = dict(lesson.words)
    at_home = tuple(replace(row, home=home.pop(str(row.fraction or row.word), "")) for row in rows)
    return (*at_home, *(BankRow(word=word, home=said) for word, said in home.items()))


def _named(folding: FoldingPart, language: str) -> list[tuple[Ratio, str]]:
    """Give the fractions that folds take and that panels come to be, in their order, with their names."""
    taken = (ratio for row in folding.rows for ratio in (*_shares(row, folding), *row.areas))
    written = dict.fromkeys(ratio for ratio in taken if not ratio.whole)
    named = [(ratio, in_words(ratio, language)) for ratio in written]
    return [(ratio, name) for ratio, name in named if name][:MOST_NAMES]


def _shares(row: FoldRow, folding: FoldingPart) -> tuple[Ratio, ...]:
    """Give the fractions that are taken of older panels, which only a class that multiplies them writes."""
    return row.shares if folding.multiplies else ()
