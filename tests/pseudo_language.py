"""A language made up for tests: every phrase accented and in brackets, and what slipped through without.

The catalogue is made on the fly of all that Babel finds, so plain English on a page is a text that nobody
wrapped, or that the catalogues never hear of.
"""

import re
import tomllib
from collections.abc import Iterable
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import write_po
from conftest import LESSONS

import foldmath
from foldmath.cli.arguments import COMMANDS
from foldmath.statements.rules import RULES
from foldmath.words.languages import LOCALE

ROOT = Path(foldmath.__file__).parents[1]

PSEUDO = "en-XA"
"""As CLDR calls accented English (Unicode CLDR, pseudo-locales)."""

TABLES = ("stories.toml", "steps.toml", "fraction_names.toml", "rules.toml")
"""What a language's authors write beside the catalogue, and people read."""

ACCENTED = str.maketrans(
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz",
    "ÀƁĈÐÈƑĜĤÎĴĶĻṀÑÖÞǪŔŠŢÛṼŴẊÝŽàƀĉðèƒĝĥîĵķļṁñöþǫŕšţûṽŵẋýž",
)
_KEPT = re.compile(r"\{[^{}|]*\}|%\(\w+\)[sr]|%[sr]|%%|<[^<>]*>|&\w+;")
_FORMS = re.compile(r"\{(\w+):([^{}]*)\}")
_WORD = re.compile(r"[A-Za-z]{2,}")

SAME_EVERYWHERE = re.compile(
    r"\b[ACDEFHJKLMNPRTUVWXY34679]{5}[258]\b|\b[FT]\d( (panels|of))?\b"
    rf"|\bfoldmath( ({'|'.join(COMMANDS)})\b[^⟧]*)?"
    r"|\S*\.(pdf|toml|csv|ods|svg|html|fold)\b"
    r"|\S*/\S*[A-Za-z]\S*|--[a-z-]+|\b\d*(mm|cm|in|pt|kg|mL)\b|\bA[345]\b|(?<=\d)(st|nd|rd|th)\b"
    r"|\b(JIS|ANSI|Arch) [A-F]\d?\b|\b[A-Z]{2,}\b|\{[\w,]+\}"
)
"""Codes at the foot, columns of the answers sheet, names of files, options, units, commands and sentences of
numbers as they are typed: signs, not words."""


def pseudo(text: str) -> str:
    """Say a text in the made-up language; values, tags and the names of both are kept."""
    if match := _FORMS.search(text):
        forms = "|".join(form.translate(ACCENTED) for form in match[2].split("|"))
        return f"{pseudo(text[: match.start()])}{{{match[1]}:{forms}}}{pseudo(text[match.end() :])}"
    kept = _KEPT.findall(text)
    said = [part.translate(ACCENTED) for part in _KEPT.split(text)]
    inner = "".join(part + keep for part, keep in zip(said, [*kept, ""], strict=True))
    return f"⟦{inner}⟧" if any(map(str.isalpha, inner)) else inner


