"""Changing the text of a lesson: takes the text and one wish, gives the text with comments and order kept."""

from collections.abc import Sequence
from difflib import SequenceMatcher
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import Array

from foldmath.errors import FoldmathError
from foldmath.phrases import phrase

Key = tuple[str, ...]
"""The way to a value, such as ``("practice", "count")``."""


class CannotEdit(FoldmathError):
    """The text of a lesson is no TOML, so no single value of it can be changed."""


def with_value(text: str, key: Key, value: Any) -> str:
    """Set one value, where it stands or else at the end of its table; None takes it out.

    Raises:
        CannotEdit: the text is no TOML.
    """
    document = _document(text)
    table: Any = document
    for name in key[:-1]:
        if not isinstance(table.get(name), dict):
            if value is None:
                return text
            table[name] = tomlkit.inline_table()
        table = table[name]
    if value is None:
        table.pop(key[-1], None)
    else:
        table[key[-1]] = value
    return tomlkit.dumps(document)


def with_list(text: str, key: Key, items: Sequence[str]) -> str:
    """Make a list hold these items; those that it held already keep their lines and comments.

    Raises:
        CannotEdit: the text is no TOML.
    """
    document = _document(text)
    table: Any = document
    for name in key[:-1]:
        table = table.get(name, {})
    array = table.get(key[-1]) if isinstance(table, dict) else None
    if not isinstance(array, Array) or not all(isinstance(item, str) for item in array):
        return with_value(text, key, _new_list(items))
    one_a_line = "\n" in array.as_string() or not array
    matcher = SequenceMatcher(a=[str(item) for item in array], b=list(items), autojunk=False)
    for what, begin, end, first, last in reversed(matcher.get_opcodes()):
        if what != "equal":
            _exchange(array, slice(begin, end), items[first:last])
    written = tomlkit.dumps(document)
    # An array that lost and gained lines may have all of them on one.
    if one_a_line and len(items) > 1 and "\n" not in array.as_string():
        return with_value(text, key, _new_list(items))
    return written


def with_practice(text: str, key: str, value: Any) -> str:
    """Set one rule of practice; products that stood there as a plain list come along into the rules.

    Raises:
        CannotEdit: the text is no TOML.
    """
    document = _document(text)
    given = document.get("practice")
    if isinstance(given, Array):
        rules = tomlkit.inline_table()
        rules["products"] = [str(product) for product in given]
        document["practice"] = rules
    return with_value(tomlkit.dumps(document), ("practice", key), value)


def _exchange(array: Array, old: slice, new: Sequence[str]) -> None:
    """Put items in the place of others, one for one as long as both last: comments stay beside them."""
    places = range(old.start, old.stop)
    for place, item in zip(places, new, strict=False):
        array[place] = item
    for place in reversed(places[len(new) :]):
        array.pop(place)
    for number, item in enumerate(new[len(places) :]):
        array.insert(old.stop + number, item)


def _new_list(items: Sequence[str]) -> Array:
    array = tomlkit.array()
    array.extend(items)
    return array.multiline(True)


def _document(text: str) -> tomlkit.TOMLDocument:
    try:
        return tomlkit.parse(text)
    except TOMLKitError as error:
        raise CannotEdit(
            phrase("the file is no TOML: {why}", why=str(error)), phrase("mend the text of the lesson first")
        ) from None
