"""Guide sheets read back from the printed page, with pdfplumber and with PDFium.

Sizes on paper are [common practice, no source] unless one is named beside the test.
"""

import re
from dataclasses import replace
from functools import cache
from itertools import combinations

import pytest
from guide_reading import (
    BOOKLET,
    FULL_SIZE,
    MEASURED,
    MM,
    READERS,
    TIGHT,
    document,
    fraction,
    lines_by_pdfplumber,
    printed_case,
    proved_case,
)
from lessons_in_words import EIGHTHS, proved
from page_reading import apart, place_of
from readability import common_words, long_sentences, texts_of, uncommon_words

from foldmath.drawing.scenes import Meaning
from foldmath.drawing.sheets.crease_patterns import KINDS
from foldmath.guides import guide_sheets
from foldmath.guides.marks.cuts import cuts
from foldmath.guides.marks.fold_lines import fold_lines
from foldmath.guides.reading.cover import sheet_said
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.page_fit import fit
from foldmath.pages.templating import render
from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge, Gather
from foldmath.plane.numbers import exact

FOLDS = (Meaning.VALLEY, Meaning.MOUNTAIN, Meaning.CUT)
RIM_MM, CLEAR_MM = 6.0, 6.5
PLAIN, SLIT = 2, 7
"""The pages of the plain guide and of the cut."""

full_size = pytest.mark.parametrize("case", FULL_SIZE.values(), ids=FULL_SIZE)
every = pytest.mark.parametrize(
    "case", [*FULL_SIZE.values(), *MEASURED.values()], ids=[*FULL_SIZE, *MEASURED]
)
read = pytest.mark.parametrize("lines_of", READERS.values(), ids=READERS)


def on_page(case, point):
    """Give where a point of the sheet lies on the page, in mm: the sheet is in the middle of the page."""
    page, paper = document(printed_case(case))[PLAIN - 1], proved_case(case).lesson.sheet
    unit = fraction(MILLIMETRES[paper.unit])
    sides = [fraction(side) * unit for side in (paper.width, paper.height)]
    ends = [(page["width"] - float(sides[0])) / 2, (page["height"] - float(sides[1])) / 2]
    return tuple(end + float(fraction(along) * unit) for end, along in zip(ends, point, strict=True))


# The sheet on the page.


def test_a_sheet_of_the_printers_paper_is_the_page_and_a_smaller_one_lies_in_its_middle():
    assert fit(Sheet(exact(11), exact(17, 2), "in"), "letter").fills_page
    small = fit(Sheet(exact(210), exact(148), "mm"), "A4")
    assert (small.width, small.height) == (210, 297)
    assert (small.left, small.bottom) == (0, exact(149, 2))
    assert set(small.trimmed) == {Edge.TOP, Edge.BOTTOM}


def test_a_little_less_than_the_page_is_laid_at_its_corner_so_that_the_trim_line_prints():
    lies = fit(Sheet(exact(33, 4), exact(21, 2), "in"), "letter")
    assert (lies.left, lies.bottom) == (0, exact(127, 10) / 2)
    assert set(lies.trimmed) == {Edge.RIGHT, Edge.TOP, Edge.BOTTOM}


@pytest.mark.parametrize("sides", [(17, 11), (11, 14), (exact(42, 5), 11), (exact(17, 2), exact(54, 5))])
def test_a_sheet_whose_trim_line_would_lie_in_the_white_rim_is_not_laid_on_the_page(sides):
    assert fit(Sheet(*(side + exact(0) for side in sides), "in"), "letter") is None


@full_size
@read
def test_every_crease_is_printed_in_its_style_within_a_hundredth_of_a_millimetre(case, lines_of):
    drawn = lines_of(printed_case(case), PLAIN)
    moments = proved_case(case).moments
    folded = [moment for moment in moments if not isinstance(moment.step, Gather)]
    creases = folded[-1].after.creases
    for meaning in FOLDS:
        lines = [line for line in drawn if line.drawn_as(meaning)]
        own = [
            (on_page(case, crease.start), on_page(case, crease.end))
            for crease in creases
            if KINDS[crease.kind] is meaning
        ]
        for start, end in own:
            assert any(line.holds(start) and line.holds(end) for line in lines), (start, end)
        total = sum(((x - to_x) ** 2 + (y - to_y) ** 2) ** 0.5 for (x, y), (to_x, to_y) in own)
        assert sum(line.length for line in lines) == pytest.approx(total, abs=TIGHT)


