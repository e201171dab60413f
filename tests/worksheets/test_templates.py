"""The worksheet and its key are one document; what a lesson says is text in it, whatever it looks like."""

import re
from dataclasses import replace

import pytest
from lessons_in_words import EIGHTHS, core_sheet, proved, sheet_at
from own_words import own

from foldmath.pages.markup.blocks import (
    Box,
    Columns,
    LineBreak,
    Paragraph,
    Picture,
    Row,
    Stack,
    Text,
    Together,
    WritingLines,
)
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.styles import GUTTER_MM, USABLE_WIDTH_MM, style_sheet
from foldmath.pages.templating import render, sentence
from foldmath.paper.steps import Edge, FoldAt, Open
from foldmath.plane.numbers import exact
from foldmath.statements.items import (
    CountOrSizeItem,
    ItemKind,
    Level,
    Reach,
    Repeated,
    make_bigger_or_smaller,
    make_count_or_size,
    make_explain_fewer_panels,
    make_explain_less,
    make_explain_more_panels,
    make_explain_same,
    make_mend,
    make_mend_doubling,
    make_repeated_halving,
    make_same_size,
)
from foldmath.statements.products import parse_product
from foldmath.statements.ratios import fraction
from foldmath.statements.rules import named
from foldmath.worksheets.exit_ticket import ExitTicket, exit_ticket
from foldmath.worksheets.item_pictures import item_picture
from foldmath.worksheets.picture_book import SIZES, item_pictures
from foldmath.worksheets.rendering import html, items_html
from foldmath.worksheets.worksheet import PlacedItem

PRODUCTS = ("2/3 × 4/5", "3 × 2/5", "3/4 × 1/2")
LESSONS = {
    "halving": proved(*EIGHTHS, "open", practice=PRODUCTS),
    "grade 4": proved(*EIGHTHS, "open", grade=4, practice=("3 × 2/5",)),
    "unequal": proved("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open", practice=PRODUCTS),
    "shading": proved(
        "pleat width into 3", "open", "pleat height into 5", "open", "shade 4 of 5 up", "shade 2 of 3 across"
    ),
    "old crease": proved("fold left edge to right edge", "open", "fold right edge to left edge, behind"),
    "corner": proved("fold bottom left corner to top right corner", "open last", "turn over"),
    "many": proved("pleat width into 5", "pleat height into 6", "open", practice=("11/12 × 7/12",)),
}
lessons = pytest.mark.parametrize("lesson", LESSONS.values(), ids=LESSONS)
levels = pytest.mark.parametrize("level", Level, ids=lambda level: level.value)


def page_at(level, lesson, *, key=False):
    return html(sheet_at(level, lesson), "regular", key=key)


def core_page(lesson, *, key=False):
    return page_at(Level.CORE, lesson, key=key)


def words_of(runs):
    """Write a paragraph as it is read aloud: a fraction or a box is one word."""
    words = ""
    for run in runs:
        if isinstance(run, Text):
            words += run.text
        else:
            words += "\n" if isinstance(run, LineBreak) else " number "
    return words


THREE_FOURTHS = "<math><mfrac><mn>3</mn><mn>4</mn></mfrac></math>"
LISTS = ("bank",)
"""Styles of words that are no sentences."""


def paragraphs(blocks, without=()):
    for block in blocks:
        if isinstance(block, Paragraph):
            if block.style not in without:
                yield words_of(block.runs)
        elif isinstance(block, WritingLines):
            yield words_of(block.answer)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from paragraphs(cell.blocks, without)
        elif isinstance(block, Together | Columns):
            yield from paragraphs(block.blocks, without)


def boxes_in(blocks):
    def of_runs(runs):
        for run in runs:
            if isinstance(run, Box):
                yield run.answer
            elif isinstance(run, Stack):
                yield from of_runs(run.above)
                yield from of_runs(run.below)

    for block in blocks:
        if isinstance(block, Paragraph):
            yield from of_runs(block.runs)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from boxes_in(cell.blocks)
        elif isinstance(block, Together | Columns):
            yield from boxes_in(block.blocks)


@levels
@lessons
def test_no_sentence_that_a_pupil_reads_is_longer_than_twelve_words(lesson, level):
    """At most 12 words a sentence [common practice, no source]."""
    for paragraph in paragraphs(blocks_of(page_at(level, lesson)), LISTS):
        for said in re.split(r"[.?!:…](?:\s|$)|\n", paragraph):
            words = [word for word in said.split() if word.strip("×=+−,;()✓")]
            assert len(words) <= 12, said


