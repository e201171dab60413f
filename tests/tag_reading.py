"""Reads a printed file by its tag tree, as one hears it: every element with its words, in order.

ISO 32000-1:2008, 14.6 to 14.9.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pikepdf


@dataclass(frozen=True)
class Heard:
    """An element: its kind, the words of its own ink, what else it says, and the elements in it."""

    kind: str
    words: str
    alternate: str
    language: str
    scope: str
    columns: int
    children: "tuple[Heard, ...]"

    def all(self, *kinds: str) -> "list[Heard]":
        """Give the elements of some kinds in it, in order, itself among them."""
        own = [self] if self.kind in kinds else []
        return own + [found for child in self.children for found in child.all(*kinds)]

    @property
    def text(self) -> str:
        """All that is heard of it, spaces run together; of a picture, what it shows."""
        parts = [self.words or self.alternate, *(child.text for child in self.children)]
        return " ".join(" ".join(parts).split())


class TaggedFile:
    """A printed file, as it is heard."""

    def __init__(self, file) -> None:
        self.pdf = pikepdf.open(file)
        self._pages = {page.obj.objgen: _Ink(page.obj) for page in self.pdf.pages}

    @cached_property
    def whole(self) -> Heard:
        """The document."""
        return self._heard(self.pdf.Root.StructTreeRoot.K)

    @property
    def artifacts(self) -> list[str]:
        """What is printed on each page and not heard."""
        return [self._pages[page.obj.objgen].words.get("Artifact", "") for page in self.pdf.pages]

    def _heard(self, element) -> Heard:
        kids = element.get("/K")
        table = element.get("/A", {})
        return Heard(
            kind=str(element.S)[1:],
            words=self._words(element),
            alternate=str(element.get("/Alt", "")),
            language=str(element.get("/Lang", "")),
            scope=str(table.get("/Scope", "/"))[1:],
            columns=int(table.get("/ColSpan", 1)),
            children=() if "/Pg" in element else tuple(map(self._heard, kids or ())),
        )

    def _words(self, element) -> str:
        """Give the words of an element's own ink, and of parts of it that stand for others, in order."""
        if "/ActualText" in element:
            return str(element.ActualText)
        if "/Pg" not in element:
            return ""
        words, kids = self._pages[element.Pg.objgen].words, element.K
        parts = kids if isinstance(kids, pikepdf.Array) else [kids]
        return "".join(words.get(int(part), "") for part in parts)


class _Ink:
    """The words of a page by its marks; ink that stands for other words gives those."""

    def __init__(self, page) -> None:
        self.words: dict[int | str, str] = {}
        self._marks: list[tuple[int | str | None, bool]] = []
        self._run(page, page.Resources)

    def _run(self, stream, resources) -> None:
        codes: dict[bytes, str] = {}
        for operands, operator in pikepdf.parse_content_stream(stream):
            match str(operator):
                case "BDC" | "BMC":
                    self._begin(operands)
                case "EMC":
                    self._marks.pop()
                case "Tf":
                    codes = _codes(resources.Font[str(operands[0])])
                case "Tj":
                    self._say(_read(bytes(operands[0]), codes))
                case "TJ":
                    shown = (part for part in operands[0] if isinstance(part, pikepdf.String))
                    self._say(_read(b"".join(map(bytes, shown)), codes))
                case "Do":
                    form = resources.XObject[str(operands[0])]
                    self._run(form, form.get("/Resources", resources))

    def _begin(self, operands) -> None:
        told = operands[1] if len(operands) > 1 else {}
        name = "Artifact" if str(operands[0]) == "/Artifact" else None
        self._marks.append((int(told["/MCID"]) if "/MCID" in told else name, False))
        if "/ActualText" in told:
            self._say(str(told.ActualText))
            self._marks[-1] = (self._marks[-1][0], True)

    def _say(self, words: str) -> None:
        if not any(stands_for for _, stands_for in self._marks):
            place = next(mark for mark, _ in self._marks if mark is not None)
            self.words[place] = self.words.get(place, "") + words


def _read(shown: bytes, codes: dict[bytes, str]) -> str:
    """Read codes, all of them as long as one is."""
    length = len(next(iter(codes)))
    return "".join(codes[shown[start : start + length]] for start in range(0, len(shown), length))


def _codes(font) -> dict[bytes, str]:
    """Give what the codes of a font stand for, each of one byte or of two."""
    table = font.ToUnicode.read_bytes().decode("latin-1").partition("beginbfchar")[2]
    found = re.findall(r"<([0-9A-F]{2}|[0-9A-F]{4})> <([0-9A-F]{4,})>", table)
    return {bytes.fromhex(code): bytes.fromhex(words).decode("utf-16-be") for code, words in found}


def heard(path: Path) -> Heard:
    """Give the document of a file."""
    return TaggedFile(path).whole


def rows_of(table: Heard) -> list[list[Heard]]:
    """Give the cells of each row of a table."""
    assert all(row.kind == "TR" for row in table.children)
    return [list(row.children) for row in table.children]


def leaves(element: Heard) -> Iterator[Heard]:
    """Give the elements that hold no others, in order."""
    if not element.children:
        yield element
    for child in element.children:
        yield from leaves(child)
