"""Printed pages as other programs see them: pdfplumber (github.com/jsvine/pdfplumber) for places and fonts,
PDFium (pdfium.googlesource.com) for the words that a reader copies and for the pixels, sympy for answers.

Sizes on paper are [common practice, no source] unless one is named beside the test.
"""

import re
from itertools import combinations
from statistics import mean

import pdfplumber
import pytest
from page_reading import (
    MM,
    apart,
    boxes_of,
    foot_words,
    fractions_in,
    grey_page,
    models_of,
    pages_of,
    place_of,
    text_of,
    text_within,
    usable_area,
    within,
)
from pdfminer.pdftypes import PDFStream, resolve1
from sympy import Rational

from foldmath.documents.worksheet import worksheet

HAIR_PT = 0.6
"""Half a line's width, and a little."""

PAPER_PT = {"letter": (612, 792), "A4": (595.28, 841.89)}
"""Letter is 8.5 × 11 in (ASME Y14.1); A4 is 210 × 297 mm (ISO 216:2007)."""


@pytest.fixture(params=["worksheet", "key"])
def file(request, pages):
    """Give the worksheet, and then its key."""
    return getattr(pages, request.param)


def marks_of(page):
    return [*page["words"], *page["rects"], *page["lines"], *page["curves"]]


def number(text):
    whole, _, rest = text.rpartition(" ")
    return Rational(whole or 0) + Rational(rest)


# Where things stand.


def test_pages_have_the_size_that_was_asked_for(pages, file):
    for page in pages_of(file):
        assert (page["width"], page["height"]) == pytest.approx(PAPER_PT[pages.paper], abs=0.02)


def test_nothing_stands_outside_the_usable_area_but_the_foot(file):
    for page in pages_of(file):
        area, foot = usable_area(page), foot_words(page)
        for mark in marks_of(page):
            assert mark in foot or within(place_of(mark), area, HAIR_PT), (mark, area)


def test_the_foot_stays_where_printers_can_print(file):
    """Printers leave 1/4 in white [common practice, no source]."""
    for page in pages_of(file):
        for word in foot_words(page):
            assert 18 < word["x0"] < word["x1"] < page["width"] - 18
            assert word["bottom"] < page["height"] - 18


def test_no_words_lie_on_other_words(file):
    for page in pages_of(file):
        places = sorted(place_of(word) for word in page["words"])
        for one, other in combinations(places, 2):
            assert apart(one, other, 0.5), (one, other)


def test_no_word_crosses_the_edge_of_a_box_or_a_cell(file):
    for page in pages_of(file):
        edges = [place_of(rect) for rect in page["rects"] if rect["stroke"]]
        for word in page["words"]:
            place = place_of(word)
            for edge in edges:
                assert within(place, edge, HAIR_PT) or apart(place, edge, HAIR_PT), (word["text"], edge)


def test_boxes_to_write_in_do_not_touch_one_another(file):
    for page in pages_of(file):
        for one, other in combinations(map(place_of, boxes_of(page)), 2):
            assert apart(one, other)


# The worksheet and its key.


def test_the_key_begins_with_the_worksheets_own_pages(pages):
    sheet, key = pages_of(pages.worksheet), pages_of(pages.key)
    assert len(key) > len(sheet) >= 2
    for ours, theirs in zip(sheet, key, strict=False):
        boxes, filled = boxes_of(ours), boxes_of(theirs)
        assert [place_of(box) for box in boxes] == [place_of(box) for box in filled]
        assert [place_of(model) for model in models_of(ours)] == [
            place_of(model) for model in models_of(theirs)
        ]
        words = [(word["text"], place_of(word)) for word in ours["words"] if word not in foot_words(ours)]
        answered = [(word["text"], place_of(word)) for word in theirs["words"]]
        assert set(words) <= set(answered)


def test_every_box_of_the_worksheet_is_empty(pages):
    for index, page in enumerate(pages_of(pages.worksheet)):
        boxes = boxes_of(page)
        assert boxes or index
        assert "".join(text_within(pages.worksheet, index, boxes)).strip() == ""


