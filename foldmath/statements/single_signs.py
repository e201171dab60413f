"""Fractions that are one sign of Unicode: takes none of them apart, knows what stands above and below."""

import unicodedata

SINGLE_SIGNS = {
    sign: tuple(map(int, unicodedata.normalize("NFKC", sign).split("\N{FRACTION SLASH}")))
    for sign in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
}
"""By the sign, the numbers above and below the bar."""
