"""Where words stand: takes a TOML text that tomllib accepts, gives the position of every key and value.

tomllib keeps no positions, so the text is read a second time by the grammar in ``toml.lark``.
"""

import re
import tomllib
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import TypeAlias

from lark import Lark, Token, Tree, UnexpectedInput

from foldmath.grammars import compiled
from foldmath.values import frozen

Path: TypeAlias = tuple[str | int, ...]
"""The way to a value from the top of the file: keys, and numbers in arrays, counted from 0."""


@frozen
class Position:
    """Where something stands in a text.

    Args:
        line: counted from 1.
        column: counted from 1, in characters.
        words: the text that stands there, as written.
    """

    line: int
    column: int
    words: str

    @property
    def first_line(self) -> str:
        """What stands there, up to the end of its line."""
        return self.words.split("\n", 1)[0]

    def inside(self, offset: int) -> "Position":
        """Give the position of a character of a quoted string, counted from 0 after escapes are undone."""
        long_quotes = self.words[:3] in ('"""', "'''")
        start = 3 if long_quotes else 1
        if long_quotes and self.words[start : start + 1] == "\n":
            start += 1
        signs = _SIGN if self.words[0] == '"' else _LITERAL_SIGN
        for sign in signs.finditer(self.words, start):
            if re.fullmatch(r"\\[ \t]*\n\s*", sign.group()):
                continue
            if not offset:
                return self._at(sign.start())
            offset -= 1
        return self

    def _at(self, index: int) -> "Position":
        before = self.words[:index]
        line = self.line + before.count("\n")
        column = index - before.rfind("\n") if "\n" in before else self.column + index
        return Position(line, column, self.words[index:])


_SIGN = re.compile(r"\\u[0-9A-Fa-f]{4}|\\U[0-9A-Fa-f]{8}|\\[ \t]*\n\s*|\\.|[\s\S]")
_LITERAL_SIGN = re.compile(r"[\s\S]")


@frozen
class Positions:
    """The positions of all keys and values of one text.

    Args:
        keys: where each key is written.
        values: where each value is written.
    """

    keys: dict[Path, Position]
    values: dict[Path, Position]

    def nearest(self, path: Path) -> Position | None:
        """Give the position of a value, or of the nearest thing around it; None if it is not in the text."""
        while path:
            position = self.values.get(path) or self.keys.get(path)
            if position:
                return position
            path = path[:-1]
        return None


def find_positions(text: str) -> Positions:
    """Find where every key and value of a TOML text stands.

    Args:
        text: TOML that tomllib accepts, its lines ended by a single newline character.
    """
    positions = Positions({}, {})
    try:
        tree = _parser().parse(text)
    except UnexpectedInput:
        # tomllib has read the text, so it is sound; without positions the report still names the key.
        return positions
    table: Path = ()
    tables_in: dict[Path, int] = {}
    for line in _trees(tree):
        if line.data == "pair":
            _note_pair(positions, text, table, line)
        else:
            first, words = _words(next(_trees(line)))
            position = _token_position(first, words)
            table = _table_path(_key_path(words), tables_in)
            if line.data == "table_array":
                positions.keys.setdefault(table, position)
                tables_in[table] = tables_in.get(table, -1) + 1
                table = (*table, tables_in[table])
            positions.keys[table] = position
    return positions


def _table_path(key: Path, tables_in: dict[Path, int]) -> Path:
    """Give the way to a table: where its key goes through an array of tables, the newest one is meant.

    Args:
        key: as it stands in brackets.
        tables_in: the number of the newest table in each array, counted from 0.
    """
    path: Path = ()
    for step in key[:-1]:
        path = (*path, step)
        if path in tables_in:
            path = (*path, tables_in[path])
    return (*path, *key[-1:])


def _note_pair(positions: Positions, text: str, table: Path, pair: Tree[Token]) -> None:
    key, value = _trees(pair)
    first, words = _words(key)
    path = (*table, *_key_path(words))
    for length in range(len(table) + 1, len(path) + 1):
        positions.keys.setdefault(path[:length], _token_position(first, words))
    _note_value(positions, text, path, value)


def _note_value(positions: Positions, text: str, path: Path, value: Tree[Token]) -> None:
    meta = value.meta
    positions.values[path] = Position(meta.line, meta.column, text[meta.start_pos : meta.end_pos])
    inner = next(_trees(value), None)
    if inner is None:
        return
    if inner.data == "array":
        for index, item in enumerate(_trees(inner)):
            _note_value(positions, text, (*path, index), item)
    else:
        for pair in _trees(inner):
            _note_pair(positions, text, path, pair)


def _trees(tree: Tree[Token]) -> Iterator[Tree[Token]]:
    return (child for child in tree.children if isinstance(child, Tree))


def _words(tree: Tree[Token]) -> tuple[Token, str]:
    """Give the first token of a key, and the text of all."""
    tokens = [child for child in tree.children if isinstance(child, Token)]
    return tokens[0], "".join(tokens)


def _token_position(token: Token, words: str) -> Position:
    return Position(token.line or 0, token.column or 0, words)


def _key_path(key: str) -> Path:
    """Take a key apart at its dots, quotes and escapes undone."""
    path: Path = ()
    table = tomllib.loads(f"{key} = 0")
    while isinstance(table, dict):
        ((word, table),) = table.items()
        path = (*path, word)
    return path


@cache
def _parser() -> Lark:
    grammar = files(__package__).joinpath("toml.lark").read_text(encoding="utf-8")
    return compiled("positions", grammar, lexer="basic", maybe_placeholders=False, propagate_positions=True)
