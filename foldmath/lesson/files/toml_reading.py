"""TOML in, a table out; and for bad TOML, plain words, the line, and a mended line that was tried."""

import re
import tomllib
from collections.abc import Iterator
from typing import Any, NamedTuple

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.controls import printable
from foldmath.phrases import Said, phrase

TOO_DEEP, TOO_LONG = "too deep", "too long"
"""What we refuse before tomllib does."""

PLAIN_WORDS = {
    TOO_DEEP: phrase("lists or tables are nested too deeply"),
    TOO_LONG: phrase("this number is far too long"),
    "Expected '=' after a key": phrase("an equals sign is missing after the key"),
    "Expected newline or end of document": phrase("something is left over at the end of this line"),
    "Unclosed array": phrase("a comma or the closing ] of a list is missing before this"),
    "Unclosed inline table": phrase("a comma or the closing }} is missing"),
    "Expected \"'": phrase("the closing quotes are missing"),
    "Unterminated string": phrase("the closing quotes are missing"),
    "Illegal character '\\n'": phrase("the closing quotes are missing"),
    "Illegal character": phrase("there is a character here that TOML does not allow"),
    "Found invalid character": phrase("there is a character here that TOML does not allow"),
    "Unescaped '\\'": phrase("a backslash in quotes has a meaning of its own in TOML"),
    "Invalid statement": phrase("this line is no key with a value"),
    "Invalid initial character for a key": phrase("a key must begin with a letter"),
    "Invalid value": phrase("this value is not in quotes, and is no number or list"),
    "Cannot overwrite a value": phrase("this key is given twice"),
    "Duplicate inline table key": phrase("this key is given twice"),
    "Cannot declare": phrase("this table is given twice"),
    "Cannot mutate immutable namespace": phrase("this table is given already"),
    "Invalid date": phrase("this is no date that exists"),
    "Invalid hex": phrase("this escape after a backslash is wrong"),
    "Escaped character": phrase("this escape after a backslash is wrong"),
    "Expected ']'": phrase("the closing ] is missing"),
}
"""What tomllib says, by its first words, in the words of someone who has never heard of TOML."""

MOST_DEPTH = 16
"""Keys, tables and lists stand no deeper in one another: a lesson needs five; readers recurse for each."""

LONGEST_MENDED = 1_000
"""Signs; no longer line is mended in every way there is, since ways to match it grow with its square."""

LONGEST_WORDS = 80
"""Signs; so much of a line is shown."""

LINES_AFTER = 30
"""A mended line is tried with so many lines after it, which shows whether it reads on."""

_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


class TomlSlip(NamedTuple):
    """What tomllib refuses, in its words or by a name of ours, and where."""

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
    slip = _too_deep(text) or _slip(text)
    if slip is None:
        return tomllib.loads(text)
    lines = text.split("\n")
    words = _words_at(lines[slip.line - 1], slip.column) if slip.line else ""
    plain = next(
        (words for said, words in PLAIN_WORDS.items() if slip.message.startswith(said)), slip.message
    )
    raise LessonRefused(
        [
            Problem(
                file=file,
                line=slip.line,
                column=slip.column,
                message=plain,
                words=words,
                hint=_remedy(lines, slip),
            )
        ]
    )


def _words_at(line: str, column: int) -> str:
    """Give a line to be shown: its beginning, or what stands before and at a place far along it."""
    start = max(0, column - LONGEST_WORDS // 2) if column > LONGEST_WORDS else 0
    return printable(line[start : start + LONGEST_WORDS].strip())


def _slip(text: str) -> TomlSlip | None:
    try:
        tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        return _placed(str(error), text)
    except RecursionError:
        return TomlSlip(TOO_DEEP, *_first(r"[\[{]{16}", text))
    except ValueError:
        return TomlSlip(TOO_LONG, *_first(r"\d{1000}", text))
    return None


_DEPTH_TOKEN = re.compile(
    r'"""(?:\\[\s\S]|[^\\])*?"""|\'\'\'[\s\S]*?\'\'\'|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'|#[^\n]*|["\'\[\]{}.=,\n]'
)


def _too_deep(text: str) -> TomlSlip | None:
    """Find the first key, table or list in which others stand deeper than ``MOST_DEPTH``.

    What follows a quote that is never closed is not looked at: that is a slip of its own.
    """
    brackets = dots = begin = 0
    for found in _DEPTH_TOKEN.finditer(text):
        token = found[0]
        if token in "\"'" or (token in ("''", '""') and text[found.end() : found.end() + 1] == token[0]):
            return None
        if not brackets and token in "[{":
            begin = found.start()
        elif not brackets and token in "=,\n":
            begin = found.end()
        brackets += (token in "[{") - (token in "]}")
        dots = dots + 1 if token == "." else 0 if token in "=,\n{[" else dots
        if brackets + dots > MOST_DEPTH:
            begin += len(text[begin:]) - len(text[begin:].lstrip())
            where = _line_and_column(text, begin)
            return TomlSlip(TOO_DEEP, *where)
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
    return _line_and_column(text, found.start() if found else 0)


def _line_and_column(text: str, start: int) -> tuple[int, int]:
    return text.count("\n", 0, start) + 1, start - text.rfind("\n", 0, start)


def _remedy(lines: list[str], slip: TomlSlip) -> Said:
    """Mend one line in the ways that slips are made, and offer the first that tomllib reads further with."""
    if "overwrite" in slip.message or "Duplicate" in slip.message or "declare" in slip.message:
        return phrase("keep one of the two")
    if slip.message == TOO_LONG:
        return phrase("use a smaller number")
    if slip.message == TOO_DEEP:
        return phrase("no lesson needs more than {most} levels", most=MOST_DEPTH)
    for index, mended in _mended_lines(lines, slip.line - 1):
        trial = _slip("\n".join([*lines[:index], mended, *lines[index + 1 : slip.line + LINES_AFTER]]))
        if trial is None or trial.line > slip.line:
            return printable(mended.strip()[:120])
    return phrase(
        "every line is a key, an equals sign and a value: words in quotes, a number, or a list in [ ]"
    )


_GRADE = re.compile(r"^(\s*grade)\s*=[^\d#]*([3-6])?[^\d#]*$")
"""A grade in letters, such as ``five`` or ``5th``: quotes would not mend it."""


def _mended_lines(lines: list[str], at: int) -> Iterator[tuple[int, str]]:
    line = lines[at]
    before = next((index for index in range(at - 1, -1, -1) if _has_words(lines[index])), None)
    if len(line) > LONGEST_MENDED or (before is not None and len(lines[before]) > LONGEST_MENDED):
        return
    yield at, re.sub("[“”„«»]", '"', line)
    yield at, re.sub("[‘’]", "'", line)
    if before is not None:
        yield before, _without_comment(lines[before]) + ","
        yield before, _without_comment(lines[before]) + "]"
    yield at, re.sub(r"^(\s*[\w-]+)\s*:\s*", r"\1 = ", line)
    yield at, re.sub(r"^(\s*[\w-]+)\s+", r"\1 = ", line)
    yield at, _GRADE.sub(lambda found: f"{found[1]} = {found[2] or 5}", line)
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
