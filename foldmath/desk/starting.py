"""A file to double-click: takes a system and how the program is called, gives what opens the desk on it."""

import shlex
import sys
from pathlib import Path

NAMES = {
    "linux": "Fraction lessons.desktop",
    "darwin": "Fraction lessons.command",
    "win32": "Fraction lessons.bat",
}
"""What the file is called, by the systems as Python names them."""

EXECUTABLE = 0o755


def starter(folder: Path, system: str = sys.platform, python: str = sys.executable) -> tuple[str, bytes]:
    """Give the name and the content of a file that opens the desk when it is double-clicked.

    Args:
        folder: of the teacher's lessons.
        system: on which it will be clicked, as ``sys.platform`` names it; others are like Linux.
        python: that runs the program.

    Sources:
        Desktop Entry Specification 1.5 (quoting in Exec); the rules of ``cmd`` for quotes and percent signs,
        from memory.
    """
    words = [python, "-m", "foldmath", "desk", "--folder", str(folder)]
    name = NAMES.get(system, NAMES["linux"])
    if system == "win32":
        said = " ".join(f'"{word}"' for word in words).replace("%", "%%")
        return name, f"@echo off\r\nchcp 65001 > nul\r\n{said}\r\n".encode()
    if system == "darwin":
        return name, f"#!/bin/sh\nexec {shlex.join(words)}\n".encode()
    entry = "[Desktop Entry]\nType=Application\nName=Fraction lessons\nTerminal=true\n"
    return name, f"{entry}Exec={' '.join(map(_in_entry, words))}\n".encode()


def _in_entry(word: str) -> str:
    """Quote a word as a desktop entry wants it: within the word, then for the file."""
    inside = word
    for sign in ("\\", '"', "`", "$"):
        inside = inside.replace(sign, f"\\{sign}")
    return '"' + inside.replace("\\", "\\\\").replace("%", "%%") + '"'
