"""Words of the trade: a lesson's vocabulary, as far as every class needs it, in each language.

A language's ``trade_words.toml`` has the word beside the American one; what no table has is its author's own.
"""

from collections.abc import Mapping

from foldmath.words.authored import table

TABLE = "trade_words.toml"


def trade_word(word: str, written_in: str, language: str) -> str | None:
    """Say a word of one language in another; None if it is no word of the trade in both."""
    known = {said: american for american, said in _words(written_in).items()}
    return _words(language).get(known.get(word, ""))


def _words(language: str) -> Mapping[str, str]:
    try:
        return table(language, TABLE)
    except FileNotFoundError:
        return {}
