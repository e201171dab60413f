"""Characters that steer a terminal or the direction of writing: found, and made visible."""

import re

_CONTROLS = r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
"""Unicode's control characters but for line ends and tabs, its embeddings, overrides and isolates of the
direction of writing (UAX 9), surrogates, of which U+DC80 and on stand for bytes that are no UTF-8, and
the two that no XML may hold (XML 1.0, 2.2)."""

FIRST_BYTE, LAST_BYTE = "\udc80", "\udcff"


def printable(text: str) -> str:
    r"""Write every character that a terminal would obey, not print, as its escape: ``\x1b``, ``\u202e``."""
    return re.sub(_CONTROLS, lambda found: _escape(found[0]), text)


def is_control(sign: str) -> bool:
    """Tell whether a character steers a terminal or the direction of writing, line ends and tabs aside."""
    return re.fullmatch(_CONTROLS, sign) is not None


def has_controls(text: str) -> bool:
    """Tell whether a text has a character that steers a terminal or the direction of writing."""
    return re.search(_CONTROLS, text) is not None


def _escape(sign: str) -> str:
    if FIRST_BYTE <= sign <= LAST_BYTE:
        return f"\\x{ord(sign) - ord(FIRST_BYTE) + 0x80:02x}"
    return sign.encode("unicode_escape").decode("ascii")