@full_size
@read
def test_a_cut_is_a_heavy_line_with_a_bar_at_every_stop_and_its_folds_are_thin(case, lines_of):
    slits = cuts(proved_case(case))
    if not slits:
        assert len(document(printed_case(case))) < SLIT + (case.paper != case.page_paper)
        return
    lines = lines_of(printed_case(case), SLIT)
    heavy = [line for line in lines if line.drawn_as(Meaning.CUT)]
    for cut in slits:
        ends = [on_page(case, end) for end in (cut.start, cut.end)]
        assert any(all(map(line.holds, ends)) for line in heavy)
        for stop in (on_page(case, stop) for stop in cut.stops):
            assert any(line.holds(stop) and line.length == pytest.approx(10, abs=TIGHT) for line in heavy)
    assert not any(line.drawn_as(Meaning.VALLEY) or line.drawn_as(Meaning.MOUNTAIN) for line in lines)
    text = document(printed_case(case))[SLIT - 1]["text"]
    assert text.count("stop") == 2
    assert "start ✂" in text
    for caution in ("school’s own rules", "Blunt tips", "An adult cuts", "folded edge"):
        assert caution in text, caution


def test_the_words_at_a_cut_are_in_the_language_of_the_lesson():
    page = document(guide_sheets(proved(*BOOKLET, language="es"), "letter"))[SLIT - 1]
    assert "inicio ✂" in page["text"]


@full_size
def test_the_boxes_of_a_page_are_the_page_and_the_sheet(case):
    paper = proved_case(case).lesson.sheet
    unit = float(fraction(MILLIMETRES[paper.unit]))
    for page in document(printed_case(case))[1 : 6 + bool(cuts(proved_case(case)))]:
        left, bottom, right, top = page["trimbox"]
        assert (right - left, top - bottom) == pytest.approx(
            (float(fraction(paper.width)) * unit, float(fraction(paper.height)) * unit), abs=TIGHT
        )
        assert page["mediabox"][:2] == (0, 0)
        if case.paper == case.page_paper:
            assert page["trimbox"] == page["mediabox"]


@full_size
@read
def test_a_smaller_sheet_is_framed_along_its_own_edges_as_far_as_printers_print(case, lines_of):
    trim = document(printed_case(case))[PLAIN - 1]["trimbox"]
    frame = [line for line in lines_of(printed_case(case), PLAIN) if line.drawn_as(Meaning.SHEET_EDGE)]
    page = document(printed_case(case))[PLAIN - 1]
    corners = [
        (min(max(x, CLEAR_MM), page["width"] - CLEAR_MM), min(max(y, CLEAR_MM), page["height"] - CLEAR_MM))
        for x, y in ((trim[0], trim[1]), (trim[2], trim[1]), (trim[2], trim[3]), (trim[0], trim[3]))
    ]
    edges = zip(corners, [*corners[1:], corners[0]], strict=True)
    framed = sum(any(line.holds(start) and line.holds(end) for line in frame) for start, end in edges)
    paper = proved_case(case).lesson.sheet
    assert framed == len(fit(paper, case.page_paper).trimmed)


@pytest.mark.parametrize("from_edge", [True, False])
def test_what_pupils_read_beside_a_cut_is_in_short_sentences_of_common_words(from_edge):
    told = {"framed": True, "may_lose": False, "from_edge": from_edge}
    html = render("guides/sheet_notes.html", "en-US", language="en-US", title="Soil", shows="cut", **told)
    texts = [text for style, text in texts_of(blocks_of(html)) if style == "sheet-cut"]
    assert len(texts) == 3
    for text in texts:
        assert long_sentences(text) == ()
        assert uncommon_words(text, common_words()) == ()


@pytest.mark.parametrize("name", ["booklet on letter", "booklet on A5 from letter"])
def test_what_pupils_read_beside_a_cut_is_12_point(name):
    page = document(printed_case(FULL_SIZE[name]))[SLIT - 1]
    large = "".join(char["text"] for char in page["chars"] if char["size"] > 11.9)
    for word in ("start", "stop", "Scissors", "folded"):
        assert word in large


# What every page has.


def may_be_lost(line):
    """Tell whether a line is one of those that run to the edge of the sheet."""
    return any(line.drawn_as(meaning) for meaning in (*FOLDS, Meaning.CREASE))


@every
def test_nothing_but_ends_of_fold_lines_is_within_6_mm_of_the_edge(case):
    pdf = printed_case(case)
    for number, page in enumerate(document(pdf), start=1):
        for mark in (*page["chars"], *page["curves"]):
            left, top, right, bottom = (side / MM for side in place_of(mark))
            assert min(left, top, page["width"] - right, page["height"] - bottom) >= RIM_MM, mark
        for line in lines_by_pdfplumber(pdf, number):
            if not (page["trimbox"] and may_be_lost(line)):
                for x, y in (line.start, line.end):
                    assert min(x, y, page["width"] - x, page["height"] - y) >= RIM_MM, (number, line)


