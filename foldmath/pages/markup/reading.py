"""From HTML to blocks: reads the few tags that the templates use, written so that XML readers take them too.

============================  ==================================================================
``section``                   a page; ``class="soft"`` stays on a page that has little on it yet
``h1``, ``h2``, ``p``          a paragraph; its class, or its tag, names the style
``table`` / ``tr`` / ``td``    a row of cells; the classes of ``tr`` and ``td`` name their styles
``th``                        a cell that heads its column, or its row: ``scope="row"``
``thead``                     rows that stand again on every page that their table goes on to
``role``                      what a table, row, cell or block is to those who hear the page, where it is not
                              what its tag says: ``list``, ``presentation``, ``cell``, ``rowheader``
``div``                       blocks that stay together; ``class="columns"``: in the columns of a page;
                              ``class="asked-above"``: with what stands right above them
``hr``                        a line to cut along
``img``                       a picture: ``data-picture``, and ``data-answer`` where answers show
``output``                    a box with its answer; ``data-given`` shows it to everybody;
                              as a block, ruled lines: ``data-lines``
``math`` with ``mfrac``        a stacked fraction
``span class="fraction"``      a stacked fraction to be written: boxes, or spans of boxes and signs
``span lang="uk"``             words in another language than the page's
``bdi``, ``dir="auto"``       words that are put in order by themselves, such as names
``b``, ``br``                  bold words, an end of line
============================  ==================================================================
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import assert_never
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from foldmath.pages.lettering.visual_order import isolated
from foldmath.pages.markup.blocks import (
    Block,
    Box,
    Cell,
    CellRole,
    Columns,
    CutLine,
    LineBreak,
    NewPage,
    Paragraph,
    Picture,
    Row,
    RowRole,
    Run,
    Stack,
    Text,
    Together,
    WritingLines,
)

PART_OF_FRACTION = "part"
LEVELS = {"h1": 1, "h2": 2, "h3": 3, "p": 0}
"""The levels of headings, by the tags of paragraphs."""

ROLES = {"cell": CellRole.CELL, "rowheader": CellRole.ROW_HEADER, "columnheader": CellRole.COLUMN_HEADER}
LAYOUT = "presentation"
"""Values of ``role``, as in ARIA: ``LAYOUT`` is for the eye alone."""


class UnknownTag(ValueError):
    """A template uses a tag that has no place in print."""


def blocks_of(html: str) -> tuple[Block, ...]:
    """Read a document's body.

    Raises:
        UnknownTag: a tag that is not in the table above, or that is closed out of turn.
    """
    try:
        document = ElementTree.fromstring(html)
    except ElementTree.ParseError as error:
        raise UnknownTag(f"the document is not well formed: {error}") from error
    body = document.find("body")
    return () if body is None else tuple(_blocks(body))


def _style(element: Element) -> str:
    """Give the class, or the tag where there is none."""
    return element.get("class", element.tag)


def _words(element: Element) -> str:
    """Give all words inside, spaces run together."""
    return " ".join("".join(element.itertext()).split())


def _blocks(elements: Iterable[Element]) -> Iterable[Block]:
    for element in elements:
        if element.tag in LEVELS:
            yield Paragraph(_style(element), tuple(_runs(element)), LEVELS[element.tag], _role(element))
        else:
            reader = READERS.get(element.tag)
            if reader is None:
                raise UnknownTag(f"<{element.tag}>")
            yield from reader(element)


def _section(element: Element) -> Iterable[Block]:
    yield NewPage(soft=_style(element) == "soft")
    yield from _blocks(element)


def _together(element: Element) -> Iterable[Block]:
    blocks = tuple(_blocks(element))
    yield (
        Columns(blocks) if _style(element) == "columns" else Together(_style(element), blocks, _role(element))
    )


def _role(element: Element) -> CellRole:
    """Give the role of a block that takes the place of a cell."""
    return ROLES.get(element.get("role", ""), CellRole.NONE)


def _rows(table: Element) -> Iterable[Block]:
    heads: list[Row] = []
    begun = False
    for row in table.iterfind("thead/tr"):
        role = _row_role(table, row, begun=begun)
        begun = begun or role is RowRole.FIRST_OF_TABLE
        heads.append(_row(row, (), role))
    yield from heads
    above = tuple(heads)
    for row in table.iterfind("tr"):
        role = _row_role(table, row, begun=begun)
        begun = begun or role is RowRole.FIRST_OF_TABLE
        yield _row(row, above, role)


def _row_role(table: Element, row: Element, *, begun: bool) -> RowRole:
    roles = {table.get("role"), row.get("role")}
    if LAYOUT in roles:
        return RowRole.LAYOUT
    if "list" in roles:
        return RowRole.OF_LIST
    return RowRole.OF_TABLE if begun else RowRole.FIRST_OF_TABLE


def _row(row: Element, heads: tuple[Row, ...], role: RowRole) -> Row:
    cells = tuple(
        Cell(
            _style(cell),
            tuple(_cell(cell)),
            _cell_role(cell, role, alone=len(row) == 1, first=cell is row[0]),
            int(cell.get("colspan", "1")),
        )
        for cell in row
    )
    return Row(_style(row), cells, heads, role)


def _cell_role(cell: Element, row: RowRole, *, alone: bool, first: bool) -> CellRole:
    """Tell what a cell is: what its own role says, else what its tag is in such a row."""
    told = cell.get("role")
    if told:
        return ROLES.get(told, CellRole.NONE)
    if cell.tag == "th":
        return CellRole.ROW_HEADER if cell.get("scope") == "row" else CellRole.COLUMN_HEADER
    match row:
        case RowRole.LAYOUT:
            return CellRole.NONE
        case RowRole.OF_LIST:
            return CellRole.LABEL if first and not alone else CellRole.BODY
        case RowRole.FIRST_OF_TABLE | RowRole.OF_TABLE:
            return CellRole.CELL
    assert_never(row)


def _cell(cell: Element) -> Iterable[Block]:
    """Read a cell: blocks, or words alone, which make one paragraph of the cell's own style."""
    if any(part.tag in LEVELS or part.tag in READERS for part in cell):
        return _blocks(cell)
    return (Paragraph(_style(cell), tuple(_runs(cell))),) if _words(cell) else ()