def without_whose_it_is(blocks):
    """Leave out the line for the name, where a key says that it is one."""
    named = next(block for block in blocks if isinstance(block, Paragraph))
    assert named.style == "name"
    return [block for block in blocks if block is not named]


@levels
@lessons
def test_the_key_begins_with_the_very_blocks_of_the_worksheet(lesson, level):
    blocks, key = (without_whose_it_is(blocks_of(page_at(level, lesson, key=key))) for key in (False, True))
    assert key[: len(blocks)] == blocks
    assert len(key) > len(blocks)


def numbers_below_bars(blocks):
    for block in blocks:
        if isinstance(block, Paragraph):
            for run in block.runs:
                if isinstance(run, Stack):
                    below = (part.answer if isinstance(part, Box) else part.text for part in run.below)
                    yield from (int(text) for text in below if text.isdigit())
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from numbers_below_bars(cell.blocks)
        elif isinstance(block, Together | Columns):
            yield from numbers_below_bars(block.blocks)


@pytest.mark.parametrize("rows", [4, 6, 12])
def test_no_pupil_works_with_a_denominator_above_24(rows):
    """No pupil sentence has a larger one [common practice, no source]."""
    lesson = proved("pleat width into 5", "open", f"pleat height into {rows}", "open")
    for level in Level:
        page = page_at(level, lesson)
        folding = page.partition('<section class="soft">')[0] + "</body></html>"
        below = [*numbers_below_bars(blocks_of(folding))]
        assert max(below, default=0) == (0 if level is Level.STRETCH else 20 if rows == 4 else 5)
        assert max(numbers_below_bars(blocks_of(page))) <= 24


@levels
@lessons
def test_no_box_that_is_to_be_written_in_lacks_its_answer(lesson, level):
    sheet = sheet_at(level, lesson)
    answers = list(boxes_in(blocks_of(html(sheet, "regular", key=True))))
    # The date stays empty, "true" beside the claim that is false, and one of two ticks beside each sentence.
    items = [placed.item for placed in (*sheet.items, sheet.example) if placed]
    ticks = sum(len(item.sentences) for item in items if isinstance(item, CountOrSizeItem))
    claims = 1 if sheet.judged else 0
    assert answers.count("") == 1 + ticks + claims
    assert "Answer key" in answers


def given_boxes(blocks):
    """Give the answers that everybody sees."""

    def of_runs(runs):
        for run in runs:
            if isinstance(run, Box) and run.given:
                yield run.answer
            elif isinstance(run, Stack):
                yield from of_runs(run.above)
                yield from of_runs(run.below)

    for block in blocks:
        if isinstance(block, Paragraph):
            yield from of_runs(block.runs)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from given_boxes(cell.blocks)
        elif isinstance(block, Together | Columns):
            yield from given_boxes(block.blocks)


def pictures_in(blocks):
    for block in blocks:
        if isinstance(block, Picture):
            yield block
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from pictures_in(cell.blocks)
        elif isinstance(block, Together | Columns):
            yield from pictures_in(block.blocks)


UNEQUAL = proved("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open", practice=PRODUCTS)
"""Four panels of four sizes, of which the last fold cut both that there were."""

THREE_OF_FOUR = proved(
    "fold left edge to right edge", "fold top edge to bottom edge", "open", "fold at 1/4 moving left", "open"
)
"""A third fold that cuts the two panels at the left and no other; then six panels of two sizes."""


@levels
def test_the_sizes_of_unequal_panels_are_found_by_pupils_unless_they_have_most_support(level):
    page = page_at(level, UNEQUAL)
    row = page.partition("smallest first.")[2].partition("</section>")[0]
    assert ("<span>1</span><output>12</output>" in row) is (level is Level.GUIDED)
    assert ("<output>1</output><output>12</output>" in row) is (level is Level.CORE)
    assert ("What fraction of the sheet is each panel?" in page) is (level is Level.STRETCH)


def test_panels_of_which_no_two_are_alike_are_not_counted_each_as_one():
    """Four panels of four sizes; a fold from corner to corner then halves two of them."""
    page = core_page(UNEQUAL)
    assert "Size of each panel, smallest first. Add:" in page
    assert "How many × size" not in page
    assert "How many × size" in core_page(proved(*SEAM, "open"))


