"""Drawings at exact scale: what is painted is where it is said to be, in mm, among words or alone."""

from io import BytesIO

import pdfplumber
import pytest

from foldmath.drawing.look import PENS
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.pages.markup.blocks import Text
from foldmath.pages.page_shapes import on_its_side, upright
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.clusters import clusters_of
from foldmath.pages.pdf.exact import ExactDrawing, ExactPage, Placed, Rectangle, Words
from foldmath.pages.pdf.flowables import Running
from foldmath.pages.pdf.inline import Setting
from foldmath.pages.pdf.paginating import Copy, PageMaster, filled_pages
from foldmath.pages.pdf.styles import points, style_sheet

MM = 72 / 25.4
LINE = Stroke((Spot(1.0, 2.0), Spot(91.0, 2.0)), Meaning.MOUNTAIN)


def read(*documents):
    with pdfplumber.open(BytesIO(written(documents, "A drawing", "en-US"))) as opened:
        return list(opened.pages)


def lines_of(page):
    return [tuple((x / MM, (float(page.height) - y) / MM) for x, y in line["pts"]) for line in page.lines]


def test_a_drawing_among_words_keeps_its_scale_and_its_pen():
    drawing = ExactDrawing(92.0, 4.0, [LINE])
    shape = upright("A4")
    (page,) = read(filled_pages(Copy([drawing], PageMaster(shape, "", "", ""))))
    left = (shape.width_mm - shape.usable_width_mm) / 2
    foot = (shape.height_mm + shape.usable_height_mm) / 2 - 4.0
    ((start, end),) = lines_of(page)
    assert start == pytest.approx((left + 1, foot + 2), abs=0.001)
    assert end == pytest.approx((left + 91, foot + 2), abs=0.001)
    assert page.lines[0]["linewidth"] / MM == pytest.approx(PENS[Meaning.MOUNTAIN].width_mm, abs=0.001)


def test_words_after_a_drawing_are_black_and_their_lines_unbroken():
    sheet = style_sheet("guides")
    style = sheet.text["guide"]
    setting = Setting(style=style, bold=False, answers=False, sheet=sheet, language="en-US")
    words = Running(clusters_of((Text("seeds"),), setting), style)
    words.wrap(points(40), 0)
    page = ExactPage(100.0, 50.0, Rectangle(0.0, 0.0, 100.0, 50.0), (LINE, Placed(words, Spot(5.0, 30.0))))
    (read_page,) = read([page])
    assert {char["non_stroking_color"] for char in read_page.chars} <= {(0,), 0, (0.0,)}
    assert min(char["x0"] for char in read_page.chars) / MM == pytest.approx(5.0, abs=0.5)


def test_what_stands_at_the_foot_of_every_page_takes_its_room():
    foot = ExactDrawing(92.0, 30.0, [LINE])
    blocks = [ExactDrawing(10.0, 60.0, []) for _ in range(4)]
    master = PageMaster(upright("letter"), "", "", "")
    assert len(filled_pages(Copy(blocks, master))) == 1
    pages = read(filled_pages(Copy(blocks, master, foot)))
    assert len(pages) == 2
    assert [lines_of(page) for page in pages] == [lines_of(pages[0])] * 2


def test_a_page_on_its_side_is_filled_from_margin_to_margin():
    shape = on_its_side("letter", 8.0)
    assert (shape.width_mm, shape.height_mm) == pytest.approx((279.4, 215.9))
    assert shape.usable_width_mm == pytest.approx(279.4 - 16)


def test_words_are_as_wide_as_they_are_told_to_be():
    words = Words(at=Spot(10.0, 10.0), text="start", size_pt=12.0, bold=True)
    (page,) = read([ExactPage(100.0, 50.0, Rectangle(0.0, 0.0, 100.0, 50.0), (words,))])
    assert max(char["x1"] for char in page.chars) / MM - 10.0 == pytest.approx(words.width_mm, abs=0.01)


def test_a_line_that_bends_has_no_exact_drawing():
    bent = Stroke((Spot(0, 0), Spot(5, 5), Spot(10, 0)), Meaning.ARROW, bends=True)
    with pytest.raises(ValueError, match="straight"):
        read([ExactPage(20.0, 20.0, Rectangle(0.0, 0.0, 20.0, 20.0), (bent,))])
