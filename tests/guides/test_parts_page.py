"""The page of equal parts shows every instruction with its picture, in words that pupils read."""

import re

import pytest
from page_reading import pages_of, text_of, usable_area, within
from readability import (
    MOST_WORDS,
    common_words,
    long_sentences,
    teacher_words,
    texts_of,
    uncommon_words,
)

from foldmath.drawing.scenes import Figure
from foldmath.guides.parts_page import parts_page
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.printing import printed
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import exact
from foldmath.planning.parts.equal_parts import Kind, ways
from foldmath.words.languages import DEFAULT

CASES = [
    ("letter", "landscape", 5, Axis.WIDTH, "letter"),
    ("letter", "portrait", 12, Axis.WIDTH, "letter"),
    ("A4", "portrait", 11, Axis.HEIGHT, "A4"),
    ("A4", "landscape", 8, Axis.HEIGHT, "A4"),
]
SOURCES = "Lang Origami Geometric Constructions Haga Origamics World Scientific Hull Project Fujimoto"
METHODS = "diagonals theorem approximation"
"""Names of people, books, publishers and methods, which are written as they are."""


@pytest.fixture(scope="module", params=CASES, ids=lambda case: f"{case[2]}-{case[0]}-{case[1]}")
def case(request):
    """Give the ways of one case, and its page."""
    paper, orientation, parts, axis, page_paper = request.param
    found = ways(sheet(paper_named(paper), orientation), parts, axis, exact(1))
    return found, parts_page(found, paper, page_paper, DEFAULT)


@pytest.fixture(scope="module")
def pdf(case, picture_process, tmp_path_factory):
    """Print the page of one case."""
    _, page = case
    recordings = picture_process.recordings(list(page.pictures.values())).result()
    file = tmp_path_factory.mktemp("parts") / page.file
    pictures = dict(zip(page.pictures, recordings, strict=True))
    file.write_bytes(printed([page.document], pictures, page.title, DEFAULT, page.look))
    return file


def texts(page):
    return list(texts_of(blocks_of(page.document.html)))


def test_no_sentence_has_more_than_twelve_words(case):
    said = [text for style, text in texts(case[1]) if style != "part-foot"]
    assert [sentence for text in said for sentence in long_sentences(text, MOST_WORDS)] == []


def test_pupils_read_common_words_and_teachers_those_of_the_trade(case):
    names = set(f"{SOURCES} {METHODS} r j k t".lower().split())
    found = {}
    for style, text in texts(case[1]):
        allowed = teacher_words() | names if style == "part-foot" else common_words()
        if uncommon := uncommon_words(text, allowed):
            found[text] = uncommon
    assert found == {}


def test_every_instruction_is_numbered_and_has_a_picture_of_its_own(case):
    found, page = case
    for way in found:
        told = len(way.squaring) + bool(way.squaring) + len(way.finding) + len(way.finishing)
        told += way.kind in (Kind.CROSSING, Kind.CORNER)
        names = [name for name in page.pictures if re.fullmatch(rf"{way.kind.name.lower()}-\d+", name)]
        assert [name.rpartition("-")[2] for name in names] == [str(number) for number in range(1, told + 1)]
        assert f"{way.kind.name.lower()}-parted" in page.pictures


def test_the_landmark_of_an_exact_way_stands_in_a_picture_as_a_fraction(case):
    found, page = case
    for way in found:
        if way.landmark and not way.nearness:
            number = len(way.squaring) + bool(way.squaring) + len(way.finding) + 1
            figures = [
                mark
                for mark in page.pictures[f"{way.kind.name.lower()}-{number}"].marks
                if isinstance(mark, Figure)
            ]
            shown = [exact(int(figure.numerator), int(figure.denominator)) for figure in figures]
            assert shown == [way.landmark.fraction]


def test_every_part_is_written_beside_the_parted_sheet(case):
    found, page = case
    for way in found:
        marks = page.pictures[f"{way.kind.name.lower()}-parted"].marks
        shown = [(mark.numerator, mark.denominator) for mark in marks if isinstance(mark, Figure)]
        assert shown == [(str(part), str(way.parts)) for part in range(1, way.parts)]


def test_fractions_beside_the_parted_sheet_keep_clear_of_each_other(case):
    found, page = case
    for way in found:
        marks = page.pictures[f"{way.kind.name.lower()}-parted"].marks
        places = [mark.middle for mark in marks if isinstance(mark, Figure)]
        digits = len(str(way.parts))
        for index, one in enumerate(places):
            for other in places[index + 1 :]:
                assert abs(one.x - other.x) >= 2.8 * digits or abs(one.y - other.y) >= 7.5


def test_each_way_begins_a_page_and_says_whether_it_is_exact(case, pdf):
    found, page = case
    begun = [text for text in text_of(pdf) if text.startswith(f"{page.title}: ")]
    assert len(begun) == len(found)
    for way, text in zip(found, begun, strict=True):
        assert ("This way comes as near as you need." in text) == (way.nearness is not None)
        assert ("This way is exactly right." in text) == (way.nearness is None)


def test_the_rounds_and_their_errors_are_told(case, pdf):
    found, _ = case
    told = " ".join(text_of(pdf))
    for way in found:
        if way.nearness:
            assert f"Each round divides that by {way.nearness.factor}." in told
            joined = "and" if way.nearness.folds == 2 else "to"
            assert f"Steps 2 {joined} {way.nearness.folds + 1} are one round." in told
            assert len(re.findall(r"After round \d+:", told)) == way.nearness.rounds


def test_all_ink_lies_in_the_usable_area_and_words_are_large_enough(case, pdf):
    for page in pages_of(pdf):
        area = usable_area(page)
        for mark in (*page["chars"], *page["lines"], *page["curves"], *page["rects"]):
            if mark["top"] < area[3]:
                assert within((mark["x0"], mark["top"], mark["x1"], mark["bottom"]), area, by=3)
        sizes = {round(char["size"], 1) for char in page["chars"] if char["top"] < area[3]}
        assert sizes <= {10, 11, 11.9, 12, 14}


def test_in_large_print_no_word_is_under_18_points_and_all_ink_lies_in_the_usable_area(
    picture_process, tmp_path
):
    found = ways(sheet(paper_named("letter"), "landscape"), 5, Axis.WIDTH, exact(1))
    page = parts_page(found, "letter", "letter", DEFAULT, "large")
    drawn = picture_process.recordings(list(page.pictures.values())).result()
    pictures = dict(zip(page.pictures, drawn, strict=True))
    file = tmp_path / page.file
    file.write_bytes(printed([page.document], pictures, page.title, DEFAULT, page.look))
    for printed_page in pages_of(file):
        area = usable_area(printed_page)
        words = [char for char in printed_page["chars"] if char["text"].strip()]
        assert min(round(char["size"], 1) for char in words) >= 17.8
        assert all(
            within((char["x0"], char["top"], char["x1"], char["bottom"]), area, by=3)
            for char in words
            if char["top"] < area[3]
        )


def test_a_way_that_cuts_a_square_carries_the_caution_on_scissors_and_no_other_does(case):
    found, page = case
    sections = page.document.html.split("<section>")[1:]
    assert ["The rules of your school come first." in section for section in sections] == [
        bool(way.squaring) for way in found
    ]