@levels
def test_unequal_panels_are_added_to_one_whole(level):
    """Unequal sizes add to 1 [common practice, no source]."""
    page = page_at(level, UNEQUAL)
    asked = "each panel? Add them all." if level is Level.STRETCH else "smallest first. Add:"
    assert page.partition(asked)[2].partition("</section>")[0].count("+") == 3
    two_sizes = page_at(level, THREE_OF_FOUR)
    assert "Add:" not in two_sizes
    assert "Add all" not in two_sizes
    whole = "Show that all the panels make 1 whole." if level is Level.STRETCH else "</output> whole<"
    assert two_sizes.partition('<section class="soft">')[0].count(whole) == 1


def test_panels_that_no_tally_adds_are_added_on_a_line():
    """The last fold makes no new crease: its row has no tally, though panels are of four sizes."""
    lesson = proved("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open", "fold at 1/3 moving left")
    page = core_page(lesson, key=True)
    assert "smallest first. Add:" not in page
    assert "Add all the panels to make 1 whole." in page


SEAM = (
    "fold at 1/3 moving left",
    "fold at 1/4 moving bottom",
    "open",
    "fold along (0, 0) (1/3, 1/4) moving (0, 1)",
)
"""Two creases that cross, and a fold from a corner through the crossing."""


def test_a_fold_through_a_crossing_of_creases_says_so():
    assert "Fold from the bottom left corner through the crossing." in core_page(proved(*SEAM, "open"))
    without = core_page(proved("fold at 1/4 moving bottom", "open", SEAM[-1], "open"))
    assert "Fold a line from the bottom left corner, as in the picture." in without


COUNT_WORDS = ("Panels not divided, and new parts:", "Panels before, and new panels:")


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        (("fold left edge to right edge", "open", "fold at 1/4 moving left"), COUNT_WORDS[:1]),
        # One panel is cut into 2, the other into 3.
        (("fold at 1/3 moving left", "open", "pleat width into 4"), COUNT_WORDS[1:]),
        (EIGHTHS, ()),
    ],
)
def test_a_count_that_adds_says_in_words_what_is_added(steps, words):
    page = core_page(proved(*steps, "open"))
    assert tuple(said for said in COUNT_WORDS if said in page) == words


def test_the_key_names_the_panels_that_a_fold_cut_and_those_that_it_left():
    page = core_page(THREE_OF_FOUR, key=True)
    assert "Which panels did step 3 divide? Which stayed the same?" in page
    told = " ".join(paragraphs(blocks_of(page)))
    assert "Divided: 2 panels of  number . The same: 2 panels of  number ." in told


def judged_page(*, true):
    """Give a key whose sentence about a step, 4 × 1/2 = 8, is false; or a true one in its place."""
    sheet = core_sheet(LESSONS["halving"])
    sheet = replace(sheet, slip=sheet.folding.slips[0])
    coded = (replace(sheet, chosen_by=f"{number}") for number in range(30))
    return html(next(one for one in coded if one.judged.true is true), "regular", key=True)


def note_on(page, head):
    """Give the paragraph of the key's own page that begins with some words."""
    words = [" ".join(one.split()) for one in paragraphs(blocks_of(page))]
    (start,) = (place for place, one in enumerate(words) if "what the answers say" in one)
    return next(one for one in words[start:] if one.startswith(head))


def test_the_key_corrects_a_false_sentence_by_its_step_and_then_by_what_else_is_true():
    assert note_on(judged_page(true=False), "6. True or false?").endswith(
        "It is false. In step 3: 4 × 2 = 8 panels. number of number = number of the sheet. "
        "Also true: 4 × number = 2. Accept every true sentence."
    )


def test_the_key_says_of_a_sentence_that_is_true_that_it_is():
    assert note_on(judged_page(true=True), "6. True or false?").endswith("It is true.")


def test_the_key_says_a_mended_sentence_once():
    mend = make_mend(parse_product("3/4 × 2/3"), named("add_instead"))
    sheet = replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(mend, None),))
    note = note_on(html(sheet, "regular", key=True), "1.")
    assert note.startswith("1. number × number = number = number . Accept also")


@pytest.mark.parametrize("look", ["regular", "large"])
def test_the_boxes_to_correct_a_sum_stand_two_millimetres_under_it(look):
    mend = make_mend(parse_product("4/5 × 3/4"), named("keep_common_denominator"))
    sheet = replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(mend, None),))
    (wrong,) = re.findall(r'<p class="([^"]+)">(?:(?!</p>).)*<mn>240</mn>', html(sheet, look, key=False))
    assert 2 <= style_sheet(look).text[wrong].after_mm < 3


