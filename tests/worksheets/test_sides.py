"""A worksheet is one sheet of two sides, in large print two sheets; and large print is large all over."""

from functools import cache
from io import BytesIO

import pdfplumber
import pytest
from conftest import LESSONS
from own_words import BED, OAR, SOIL, having
from page_reading import usable_area

from foldmath.drawing.rendering.recorder import record
from foldmath.drawing.rendering.recording import recording_of
from foldmath.making import proved_lesson
from foldmath.making.languages import said_in
from foldmath.making.papers import Masters, papers
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.flowables import Running
from foldmath.pages.pdf.fonts import register_fonts
from foldmath.pages.pdf.inline import BoxPiece, Word
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, FilledPage, PageMaster, filled_pages
from foldmath.pages.pdf.rows import CellsInRow, Column
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import points, style_sheet
from foldmath.pages.printing import printed
from foldmath.phrases import phrase
from foldmath.teachers_plan.copies import OwnPages, SharedOut
from foldmath.words.saying import say

SIDES = {"regular": 2, "large": 4}
"""Of a lesson of up to three folds [common practice, no source]."""

LEAST_FILLED = {"regular": 0.4, "large": 0.3}
"""Of a side's height: less is a heading or a few lines alone [common practice, no source]."""

HANDOUTS = ("exit-ticket", "booklet", "booklet-folding")

JUDGED = (phrase("true"), phrase("false"))

HAIR_PT = 0.6
"""Half a line's width, and a little."""

LEAST_PT = 18
"""Large print is 18 point: American Printing House for the Blind [from memory]."""


@cache
def made(name, language, paper, look):
    return papers(said_in(proved_lesson(LESSONS / f"{name}.toml")[0], language), paper, look)


def sides_of(pages, name, look):
    """Fill the pages of a worksheet with pictures that have their sizes and no ink."""
    register_fonts()
    pictures = {
        one: recording_of(points(scene.width_mm), points(scene.height_mm), (), one)
        for one, scene in pages.pictures.items()
    }
    document = pages.documents[name].document()
    register_fonts()
    setting = Compositor(pictures.__getitem__, style_sheet(look), "en-US", answers=False)
    return filled_pages(Copy(setting.flowables(blocks_of(document.html)), document.master))


def filled(side):
    """Tell how much of a side's height has something on it."""
    return max(laid.depth for laid in side.placed) / points(side.copy.master.shape.usable_height_mm)


@pytest.mark.parametrize("look", SIDES)
@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("language", ["en-US", "es"])
@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_a_lesson_of_up_to_three_folds_is_one_sheet_at_every_level_and_its_key_one_side_more(
    name, language, paper, look
):
    pages = made(name, language, paper, look)
    for worksheet in (one for one in pages.documents if one.startswith("worksheet")):
        sides = sides_of(pages, worksheet, look)
        key = worksheet.replace("worksheet", "answer-key")
        assert len(sides_of(pages, key, look)) == len(sides) + 1, worksheet
        assert len(sides) == 2 if look == "regular" else 3 <= len(sides) <= SIDES[look], worksheet
        for side in sides:
            assert filled(side) > LEAST_FILLED[look], worksheet
        # What asks about the picture of a fold stands on its page.
        assert not any(side.placed[0].flowable.asks_above for side in sides), worksheet
    plan = sides_of(pages, "teacher-plan.pdf", look)
    assert len(plan) == 2
    assert min(map(filled, plan)) > LEAST_FILLED["regular"]


def lines_on(flowable):
    """Give the pieces of each line of the paragraphs in a flowable, as its lines are broken."""
    match flowable:
        case Running():
            for line in flowable.lines:
                yield [piece for cluster in line.clusters for piece in cluster.pieces]
        case Column():
            for one in flowable.flowables:
                yield from lines_on(one)
        case CellsInRow():
            for _, column in flowable.cells:
                yield from lines_on(column)


