"""What parts of a page are to those who hear it: the kinds of elements, with what else is said of them.

Source: ISO 32000-1:2008, 14.8.4 (standard structure types), 14.8.5.5 and 14.8.5.7 (attributes of lists and
tables), 14.9.3 (alternate descriptions).
"""

from typing import NamedTuple

from foldmath.pages.tags.spoken import text_string


class Tag(NamedTuple):
    """A kind of element.

    Args:
        kind: its structure type.
        more: further entries of its dictionary, as they are written there.
        goes_on: whether it takes up the element of its kind that stands just before it, where one does.
    """

    kind: str
    more: str = ""
    goes_on: bool = False


SECTION = Tag("Sect")
PARAGRAPH = Tag("P")
TABLE_BEGUN, TABLE = Tag("Table"), Tag("Table", goes_on=True)
TABLE_ROW = Tag("TR")
LIST = Tag("L", "/A<</O/List/ListNumbering/Decimal>>", goes_on=True)
LIST_ITEM, LABEL, LIST_BODY = Tag("LI"), Tag("Lbl"), Tag("LBody")


LEVELS = {f"H{level}": level for level in range(1, 7)}
"""The levels of headings, by their kinds."""


def heading(level: int) -> Tag:
    """Give the tag of a heading; that of the whole is of level 1."""
    return Tag(f"H{level}")


def paragraph_standing_for(words: str) -> Tag:
    """Give the tag of a paragraph whose ink stands for words."""
    return Tag("P", f"/ActualText{text_string(words)}")


def figure(words: str) -> Tag:
    """Give the tag of a picture that shows what the words tell."""
    return Tag("Figure", f"/Alt{text_string(words)}")


def section_in(language: str) -> Tag:
    """Give the tag of a section whose words are in another language than the file's, named as in BCP 47."""
    return Tag("Sect", f"/Lang({language})")


def header_cell(scope: str, columns: int) -> Tag:
    """Give the tag of a cell that heads its ``Column`` or its ``Row``, and how many columns it is wide."""
    return Tag("TH", f"/A<</O/Table/Scope/{scope}{_wide(columns)}>>")


def cell(columns: int) -> Tag:
    """Give the tag of any other cell, so many columns wide."""
    return Tag("TD", f"/A<</O/Table{_wide(columns)}>>" if columns > 1 else "")


def _wide(columns: int) -> str:
    return f"/ColSpan {columns}" if columns > 1 else ""