def test_a_ticket_that_asks_for_any_sentence_has_one_in_the_key_and_takes_every_true_one():
    sheet = core_sheet(LESSONS["halving"])
    asked = "Exit ticket. 1: 8 panels; one panel is number of the sheet."
    for row, also in ((None, " Accept every true sentence."), (sheet.folding.rows[-1], "")):
        ticket = ExitTicket(row, parse_product("1/2 × 3/4"), 4)
        note = note_on(html(sheet, "regular", key=True, ticket=ticket), "Exit ticket.")
        assert note.startswith(f"{asked}{also} 2: ")


@pytest.mark.parametrize(
    ("asked", "why"),
    [
        ("2/3 × 4/5", "the sheet has 3 × 5 = 15 equal parts. Shaded twice: 2 × 4 = 8."),
        ("3 × 2/5", "3 × 2 = 6 parts, each number of a sheet."),
        ("", "4 equal panels make the whole sheet."),
    ],
)
def test_the_key_has_a_reason_for_what_the_ticket_asks_without_paper(asked, why):
    ticket = ExitTicket(None, parse_product(asked) if asked else None, 4)
    page = html(core_sheet(LESSONS["halving"]), "regular", key=True, ticket=ticket)
    assert f" Why, for example: {why}" in note_on(page, "Exit ticket.")


def test_where_nothing_is_folded_the_key_of_the_ticket_takes_every_true_sentence():
    sheet = core_sheet(proved("turn over"))
    ticket = exit_ticket(sheet.folding, [sheet])
    note = note_on(html(sheet, "regular", key=True, ticket=ticket), "Exit ticket.")
    assert note.startswith("Exit ticket. Accept every true sentence. 2: ")


def test_a_ticket_of_unequal_panels_asks_what_fraction_the_smallest_is():
    sheet = core_sheet(THREE_OF_FOUR)
    ticket = exit_ticket(sheet.folding, [sheet])
    asked = render("worksheets/exit_ticket.html", "en-US", sheet=sheet, ticket=ticket, paper="letter")
    assert "The smallest panel is" in asked
    assert "1: 6 panels; the smallest panel is number of the sheet. 2: " in note_on(
        html(sheet, "regular", key=True, ticket=ticket), "Exit ticket."
    )


def test_wrong_answers_stand_apart_from_right_ones_under_words_of_their_own():
    sheet = replace(
        core_sheet(LESSONS["halving"]), items=(PlacedItem(make_count_or_size(3, 2, Reach.PAIRS), None),)
    )
    page = html(sheet, "regular", key=True)
    head = page.index("Watch for these wrong answers")
    assert page.index("Accept every equal answer") < head < page.index("✗")
    assert "<b>" not in page[head:].partition("</table>")[0]


def widths_in(blocks, pictures):
    """Give how wide the rows and pictures are that stand among blocks, in mm."""
    cells = style_sheet("regular").cells
    for block in blocks:
        if isinstance(block, Picture):
            yield pictures[block.name].width_mm
        elif isinstance(block, Row):
            yield sum(cells[cell.style].width_mm for cell in block.cells)
            for cell in block.cells:
                yield from widths_in(cell.blocks, pictures)
        elif isinstance(block, Together | Columns):
            yield from widths_in(block.blocks, pictures)


@pytest.mark.parametrize(
    "lesson",
    [
        # Its guided page has a second model to shade after another item.
        LESSONS["grade 4"],
        # Its pages have a shaded sheet to fold again.
        proved(*EIGHTHS, "open", grade=3),
    ],
    ids=["grade 4", "grade 3"],
)
def test_nothing_that_stands_in_a_column_is_wider_than_it(lesson):
    column = (USABLE_WIDTH_MM - GUTTER_MM) / 2
    for level in Level:
        sheet = sheet_at(level, lesson)
        blocks = [
            block for block in blocks_of(html(sheet, "regular", key=False)) if isinstance(block, Columns)
        ]
        assert max(widths_in(blocks, item_pictures(sheet, "regular")), default=0) <= column