def test_every_box_of_the_key_holds_its_answer(pages):
    empty = total = 0
    for index in range(len(pages_of(pages.worksheet))):
        boxes = boxes_of(pages_of(pages.key)[index])
        answers = [text.strip() for text in text_within(pages.key, index, boxes)]
        empty += answers.count("")
        total += len(answers)
        assert all(re.fullmatch(r"\d*|✓", answer) for answer in answers)
    # Only "true", beside a claim that is false, stays empty.
    assert empty == (1 if worksheet(pages.made.proved).slip else 0)
    assert total > 20


def test_no_page_of_products_gives_an_answer_away(pages):
    products = " ".join(text_of(pages.worksheet)).partition("Shade and multiply")[2]
    answers = " ".join(text_of(pages.key)).partition("what the answers say")[2]
    for item in pages.made.proved.lesson.practice:
        assert item.product.unreduced.text not in fractions_in(products)
        assert item.product.unreduced.text in fractions_in(answers)


def test_only_the_key_says_that_it_is_one(pages):
    assert "Answer key" not in " ".join(text_of(pages.worksheet))
    assert "Answer key" in text_of(pages.key)[0]


# What the key says.

ANSWER = re.compile(
    r"(?P<first>[\d/ ]+) × (?P<second>[\d/ ]+) = (?P<answer>\d+/\d+|\d+) "
    r"(?:This is in lowest terms|In lowest terms (?P<lowest>[\d/]+) ?)\. ?Accept also (?P<more>[\d/ ,]+)\."
)


def test_every_answer_of_the_key_is_the_product_as_sympy_multiplies_it(pages):
    text = " ".join(text_of(pages.key))
    found = list(ANSWER.finditer(text))
    assert len(found) == len(pages.made.proved.lesson.practice)
    for item in found:
        product = number(item["first"].strip()) * number(item["second"].strip())
        told = [item["answer"], item["lowest"] or item["answer"], *item["more"].split(",")]
        assert {number(form.strip()) for form in told} == {product}
        assert str(product) == (item["lowest"] or item["answer"])


def test_the_key_names_three_likely_wrong_answers_to_each_product(pages):
    items = worksheet(pages.made.proved).items
    text = " ".join(text_of(pages.key))
    for item in items:
        assert len(item.wrong) == 3
        for wrong in item.wrong:
            assert wrong.answer.text in text


# Words and fonts.


def test_a_stacked_fraction_is_copied_as_one_with_a_slash(pages):
    """ActualText: ISO 32000-1:2008, 14.9.4."""
    for item in pages.made.proved.lesson.practice:
        for text in (" ".join(text_of(pages.worksheet)), " ".join(text_of(pages.key))):
            assert item.product.first.text in fractions_in(text)
            assert item.product.second.text in fractions_in(text)
    assert "1/4 × 1/2 and 1/2 × 1/4 alike" in " ".join(text_of(pages.key))


def test_every_letter_is_set_in_an_embedded_font(file):
    with pdfplumber.open(file) as document:
        fonts = {char["fontname"] for page in pages_of(file) for char in page["chars"]}
        embedded = set()
        for xref in document.doc.xrefs:
            for objid in xref.get_objids():
                thing = document.doc.getobj(objid)
                if isinstance(thing, dict) and "FontFile2" in thing:
                    assert isinstance(resolve1(thing["FontFile2"]), PDFStream)
                    embedded.add(thing["FontName"].name)
        assert fonts <= embedded
        assert {name.partition("+")[2] for name in fonts} == {"DejaVuSans", "DejaVuSans-Bold"}


def test_no_page_holds_a_raster_image(file):
    with pdfplumber.open(file) as document:
        for xref in document.doc.xrefs:
            for objid in xref.get_objids():
                thing = document.doc.getobj(objid)
                kind = thing.attrs.get("Subtype") if isinstance(thing, PDFStream) else None
                assert kind is None or kind.name != "Image"
    assert all(page["images"] == [] for page in pages_of(file))


def test_title_and_language_are_set(pages, file):
    lesson = pages.made.proved.lesson
    with pdfplumber.open(file) as document:
        assert document.metadata["Title"] == lesson.title
        assert resolve1(document.doc.catalog["Lang"]).decode() == lesson.language


