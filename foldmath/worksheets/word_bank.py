"""The word bank of a page with most support: words and fractions that pupils need to write."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from operator import itemgetter

from foldmath.phrases import Said, phrase
from foldmath.statements.expressions import numbers_in
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
    """Give the fractions that folds take and that panels come to be, with their names.

    They stand in the alphabet of their names, or against it, whichever gives fewer rows away: in the order
    of the folds a row would only be copied.
    """
    written = dict.fromkeys(ratio for row in folding.rows for ratio in _taken_and_made(row, folding))
    named = [(ratio, in_words(ratio, language)) for ratio in written]
    told = sorted([(ratio, name) for ratio, name in named if name][:MOST_NAMES], key=itemgetter(1))
    # The first row is worked out where there is a bank.
    asked = [answers(row, folding) for row in folding.rows[1:]]
    orders = (told, told[::-1])
    return min(orders, key=lambda order: sum(gives_away([ratio for ratio, _ in order], row) for row in asked))


def answers(row: FoldRow, folding: FoldingPart) -> tuple[Ratio, ...]:
    """Give the fractions that a row asks for, in its order, each once."""
    if row.tally or not folding.multiplies:
        asked = row.areas
    else:
        asked = tuple(
            ratio for size in row.sizes for side in (size.asked, size.answer) for ratio in numbers_in(side)
        )
    return tuple(dict.fromkeys(ratio for ratio in asked if not ratio.whole))


def gives_away(told: Sequence[Ratio], asked: Sequence[Ratio]) -> bool:
    """Tell whether several answers could be read off in the order in which they are asked for."""
    places = [told.index(ratio) for ratio in asked if ratio in told]
    return len(places) > 1 and places == sorted(places)


def _taken_and_made(row: FoldRow, folding: FoldingPart) -> Iterator[Ratio]:
    """Give the fractions of older panels, which only classes that multiply them write, and of the sheet."""
    shares = row.shares if folding.multiplies else ()
    return (ratio for ratio in (*shares, *row.areas) if not ratio.whole)