@pytest.mark.parametrize(
    ("lesson", "runs"),
    [
        # Few sheets stand in a column; four would be strips there, and leave no room for an example.
        ("grade 4", [(False, True, [None, 1, 2, 3])]),
        ("grade 4, many sheets", [(True, True, [1]), (False, False, [2, 3])]),
        # Beside a model as wide as the page no other stands in a column, where it would leave a gap.
        ("halving", [(True, True, [None, 1, 2, 3])]),
    ],
)
def test_models_that_a_column_has_no_room_for_are_as_wide_as_the_page(lesson, runs):
    lessons = LESSONS | {"grade 4, many sheets": proved(*EIGHTHS, grade=4, practice=("4 × 2/3",))}
    sheet = sheet_at(Level.GUIDED, lessons[lesson])
    told = [(run.wide, run.shades, [number for number, _ in run.items]) for run in sheet.runs]
    assert told == runs
    assert html(sheet, "regular", key=False).count("Shade and multiply") == 1


def test_a_guided_page_has_its_first_row_and_an_item_of_its_own_worked():
    blocks = blocks_of(page_at(Level.GUIDED, LESSONS["halving"]))
    row = ["2", "2", "1", "2", "2", "1", "2", "1", "1", "2"]
    # In the two rows that follow, the first number of each sentence.
    row += ["2", "1", "2", "4", "1", "2"]
    item = ["1", "1", "2", "3", "1", "6"]
    assert list(given_boxes(blocks)) == row + item
    models = [picture for picture in pictures_in(blocks) if picture.answer_name.endswith("-shaded")]
    assert [picture.name == picture.answer_name for picture in models][:2] == [True, False]


@pytest.mark.parametrize("level", [Level.CORE, Level.STRETCH], ids=lambda level: level.value)
@lessons
def test_other_pages_give_no_answer(lesson, level):
    blocks = blocks_of(page_at(level, lesson))
    assert list(given_boxes(blocks)) == []
    for picture in pictures_in(blocks):
        assert not picture.name.endswith("-shaded")


@lessons
def test_guided_pages_alone_have_a_word_bank_and_stretch_pages_alone_make_your_own(lesson):
    pages = {level: page_at(level, lesson) for level in Level}
    assert [level for level, page in pages.items() if "Word bank" in page] == [Level.GUIDED]
    assert [level for level, page in pages.items() if "Make your own" in page] == [Level.STRETCH]


def test_the_word_bank_stands_before_the_folds_that_it_is_used_for():
    page = page_at(Level.GUIDED, LESSONS["halving"])
    assert page.index("Word bank") < page.index("Panels: I predict") < page.index('<section class="soft">')


def test_the_caution_about_scissors_is_read_before_the_cut():
    page = core_page(proved(*EIGHTHS, "open", "slit at height 1/2 from 1/4 to 3/4"))
    assert page.index("Sit down to cut.") < page.index("Cut along the thick line.")


def test_a_booklet_of_the_next_lesson_leaves_the_caution_to_the_page_that_it_is_folded_by():
    steps = ("open", "fold left edge to right edge", "slit at height 1/2 from left edge to 1/2", "open")
    page = core_page(proved(*EIGHTHS, *steps, "gather into booklet"))
    assert "Next lesson, the booklet:" in page
    assert "Sit down to cut." not in page


@pytest.mark.parametrize("look", ["regular", "large"])
def test_a_prediction_and_a_count_say_that_they_are_of_panels(look):
    said = " ".join(paragraphs(blocks_of(html(core_sheet(LESSONS["halving"]), look, key=False))))
    assert re.search(r"Panels: I predict.{0,12}I count", said)


@pytest.mark.parametrize(
    ("item", "begun", "reason"),
    [
        (make_explain_more_panels(4, 2), "Each panel is smaller, because …", "more panels"),
        (make_explain_less(parse_product("2/3 × 4/5")), "… is less than …, because we take …", "only a part"),
        (make_explain_less(parse_product("3 × 2/5")), "… is more than …, because we take …", "than once"),
        (make_explain_same(fraction(1, 2), 2), "The same part is shaded, but …", "more panels"),
    ],
    ids=["more panels", "a part", "several times", "the same"],
)
def test_the_beginning_of_a_reason_leaves_the_reason_to_the_pupil(item, begun, reason):
    placed = PlacedItem(item, None)
    sheet = replace(sheet_at(Level.GUIDED, LESSONS["halving"]), items=(placed,))
    told = list(paragraphs(blocks_of(html(sheet, "regular", key=True))))
    assert begun in told
    assert reason not in begun
    assert any(reason in answer for answer in told[told.index(begun) + 1 :])