@pytest.mark.sweep("plank-marks-es-letter-regular", "plank-marks-en-US-A4-large")
@pytest.mark.parametrize("look", SIDES)
@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("language", ["en-US", "en-GB", "es"])
@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_true_and_false_each_stand_on_a_line_with_their_own_box(name, language, paper, look):
    """Else true, at the end of a line, would stand before the box of false [common practice, no source]."""
    judged, choice = {say(word, language) for word in JUDGED}, style_sheet(look).boxes["choice"]
    pages = made(name, language, paper, look)
    found = 0
    for worksheet in (one for one in pages.documents if one.startswith("worksheet")):
        for laid in (laid for side in sides_of(pages, worksheet, look) for laid in side.placed):
            for line in lines_on(laid.flowable):
                words = [isinstance(piece, Word) and piece.text.strip() in judged for piece in line]
                for place in (place for place, word in enumerate(words) if word):
                    box = next(iter(line[place + 1 :]), None)
                    assert isinstance(box, BoxPiece), worksheet
                    assert box.style == choice, worksheet
                    found += 1
    # Panels of different sizes have no sentence that is judged.
    assert bool(found) == (name != "sail-cloth")


@pytest.mark.parametrize("language", ["en-US", "es"])
@pytest.mark.parametrize("name", ["fraction-diary", "part-of-a-part", "plank-marks", "tile-race"])
def test_the_plan_of_a_class_that_reads_two_languages_is_two_sides_too(name, language):
    said = said_in(proved_lesson(LESSONS / f"{name}.toml")[0], language)
    files = ({f"{handout}.pdf": 24, f"{handout}-en.pdf": 4} for handout in HANDOUTS)
    labels = tuple(f"Pupil {number}" for number in range(28))
    own = OwnPages({"core": 28}, labels, 56, SharedOut(*files))
    plan = Masters(said, "letter", "regular").plan_paper(own)
    assert len(sides_of(plan, "teacher-plan.pdf", "regular")) == 2


@pytest.mark.parametrize("items", [(BED,), (SOIL,), (BED, OAR), (BED, SOIL)], ids=len)
@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("name", ["seed-trays", "tile-panels"])
def test_it_stays_one_sheet_with_one_item_or_two_in_a_teachers_own_words(name, paper, items):
    pages = papers(having(proved_lesson(LESSONS / f"{name}.toml")[0], *items), paper, "regular")
    for worksheet in (one for one in pages.documents if one.startswith("worksheet")):
        assert len(sides_of(pages, worksheet, "regular")) == 2, worksheet


@pytest.mark.parametrize("language", ["en-US", "es"])
@pytest.mark.parametrize(
    ("grade", "practice"),
    [
        (4, "3 × 1/4"),
        (4, "4 × 2/5"),
        (4, "4 × 2/5; 5 × 1/4"),
        (4, "3 × 2/5; 2 × 3/8"),
        (4, "6 × 1/4; 3 × 1/4"),
        (4, "2 × 1/4; 3 × 1/8; 2 × 2/3"),
        (5, "3/4 × 5/6; 4 × 2/5"),
        (5, "2/3 × 4/5; 3 × 1/4"),
        (5, "3 × 2/5; 3/4 × 1/2"),
        (5, "2/3 × 5/4; 3/4 × 1/2"),
        (5, "5/3 × 2/3; 3 × 1/4"),
        (5, "3/4 × 1/2; 3 × 2/3; 1/2 × 1/3"),
    ],
)
def test_it_stays_one_sheet_whatever_sheets_there_are_to_shade(tmp_path, language, grade, practice):
    """Rows, piles and a third product take the room of other items; few sheets have their question beside."""
    text = (LESSONS / "seed-trays.toml").read_text(encoding="utf-8")
    products = ", ".join(f'"{product}"' for product in practice.split("; "))
    text = text.replace('practice = ["2/3 × 4/5", "3/4 × 1/2"]', f"practice = [{products}]")
    path = tmp_path / "rows.toml"
    path.write_text(text.replace("grade = 5", f"grade = {grade}"), encoding="utf-8")
    pages = papers(said_in(proved_lesson(path)[0], language), "letter", "regular")
    for worksheet in (one for one in pages.documents if one.startswith("worksheet")):
        assert len(sides_of(pages, worksheet, "regular")) == 2, worksheet