def _picture(element: Element) -> Iterable[Block]:
    name = element.attrib["data-picture"]
    yield Picture(_style(element), name, element.get("data-answer", name), element.get("alt", ""))


def _cut_line(element: Element) -> Iterable[Block]:
    yield CutLine()


def _lines(element: Element) -> Iterable[Block]:
    yield WritingLines(int(element.attrib["data-lines"]), tuple(_runs(element)))


READERS: dict[str, Callable[[Element], Iterable[Block]]] = {
    "section": _section,
    "div": _together,
    "table": _rows,
    "hr": _cut_line,
    "img": _picture,
    "output": _lines,
}


def _runs(element: Element, *, bold: bool = False, language: str = "") -> Iterable[Run]:
    if element.text:
        yield Text(element.text, bold, language)
    for part in element:
        yield from _inline(part, bold=bold, language=part.get("lang", language))
        if part.tail:
            yield Text(part.tail, bold, language)


def _inline(part: Element, *, bold: bool, language: str) -> Iterable[Run]:
    if part.tag == "b":
        return _runs(part, bold=True, language=language)
    if part.tag == "br":
        return (LineBreak(),)
    if part.tag == "output":
        return (_box(part, _style(part)),)
    if part.tag == "math":
        return _math(part)
    if part.tag == "span" and _style(part) == "fraction":
        above, below = part
        return (Stack(tuple(_boxes(above)), tuple(_boxes(below))),)
    if part.tag in ("span", "bdi"):
        runs = _runs(part, bold=bold, language=language)
        return _apart(runs) if part.tag == "bdi" or part.get("dir") == "auto" else runs
    raise UnknownTag(f"<{part.tag}> in a line of words")


def _apart(runs: Iterable[Run]) -> Iterable[Run]:
    """Keep words apart from those beside them, so that neither changes the other's order."""
    return (replace(run, text=isolated(run.text)) if isinstance(run, Text) else run for run in runs)


def _boxes(part: Element) -> Iterable[Run]:
    """Read a part of a fraction to be written: one box, or a span of boxes and signs."""
    if part.tag == "output":
        return (_box(part, PART_OF_FRACTION),)
    runs = _runs(part)
    return (replace(run, style=PART_OF_FRACTION) if isinstance(run, Box) else run for run in runs)


def _box(element: Element, style: str) -> Box:
    return Box(style, _words(element), given="data-given" in element.attrib)


def _math(element: Element) -> Iterable[Run]:
    for part in element:
        if part.tag == "mfrac":
            above, below = part
            yield Stack((Text(_words(above)),), (Text(_words(below)),))
        elif part.tag == "mrow":
            yield from _math(part)
        elif part.tag == "mo":
            yield Text(f" {_words(part)} ")
        else:
            yield Text(_words(part))
