"""Writing Word files: takes a document's blocks and its pictures, gives the file's bytes."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from functools import singledispatchmethod
from io import BytesIO
from string import Formatter
from typing import Any, TypeAlias
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

import docx
from docx.document import Document as WordDocument
from docx.enum.text import WD_ALIGN_PARAGRAPH, WD_TAB_ALIGNMENT
from docx.oxml.ns import nsdecls, qn
from docx.oxml.parser import parse_xml
from docx.shared import Mm, Pt, RGBColor
from docx.table import _Cell as WordCell
from docx.text.paragraph import Paragraph as WordParagraph

from foldmath.pages.editable.inline import Setting, write_runs
from foldmath.pages.editable.pictures import DrawnPicture, place_picture
from foldmath.pages.editable.rows import RowsTogether, rows_together, shape_table
from foldmath.pages.markup.blocks import (
    Block,
    Columns,
    CutLine,
    NewPage,
    Paragraph,
    Picture,
    Row,
    Together,
    WritingLines,
)
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.paginating import PageMaster
from foldmath.pages.pdf.styles import StyleSheet, TextStyle, style_sheet
from foldmath.pages.printing import Document
from foldmath.words.saying import say

FONT = "Verdana"
"""As wide as the font of the printed pages, and at hand where Word files are opened."""

BEGINNING = datetime(1980, 1, 1)
"""The earliest time that a ZIP archive can hold: the same lesson gives the same bytes."""

HEADINGS = {"h1": "Heading 1", "h2": "Heading 2"}
"""Styles that programs know as headings, for those who go through a file by ear."""

LEAST_GAP_MM = 0.7
"""Between two tables."""

Container: TypeAlias = "WordDocument | WordCell"


def word_file(document: Document, pictures: Mapping[str, DrawnPicture], look: str, language: str) -> bytes:
    """Write a document as a Word file; the same input gives the same bytes.

    Args:
        document: as it would be printed.
        pictures: by name.
        look: the name of the style sheet.
        language: of its words, as in BCP 47.
    """
    writer = _Writer(document, pictures, style_sheet(look), language)
    writer.write(blocks_of(document.html))
    return writer.saved()


class _Writer:
    """A Word file being written; what is still to come of a page's start or of a group is kept in mind."""

    def __init__(
        self, document: Document, pictures: Mapping[str, DrawnPicture], sheet: StyleSheet, language: str
    ) -> None:
        self.pictures, self.sheet, self.answers = pictures, sheet, document.answers
        self.word = docx.Document()
        self.styles: dict[str, Any] = {}
        self.held: list[WordParagraph] | None = None
        self.turning = False
        _set_page(self.word, document.master, language, sheet.foot_pt)
        _set_language(self.word, language, document.master.footer)
        self.width_mm = document.master.shape.usable_width_mm

    def write(self, blocks: tuple[Block, ...]) -> None:
        """Write a document's blocks from its beginning."""
        self._all(self.word, blocks, self.width_mm)

    def _all(self, place: Container, blocks: tuple[Block, ...], width_mm: float) -> None:
        for block in rows_together(blocks, self.sheet):
            self._one(block, place, width_mm)

    @singledispatchmethod
    def _one(self, block: Block | RowsTogether, place: Container, width_mm: float) -> None:
        raise TypeError(f"not a block: {block!r}")

    @_one.register
    def _(self, block: Paragraph, place: Container, width_mm: float) -> None:
        paragraph = self._paragraph(place, block.style)
        style = self.sheet.text[block.style]
        write_runs(paragraph, block.runs, Setting(style.size, self.answers, self.sheet))

    @_one.register
    def _(self, block: Picture, place: Container, width_mm: float) -> None:
        paragraph = self._paragraph(place, "p")
        if block.style in self.sheet.centred_pictures:
            paragraph.alignment = WD_ALIGN_PARAGRAPH.CENTER
        picture = self.pictures[block.answer_name if self.answers else block.name]
        place_picture(paragraph, picture, block.words, width_mm)

    @_one.register
    def _(self, block: WritingLines, place: Container, width_mm: float) -> None:
        for number in range(block.lines):
            paragraph = self._paragraph(place, "written")
            paragraph.paragraph_format.line_spacing = Mm(self.sheet.line_pitch_mm)
            _rule(paragraph)
            if self.answers and not number:
                write_runs(
                    paragraph, block.answer, Setting(self.sheet.text["written"].size, True, self.sheet)
                )
                for run in paragraph.runs:
                    run.bold = True

    @_one.register
    def _(self, block: Together, place: Container, width_mm: float) -> None:
        outer, self.held = self.held, []
        self._all(place, block.blocks, width_mm)
        _hold(self.held[:-1])
        self.held = outer

    @_one.register
    def _(self, block: Columns, place: Container, width_mm: float) -> None:
        # One below another: what a teacher changes here would not stay in columns of its own.
        self._all(place, block.blocks, width_mm)

    @_one.register
    def _(self, block: CutLine, place: Container, width_mm: float) -> None:
        _rule(self._paragraph(place, "written"))

    @_one.register
    def _(self, block: NewPage, place: Container, width_mm: float) -> None:
        # Where a page has little on it yet is known to the program that fills it: a soft start begins none.
        self.turning = not block.soft and bool(self.word.element.body.inner_content_elements)

    @_one.register
    def _(self, block: RowsTogether, place: Container, width_mm: float) -> None:
        if self.turning:
            self._gap(place, 0)
        table, heads = place.add_table(len(block.rows), len(block.rows[0].cells)), block.heads
        shape_table(table, block, self.sheet)
        for row, cells in zip(block.rows, table.rows, strict=True):
            for cell, room in zip(row.cells, cells.cells, strict=True):
                style = self.sheet.cells[cell.style]
                self._all(room, cell.blocks, style.width_mm - 2 * style.padding_mm)
                _drop_first(room)
                if row in heads:
                    _hold(room.paragraphs)
        self._gap(place, self.sheet.rows[block.rows[-1].style].after_mm)

    @_one.register
    def _(self, block: Row, place: Container, width_mm: float) -> None:
        for cell in block.cells:
            self._all(place, cell.blocks, width_mm)

    def _gap(self, place: Container, height_mm: float) -> None:
        """Part a table from what follows: two would run together, and a cell must not end with one."""
        gap = self._paragraph(place, "written").paragraph_format
        gap.line_spacing, gap.space_after = Mm(max(height_mm, LEAST_GAP_MM)), Mm(0)

    def _paragraph(self, place: Container, name: str) -> WordParagraph:
        paragraph = place.add_paragraph(style=self._style(name))
        if self.turning:
            paragraph.paragraph_format.page_break_before, self.turning = True, False
        if self.held is not None:
            self.held.append(paragraph)
        return paragraph

    def _style(self, name: str) -> Any:
        if name not in self.styles:
            known = self.word.styles
            made = known[HEADINGS[name]] if name in HEADINGS else known.add_style(f"foldmath {name}", 1)
            _dress(made, self.sheet.text[name])
            self.styles[name] = made
        return self.styles[name]

    def saved(self) -> bytes:
        """Give the file, its parts dated alike."""
        stream = BytesIO()
        self.word.save(stream)
        packed = BytesIO()
        with ZipFile(stream) as parts, ZipFile(packed, "w", ZIP_DEFLATED) as archive:
            for name in parts.namelist():
                dated = ZipInfo(name, BEGINNING.timetuple()[:6])
                dated.compress_type = ZIP_DEFLATED
                archive.writestr(dated, parts.read(name))
        return packed.getvalue()


