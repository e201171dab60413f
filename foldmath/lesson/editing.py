"""Changing the text of a lesson: takes the text and one wish, gives the text with comments and order kept."""

from collections.abc import Mapping, Sequence
from difflib import SequenceMatcher
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT, Array, InlineTable, Table

from foldmath.errors import FoldmathError
from foldmath.lesson.files.positions import find_positions
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
    array = _array(document, key)
    if array is None:
        return with_value(text, key, _new_list(items))
    rearranged = _rearranged(text, key, list(map(str, array)), items)
    if rearranged is not None:
        return rearranged
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


def with_entry(text: str, key: str, place: int, values: Mapping[str, Any]) -> str:
    """Set values of one table in a list of tables; None takes one out, the place past the last adds a table.

    Raises:
        CannotEdit: the text is no TOML, or there is no such place.
    """
    document = _document(text if text.endswith("\n") else f"{text}\n")
    if not document.get(key):
        document[key] = tomlkit.aot()
    tables = _tables(document, key, place, more=1)
    if place == len(tables):
        tables.append(_new_entry(tables))
    for name, value in values.items():
        if value is None:
            tables[place].pop(name, None)
        elif tables[place].get(name) != value:
            tables[place][name] = value
    return tomlkit.dumps(document)


def without_entry(text: str, key: str, place: int) -> str:
    """Take one table out of a list of tables, and the list with its last one.

    Raises:
        CannotEdit: as ``with_entry``.
    """
    document = _document(text)
    tables = _tables(document, key, place, more=0)
    del tables[place]
    if tables:
        return tomlkit.dumps(document)
    del document[key]
    # The line that stood before its heading goes with it.
    return tomlkit.dumps(document).rstrip("\n") + "\n"


def _tables(document: tomlkit.TOMLDocument, key: str, place: int, more: int) -> Any:
    """Give the list of tables that a key holds, if it has the place, or so many more."""
    tables = document.get(key)
    if isinstance(tables, AoT | Array) and 0 <= place < len(tables) + more:
        return tables
    raise CannotEdit(phrase("this is not there any more"), phrase("look at it as it is now"))


def _new_entry(tables: AoT | Array) -> InlineTable | Table:
    """Begin a table as the others are written: in braces in a list, else under a heading of its own."""
    if isinstance(tables, Array):
        return tomlkit.inline_table()
    entry = tomlkit.table()
    entry.trivia.indent = "\n"
    return entry


def list_as_written(text: str, key: Key) -> str:
    """Give a list of words as it stands in the text, with its comments; empty where there is none.

    Raises:
        CannotEdit: the text is no TOML.
    """
    array = _array(_document(text), key)
    return "" if array is None else array.as_string()


def with_list_as_written(text: str, key: Key, written: str) -> str:
    """Put a list in the place of another just as it was written once.

    Raises:
        CannotEdit: either is no TOML.
    """
    try:
        return with_value(text, key, tomlkit.value(written))
    except TOMLKitError as error:
        raise _no_toml(error) from None


def _array(document: tomlkit.TOMLDocument, key: Key) -> Array | None:
    """Give the list of words that a key holds; None where it holds anything else."""
    table: Any = document
    for name in key[:-1]:
        table = table.get(name, {})
    array = table.get(key[-1]) if isinstance(table, dict) else None
    is_list = isinstance(array, Array) and all(isinstance(item, str) for item in array)
    return array if is_list else None


def _rearranged(text: str, key: Key, old: Sequence[str], new: Sequence[str]) -> str | None:
    """Put the lines of a list in another order, each with its comment; None where that is not all."""
    if sorted(old) != sorted(new) or list(old) == list(new):
        return None
    values, lines = find_positions(text).values, text.split("\n")
    places = [values[*key, index].line - 1 for index in range(len(old))]
    last, line = values[*key, len(old) - 1], lines[places[-1]]
    end = last.column - 1 + len(last.words)
    if not line[end:].lstrip().startswith(","):
        lines[places[-1]] = f"{line[:end]},{line[end:]}"
    waiting: dict[str, list[str]] = {}
    for item, place in zip(old, places, strict=True):
        waiting.setdefault(item, []).append(lines[place])
    for item, place in zip(new, places, strict=True):
        lines[place] = waiting[item].pop(0)
    # Items that share a line, or have no comma behind them, cannot be told apart by lines.
    try:
        right = list(_array(_document("\n".join(lines)), key) or ()) == list(new)
    except CannotEdit:
        right = False
    return "\n".join(lines) if right else None


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
        raise _no_toml(error) from None


def _no_toml(error: TOMLKitError) -> CannotEdit:
    return CannotEdit(
        phrase("the file is no TOML: {why}", why=str(error)), phrase("correct the text of the lesson first")
    )
