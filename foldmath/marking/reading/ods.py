"""Spreadsheets in OpenDocument: takes rows of text, gives a file whose cells stay text; and reads one back.

Format: OpenDocument 1.3, part 3 (OASIS, 2021), sections 9 (tables) and 16 (styles).
"""

import io
import re
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import groupby
from typing import TYPE_CHECKING, cast
from xml.sax.saxutils import escape, quoteattr

from foldmath.errors import Problem
from foldmath.lesson.files.spreadsheet import Row, Table, TableRefused
from foldmath.phrases import Said, phrase

if TYPE_CHECKING:
    from odfdo import Cell
    from odfdo import Row as OdsRow
    from odfdo import Table as OdsTable

MIME_TYPE = b"application/vnd.oasis.opendocument.spreadsheet"
LARGEST_CONTENT = 64 * 1024 * 1024
"""Bytes of XML: a school's answers have a tenth of this."""

MOST_COLUMNS = 256
"""More columns stand in no answers sheet; spreadsheets fill rows with thousands of empty ones."""

TEXT, TEXT_STYLE = "as-text", "as-text-cells"
EARLIEST = (1980, 1, 1, 0, 0, 0)
"""The first time that a zip file can hold: the same rows give the same bytes."""


def ods(rows: Iterable[Sequence[str]], name: str, widths_mm: Sequence[int]) -> bytes:
    """Write one table whose cells are all text, so that no program takes 8/15 for a date.

    Args:
        rows: of text.
        name: of the table.
        widths_mm: of its columns.
    """
    from odfdo import Document

    container = Document("spreadsheet").container
    assert container is not None
    version = _version(container.get_part("content.xml"))
    container.set_part("content.xml", _content(rows, name, widths_mm, version).encode())
    container.set_part("meta.xml", _part("meta", "<office:meta/>", version).encode())
    written = io.BytesIO()
    container.save(written)
    return _undated(written.getvalue())


_SPACES = " ".join(
    f'xmlns:{prefix}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for prefix, name in [
        ("office", "office"),
        ("table", "table"),
        ("text", "text"),
        ("style", "style"),
        ("number", "datastyle"),
    ]
)


def _version(content: str | bytes | None) -> str:
    """Give the version that the other parts of an empty spreadsheet have: programs refuse a mixture."""
    text = content.decode() if isinstance(content, bytes) else content or ""
    found = re.search(r'office:version="([\d.]+)"', text)
    return found[1] if found else "1.3"


def _part(name: str, content: str, version: str) -> str:
    return (
        '<?xml version="1.0" encoding="UTF-8"?>'
        f'<office:document-{name} {_SPACES} office:version="{version}">{content}</office:document-{name}>'
    )


def _content(rows: Iterable[Sequence[str]], name: str, widths_mm: Sequence[int], version: str) -> str:
    """Write the part that holds the table and the styles of its cells."""
    columns = "".join(
        f'<table:table-column table:style-name="column-{index}"'
        f' table:default-cell-style-name="{TEXT_STYLE}"/>'
        for index in range(len(widths_mm))
    )
    return _part(
        "content",
        f"<office:automatic-styles>{_styles(widths_mm)}</office:automatic-styles>"
        f"<office:body><office:spreadsheet><table:table table:name={quoteattr(name)}>"
        f"{columns}{''.join(map(_row, rows))}</table:table></office:spreadsheet></office:body>",
        version,
    )


def _styles(widths_mm: Sequence[int]) -> str:
    widths = "".join(
        f'<style:style style:name="column-{index}" style:family="table-column">'
        f'<style:table-column-properties style:column-width="{width}mm"/></style:style>'
        for index, width in enumerate(widths_mm)
    )
    return (
        f'<number:text-style style:name="{TEXT}"><number:text-content/></number:text-style>'
        f'<style:style style:name="{TEXT_STYLE}" style:family="table-cell" style:data-style-name="{TEXT}"/>'
        f"{widths}"
    )


def _row(row: Sequence[str]) -> str:
    """Write a row; cells that are alike beside each other are written once, with their number."""
    cells = "".join(_cells(text, len(tuple(alike))) for text, alike in groupby(row))
    return f"<table:table-row>{cells}</table:table-row>"


def _cells(text: str, count: int) -> str:
    said = f'table:style-name="{TEXT_STYLE}" table:number-columns-repeated="{count}"'
    if not text:
        return f"<table:table-cell {said}/>"
    return (
        f'<table:table-cell {said} office:value-type="string">'
        f"<text:p>{escape(text)}</text:p></table:table-cell>"
    )


def _undated(content: bytes) -> bytes:
    """Write a zip file anew without the times of its parts; the type comes first and unpacked."""
    packed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as given, zipfile.ZipFile(packed, "w") as made:
        for part in sorted(given.infolist(), key=lambda part: (part.filename != "mimetype", part.filename)):
            info = zipfile.ZipInfo(part.filename, EARLIEST)
            plain = part.filename == "mimetype"
            info.compress_type = zipfile.ZIP_STORED if plain else zipfile.ZIP_DEFLATED
            made.writestr(info, given.read(part))
    return packed.getvalue()


def is_ods(content: bytes) -> bool:
    """Tell whether a file is a spreadsheet in OpenDocument: its type stands unpacked at its beginning."""
    return content.startswith(b"PK\x03\x04") and MIME_TYPE in content[:128]


def read_ods(content: bytes, file: str) -> Table:
    """Read the first table of a spreadsheet: the text of every cell, and dates as ISO 8601 writes them.

    Raises:
        TableRefused: the file is damaged, out of all measure, or has no table.
    """
    from odfdo import Document
    from odfdo.security import SecurityError

    try:
        with zipfile.ZipFile(io.BytesIO(content)) as parts:
            if parts.getinfo("content.xml").file_size > LARGEST_CONTENT:
                raise _refused(
                    file,
                    phrase("this spreadsheet is larger than any answers sheet"),
                    phrase("a new answers sheet"),
                )
        tables = Document(io.BytesIO(content)).body.tables
    except (zipfile.BadZipFile, KeyError, SyntaxError, SecurityError, ValueError) as error:
        raise _refused(
            file, phrase("this spreadsheet is damaged"), phrase("save it again as .ods")
        ) from error
    if not tables:
        raise _refused(file, phrase("this spreadsheet has no table"), phrase("a new answers sheet"))
    return Table(file, tuple(_rows(tables[0])), ())


def _rows(table: "OdsTable") -> Iterator[Row]:
    line = 1
    for row in table.rows:
        fields = _fields(row)
        if any(fields):
            yield Row(line, ", ".join(fields), fields)
        line += row.repeated or 1


def _fields(row: "OdsRow") -> tuple[str, ...]:
    fields: list[str] = []
    for cell in cast("list[Cell]", row.get_elements("table:table-cell|table:covered-table-cell")):
        fields += [_text(cell)] * min(cell.repeated or 1, MOST_COLUMNS - len(fields))
    while fields and not fields[-1]:
        fields.pop()
    return tuple(fields)


def _text(cell: "Cell") -> str:
    """Give what a cell shows; a date in full, since what is shown of it may lack its year."""
    value = cell.value if cell.type == "date" else None
    if isinstance(value, date):
        return f"{value:%Y-%m-%d}"
    return " ".join(str(cell.inner_text).split())


def _refused(file: str, message: Said, hint: Said) -> TableRefused:
    return TableRefused([Problem(file=file, message=message, hint=hint)])