def _dress(style: Any, text: TextStyle) -> None:
    """Give a paragraph style the size, weight and spaces that the printed pages have."""
    style.font.name, style.font.size, style.font.bold = FONT, Pt(text.size), text.bold
    style.font.color.rgb = RGBColor(0, 0, 0)
    fonts = style.element.get_or_add_rPr().get_or_add_rFonts()
    for name in ("asciiTheme", "hAnsiTheme", "eastAsiaTheme", "cstheme"):
        fonts.attrib.pop(qn(f"w:{name}"), None)
    shape = style.paragraph_format
    shape.space_before, shape.space_after = Mm(text.before_mm), Mm(text.after_mm)
    shape.line_spacing, shape.keep_with_next = text.leading, text.holds_next
    if text.centred:
        shape.alignment = WD_ALIGN_PARAGRAPH.CENTER


def _hold(paragraphs: Iterable[WordParagraph]) -> None:
    """Keep paragraphs on the page of what follows them."""
    for paragraph in paragraphs:
        paragraph.paragraph_format.keep_with_next = True


def _rule(paragraph: WordParagraph) -> None:
    """Draw a line under a paragraph, and between it and one that has the same."""
    line = 'w:val="single" w:sz="4" w:space="0" w:color="000000"'
    borders = f"<w:pBdr {nsdecls('w')}><w:bottom {line}/><w:between {line}/></w:pBdr>"
    paragraph._p.get_or_add_pPr().append(parse_xml(borders))