def test_what_pupils_read_is_12_point_but_for_table_heads_and_legends(pages):
    """Clear print is 12 pt or more: UKAAF G003 (2019)."""
    small_print = {"Before", "the", "fold", "I", "predict", "count", "What", "shows"}
    small_print |= {"valley", "fold:", "over", "top", "mountain", "behind", "old", "crease"}
    for page in pages_of(pages.worksheet):
        foot = foot_words(page)
        small = {word["text"] for word in page["words"] if word["size"] < 11.99 and word not in foot}
        assert small <= small_print
        assert all(word["size"] >= 9 for word in page["words"])


# The foot of the page.


def test_every_page_is_numbered_and_named_and_carries_the_code(pages, file):
    lesson = pages.made.proved.lesson
    texts = text_of(file)
    for count, text in enumerate(texts, start=1):
        end = rf"{lesson.title} page {count} of {len(texts)} [A-Z0-9]{{5}}$"
        assert re.search(end, text)


def code_of(path):
    return {text.split()[-1] for text in text_of(path)}


def test_a_worksheet_and_its_key_share_a_code_that_no_other_lesson_has(all_pages):
    codes = {name_paper: code_of(made.worksheet) for name_paper, made in all_pages.items()}
    for name_paper, made in all_pages.items():
        assert len(codes[name_paper]) == 1
        assert code_of(made.key) == codes[name_paper]
    assert len(set.union(*(codes[name, "letter"] for name, paper in codes if paper == "letter"))) == 3


# The models.


def models(pages, path):
    """Give every model's page, outline and product, in the order of the items."""
    items = iter([item.shown for item in worksheet(pages.made.proved).items if item.shown])
    count = len(pages_of(pages.worksheet))
    for index, page in enumerate(pages_of(path)[:count]):
        for outline in sorted(models_of(page), key=lambda rect: rect["top"]):
            yield index, outline, next(items)


def test_every_cell_of_a_model_is_at_least_8_mm_each_way(pages):
    seen = 0
    for _, outline, shown in models(pages, pages.worksheet):
        assert outline["width"] / MM / shown.columns >= 8 - 0.05
        assert outline["height"] / MM / shown.rows >= 8 - 0.05
        seen += 1
    assert seen == len(pages.made.proved.lesson.practice)


def ink_in_cells(path, index, outline, shown, dpi=150):
    """Give the share of dark pixels inside each cell, by column and row counted from the bottom left."""
    dark = grey_page(path, index, dpi) < 128
    scale = dpi / 72
    left, top = outline["x0"] * scale, outline["top"] * scale
    across, down = outline["width"] * scale / shown.columns, outline["height"] * scale / shown.rows
    shares = {}
    for column in range(shown.columns):
        for row in range(shown.rows):
            x, y = left + column * across, top + (shown.rows - 1 - row) * down
            cell = dark[round(y + 0.12 * down) : round(y + 0.88 * down)]
            shares[column, row] = cell[:, round(x + 0.12 * across) : round(x + 0.88 * across)].mean()
    # The star and its white ground stand in the corner cell.
    del shares[0, 0]
    return shares


def test_on_a_black_and_white_copier_hatches_stay_and_cross_where_the_product_is(pages):
    """Every pixel becomes black or white, at 150 dots an inch, as on a poor copier."""
    for index, outline, shown in models(pages, pages.key):
        shares = ink_in_cells(pages.key, index, outline, shown)
        once = [shares[x, y] for x, y in shares if y < shown.up and x >= shown.across]
        twice = [shares[x, y] for x, y in shares if y < shown.up and x < shown.across]
        never = [shares[x, y] for x, y in shares if y >= shown.up]
        assert set(never) <= {0.0}
        assert all(0.02 < share < 0.3 for share in once)
        assert all(0.05 < share < 0.5 for share in twice)
        if once and twice:
            assert min(twice) > max(once)
            assert mean(twice) > 1.25 * mean(once)


def test_on_the_worksheet_every_model_is_blank(pages):
    for index, outline, shown in models(pages, pages.worksheet):
        shares = ink_in_cells(pages.worksheet, index, outline, shown)
        inner = [shares[x, y] for x, y in shares if 0 < x < shown.columns - 1 and 0 < y < shown.rows - 1]
        assert set(inner) <= {0.0}