@full_size
def test_a_page_whose_lines_run_to_its_edge_says_that_their_ends_may_be_lost(case):
    pdf = printed_case(case)
    for number, page in enumerate(document(pdf), start=1):
        ends = [
            min(x, y, page["width"] - x, page["height"] - y)
            for line in lines_by_pdfplumber(pdf, number)
            for x, y in (line.start, line.end)
        ]
        said = "ends of lines at the edge may not print" in page["text"]
        assert said == (min(ends) < RIM_MM)


@every
@read
def test_every_page_has_a_ruler_of_100_mm_and_4_inches_or_of_half_of_them_and_asks_for_100_percent(
    case, lines_of
):
    pdf = printed_case(case)
    for number, page in enumerate(document(pdf), start=1):
        text = page["text"]
        assert re.search("Print at 100 ?%", text), number
        lines = [line for line in lines_of(pdf, number) if line.drawn_as(Meaning.TICK)]
        base, inches = ruler(lines)
        assert inches == 4 or page["trimbox"]
        (x, y), (end_x, end_y) = base.start, base.end
        along = ((end_x - x) / base.length, (end_y - y) / base.length)
        starts = [line.start for line in lines if line != base]
        for way in [*range(0, 25 * inches + 1, 10), *(half * 12.7 for half in range(2 * inches + 1))]:
            place = (x + way * along[0], y + way * along[1])
            assert any(start == pytest.approx(place, abs=TIGHT) for start in starts), way


def ruler(lines):
    """Find the base line of the ruler among lines, and how many inches it has."""
    (found,) = (
        (line, inches)
        for line in lines
        for inches in (2, 4)
        if line.length == pytest.approx(25.4 * inches, abs=TIGHT)
    )
    return found


@full_size
def test_no_fold_line_crosses_the_ruler(case):
    pdf = printed_case(case)
    for number, page in enumerate(document(pdf), start=1):
        drawn = lines_by_pdfplumber(pdf, number)
        base, _ = ruler([line for line in drawn if line.drawn_as(Meaning.TICK)])
        (left, right), (bottom, top) = (sorted(ends) for ends in zip(base.start, base.end, strict=True))
        place = (left - 1, bottom - 1, right + 1, top + 1)
        lines = [line for line in drawn if page["trimbox"] and may_be_lost(line)]
        assert not any(runs_through(line, place) for line in lines), number


@full_size
def test_no_fold_line_runs_through_a_word_or_a_number(case):
    pdf = printed_case(case)
    for number, page in enumerate(document(pdf), start=1):
        lines = [line for line in lines_by_pdfplumber(pdf, number) if page["trimbox"] and may_be_lost(line)]
        for char in page["chars"]:
            left, top, right, bottom = (side / MM for side in place_of(char))
            box = (left, page["height"] - bottom, right, page["height"] - top)
            assert not any(runs_through(line, box) for line in lines), (number, char["text"])


def runs_through(line, box):
    """Tell whether a line comes into a box, by looking at many places on it."""
    count = int(line.length / 0.5) + 1
    return any(
        box[0] < line.start[0] + (line.end[0] - line.start[0]) * step / count < box[2]
        and box[1] < line.start[1] + (line.end[1] - line.start[1]) * step / count < box[3]
        for step in range(count + 1)
    )


@every
def test_no_words_lie_on_other_words(case):
    for page in document(printed_case(case)):
        for one, other in combinations(sorted(map(place_of, page["words"])), 2):
            assert apart(one, other, 0.8), (one, other)


@full_size
def test_each_fold_line_has_its_number_in_a_circle_beside_it(case):
    page = document(printed_case(case))[PLAIN - 1]
    circles = [
        curve for curve in page["curves"] if curve["width"] / MM < 8 and curve["non_stroking_color"] != 0
    ]
    lines = fold_lines(proved_case(case))
    assert len(circles) == len(lines)
    unmatched = list(lines)
    for circle in circles:
        inside = "".join(char["text"] for char in page["chars"] if within_circle(char, circle))
        middle = ((circle["x0"] + circle["x1"]) / 2 / MM, (circle["y0"] + circle["y1"]) / 2 / MM)
        near = [line for line in unmatched if gap(case, middle, line) < 6 and str(line.fold) == inside]
        assert near, inside
        unmatched.remove(min(near, key=lambda line: gap(case, middle, line)))


def within_circle(char, circle):
    across = (char["x0"] + char["x1"]) / 2
    up = (char["y0"] + char["y1"]) / 2
    return circle["x0"] < across < circle["x1"] and circle["y0"] < up < circle["y1"]


def gap(case, place, line):
    (x, y), (end_x, end_y) = on_page(case, line.start), on_page(case, line.end)
    length = ((end_x - x) ** 2 + (end_y - y) ** 2) ** 0.5
    return abs((place[1] - y) * (end_x - x) - (place[0] - x) * (end_y - y)) / length


