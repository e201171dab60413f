"""Signs that a terminal lacks: takes text and an encoding, gives the text as that encoding can write it."""

import re

from foldmath.lesson.files.controls import printable

PLAIN_SIGNS = {
    "×": "x",
    "÷": "divided by",
    "−": "-",
    "–": "-",
    "—": "-",
    "·": "*",
    "⁄": "/",
    "≤": "<=",
    "≥": ">=",
    "≠": "!=",
    "→": "->",
    "←": "<-",
    "°": " degrees",
    "“": '"',
    "”": '"',
    "„": '"',
    "«": '"',
    "»": '"',
    "‘": "'",
    "’": "'",
    "…": "...",
    "″": '"',
    "□": "[ ]",
    "○": "( )",
    "✓": "v",
    "¿": "",
    "¡": "",
    "©": "(c)",
}
"""Signs that programs of foldmath write, in letters that every encoding has."""

UNKNOWN = "?"
"""For a letter that has no likeness among plain ones."""

_RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹"
_RAISED_NUMBER = f"[{_RAISED}]+"
_SINGLE_FRACTION = "(?P<whole>[0-9]?)(?P<part>[¼½¾⅐-⅞])"


def writable(text: str, encoding: str) -> str:
    """Give text that an encoding can write: as it is, or with plain signs for those that it lacks.

    Characters that a terminal would obey are shown and not obeyed. A power is taken whole, and a fraction
    keeps apart from the figure before it, so that 2¹⁰ becomes 2^10 and 1½ becomes 1 1/2.
    """
    shown = printable(text)
    if _writes(shown, encoding):
        return shown
    if not _writes(_RAISED, encoding):
        shown = re.sub(_RAISED_NUMBER, lambda power: "^" + _likeness(power[0]), shown)
    shown = re.sub(_SINGLE_FRACTION, lambda found: _fraction(found, encoding), shown)
    return "".join(sign if _writes(sign, encoding) else _plain(sign) for sign in shown)


def _writes(text: str, encoding: str) -> bool:
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        return False
    return True


def _fraction(found: "re.Match[str]", encoding: str) -> str:
    if _writes(found["part"], encoding):
        return found[0]
    over = _likeness(found["part"]).replace("⁄", "/")
    return f"{found['whole']} {over}" if found["whole"] else over


def _plain(sign: str) -> str:
    """Give a sign in ASCII: by the list, or a letter without its marks."""
    if sign in PLAIN_SIGNS:
        return PLAIN_SIGNS[sign]
    return _likeness(sign).encode("ascii", "ignore").decode("ascii") or UNKNOWN


def _likeness(signs: str) -> str:
    """Give signs as the plain ones that they are made of: figures of a power, a letter and its marks."""
    # Imported here, since few terminals lack a sign, and its tables are slow to load.
    from unicodedata import normalize

    return normalize("NFKD", signs)
