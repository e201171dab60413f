"""The forms of a whole number: its numeral, its words, and the sum of its places."""

from functools import cache

LARGEST = 999_999
"""Larger numbers are no matter of place-value work in these grades."""

WITHOUT_AND = "en-US"
"""Where no "and" stands before tens and ones: three hundred five.

Common practice, no source: schools in the United States keep "and" for the decimal point.
"""


def numeral(value: int) -> str:
    """Write a number in figures, its thousands apart: ``48,250``.

    Raises:
        ValueError: the number is below 0 or above ``LARGEST``.
    """
    _refuse_others(value)
    return f"{value:,}"


def in_words(value: int, language: str) -> str:
    """Write a number in words: "three hundred forty-eight", with "and" in British English.

    Args:
        value: from 0 to ``LARGEST``.
        language: as in BCP 47.

    Raises:
        ValueError: the number is below 0 or above ``LARGEST``.

    Source:
        num2words (github.com/savoirfairelinux/num2words).
    """
    _refuse_others(value)
    return _in_words(value, language)


@cache
def _in_words(value: int, language: str) -> str:
    from num2words import num2words

    # The library knows languages by the names that gettext gives them, and Americans by the language alone.
    words = str(num2words(value, lang=language.replace("-", "_")))
    return words.replace(" and ", " ") if language == WITHOUT_AND else words


def expanded_form(value: int) -> str:
    """Write a number as the sum of its places: ``300 + 40 + 8``; places that hold 0 are left out.

    Raises:
        ValueError: the number is below 0 or above ``LARGEST``.
    """
    return " + ".join(numeral(part) for part in place_parts(value)) or "0"


def place_parts(value: int) -> tuple[int, ...]:
    """Take a number apart by its places, the largest first: 348 gives 300, 40 and 8; 0 gives nothing.

    Raises:
        ValueError: the number is below 0 or above ``LARGEST``.
    """
    _refuse_others(value)
    figures = str(value)
    parts = (int(figure) * 10 ** (len(figures) - place) for place, figure in enumerate(figures, start=1))
    return tuple(part for part in parts if part)


def _refuse_others(value: int) -> None:
    if not 0 <= value <= LARGEST:
        raise ValueError(f"a number from 0 to {LARGEST}, not {value}")
