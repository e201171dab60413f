"""What is printed for programs and not for readers: it stays whole whatever letters the terminal has."""

import json
import sys
from typing import Any


def print_data(value: Any) -> None:
    """Print a value as JSON; where the terminal does not write UTF-8, other letters stand as escapes."""
    print(json.dumps(value, ensure_ascii=not _writes_utf8(), indent=1))


def print_toml(text: str) -> None:
    """Print the text of a lesson file; where the terminal does not write UTF-8, other letters as escapes."""
    if not _writes_utf8():
        text = "".join(sign if sign.isascii() else _toml_escape(sign) for sign in text)
    print(text, end="")


def _toml_escape(sign: str) -> str:
    code = ord(sign)
    return f"\\u{code:04X}" if code < 0x10000 else f"\\U{code:08X}"


def _writes_utf8() -> bool:
    return (sys.stdout.encoding or "").lower().replace("-", "").startswith("utf8")
