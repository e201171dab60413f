"""Pages on a poor copier: every pixel becomes black or white, at 150 dots an inch, and all is still read.

PDFium (pdfium.googlesource.com) gives the pixels, pdfplumber (github.com/jsvine/pdfplumber) the places, and
FreeType by way of Pillow (pillow.readthedocs.io) the shapes of letters.
Sizes are [common practice, no source].
"""

from collections import Counter
from functools import cache
from io import BytesIO
from itertools import product
from math import ceil, floor
from statistics import mean

import numpy
import pytest
from conftest import FILES, NAMES
from page_reading import MM, grey_page, models_of, pages_of, place_of
from PIL import Image, ImageDraw, ImageFont

from foldmath.drawing.rendering.fonts import font_file
from foldmath.statements.items import Level, ShadeItem
from foldmath.typeface.cutting import WEIGHTS, cut_font


@pytest.fixture(
    params=[(lesson, file) for lesson in NAMES for file in FILES if "worksheet" not in file], ids="-".join
)
def file(request, all_pages):
    """Give a file of each sort on letter; a key has all that its worksheet has, and more."""
    lesson, file = request.param
    return all_pages[lesson, "letter"].folder / file


DPI = 150
DARK = 128


def solved(leveled):
    """Give the example that is shown solved before the products to shade; None without."""
    return leveled.sheet.example if leveled.sheet.example and leveled.sheet.example.picture else None


def outlines(leveled, path):
    """Give the page and the outline of every sheet that is drawn, in order: an example comes first."""
    count = len(pages_of(leveled.worksheet))
    return [
        (index, outline)
        for index, page in enumerate(pages_of(path)[:count])
        for outline in sorted(models_of(page), key=lambda rect: rect["top"])
    ]


def models(leveled, path):
    """Give every product's page, outline and cells, in the order of the items; each has one sheet here."""
    pictured = [placed.item for placed in leveled.sheet.items if placed.picture]
    to_shade = outlines(leveled, path)[1 if solved(leveled) else 0 :]
    for item, (index, outline) in zip(pictured, to_shade, strict=True):
        if isinstance(item, ShadeItem):
            (cells,) = item.sheets.sheets
            yield index, outline, cells


def test_every_cell_of_a_model_is_at_least_8_mm_each_way(leveled):
    seen = 0
    for _, outline, cells in models(leveled, leveled.worksheet):
        assert outline["width"] / MM / cells.columns >= 8 - 0.05
        assert outline["height"] / MM / cells.rows >= 8 - 0.05
        seen += 1
    assert seen >= len(leveled.pages.made.proved.lesson.practice)


def copied(path, index):
    """Give a page as the copier gives it: True where it is black."""
    return grey_page(path, index, DPI) < DARK


def ink_in_cells(path, index, outline, cells):
    """Give the share of dark pixels inside each cell, by column and row counted from the bottom left."""
    dark = copied(path, index)
    scale = DPI / 72
    left, top = outline["x0"] * scale, outline["top"] * scale
    across, down = outline["width"] * scale / cells.columns, outline["height"] * scale / cells.rows
    shares = {}
    for column in range(cells.columns):
        for row in range(cells.rows):
            x, y = left + column * across, top + (cells.rows - 1 - row) * down
            cell = dark[round(y + 0.12 * down) : round(y + 0.88 * down)]
            shares[column, row] = cell[:, round(x + 0.12 * across) : round(x + 0.88 * across)].mean()
    # The star and its white ground stand in the corner cell.
    del shares[0, 0]
    return shares


def assert_hatched(path, index, outline, cells):
    shares = ink_in_cells(path, index, outline, cells)
    once = [shares[x, y] for x, y in shares if y < cells.up and x >= cells.across]
    twice = [shares[x, y] for x, y in shares if y < cells.up and x < cells.across]
    never = [shares[x, y] for x, y in shares if y >= cells.up]
    assert set(never) <= {0.0}
    assert all(0.02 < share < 0.3 for share in once)
    assert all(0.05 < share < 0.5 for share in twice)
    if once and twice:
        assert min(twice) > max(once)
        assert mean(twice) > 1.25 * mean(once)


