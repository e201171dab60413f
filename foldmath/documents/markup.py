"""From HTML to blocks: reads the few tags that the templates use.

============================  ==================================================================
``section``                   a page; ``class="soft"`` stays on a page that has little on it yet
``h1``, ``h2``, ``p``          a paragraph; its class, or its tag, names the style
``table`` / ``tr`` / ``td``    a row of cells; the classes of ``tr`` and ``td`` name their styles
``div``                       blocks that stay together
``img``                       a picture: ``data-picture``, and ``data-answer`` where answers show
``output``                    a box with its answer; ``class="lines"`` makes ruled lines
``math`` with ``mfrac``        a stacked fraction
``span class="fraction"``      a stacked fraction to be written: boxes, or spans of boxes and signs
``b``, ``br``                  bold words, an end of line
============================  ==================================================================
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

from foldmath.documents.blocks import (
    Block,
    Box,
    Cell,
    LineBreak,
    NewPage,
    Paragraph,
    Picture,
    Row,
    Run,
    Stack,
    Text,
    Together,
    WritingLines,
)

VOID = {"img", "br", "hr", "meta", "link"}
PART_OF_FRACTION = "part"
PARAGRAPHS = {"h1", "h2", "p"}


class UnknownTag(ValueError):
    """A template uses a tag that has no place in print."""


@dataclass
class Element:
    """One element of the tree: its tag, its attributes, and what it holds, in order."""

    tag: str
    attributes: dict[str, str]
    content: "list[Element | str]" = field(default_factory=list)

    @property
    def style(self) -> str:
        """The class, or the tag where there is none."""
        return self.attributes.get("class", self.tag)

    @property
    def elements(self) -> "list[Element]":
        """The elements directly inside."""
        return [part for part in self.content if isinstance(part, Element)]

    @property
    def text(self) -> str:
        """All words inside, spaces run together."""
        parts = (part if isinstance(part, str) else part.text for part in self.content)
        return " ".join("".join(parts).split())


class _TreeBuilder(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Element("root", {})
        self.open = [self.root]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.open[-1].content.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            closed = self.open.pop()
            if closed.tag != tag:
                raise UnknownTag(f"</{tag}> closes <{closed.tag}>")

    def handle_data(self, data: str) -> None:
        self.open[-1].content.append(data)


def blocks_of(html: str) -> tuple[Block, ...]:
    """Read a document's body.

    Raises:
        UnknownTag: a tag that is not in the table above, or that is closed out of turn.
    """
    builder = _TreeBuilder()
    builder.feed(html)
    builder.close()
    body = next(_find(builder.root, "body"))
    return tuple(_blocks(body.elements))


def _find(element: Element, tag: str) -> Iterator[Element]:
    if element.tag == tag:
        yield element
    for part in element.elements:
        yield from _find(part, tag)


def _blocks(elements: list[Element]) -> Iterable[Block]:
    for element in elements:
        if element.tag in PARAGRAPHS:
            yield Paragraph(element.style, tuple(_runs(element)))
        else:
            reader = READERS.get(element.tag)
            if reader is None:
                raise UnknownTag(f"<{element.tag}>")
            yield from reader(element)


def _section(element: Element) -> Iterable[Block]:
    yield NewPage(soft=element.style == "soft")
    yield from _blocks(element.elements)


def _together(element: Element) -> Iterable[Block]:
    yield Together(element.style, tuple(_blocks(element.elements)))


def _rows(element: Element) -> Iterable[Block]:
    for row in element.elements:
        cells = tuple(Cell(cell.style, tuple(_cell(cell))) for cell in row.elements)
        yield Row(row.style, cells)


def _cell(cell: Element) -> Iterable[Block]:
    """Read a cell: blocks, or words alone, which make one paragraph of the cell's own style."""
    if any(part.tag in PARAGRAPHS or part.tag in READERS for part in cell.elements):
        return _blocks(cell.elements)
    return (Paragraph(cell.style, tuple(_runs(cell))),)


def _picture(element: Element) -> Iterable[Block]:
    name = element.attributes["data-picture"]
    yield Picture(
        element.style, name, element.attributes.get("data-answer", name), element.attributes.get("alt", "")
    )


def _lines(element: Element) -> Iterable[Block]:
    yield WritingLines(int(element.attributes["data-lines"]), tuple(_runs(element)))


READERS: dict[str, Callable[[Element], Iterable[Block]]] = {
    "section": _section,
    "div": _together,
    "table": _rows,
    "img": _picture,
    "output": _lines,
}


def _runs(element: Element, *, bold: bool = False) -> Iterable[Run]:
    for part in element.content:
        if isinstance(part, str):
            if part:
                yield Text(part, bold)
        elif part.tag == "b":
            yield from _runs(part, bold=True)
        elif part.tag == "br":
            yield LineBreak()
        elif part.tag == "output":
            yield Box(part.style, part.text)
        elif part.tag == "math":
            yield from _math(part)
        elif part.tag == "span" and part.style == "fraction":
            above, below = part.elements
            yield Stack(tuple(_boxes(above)), tuple(_boxes(below)))
        elif part.tag == "span":
            yield from _runs(part, bold=bold)
        else:
            raise UnknownTag(f"<{part.tag}> in a line of words")


def _boxes(part: Element) -> Iterable[Run]:
    """Read a part of a fraction to be written: one box, or a span of boxes and signs."""
    if part.tag == "output":
        return (Box(PART_OF_FRACTION, part.text),)
    runs = _runs(part)
    return (Box(PART_OF_FRACTION, run.answer) if isinstance(run, Box) else run for run in runs)


def _math(element: Element) -> Iterable[Run]:
    for part in element.elements:
        if part.tag == "mfrac":
            above, below = part.elements
            yield Stack((Text(above.text),), (Text(below.text),))
        elif part.tag == "mrow":
            yield from _math(part)
        elif part.tag == "mo":
            yield Text(f" {part.text} ")
        else:
            yield Text(part.text)
