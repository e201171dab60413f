"""TOML in, a table out; and for bad TOML, plain words, the line, and a mended line that was tried."""

import re
import tomllib
from collections.abc import Iterator
from typing import Any, NamedTuple

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.text import printable

PLAIN_WORDS = {
    "Expected '=' after a key": "an equals sign is missing after the key",
    "Expected newline or end of document": "something is left over at the end of this line",
    "Unclosed array": "a comma or the closing ] of a list is missing before this",
    "Unclosed inline table": "a comma or the closing } is missing",
    "Unterminated string": "the closing quotes are missing",
    "Illegal character '\\n'": "the closing quotes are missing",
    "Illegal character": "there is a character here that TOML does not allow",
    "Found invalid character": "there is a character here that TOML does not allow",
    "Unescaped '\\'": "a backslash in quotes has a meaning of its own in TOML",
    "Invalid statement": "this line is no key with a value",
    "Invalid initial character for a key": "a key must begin with a letter",
    "Invalid value": "this value is not in quotes, and is no number or list",
    "Cannot overwrite a value": "this key is given twice",
    "Duplicate inline table key": "this key is given twice",
    "Cannot declare": "this table is given twice",
    "Cannot mutate immutable namespace": "this table is given already",
    "Invalid date": "this is no date that exists",
    "Invalid hex": "this escape after a backslash is wrong",
    "Escaped character": "this escape after a backslash is wrong",
    "Expected ']'": "the closing ] is missing",
}
"""What tomllib says, by its first words, in the words of someone who has never heard of TOML."""

_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


class TomlSlip(NamedTuple):
    """What tomllib refuses, and where."""

    message: str
    line: int
    column: int


def toml_table(text: str, file: str) -> dict[str, Any]:
    """Read TOML.

    Args:
        text: its lines ended by a single newline character.
        file: the path as the user gave it.

    Raises:
        LessonRefused: it is not TOML 1.0; the hint is the line as it would work, where one was found.
    """
    slip = _slip(text)
    if slip is None:
        return tomllib.loads(text)
    lines = text.split("\n")
    words = printable(lines[slip.line - 1].strip()[:80]) if slip.line else ""
    plain = next(
        (words for said, words in PLAIN_WORDS.items() if slip.message.startswith(said)), slip.message
    )
    raise LessonRefused([Problem(file, slip.line, slip.column, plain, words, _remedy(lines, slip))])


def _slip(text: str) -> TomlSlip | None:
    try:
        tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        return _placed(str(error), text)
    except RecursionError:
        return TomlSlip("lists or tables stand too deep inside each other", *_first(r"[\[{]{20}", text))
    except ValueError:
        return TomlSlip("this number is far too long", *_first(r"\d{1000}", text))
    return None


def _placed(said: str, text: str) -> TomlSlip:
    found = _PLACE.search(said)
    message = _PLACE.sub("", said)
    if found and found[1]:
        # tomllib looks at a backslash together with the character after it.
        behind = 2 if message.startswith("Unescaped") else 0
        return TomlSlip(message, int(found[1]), int(found[2]) - behind)
    last = text.rstrip().count("\n") + 1
    return TomlSlip(message, last, len(text.rstrip().split("\n")[-1]))


def _first(pattern: str, text: str) -> tuple[int, int]:
    found = re.search(pattern, text)
    start = found.start() if found else 0
    return text.count("\n", 0, start) + 1, start - text.rfind("\n", 0, start)


def _remedy(lines: list[str], slip: TomlSlip) -> str:
    """Mend one line in the ways that slips are made, and offer the first that tomllib reads further with."""
    if "overwrite" in slip.message or "Duplicate" in slip.message or "declare" in slip.message:
        return "keep one of the two"
    if slip.message.startswith("this number"):
        return "use a smaller number"
    for index, mended in _mended_lines(lines, slip.line - 1):
        trial = _slip("\n".join([*lines[:index], mended, *lines[index + 1 :]]))
        if trial is None or trial.line > slip.line:
            return printable(mended.strip()[:120])
    return "every line is a key, an equals sign and a value: words in quotes, a number, or a list in [ ]"


def _mended_lines(lines: list[str], at: int) -> Iterator[tuple[int, str]]:
    line = lines[at]
    before = next((index for index in range(at - 1, -1, -1) if _has_words(lines[index])), None)
    yield at, re.sub("[“”„«»]", '"', line)
    yield at, re.sub("[‘’]", "'", line)
    if before is not None:
        yield before, _without_comment(lines[before]) + ","
        yield before, _without_comment(lines[before]) + "]"
    yield at, re.sub(r"^(\s*[\w-]+)\s*:\s*", r"\1 = ", line)
    yield at, re.sub(r"^(\s*[\w-]+)\s+", r"\1 = ", line)
    yield at, re.sub(r"=\s*(.*?)\s*$", r'= "\1"', line)
    yield at, re.sub(r"=\s*'(.*?)'?\s*$", r'= "\1"', line)
    yield at, line.rstrip() + '"'
    yield at, re.sub(r"(,|\]|,\s*\])?\s*$", r'"\1', line, count=1)
    yield at, line.rstrip() + "]"
    yield at, line.rstrip() + " }"
    yield at, re.sub(r"^\s*(.*?),?\s*$", r'"\1",', line)
    yield at, line.replace("\\", "/")
    yield at, re.sub(r'"\s+(?=")', '", ', line)
    yield at, "".join(sign for sign in line if sign.isprintable())
    yield at, f"# {line.strip()}"


def _has_words(line: str) -> bool:
    return bool(line.strip()) and not line.lstrip().startswith("#")


def _without_comment(line: str) -> str:
    return line.rstrip() if line.count('"') == 0 else line[: line.rindex('"') + 1]