def test_on_a_black_and_white_copier_hatches_stay_and_cross_where_the_product_is(leveled):
    for index, outline, cells in models(leveled, leveled.key):
        assert_hatched(leveled.key, index, outline, cells)


def test_on_the_worksheet_every_model_is_blank_and_the_example_is_hatched(leveled):
    for index, outline, cells in models(leveled, leveled.worksheet):
        assert set(ink_in_cells(leveled.worksheet, index, outline, cells).values()) == {0.0}
    example = solved(leveled)
    assert bool(example) == (leveled.level is Level.GUIDED)
    if example:
        (cells,) = example.item.sheets.sheets
        assert_hatched(leveled.worksheet, *outlines(leveled, leveled.worksheet)[0], cells)


def ink_across_lines(path, index, outline, cells, depth_mm):
    """Look for the lines between columns, at a depth below the top; give a list of whether each is there."""
    dark = copied(path, index)
    y = round((outline["top"] + depth_mm * MM) * DPI / 72)
    lines = (outline["x0"] + outline["width"] * line / cells.columns for line in range(1, cells.columns))
    return [bool(dark[y, round(x * DPI / 72) - 2 : round(x * DPI / 72) + 3].any()) for x in lines]


def test_models_have_lines_at_guided_ticks_at_core_and_nothing_at_stretch(leveled):
    """Common practice, no source; each is still there when every pixel is black or white."""
    expected = {Level.GUIDED: (True, True), Level.CORE: (True, False), Level.STRETCH: (False, False)}
    for index, outline, cells in models(leveled, leveled.worksheet):
        depths_mm = (1.5, outline["height"] / MM / cells.rows / 2)
        for depth, there in zip(depths_mm, expected[leveled.level], strict=True):
            found = ink_across_lines(leveled.worksheet, index, outline, cells, depth)
            assert set(found) == {there}


FINE_DPI = 300


def whole_lines(places):
    """Join pieces that go on in one level line, as a dashed crease does from panel to panel."""
    whole = []
    for place in sorted(places, key=lambda place: (round(place[1], 1), place[0])):
        left, top, right, bottom = place
        if whole and top == bottom and whole[-1][1::2] == (top, bottom) and whole[-1][2] == left:
            whole[-1] = (whole[-1][0], top, right, bottom)
        else:
            whole.append(place)
    return whole


def shares_of_ink(dark, dpi, page):
    """Give how much of each level or upright line is black, be it dashed or partly covered."""
    places = [place_of(line) for line in page["lines"]]
    for left, top, right, bottom in (place_of(rect) for rect in page["rects"] if rect["stroke"]):
        places += [(left, top, right, top), (left, bottom, right, bottom)]
        places += [(left, top, left, bottom), (right, top, right, bottom)]
    for place in whole_lines(places):
        left, top, right, bottom = (round(side * dpi / 72) for side in place)
        wide, high = place[2] - place[0], place[3] - place[1]
        near = round(dpi / 72)
        along = dark[max(top - near, 0) : bottom + near + 1, max(left - near, 0) : right + near + 1]
        if min(wide, high) < 1 < 4 < max(wide, high):
            yield along.any(axis=int(high > wide)).mean()


@pytest.mark.sweep("seed-trays-answer-key-guided.pdf", "tile-panels-teacher-plan.pdf")
def test_on_a_black_and_white_copier_every_line_stays(file):
    """Bars of fractions, creases, ticks and writing lines are as black as in print as fine as can be."""
    for index, page in enumerate(pages_of(file)):
        fine = grey_page(file, index, FINE_DPI) < DARK
        pairs = zip(
            shares_of_ink(fine, FINE_DPI, page), shares_of_ink(copied(file, index), DPI, page), strict=True
        )
        for before, after in pairs:
            assert after >= 0.6 * before


# Letters, read back by their shapes alone.

ALIKE = ("Il|", ",’'‘", '“”"', "-−–—", "·.•", "oO0", "xX×", "vV", "zZ", "sS", "cC", "wW", "uU", "pP", "kK")
"""Signs that are told apart by their place or their size on a line, more than by their shape."""

SHAPE = 40
"""A letter of 18 points is no higher, in pixels."""

FINENESS = 8
"""Letters are drawn so many times larger, and then made coarse, as a page is that starts anywhere."""