@cache
def in_large_print(name, paper):
    """Print all that pupils of a lesson read, and what each page of it has on it."""
    pages = made(name, "en-US", paper, "large")
    pictures = {one: record(scene) for one, scene in pages.pictures.items()}
    asked = [one for one in pages.documents if one.startswith(("worksheet", "exit-ticket"))]
    documents = [pages.documents[one].document() for one in asked]
    with pdfplumber.open(BytesIO(printed(documents, pictures, name, "en-US", "large"))) as document:
        return [(page.width, page.height, page.objects) for page in document.pages]


def test_no_letter_of_large_print_is_small_its_feet_and_pictures_included():
    pages = in_large_print("sail-cloth", "letter")
    sizes = {round(char["size"], 1) for *_, on in pages for char in on["char"] if char["text"] != "✂"}
    assert min(sizes) == LEAST_PT


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("name", ["sail-cloth", "seed-trays"])
def test_nothing_in_large_print_reaches_over_the_side_margins(name, paper):
    for width, height, on in in_large_print(name, paper):
        left, _, right, _ = usable_area({"width": width, "height": height})
        for mark in (mark for kind in ("char", "line", "rect", "curve") for mark in on.get(kind, ())):
            if mark.get("text") != " ":
                assert mark["x0"] >= left - HAIR_PT, mark
                assert mark["x1"] <= right + HAIR_PT, mark


@pytest.mark.parametrize("title", ["Sail cloth", "A sail for a small boat", "Sails " * 20], ids=len)
def test_at_the_foot_of_large_print_title_page_number_and_code_stand_apart(title):
    copy = Copy([], PageMaster(upright("letter"), title, "UMFE38", PAGE_WORDS))
    file = written([[FilledPage(copy, ())]], title, "en-US", LEAST_PT)
    with pdfplumber.open(BytesIO(file)) as document:
        (page,) = document.pages
        foot = page.extract_words(keep_blank_chars=True, x_tolerance=points(4))
    assert [word["text"].strip() for word in foot][1:] == ["page 1 of 1", "UMFE38"]
    assert foot[0]["text"].startswith(title[:20].strip())
    assert (title in foot[0]["text"]) == (len(title) < 60)


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_boxes_in_large_print_keep_clear_of_the_rule_under_their_row(paper):
    rules_met = 0
    for *_, on in in_large_print("sail-cloth", paper):
        for rule in (line for line in on["line"] if line["width"] > points(170)):
            above = [rule["top"] - box["bottom"] for box in on["rect"] if box["stroke"]]
            near = [gap for gap in above if gap < points(4)]
            rules_met += any(gap >= 0 for gap in near)
            assert all(gap < 0 or gap > points(2) for gap in near)
    assert rules_met >= 3


@cache
def first_side(level):
    """Print the first side of a worksheet of halvings, with pictures that have no ink."""
    pages = made("seed-trays", "en-US", "letter", "regular")
    pictures = {
        one: recording_of(points(scene.width_mm), points(scene.height_mm), (), one)
        for one, scene in pages.pictures.items()
    }
    document = pages.documents[f"worksheet{level}.pdf"].document()
    file = printed([document], pictures, "Seed trays", "en-US", "regular")
    with pdfplumber.open(BytesIO(file)) as read:
        page = read.pages[0]
        return page.rects, [line for line in (*page.lines, *page.curves) if not line["height"]], page.chars


def test_what_was_counted_keeps_clear_of_the_sentence_beside_it():
    """Else 4 and 1/2 would be read as 4 1/2 [common practice, no source]."""
    boxes, _, _ = first_side("")
    counted = [box for box in boxes if box["width"] == pytest.approx(points(14), abs=0.1)]
    assert len(counted) == 6
    end = max(box["x1"] for box in counted)
    assert min(box["x0"] for box in boxes if box["x0"] > end) - end >= points(5.8)


def test_no_words_hang_on_a_line_to_write_on():
    _, lines, chars = first_side("-stretch")
    written = [line for line in lines if line["width"] > points(60)]
    assert len(written) >= 6
    for line in written:
        hanging = [
            char["text"]
            for char in chars
            if line["x0"] < char["x0"] < line["x1"] and 0 < char["top"] - line["top"] < points(1.5)
        ]
        assert not hanging