@pytest.mark.parametrize(
    ("before", "parts", "told"),
    [
        (3, 2, "A fold turns 3 panels into 6."),
        (3, 3, "Each of 3 panels is folded into 3 equal parts: 9 panels."),
        (3, 4, "Each of 3 panels is folded into 4 equal parts: 12 panels."),
        (1, 4, "A panel is folded into 4 equal parts: 4 panels."),
    ],
)
def test_one_fold_makes_two_of_a_panel_at_most_and_is_never_said_to_make_more(before, parts, told):
    """Nor are the four sentences said to be about the lesson's own folds: ``3 × 4 = 12`` is of none."""
    placed = PlacedItem(make_count_or_size(before, parts, Reach.PAIRS), None)
    page = html(replace(core_sheet(LESSONS["halving"]), items=(placed,)), "regular", key=False)
    assert f"{told} What does each sentence tell?" in page
    assert "the same fold" not in page


@pytest.mark.parametrize("practice", [("2/3 × 4/5",), ("3 × 2/5",)], ids=["shaded twice", "shaded once"])
def test_lines_are_asked_for_only_where_they_are_not_drawn_yet(practice):
    lesson = proved(*EIGHTHS, "open", practice=practice, grade=4 if "3 × 2/5" in practice else 5)
    asked = ("Draw the lines.", "Draw and shade it.")
    assert [level for level in Level if any(words in page_at(level, lesson) for words in asked)] == [
        Level.CORE,
        Level.STRETCH,
    ]


@lessons
def test_no_page_names_its_level(lesson):
    for level in Level:
        words = " ".join(paragraphs(blocks_of(page_at(level, lesson)))).lower()
        assert not re.search(r"\b(guided|core|stretch|support|easy|hard)\b", words)


@lessons
def test_the_folds_are_told_alike_at_all_levels(lesson):
    def steps(level):
        blocks = blocks_of(page_at(level, lesson).partition('<section class="soft">')[0] + "</body></html>")
        return [
            words.replace("This one is an example.", "").strip()
            for words in paragraphs(blocks, LISTS)
            if words.startswith(("Fold", "Open", "Turn", "At the end"))
        ]

    assert steps(Level.GUIDED) == steps(Level.CORE) == steps(Level.STRETCH)


@pytest.mark.parametrize("name", ["halving", "grade 4", "unequal"])
def test_the_first_page_gives_less_from_level_to_level(name):
    """Numbers begun, then boxes alone, then lines: sentences of one's own [common practice, no source]."""
    first = [page_at(level, LESSONS[name]).partition('<section class="soft">')[0] for level in Level]
    by_level = dict(zip(Level, first, strict=True))
    boxes = {level: page.count("<output>") for level, page in by_level.items()}
    lines = {level: page.count("data-lines") for level, page in by_level.items()}
    assert boxes[Level.GUIDED] < boxes[Level.CORE]
    assert lines[Level.STRETCH] > lines[Level.CORE]
    assert "data-given" not in by_level[Level.CORE]
    assert "Show how you know." in by_level[Level.STRETCH]
    assert not any("Show how you know." in by_level[level] for level in (Level.GUIDED, Level.CORE))


@pytest.mark.parametrize("grade", [3, 4])
def test_a_class_with_most_support_finds_the_name_of_the_parts_and_is_given_how_many(grade):
    """In row 2, 1/□ of the sheet: row 1 is called an example, and no other row has an answer."""
    one_panel = r'One panel is <span class="fraction">(.*?)</span> of the sheet'
    rows = re.findall(one_panel, page_at(Level.GUIDED, proved(*EIGHTHS, grade=grade)))
    example, given = '<span>1</span><output data-given="">{}</output>', "<span>1</span><output>{}</output>"
    assert rows == [example.format(2), given.format(4), given.format(8)]
    core = re.findall(one_panel, core_page(proved(*EIGHTHS, grade=grade)))
    assert core == [f"<output>1</output><output>{panels}</output>" for panels in (2, 4, 8)]


def test_a_sheet_that_is_drawn_is_said_to_be_folded_and_opened_and_has_as_many_new_lines():
    """Nobody folds the page, or a sheet that is not shaded."""
    sheet = core_sheet(LESSONS["halving"])
    size = SIZES["regular"].models
    for parts, words in ((2, "in half"), (3, "into 3 equal parts")):
        item = make_same_size(fraction(3, 4), parts)
        placed = PlacedItem(item, item_picture(item, Level.CORE, size))
        page = html(replace(sheet, items=(placed,)), "regular", key=False)
        folded = f"It is folded {words}, top to bottom, and opened."
        assert f"This sheet has {THREE_FOURTHS} shaded. {folded}" in page
        assert ("Draw the new line." in page) == (parts == 2)


