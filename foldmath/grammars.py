"""Grammars compiled by lark, and kept between runs: takes the text of a grammar, gives its parser."""

import sys
from hashlib import sha256
from io import BytesIO
from typing import Any

import lark
from lark import Lark

from foldmath.cache import keep, read_kept

MARK_BYTES = sha256().digest_size


def compiled(name: str, grammar: str, **options: Any) -> Lark:
    """Give the parser of a grammar, as it was kept by an earlier run or else compiled now.

    Args:
        name: that it is kept under.
        grammar: its text.
        options: as ``Lark`` takes them, for a parser of the kind ``lalr``.
    """
    mark = _mark(grammar, options)
    kept = read_kept(name) or b""
    if kept[:MARK_BYTES] == mark:
        try:
            return Lark.load(BytesIO(kept[MARK_BYTES:]))
        except Exception:
            pass
    parser = Lark(grammar, parser="lalr", **options)
    stream = BytesIO()
    parser.save(stream)
    keep(name, mark + stream.getvalue())
    return parser


def _mark(grammar: str, options: dict[str, Any]) -> bytes:
    """Give what tells a kept grammar from one that was changed, or compiled by another lark or Python."""
    told = {name: value if isinstance(value, str | bool) else type(value) for name, value in options.items()}
    return sha256(repr((lark.__version__, sys.version, grammar, sorted(told.items()))).encode()).digest()