PHASES = (0, 4)
DESCENT = 0.25
"""Of the em, in Lexend: (from the font's own table) how far a sign's box reaches below its line."""

NOT_READ = {" ", "\u00a0", "…", "✓"}
SMALLEST_PT, LARGEST_PT = 8.5, 18
"""The notice of a standard's owners is smaller, and nobody's lesson hangs on it; titles are larger."""

SEEN = 2
"""So many of each sign, in each size and face, are read on a file."""


def cut_out(dark):
    """Give the ink alone, on a ground of its own; None where there is none, or far too much."""
    rows, columns = numpy.flatnonzero(dark.any(axis=1)), numpy.flatnonzero(dark.any(axis=0))
    if not rows.size:
        return None
    ink = dark[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]
    if max(ink.shape) > SHAPE:
        return None
    shape = numpy.zeros((SHAPE, SHAPE), dtype=bool)
    shape[: ink.shape[0], : ink.shape[1]] = ink
    return shape


@cache
def shapes(sign, face, size):
    """Draw a sign as a copier would give it at a size in points, wherever on the page it starts."""
    file = BytesIO(cut_font(face)) if face in WEIGHTS else font_file(face)
    font = ImageFont.truetype(file, size * DPI / 72 * FINENESS)
    drawn = []
    for x, y in product(PHASES, PHASES):
        picture = Image.new("L", (2 * SHAPE * FINENESS,) * 2, 255)
        ImageDraw.Draw(picture).text((4 * FINENESS + x, 4 * FINENESS + y), sign, font=font, fill=0)
        coarse = numpy.asarray(picture).reshape(2 * SHAPE, FINENESS, 2 * SHAPE, FINENESS).mean(axis=(1, 3))
        shape = cut_out(coarse < DARK)
        assert shape is not None
        drawn.append(shape)
    return numpy.array(drawn)


def read_back(shape, signs, face, size):
    """Give the sign whose shape differs least."""
    differences = {sign: (shapes(sign, face, size) != shape).sum(axis=(1, 2)).min() for sign in signs}
    return min(differences, key=differences.__getitem__)


def place_of_sign(char):
    """Give the pixels of a sign alone: none of its neighbours', nor of the bar under a numerator."""
    left, top, right, bottom = (side * DPI / 72 for side in place_of(char))
    if char["text"].isdigit():
        bottom -= DESCENT * char["size"] * DPI / 72 - 1.5
        top += 1
    return slice(floor(top) - 1, ceil(bottom)), slice(ceil(left - 0.3), floor(right + 0.3))


def same(one, other):
    return one == other or any(one in signs and other in signs for signs in ALIKE)


def signs_read(path):
    """Give signs of a file with what each is read as; two of each, in every size and face."""
    pages = pages_of(path)
    signs = sorted({char["text"] for page in pages for char in page["chars"]} - NOT_READ)
    seen = Counter()
    for index, page in enumerate(pages):
        dark = copied(path, index)
        for char in page["chars"]:
            kind = char["text"], char["fontname"], round(char["size"], 2)
            seen[kind] += 1
            if char["text"] in signs and seen[kind] <= SEEN and SMALLEST_PT <= char["size"] <= LARGEST_PT:
                shape = cut_out(dark[place_of_sign(char)])
                face = char["fontname"].partition("+")[2]
                yield char["text"], "" if shape is None else read_back(shape, signs, face, kind[2])


@pytest.mark.sweep("seed-trays-exit-ticket.pdf")
@pytest.mark.parametrize(
    ("lesson", "file"),
    [
        ("sail-cloth", "answer-key.pdf"),
        ("seed-trays", "worksheet-guided.pdf"),
        ("seed-trays", "exit-ticket.pdf"),
        ("tile-panels", "teacher-plan.pdf"),
    ],
)
def test_on_a_black_and_white_copier_words_are_read_back_and_every_figure_is(lesson, file, all_pages):
    """A letter that leans on its neighbour may be misread here, where shapes are all there is to go by."""
    found = list(signs_read(all_pages[lesson, "letter"].folder / file))
    misread = [(sign, read) for sign, read in found if not same(sign, read)]
    assert len(found) > 60
    assert [pair for pair in misread if not pair[0].isalpha()] == []
    assert len(misread) <= len(found) / 20, misread