@pytest.mark.parametrize(
    ("steps", "words", "reason"),
    [
        (EIGHTHS, "“One panel is … of the sheet", "1/8, because 8 such panels make the whole."),
        (
            ("fold at 1/3 moving left",),
            "“The smallest panel is …",
            "1/3, because 3 such panels make the whole.",
        ),
        (("fold at 2/5 moving left",), "“The smallest panel is …", "2/5, with any true reason."),
        (("turn over",), "Use the word “panel”.", "Any true sentence with the word."),
    ],
)
def test_a_page_with_most_support_closes_with_the_size_of_a_panel_and_why(steps, words, reason):
    key = page_at(Level.GUIDED, proved(*steps), key=True).replace("⁄", "/")
    assert words in key
    assert reason in re.sub(r"<math>.*?<mn>(\d+)</mn><mn>(\d+)</mn>.*?</math>", r"\1/\2", key)


@pytest.mark.parametrize("grade", [3, 4])
def test_the_key_of_a_class_that_multiplies_no_fractions_multiplies_none(grade):
    """In grade 4 it says of 6 panels of 1/6 that 6 × 1/6 = 1."""
    made = proved(*EIGHTHS, grade=grade)
    item = make_count_or_size(3, 2, Reach.NAMING)
    sheet = replace(core_sheet(made), items=(PlacedItem(item, None),))
    note = note_on(html(sheet, "regular", key=True), "1.")
    assert ("× number" in note) == (grade == 4)


def test_where_a_fold_left_panels_as_they_were_the_size_asked_is_that_of_a_new_one():
    """The second fold cuts 1/2 and leaves 1/2: the panels are 1/2 and 1/4, and only one is asked for."""
    some, every = (
        proved("fold left edge to right edge", "open", "fold left edge to middle", grade=4),
        proved(*EIGHTHS, grade=4),
    )
    assert core_page(some).count("One new panel is") == 1
    assert core_page(some).count("One panel is") == 1
    assert "One new panel" not in core_page(every)
    stretch = [html(sheet_at(Level.STRETCH, made), "regular", key=False) for made in (some, every)]
    assert ["is one new panel?" in page for page in stretch] == [True, False]


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ((2, 3), "Fold a sheet in half. Keep it folded. Fold it into 3 equal parts."),
        ((3, 4), "Fold a sheet into 3 equal parts. Keep it folded. Fold it into 4 equal parts."),
        ((3, 3), "Fold a sheet into 3 equal parts. Keep it folded. Fold into 3 equal parts again."),
    ],
)
def test_two_folds_are_told_in_their_order(parts, words):
    item = make_repeated_halving(tuple(fraction(1, part) for part in parts), Repeated.FOLDS)
    sheet = replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(item, None),))
    assert f"{words} What fraction of the sheet is one panel?" in html(sheet, "regular", key=False)


def test_a_grade_that_multiplies_no_fractions_is_asked_for_none():
    """Fractions times fractions: Common Core State Standards for Mathematics (2010), 5.NF.B.4, grade 5."""
    fourth, fifth = (core_page(LESSONS[name]) for name in ("grade 4", "halving"))
    assert "One panel is" in fourth
    assert "One panel is" not in fifth


@pytest.mark.parametrize("title", ["</title><script>alert(1)</script>", "{{ 7 * 7 }}", "A & B < C", "<b>x"])
def test_a_title_is_text_whatever_it_looks_like(title):
    document = core_page(proved(*EIGHTHS, title=title), key=True)
    assert "<script" not in document
    assert title in list(paragraphs(blocks_of(document)))


def test_the_language_of_the_lesson_is_the_language_of_the_document():
    assert '<html lang="en-GB">' in core_page(proved(*EIGHTHS, language="en-GB"))


def test_a_step_is_written_as_a_sentence():
    assert str(sentence(Open(), "en-US")) == "Open the sheet."
    assert str(sentence(FoldAt(exact(1, 3), Edge.LEFT), "en-US")).startswith(
        "Fold the left part over at <math>"
    )


SIMPLEST = "write the simplest form"


