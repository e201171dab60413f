"""Finding the words of a word list for the catalogues: what Babel calls for every ``words.toml``."""

import tomllib
from collections.abc import Iterator
from typing import Any, BinaryIO


def word_lists(
    stream: BinaryIO, keywords: Any, comment_tags: Any, options: Any
) -> Iterator[tuple[int, str, str, list[str]]]:
    """Give every text of a word list, with its key as a comment to the translator.

    The option ``keys`` names those whose texts are words; without it, all are.
    """
    wanted = options.get("keys", "").split()
    source = stream.read().decode("utf-8")
    lines = source.splitlines()
    for key, text in _texts("", tomllib.loads(source)):
        name = key.rpartition(".")[2]
        if wanted and name not in wanted:
            continue
        line = next(
            (number for number, found in enumerate(lines, start=1) if found.startswith(f"{name} = ")), 1
        )
        yield line, "", text, [key]


def _texts(key: str, value: Any) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for name, inner in value.items():
            yield from _texts(f"{key}.{name}".lstrip("."), inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _texts(key, inner)
    elif isinstance(value, str) and any(sign.isalpha() for sign in value):
        yield key, value
