"""Printed pages as other programs see them: pdfplumber (github.com/jsvine/pdfplumber) for places and fonts,
PDFium (pdfium.googlesource.com) for the words that a reader copies.

Sizes on paper are [common practice, no source] unless one is named beside the test.
"""

import re
from itertools import combinations

import pdfplumber
import pytest
from conftest import FILES
from page_reading import (
    apart,
    boxes_of,
    foot_words,
    fractions_in,
    ink_of,
    pages_of,
    place_of,
    text_of,
    usable_area,
    within,
)
from pdfminer.pdftypes import PDFStream, resolve1

from foldmath.statements.items import Level

HAIR_PT = 0.6
"""Half a line's width, and a little."""

FACES = {"Lexend", "Lexend-Bold", "DejaVuSans", "DejaVuSans-Bold"}

PAPER_PT = {"letter": (612, 792), "A4": (595.28, 841.89)}
"""Letter is 8.5 × 11 in (ASME Y14.1); A4 is 210 × 297 mm (ISO 216:2007)."""


@pytest.fixture(params=FILES)
def file(request, pages):
    """Give every file that is printed, in turn."""
    return pages.folder / request.param


def marks_of(page):
    return [*page["words"], *page["rects"], *page["lines"], *page["curves"]]


# Where things stand.


def test_pages_have_the_size_that_was_asked_for(pages, file):
    for page in pages_of(file):
        assert (page["width"], page["height"]) == pytest.approx(PAPER_PT[pages.paper], abs=0.02)


def test_nothing_stands_outside_the_usable_area_but_the_foot(file):
    for page in pages_of(file):
        area, foot = usable_area(page), foot_words(page)
        for mark in marks_of(page):
            assert mark in foot or within(ink_of(mark), area, HAIR_PT), (mark, area)


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


# Words and fonts.


def test_a_stacked_fraction_is_copied_as_one_with_a_slash(leveled):
    """ActualText: ISO 32000-1:2008, 14.9.4."""
    for item in leveled.pages.made.proved.lesson.practice:
        for text in (" ".join(text_of(leveled.worksheet)), " ".join(text_of(leveled.key))):
            assert item.product.first.text in fractions_in(text)
            assert item.product.second.text in fractions_in(text)


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
        # What the typeface lacks, such as a check mark, is set in another.
        assert {"Lexend", "Lexend-Bold"} <= {name.partition("+")[2] for name in fonts} <= FACES


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
        assert document.metadata["Title"].startswith(lesson.title)
        assert resolve1(document.doc.catalog["Lang"]).decode() == lesson.language


def test_what_pupils_read_is_12_point_but_for_table_heads_legends_and_fractions_among_words(leveled):
    """Clear print is 12 pt or more: UKAAF G003 (2019)."""
    small_print = {"Before", "the", "fold", "Panels:", "I", "predict", "count", "What", "shows"}
    small_print |= {"valley", "fold:", "over", "top", "mountain", "behind", "old", "crease"}
    small_print |= {"how", "many", "panels", "size", "of", "one", "panel"}
    for page in (*pages_of(leveled.worksheet), *pages_of(leveled.pages.ticket)):
        foot = foot_words(page)
        small = {word["text"] for word in page["words"] if word["size"] < 11.99 and word not in foot}
        # Figures of a fraction in a line of words stand one above the other in the height of the line.
        small = {text for text in small if not text.isdigit()}
        assert small <= small_print
        assert all(word["size"] >= 9 for word in page["words"])


# The foot of the page.


def test_every_page_is_numbered_and_named_and_carries_the_code(pages, file):
    lesson = pages.made.proved.lesson
    texts = text_of(file)
    for count, text in enumerate(texts, start=1):
        end = rf"{lesson.title} page {count} of {len(texts)} [A-Z0-9]{{6}}$"
        assert re.search(end, text)


def code_of(path):
    return {text.split()[-1] for text in text_of(path)}


def test_a_worksheet_and_its_key_share_a_code_that_no_other_has(all_pages):
    codes = {}
    for (name, paper), made in all_pages.items():
        for level in Level:
            (code,) = code_of(made.at(level).worksheet)
            assert code_of(made.at(level).key) == {code}
            codes[name, paper, level] = code
        assert code_of(made.ticket) == code_of(made.plan) == {codes[name, paper, Level.CORE]}
    on_letter = [code for (_, paper, _), code in codes.items() if paper == "letter"]
    assert len(set(on_letter)) == len(on_letter) == 9


def test_the_level_shows_in_the_last_sign_of_the_code_only(pages):
    (guided,), (core,), (stretch,) = (code_of(pages.at(level).worksheet) for level in Level)
    assert guided[:-1] == core[:-1] == stretch[:-1]
    assert len({guided[-1], core[-1], stretch[-1]}) == 3
    for level in Level:
        assert not re.search(r"(?i)guided|core|stretch", " ".join(text_of(pages.at(level).worksheet)))