# The file.


@pytest.mark.parametrize("case", [FULL_SIZE["sail cloth on letter"], MEASURED["booklet on 24 x 36"]])
def test_the_same_lesson_gives_the_same_bytes(case):
    assert guide_sheets(proved_case(case), case.page_paper) == printed_case(case)


def test_a_lesson_that_folds_nothing_has_one_page_that_says_so():
    (page,) = document(guide_sheets(proved("turn over"), "letter"))
    assert "nothing to mark" in page["text"]


@pytest.mark.parametrize(
    ("steps", "rings"), [(["fold left edge to right edge"], True), (["fold into 3 parts across"], False)]
)
def test_a_ring_is_told_of_only_where_a_mark_is_at_the_middle_of_an_edge(steps, rings):
    cover = " ".join(document(guide_sheets(proved(*steps), "letter"))[0]["text"].split())
    assert ("with a ring" in cover) == rings
    assert "Other folds go by the marks." in cover


@every
def test_every_page_is_set_in_the_fonts_of_all_pages(case):
    for page in document(printed_case(case)):
        fonts = {char["fontname"].partition("+")[2] for char in page["chars"]}
        assert fonts <= {"Lexend", "Lexend-Bold", "DejaVuSans", "DejaVuSans-Bold"}


# Large print.


@cache
def in_large_print(name):
    case = (FULL_SIZE | MEASURED)[name]
    return document(guide_sheets(proved_case(case), case.page_paper, "large"))


@pytest.mark.parametrize("name", ["sail cloth on letter", "booklet on letter", "booklet on 24 x 36"])
def test_in_large_print_nothing_is_under_18_points(name):
    for page in in_large_print(name):
        sizes = [
            char["size" if char["upright"] else "width"] for char in page["chars"] if char["text"].strip()
        ]
        assert round(min(sizes), 1) == 18.0


def test_in_large_print_what_comes_first_takes_two_pages_and_pairs_still_begin_on_odd_ones():
    pages = in_large_print("booklet on letter")
    shown = ("Marks, front.", "Marks, back.", "Fold lines.", "Where to cut.")
    found = [[text for text in shown if text in page["text"]] for page in pages]
    front, back, folds, cut = ([text] for text in shown)
    assert found == [[], [], front, back, front, back, folds, cut]
    assert "Print pages 5 and 6" in pages[4]["text"]
    assert re.findall(r"pages? [0-9and ]*[0-9]", pages[0]["text"])[:4] == [
        "pages 3 and 4",
        "pages 5 and 6",
        "page 7",
        "page 8",
    ]


def test_notes_that_have_no_room_together_stand_in_the_order_in_which_they_are_read():
    page = in_large_print("fifteenths on A4")[-1]
    places = {word["text"]: (word["top"], word["x0"]) for word in reversed(page["words"])}
    firsts = [places[first] for first in ("Fold", "Print", "ends")]
    assert firsts == sorted(firsts)
    assert firsts[-1][0] - firsts[0][0] > 43 * MM, "they stand together"


def test_a_sheet_says_what_it_is_before_how_it_prints():
    for page in document(printed_case(FULL_SIZE["booklet on letter"]))[1:]:
        text = page["text"]
        assert text.index("Seed trays") < text.index("Print at")


def test_a_long_title_is_shortened():
    pdf = guide_sheets(proved(*EIGHTHS, title="A very long title of a lesson " * 10), "letter")
    assert len(document(pdf)) == 6


def test_a_sheet_named_by_its_measures_has_them_said_once():
    wide = Sheet(exact(24), exact(18), "in")
    lesson = replace(proved(*EIGHTHS).lesson, paper="24 × 18 in", sheet=wide)
    assert str(sheet_said(lesson)) == "24 × 18 in, landscape"
    assert str(sheet_said(replace(lesson, paper="sugar paper"))) == "sugar paper, landscape, 24 × 18 in"


def test_so_many_folds_that_they_fill_more_than_the_first_page_are_told_as_far_as_it_has_room():
    pdf = guide_sheets(proved(*EIGHTHS, *("open", "fold left edge to right edge") * 60), "letter")
    pages = document(pdf)
    told = [int(number) for number in re.findall(r"(\d+)\. fold ", pages[0]["text"])]
    assert told == list(range(1, told[-1] + 1))
    assert f"… and {63 - told[-1]} more" in pages[0]["text"]
    assert 10 < told[-1] < 63
    assert "Fold lines." in pages[1]["text"]


@every
def test_pages_to_read_are_numbered_among_all_pages(case):
    pages = document(printed_case(case))
    for number, page in enumerate(pages, start=1):
        if not page["trimbox"]:
            assert f"page {number} of {len(pages)}" in page["text"]
