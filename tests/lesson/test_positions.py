"""Every key and value of a TOML text is found where it stands."""

import tomllib
from typing import Any

import pytest

from foldmath.lesson.files.positions import Path, find_positions

TEXT = r'''# a comment
title = "Seed trays"   # "another" = [comment]
grade=5
"odd \u006bey" . 'b.c' = 1979-05-27 07:32:00Z
paper = { width = "24 in", height = '32 in' }
steps = [
  "fold \u006ceft", # a comment ]

  """
ab\
   cd""", 'x',
]
none = []
deep = [[1, -2.5e3], [
  true ] ,
  ]
empty = ""
quoted = """a"b"""""
[notes.more]
z = {}
[[rows]]
k = ''
[[rows]]
k = 1
[rows.in]
j = 2
[[rows.of]]
i = 3
'''  # fmt: skip


def leaves(value: Any, path: Path = ()) -> list[Path]:
    if isinstance(value, dict):
        return [leaf for key, inner in value.items() for leaf in leaves(inner, (*path, key))]
    if isinstance(value, list):
        return [leaf for index, inner in enumerate(value) for leaf in leaves(inner, (*path, index))]
    return [path]


def test_every_value_is_found_and_reads_as_it_stands():
    table = tomllib.loads(TEXT)
    positions = find_positions(TEXT)
    found = leaves(table)
    assert len(found) == 17
    for path in found:
        value: Any = table
        for step in path:
            value = value[step]
        assert tomllib.loads(f"x = {positions.values[path].words}") == {"x": value}


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        (("title",), 2, 9),
        (("grade",), 3, 7),
        (("odd key", "b.c"), 4, 26),
        (("paper",), 5, 9),
        (("paper", "height"), 5, 37),
        (("steps", 1), 9, 3),
        (("steps", 2), 11, 11),
        (("deep", 1, 0), 15, 3),
        (("rows", 0, "k"), 22, 5),
        (("rows", 1, "k"), 24, 5),
        (("rows", 1, "in", "j"), 26, 5),
        (("rows", 1, "of", 0, "i"), 28, 5),
    ],
)
def test_a_value_is_found_at_its_line_and_column(path, line, column):
    position = find_positions(TEXT).values[path]
    assert (position.line, position.column) == (line, column)


def test_a_key_is_found_at_its_line_and_column():
    keys = find_positions(TEXT).keys
    assert (keys["paper", "height"].line, keys["paper", "height"].column) == (5, 28)
    assert (keys["notes", "more"].line, keys["notes", "more"].words) == (19, "notes.more")
    assert (keys["rows", 1].line, keys["rows", 1].words) == (23, "rows")


def test_a_character_is_found_past_escapes_and_line_ends():
    values = find_positions(TEXT).values
    after_escape = values["steps", 0].inside(6)
    assert (after_escape.line, after_escape.column) == (7, 15)
    on_next_line = values["steps", 1].inside(2)
    assert (on_next_line.line, on_next_line.column) == (11, 4)


def test_what_is_missing_is_looked_for_in_what_is_around_it():
    positions = find_positions(TEXT)
    assert positions.nearest(("paper", "depth")) == positions.values["paper",]
    assert positions.nearest(("nowhere",)) is None