@pytest.mark.parametrize(
    ("grade", "language", "asked"), [(6, "en-GB", True), (5, "en-GB", False), (6, "en-US", False)]
)
def test_a_product_that_can_be_simplified_asks_for_it_where_the_year_does(grade, language, asked):
    """Source: National curriculum in England, mathematics programmes of study (2013), year 6: "multiply
    simple pairs of proper fractions, writing the answer in its simplest form"; no other year asks it.
    """
    both = proved(*EIGHTHS, "open", practice=("2/3 × 3/4", "3/4 × 1/2"), grade=grade, language=language)
    # 6/12 is 1/2; 3/8 is in its simplest form as it is multiplied.
    assert core_page(both).count(SIMPLEST) == (1 if asked else 0)


@pytest.mark.parametrize(("product", "said"), [("2/3 × 4/5", "is less than"), ("3 × 2/5", "is more than")])
def test_why_a_product_is_less_or_more_is_said_as_its_frame_begins(product, said):
    item = make_explain_less(parse_product(product))
    sheet = replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(item, None),), level=Level.GUIDED)
    words = paragraphs(blocks_of(html(sheet, "regular", key=True)))
    frame, answer = (" ".join(one.split()) for one in words if said in one and "Say why" not in one)
    assert frame.startswith(f"… {said} …, because we take")
    assert answer.startswith(f"It {said} number , because we take")


def test_a_sheet_that_is_opened_before_it_is_shaded_is_opened_in_the_words_that_always_open_it():
    page = core_page(LESSONS["shading"])
    said = " ".join(paragraphs(blocks_of(page)))
    assert "At the end, open the sheet. Shade 4 of the 5 rows, from the bottom. Shade 2 of the 3 c" in said
    assert "Panels shaded twice:" in said


def test_a_sign_is_told_in_its_sentence_with_the_reason_why():
    item = make_bigger_or_smaller(fraction(5, 4), fraction(2, 3))
    sheet = replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(item, None),))
    told = note_on(html(sheet, "regular", key=True), "1.")
    assert told == "1. number × number > number . The reason in figures: number > 1."


@pytest.mark.parametrize(
    ("worked", "written"),
    [("1/2 × 3/5", ["3", "10"]), ("10 × 5/8", ["6 1/4"]), ("3 × 3/4", ["2 1/4"]), ("8 × 1/2", ["4"])],
)
def test_a_number_that_may_be_written_in_several_forms_has_one_wide_box(worked, written):
    """50/8 is as right as 6 1/4: a box for a whole number beside a fraction would give the form away."""
    placed = PlacedItem(own("How much?", worked), None)
    (page,) = items_html(replace(core_sheet(LESSONS["halving"]), items=(placed,)))
    told = re.findall(r"<output(?: class=\"wide\")?>([^<]+)</output>", page)
    assert told == written
    assert ('class="wide"' in page) == (len(written) == 1)


@pytest.mark.parametrize("rule", ["add_instead", "keep_common_denominator"])
def test_what_went_wrong_has_two_lines_as_its_answer_takes(rule):
    item = make_mend(parse_product("3/4 × 2/3"), named(rule))
    (page,) = items_html(replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(item, None),)))
    assert page.count('data-lines="2"') == 1


@pytest.mark.parametrize(("practice", "steps", "why"), [(("3 × 2/5",), 3, 2), (("4 × 2/3",), 2, 1)])
def test_two_steps_have_three_lines_and_a_reason_two_but_below_a_row_of_sheets_one_less(practice, steps, why):
    sheet = sheet_at(Level.STRETCH, proved(*EIGHTHS, grade=4, practice=practice))
    lines = {
        placed.item.kind: re.findall(r'data-lines="(\d)"', page)
        for placed, page in zip(sheet.items, items_html(sheet), strict=True)
    }
    assert lines[ItemKind.WHICH_FOLD] == [f"{steps}"]
    assert lines[ItemKind.BIGGER_OR_SMALLER] == [f"{why}"]


def test_twos_that_are_added_stand_on_a_line_with_their_sum():
    (page,) = items_html(
        replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(make_mend_doubling(5), None),))
    )
    assert "2 + 2 + 2 + 2 + 2 = 10".replace(" ", "\u00a0") in page
    assert " =\u00a02\u00a0+" in page


def test_panels_that_are_fewer_are_said_to_be_fewer_than_which():
    item = make_explain_fewer_panels(8, 4, 6)
    (page,) = items_html(replace(core_sheet(LESSONS["halving"]), items=(PlacedItem(item, None),)))
    assert "The panels are the same size, but 4 are fewer than 6." in page