def texts_found() -> set[str | tuple[str, ...]]:
    """Extract as the command of the developers' page does; texts that count something are tuples."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    mappings = settings["tool"]["babel"]["mappings"]
    methods = [(mapping["pattern"], mapping["method"]) for mapping in mappings]
    options = {
        mapping["pattern"]: {name: mapping[name] for name in mapping.keys() - {"pattern", "method"}}
        for mapping in mappings
    }
    keywords = {"phrase": None, "counted": (1, 2), "_": None, "gettext": None, "ngettext": (1, 2)}
    return {text for _, _, text, _, _ in extract_from_dir(ROOT / "foldmath", methods, options, keywords)}


def write_language(locale: Path) -> None:
    """Write the made-up language into a folder, beside the real ones."""
    for folder in LOCALE.iterdir():
        (locale / folder.name).symlink_to(folder)
    own = locale / PSEUDO.replace("-", "_")
    (own / "LC_MESSAGES").mkdir(parents=True)
    catalog = Catalog(locale="en")
    for text in texts_found():
        catalog.add(text, pseudo(text) if isinstance(text, str) else tuple(map(pseudo, text)))
    with (own / "LC_MESSAGES" / "foldmath.po").open("wb") as stream:
        write_po(stream, catalog)
    for name in TABLES:
        table = tomllib.loads((LOCALE / "en_US" / name).read_text(encoding="utf-8"))
        if name == "rules.toml":
            # American English has the short name of a rule in its code.
            table = {rule.name: {"short": rule.code, **table[rule.name]} for rule in RULES}
        (own / name).write_text(_as_toml(_in_pseudo(table)), encoding="utf-8")


def _in_pseudo(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _in_pseudo(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_in_pseudo(inner) for inner in value]
    return pseudo(value) if isinstance(value, str) else value


def _as_toml(table: dict[str, Any]) -> str:
    lines = [f"{_written(key)} = {_written(value)}" for key, value in table.items()]
    return "\n".join(lines) + "\n"


def _written(value: Any) -> str:
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{_written(key)} = {_written(inner)}" for key, inner in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(map(_written, value)) + "]"
    return (
        '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"' if isinstance(value, str) else str(value)
    )


def strings_in(value: Any) -> list[str]:
    """Give every string in a value that was read from TOML or JSON."""
    if isinstance(value, str):
        return [value]
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list | tuple) else ()
    return [text for one in inner for text in strings_in(one)]


def lesson_in_pseudo(name: str, folder: Path) -> tuple[Path, list[str]]:
    """Write one of our lessons anew, its own words in the made-up language; give its file and its steps."""
    text = (LESSONS / f"{name}.toml").read_text(encoding="utf-8")
    lesson = tomllib.loads(text)
    own = [lesson["title"], *lesson.get("vocabulary", ()), *strings_in(lesson.get("notes", ()))]
    own += [words for words in strings_in(lesson.get("booklet", ())) if " " in words or words[:1].isupper()]
    for words in sorted(own, key=len, reverse=True):
        text = text.replace(f'"{words}"', f'"{pseudo(words)[1:-1]}"')
    file = folder / f"{name}.toml"
    file.write_text(f'language = "{PSEUDO}"\n{text}', encoding="utf-8")
    return file, lesson["steps"]


class _Read(HTMLParser):
    """What people read or hear of a page: its texts and the names that screen readers say."""

    SKIPPED = ("math", "style", "script")
    HEARD = ("alt", "title", "aria-label", "placeholder")

    NEVER_CLOSED = ("br", "hr", "img", "input", "link", "meta")

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.open: list[tuple[str, bool]] = []

    @property
    def passed_over(self) -> bool:
        """Tell whether what comes is a formula, a style, a script, or marked as being in another language."""
        return bool(self.open) and self.open[-1][1]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        foreign = dict(attrs).get("lang", PSEUDO) != PSEUDO
        passed_over = self.passed_over or foreign or tag in self.SKIPPED
        if tag not in self.NEVER_CLOSED:
            self.open.append((tag, passed_over))
        if not passed_over:
            self.texts += [value for name, value in attrs if name in self.HEARD and value]

    def handle_startendtag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Hear what an element that is closed at once has to say."""
        if not self.passed_over:
            self.texts += [value for name, value in attrs if name in self.HEARD and value]

    def handle_endtag(self, tag: str) -> None:
        while self.open and self.open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        if not self.passed_over:
            self.texts.append(data)


def texts_of_page(html: str) -> list[str]:
    """Give everything that people read or hear of a page."""
    reader = _Read()
    reader.feed(html)
    return reader.texts


def plain_english(texts: Iterable[str], quoted: Iterable[str] = ()) -> list[str]:
    """Give every text with words that nobody accented, but for those that a teacher wrote herself."""
    found = {}
    for text in texts:
        left = " ".join(text.split())
        for words in quoted:
            left = left.replace(words, "").replace(words[:1].upper() + words[1:], "")
        if _WORD.search(SAME_EVERYWHERE.sub("", left)):
            found[" ".join(text.split())] = None
    return list(found)