def _drop_first(cell: WordCell) -> None:
    """Take out the empty paragraph that a new cell begins with, where others follow it."""
    first, *others = cell._tc.inner_content_elements
    # A cell must end with a paragraph, and one stands there after a table too.
    if others and others[-1].tag == qn("w:p"):
        cell._tc.remove(first)


def _set_page(word: WordDocument, master: PageMaster, language: str, foot_pt: float) -> None:
    """Set the size of the page, its margins, and its foot: title, page of pages, code."""
    section, shape = word.sections[0], master.shape
    section.page_width, section.page_height = Mm(shape.width_mm), Mm(shape.height_mm)
    section.left_margin = section.right_margin = Mm((shape.width_mm - shape.usable_width_mm) / 2)
    section.top_margin = section.bottom_margin = Mm((shape.height_mm - shape.usable_height_mm) / 2)
    section.footer_distance = Mm((shape.height_mm - shape.usable_height_mm) / 4)
    foot = section.footer.paragraphs[0]
    foot.style.font.name, foot.style.font.size = FONT, Pt(foot_pt)
    tabs = foot.paragraph_format.tab_stops
    tabs.add_tab_stop(Mm(shape.usable_width_mm / 2), WD_TAB_ALIGNMENT.CENTER)
    tabs.add_tab_stop(Mm(shape.usable_width_mm), WD_TAB_ALIGNMENT.RIGHT)
    foot.add_run(f"{master.footer}\t")
    fields = {"page": "PAGE", "pages": "NUMPAGES"}
    for words, name, _, _ in Formatter().parse(say(master.page_words, language)):
        foot.add_run(words)
        if name:
            field = (
                f'<w:fldSimple {nsdecls("w")} w:instr="{fields[name]}"><w:r><w:t>1</w:t></w:r></w:fldSimple>'
            )
            foot._p.append(parse_xml(field))
    foot.add_run(f"\t{master.code}")


def _set_language(word: WordDocument, language: str, title: str) -> None:
    """Name the language of all words, for those who hear them, and what the file is."""
    tag = f'<w:lang {nsdecls("w")} w:val="{language}"/>'
    defaults = word.styles.element.find(f".//{qn('w:rPrDefault')}/{qn('w:rPr')}")
    for old in defaults.findall(qn("w:lang")):
        defaults.remove(old)
    defaults.append(parse_xml(tag))
    about = word.core_properties
    about.title, about.language, about.author, about.comments = title, language, "foldmath", ""
    about.created = about.modified = BEGINNING
