"""A pupil's label as it is typed: composed, plainly spaced, and of signs that have a shape."""

import unicodedata

NO_SHAPE = ("Cc", "Cf", "Co", "Cn")
"""Controls, signs that only change what stands beside them, and signs that mean nothing to others."""

JOINERS = ("\u200c", "\u200d")
"""The spelling of some Persian and Indian names needs them."""

MARKS_OF_DIRECTION = {0x200E: None, 0x200F: None, 0x061C: None}
"""Spreadsheets leave them beside names that are read from right to left."""


def plain(text: str) -> str:
    """Compose letters and their marks, leave out marks of direction, and make every space one plain space."""
    return " ".join(unicodedata.normalize("NFC", text).translate(MARKS_OF_DIRECTION).split())


def is_text(label: str) -> bool:
    """Tell whether a label could be read as UTF-8."""
    return not any(unicodedata.category(sign) == "Cs" for sign in label)


def has_shape(label: str) -> bool:
    """Tell whether every sign of a label has a shape, in whatever script."""
    return all(unicodedata.category(sign) not in NO_SHAPE or sign in JOINERS for sign in label)
