"""The teacher's plan: everything on it is computed from the lesson, and it fits on three pages."""

import re
from collections import Counter
from dataclasses import replace
from html import unescape
from itertools import groupby, pairwise, product
from operator import itemgetter
from pathlib import Path

import pytest
from lessons_in_words import EIGHTHS, core_sheet, proved
from page_reading import MM, pages_of, text_of

from foldmath.booklets.papers import booklet_papers
from foldmath.making import Part, proved_lesson
from foldmath.making.papers import papers
from foldmath.pages.markup.mathml import stacked
from foldmath.pages.page_pictures import page_count
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PageMaster
from foldmath.pages.pdf.styles import USABLE_HEIGHT_MM, USABLE_WIDTH_MM
from foldmath.pages.printing import Document, printed
from foldmath.slides.slides import SlipSlide, slide_show, slide_show_for_own_pages
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import ItemKind, Level
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE
from foldmath.teachers_plan.after import MOST_CODES
from foldmath.teachers_plan.copies import OwnPages, SharedOut, copy_list
from foldmath.teachers_plan.lesson_time import FOLD, SHADING, hour
from foldmath.teachers_plan.plan import plan, plan_html, plan_pictures
from foldmath.words.rules import short_name
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import with_items

LESSONS = Path(__file__).parents[2] / "lessons"
PUPILS_READ = frozenset({Part.WORKSHEET, Part.TICKET})
MOST_PAGES = 3
LONGEST_BAR_MM = 12
"""Of a fraction; what is longer is a rule."""
LEAST_APART_MM = 1.8
"""Two heads with a rule between them; closer they read as one word."""
LEAST_BELOW_A_RULE_MM = 1.2
"""From a rule to the height that the tallest letters of a line may have."""
LEAST_BELOW_A_STEP_MM = 0.9
"""The same in a row that lines of words fill; closer they touch."""
PRODUCTS = ("2/3 × 4/5", "3/4 × 1/2")
NOTHING_SHARED = SharedOut({}, {}, {})
FOUR = ("2 × 1/4", "3 × 1/8", "2 × 2/5", "3 × 1/6")
TILES = (
    "pleat width into 3",
    "open",
    "pleat height into 5",
    "open",
    "shade 4 of 5 up",
    "shade 2 of 3 across",
)
TEN_HALVINGS = ("fold left edge to right edge", "fold top edge to bottom edge") * 5
TEN_STEPS = (
    *TEN_HALVINGS[:5],
    "open",
    "fold at 1/3 moving left",
    "fold at 1/4 moving bottom",
    "open last",
    "open",
)


def planned(*steps, own=None, **told):
    lesson = proved(*steps, **told)
    return plan(lesson, core_sheet(lesson), own)


def made_up(name):
    """Give a lesson by name: one of the lesson files, or one of ten steps."""
    steps = {"ten-steps": TEN_STEPS, "ten-halvings": TEN_HALVINGS}.get(name)
    if steps:
        return proved(*steps, practice=(*PRODUCTS, "3 × 2/5"), vocabulary=("panel",), notes=("One note.",))
    return proved_lesson(LESSONS / f"{name}.toml")[0]


def plan_pdf(lesson, made, paper, picture_process):
    """Print a plan."""
    scenes = plan_pictures(lesson, made)
    recordings = picture_process.recordings(list(scenes.values())).result()
    master = PageMaster(upright(paper), lesson.lesson.title, made.sheet.code, "page {page} of {pages}")
    document = Document(plan_html(made), master, answers=False)
    pictures = dict(zip(scenes, recordings, strict=True))
    return printed([document], pictures, lesson.lesson.title, lesson.lesson.language)


@pytest.fixture(
    scope="session",
    params=[
        (name, paper)
        for paper in ("letter", "A4")
        for name in ("sail-cloth", "seed-trays", "tile-panels", "ten-steps", "ten-halvings")
    ],
    ids="-".join,
)
def plan_pages(request, tmp_path_factory, picture_process):
    """Give the printed plan of a lesson on a paper, with its plan and the name of the paper."""
    name, paper = request.param
    lesson = made_up(name)
    made = plan(lesson, core_sheet(lesson), None)
    path = tmp_path_factory.mktemp("plans") / f"{name}-{paper}.pdf"
    path.write_bytes(plan_pdf(lesson, made, paper, picture_process))
    return path, made, paper


@pytest.mark.sweep("tile-panels-letter", "ten-steps-A4")
def test_a_plan_of_four_steps_is_one_sheet_and_of_more_a_page_more_at_most(plan_pages):
    path, made, _ = plan_pages
    pages = pages_of(path)
    assert len(pages) <= (2 if len(made.during.rows) <= 4 else MOST_PAGES)
    assert all(len(page["words"]) > 40 for page in pages)


@pytest.mark.sweep("seed-trays-letter")
def test_heads_of_the_error_grid_keep_clear_of_one_another(plan_pages):
    path, made, _ = plan_pages
    names = [short_name(rule, "en-US") for rule in made.after.rules]
    parts = Counter(word for name in names for word in name.split())
    small = [word for word in pages_of(path)[-1]["words"] if word["size"] < 9.5 and word["text"] in parts]
    assert Counter(word["text"] for word in small) == parts + parts
    for _, line in groupby(sorted(small, key=itemgetter("top", "x0")), key=itemgetter("top")):
        for left, right in pairwise(line):
            assert right["x0"] - left["x1"] >= LEAST_APART_MM * MM, (left["text"], right["text"])


def test_no_word_runs_out_of_the_page_or_across_a_rule(plan_pages):
    path, _, paper = plan_pages
    for page in pages_of(path):
        left = (page["width"] - USABLE_WIDTH_MM * MM) / 2
        foot = (page["height"] + USABLE_HEIGHT_MM[paper] * MM) / 2
        cells = [rect for rect in page["rects"] if rect["height"] > 5 * MM]
        for char in page["chars"]:
            if char["text"].isspace():
                continue
            assert left - 1 <= char["x0"]
            assert char["x1"] <= page["width"] - left + 1
            assert char["bottom"] <= foot + 10 * MM
            middle = (char["top"] + char["bottom"]) / 2
            for cell in cells:
                if cell["top"] < middle < cell["bottom"]:
                    for rule in (cell["x0"], cell["x1"]):
                        assert not char["x0"] + 0.5 < rule < char["x1"] - 0.5, (char["text"], page["width"])


@pytest.mark.sweep("seed-trays-letter")
def test_the_last_rule_of_the_minutes_keeps_clear_of_the_words_below_it(plan_pages):
    first = pages_of(plan_pages[0])[0]
    words = next(word for word in first["words"] if word["text"] == "Accuracy:")
    rules = [line for line in first["lines"] if line["x1"] - line["x0"] > LONGEST_BAR_MM * MM]
    rule = max(line["bottom"] for line in rules if line["top"] < words["bottom"])
    assert words["top"] - rule >= LEAST_BELOW_A_RULE_MM * MM


@pytest.mark.sweep("sail-cloth-letter", "tile-panels-letter")
def test_what_is_done_at_a_step_keeps_clear_of_the_rule_above_it(plan_pages):
    (page,) = (
        page for page in pages_of(plan_pages[0]) if "Likely" in [word["text"] for word in page["words"]]
    )
    acts = [
        word for word in page["words"] if word["text"] in ("Fold", "Open") and round(word["size"], 1) == 10.5
    ]
    rules = [line["bottom"] for line in page["lines"] if line["x1"] - line["x0"] > 100 * MM]
    assert len(acts) > 1
    for act in acts:
        above = [act["top"] - rule for rule in rules if rule < act["top"]]
        assert min(above) >= LEAST_BELOW_A_STEP_MM * MM


def test_a_fraction_is_stacked_and_never_slashed(plan_pages):
    assert not [char for page in pages_of(plan_pages[0]) for char in page["chars"] if char["text"] == "/"]


def test_teacher_s_words_are_large_enough_to_read_and_only_the_notice_is_smaller(plan_pages):
    for page in pages_of(plan_pages[0]):
        small = " ".join(word["text"] for word in page["words"] if round(word["size"], 1) < 9)
        assert not small or small.startswith("© Copyright 2010")


def test_codes_are_never_printed_without_the_notice_of_their_owners(plan_pages):
    path, made, _ = plan_pages
    text = " ".join(text_of(path))
    assert made.before.standards
    assert all(standard.code in text for standard in made.before.standards)
    assert made.before.standards[0].curriculum.notice in text


def test_an_english_plan_names_years_and_carries_the_english_notice():
    html = plan_html(planned(*EIGHTHS, practice=PRODUCTS, grade=6, language="en-GB"))
    assert "Year 6" in html
    assert "Open Government Licence" in html
    assert "NF" not in html
    assert "Council of Chief State School Officers" not in html


@pytest.mark.parametrize("steps", [EIGHTHS, TILES, TEN_STEPS, TEN_HALVINGS, ("fold at 1/3 moving left",)])
def test_every_likely_slip_is_false_and_every_sentence_to_listen_for_is_true(steps):
    made = planned(*steps, practice=PRODUCTS)
    for row in (*made.during.rows, *made.during.short_rows):
        assert row.slip
        assert not check_claim(str(row.slip.claim)).true
        true = [row.fold.count, *row.fold.sizes, row.whole] if row.fold else []
        assert all(check_claim(str(sentence)).true for sentence in true if sentence)


def test_a_prediction_of_6_is_the_slip_of_the_third_halving_but_4_is_right_at_the_second():
    slips = [row.slip for row in planned(*EIGHTHS).during.rows]
    assert [(slip.kind, str(slip.answer)) for slip in slips] == [
        ("count for size", "2"),
        ("count for size", "4"),
        ("adds", "6"),
    ]


def test_when_only_some_panels_are_cut_the_slip_is_to_multiply_all():
    last = planned("fold at 1/3 moving left", "fold at 1/2 moving left").during.rows[-1]
    assert (last.slip.kind, last.panels, str(last.slip.answer)) == ("all cut", 3, "4")


def test_a_shading_is_mistaken_strip_for_panel_and_then_once_for_twice():
    kinds = [(row.slip.kind, str(row.slip.answer)) for row in planned(*TILES).during.rows[2:]]
    assert kinds == [("strips", "4/15"), ("all shading", "12/15")]


def test_who_is_not_told_to_shade_inside_the_first_strips_shades_right_across():
    """A step between them parts the two shadings, so that nothing is said of the first at the second."""
    apart = planned(*TILES[:-1], "turn over", "turn over", TILES[-1]).during.rows[-1]
    assert str(apart.slip.answer) == "14/15"


def test_a_refolded_crease_makes_no_new_panels_and_the_slip_doubles_them():
    row = planned("fold left edge to right edge", "open", "fold left edge to right edge").during.rows[-1]
    assert (row.slip.kind, row.panels, str(row.slip.answer)) == ("no new crease", 2, "4")


def test_three_folds_and_two_products_fill_forty_five_minutes():
    time = hour((FOLD,) * 3, 2)
    assert (time.minutes, time.folding, time.multiplying, time.spare) == (45, 15, 15, 0)
    assert (time.later_steps, time.later_products) == (0, 0)


@pytest.mark.parametrize("products", range(7))
@pytest.mark.parametrize("folds", range(12))
@pytest.mark.parametrize("shadings", [0, 2])
def test_a_lesson_is_forty_five_minutes_however_much_it_has_and_says_what_is_left(folds, shadings, products):
    steps = (FOLD,) * folds + (SHADING,) * shadings
    time = hour(steps, products)
    assert time.minutes == 45
    assert time.steps + time.later_steps == len(steps)
    assert time.products + time.later_products == products
    assert sum(steps[: time.steps]) <= time.folding
    assert min(time.spare, time.folding, time.multiplying) >= 0
    assert not (time.later_products and time.spare >= 8)


def test_a_class_of_28_shares_34_sheets_and_a_roster_counts_its_own():
    usual = copy_list(None)
    assert usual.levels == (("core", 14), ("guided", 8), ("stretch", 6))
    assert (usual.pupils, usual.sheets, usual.tickets) == (28, 34, 14)
    own = copy_list(OwnPages({"stretch": 1, "core": 5, "guided": 0}, (), 12, NOTHING_SHARED))
    assert own.levels == (("core", 5), ("stretch", 1))
    assert (own.sheets, own.tickets, own.own_pages) == (8, 3, 12)


def test_the_copy_list_is_printed_as_a_teacher_reads_it():
    assert "14 core, 8 guided, 6 stretch; 34 sheets of paper" in plan_html(planned(*EIGHTHS))


def test_a_class_with_own_pages_prints_one_file_and_is_sent_to_no_page_that_it_has_not():
    own = OwnPages({"core": 2}, (), 4, SharedOut({"exit-ticket.pdf": 2, "exit-ticket-es.pdf": 3}, {}, {}))
    html = plan_html(planned(*EIGHTHS, practice=PRODUCTS, own=own))
    assert "<b>Print, two-sided:</b> class-worksheets.pdf, 4 pages (2 core); 3 sheets of paper" in html
    tickets = "1&#160;×&#160;exit-ticket.pdf, 2&#160;×&#160;exit-ticket-es.pdf"
    assert f"{tickets}, two tickets to a page; class-key.pdf." in html
    assert "Worksheet " not in html
    assert "<b>Print:</b> class-worksheets.pdf" in plan_html(planned("turn over", own=own))


def test_a_class_is_told_how_many_booklets_of_each_language_to_print_and_a_folding_page_for_every_pair():
    booklets, foldings = ({f"{name}.pdf": 21, f"{name}-es.pdf": 3} for name in ("booklet", "booklet-folding"))
    made = proved_lesson(LESSONS / "fraction-diary.toml")[0]
    pairs = "11 × booklet-folding.pdf, 2 × booklet-folding-es.pdf"
    all_sheets = "21 × booklet.pdf, 3 × booklet-es.pdf at full size"
    for sheets, said in (
        (booklets, f"{all_sheets}; for pairs, {pairs}."),
        ({}, f"{pairs}, for pairs."),
    ):
        own = OwnPages({"core": 24}, (), 48, SharedOut({}, sheets, foldings))
        html = plan_html(plan(made, core_sheet(made), own))
        assert said in unescape(html).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("practice", "rest", "later"),
    [
        (FOUR[:1], "Then from number 2 on", 0),
        (FOUR[:3], "Then from number 4 on", 1),
        (FOUR, None, 2),
        ((), "From number 1 on", 0),
    ],
)
def test_the_plan_names_the_lesson_s_own_products_and_numbers_that_all_pages_share(practice, rest, later):
    """A product that is chosen, as in grade 4, has another number on each page, or stands on one alone."""
    made = planned(*EIGHTHS, practice=practice, grade=4)
    assert [product.text for product in made.before.products] == list(practice)[: len(practice) - later]
    assert len(made.before.later_products) == later
    html = plan_html(made)
    assert (rest in html) if rest else ("rom number" not in html)


def test_a_fourth_product_stands_on_no_page_of_pupils_own_and_so_not_on_their_plan():
    own = OwnPages({"core": 2}, (), 4, NOTHING_SHARED)
    made = [planned(*EIGHTHS, practice=FOUR, own=pages) for pages in (None, own)]
    assert [len(each.before.products + each.before.later_products) for each in made] == [4, 3]


def test_worksheets_that_go_on_overleaf_are_copied_two_sided(all_pages):
    for made in all_pages.values():
        assert all(page_count(made.at(level).worksheet.read_bytes()) > 1 for level in Level)
        assert "Copy, two-sided: 14 core, 8 guided" in " ".join(text_of(made.plan))


def test_a_worksheet_of_one_page_is_copied_as_it_is():
    assert "<b>Copy:</b> 14 core" in plan_html(planned("turn over"))


def test_a_lesson_stops_early_where_panels_are_equal_and_few_layers_lie():
    assert planned(*EIGHTHS).during.stop.number == 2
    assert planned("fold at 1/3 moving left", "fold at 1/4 moving bottom").during.stop is None


def test_more_than_eight_layers_are_warned_of():
    assert [row.layers for row in planned(*TEN_HALVINGS).during.thick][:2] == [16, 32]
    assert planned(*EIGHTHS).during.thick == ()
    assert "too thick" in plan_html(planned(*TEN_HALVINGS))


def test_early_finishers_halve_once_more_and_only_predict_past_eight_layers():
    fourths = planned(*EIGHTHS[:2]).during.halving
    said = [str(sentence) for sentence in (fourths.count, fourths.size, fourths.whole)]
    assert said == ["4 × 2 = 8", "1/2 of 1/4 = 1/8", "8 × 1/8 = 1"]
    assert fourths.folded
    assert not planned(*EIGHTHS).during.halving.folded


def test_where_no_halving_can_be_said_early_finishers_swap_the_factors():
    made = planned(*TILES, practice=PRODUCTS)
    assert made.during.halving is None
    assert "swap the factors" in plan_html(made)


def test_the_starter_asks_with_the_denominators_of_the_lesson():
    starter = planned(*EIGHTHS, practice=("2/3 × 4/5",)).before.starter
    assert str(starter.part) == "4/5"
    assert check_claim(f"{starter.lesser} < {starter.greater}").true
    assert planned("turn over").before.starter is None


def test_the_grid_has_the_rules_of_the_key_and_the_slips_of_the_folds():
    made = planned(*EIGHTHS, practice=PRODUCTS)
    in_key = {wrong.rule for placed in made.sheet.items for wrong in placed.item.wrong}
    assert len(made.after.rules) <= MOST_CODES
    assert set(made.after.rules) <= in_key | {COUNT_FOR_SIZE, ADD_FOLDS}
    assert made.after.rules[-2:] == (COUNT_FOR_SIZE, ADD_FOLDS)
    assert made.after.grid_rows == 14


@pytest.mark.parametrize(
    ("practice", "grade", "on_sheets", "inside"),
    [
        (("2/3 × 4/5",), 5, False, True),
        (("3 × 2/5",), 4, True, False),
        (("2/3 × 4/5", "3 × 2/5"), 5, True, True),
    ],
)
def test_tomorrow_s_groups_shade_as_the_products_are_shaded_that_they_got_wrong(
    practice, grade, on_sheets, inside
):
    html = plan_html(planned(*EIGHTHS, practice=practice, grade=grade))
    assert ("lay out the sheets, shade each, and count the parts of all" in html) == on_sheets
    assert ("shade it again, one part inside the other" in html) == inside
    groups = html[html.index("Groups for tomorrow") :]
    assert re.findall(r"<b>(\d)\.</b>", groups) == ["1", "2", "3", "4"][: 2 + on_sheets + inside]


def test_a_rule_of_both_kinds_of_product_goes_with_the_parts_of_parts():
    after = planned(*EIGHTHS, practice=("2/3 × 4/5", "3 × 2/5"), grade=5).after
    assert "add" in [rule.code for rule in after.rules]
    assert {rule.code for rule in after.on_sheets} == {"both", "drop"}


@pytest.mark.parametrize(
    ("steps", "grade", "codes"),
    [
        (EIGHTHS, 3, ["count", "plus"]),
        (("fold at 1/3 moving left", "fold at 1/2 moving left"), 3, ["every", "size"]),
        (TILES, 5, ["count", "plus", "all"]),
    ],
)
def test_the_grid_has_a_column_for_every_mistake_that_is_listened_for_at_a_fold(steps, grade, codes):
    made = planned(*steps, grade=grade)
    at_folds = [rule.code for rule in made.after.rules if rule.at_folds]
    assert at_folds == codes
    assert short_name(made.after.rules[-1], "en-US") in plan_html(made)


@pytest.mark.parametrize(
    ("steps", "middle", "by_eye"),
    [
        (EIGHTHS, True, None),
        (TILES, False, "The thirds and fifths are hard to find:"),
        (("fold left edge to 1/3",), False, "The sixths are hard to find:"),
        (
            ("pleat width into 4", "open", "fold top edge to bottom edge"),
            True,
            "The fourths are hard to find:",
        ),
    ],
)
def test_what_is_hard_to_find_is_what_the_lesson_folds(steps, middle, by_eye):
    html = plan_html(planned(*steps))
    assert ("The middle is hard to find:" in html) == middle
    assert re.findall("The [a-z ]+ are hard to find:", html) == ([by_eye] if by_eye else [])


def test_a_lesson_that_stops_early_tells_what_the_first_question_of_the_ticket_is_then():
    fourth = "<math><mfrac><mn>1</mn><mn>4</mn></mfrac></math>"
    assert f" whole sheet. Ticket 1 is then: 4 panels, {fourth}.</p>" in plan_html(planned(*EIGHTHS))
    assert "Ticket 1" not in plan_html(planned("fold left edge to right edge"))


def test_scissors_are_cautioned_against_only_where_a_step_cuts():
    made = planned(*EIGHTHS)
    assert "Scissors" not in plan_html(made)
    cutting = plan_html(replace(made, during=replace(made.during, cuts=True)))
    assert "the school’s own rules come first" in cutting
    assert "folded edge" in cutting


def test_in_grade_3_no_fraction_is_multiplied_by_a_fraction():
    html = plan_html(planned(*EIGHTHS, grade=3))
    assert "</mfrac></math> of <math>" not in html
    assert "each is <math><mfrac><mn>1</mn><mn>8</mn></mfrac></math> of the sheet" in html


def test_grade_3_hears_that_8_eighths_make_the_whole_and_grade_4_multiplies_them():
    third, fourth = (planned(*EIGHTHS, grade=grade) for grade in (3, 4))
    assert "8 eighths make 1 whole sheet" in plan_html(third)
    assert "4 fourths make 1 whole sheet" in plan_html(third)
    assert "eighths make" not in plan_html(fourth)
    assert [str(row.whole) for row in fourth.during.rows][-1] == "8 × 1/8 = 1"
    slips = [(str(row.slip.claim), str(row.slip.answer)) for row in third.during.rows]
    assert slips == [("1/2 = 2", "2"), ("1/4 = 4", "4"), ("4 + 2 = 8", "6")]
    assert "</mfrac></math>”" not in plan_html(third)


@pytest.mark.parametrize(("steps", "parts"), [(EIGHTHS[:2], 8), (EIGHTHS, 0)], ids=["eighths", "sixteenths"])
def test_grade_3_names_the_parts_of_one_more_halving_unless_they_are_none_of_its_own(steps, parts):
    made = planned(*steps, grade=3)
    further = made.during.halving
    assert (further.parts, further.whole) == (parts, None)
    assert f"{further.panels} panels" in plan_html(made).replace("\xa0", " ")
    assert "sixteenths" not in plan_html(made)


def test_grade_3_talks_about_the_count_and_the_size_of_its_own_last_fold():
    said = re.sub("<[^>]+>", "", plan_html(planned(*EIGHTHS, grade=3)))
    assert "Talk: 8 panels, each 18 of the sheet. Which is the count, and which the size?" in said
    turned = plan_html(planned("turn over", grade=3))
    assert "Talk: count and size are two different questions" in turned


@pytest.mark.parametrize(
    ("grade", "steps", "whole"),
    [(4, EIGHTHS[:2], "8 × 1/8 = 1"), (4, EIGHTHS, None), (5, EIGHTHS, "16 × 1/16 = 1")],
)
def test_grade_4_closes_one_more_halving_only_with_denominators_of_its_own(grade, steps, whole):
    made = planned(*steps, grade=grade).during.halving
    assert (made.whole and str(made.whole), made.parts) == (whole, 0)


def test_a_lesson_that_folds_nothing_still_has_a_plan():
    assert "teacher’s plan" in plan_html(planned("turn over"))


def test_the_steps_are_sentences_and_name_the_whole():
    html = plan_html(planned("fold left edge to right edge"))
    assert "Fold the left edge to the right edge." in html
    assert "What fraction of the whole sheet is one panel?" in html


def test_where_no_class_could_say_the_sizes_the_objective_is_to_count():
    slanted = planned("fold bottom left corner to the middle of the top edge", "fold left edge to right edge")
    plain = planned("fold along (0, 0) (1/3, 1) moving (0, 1)", "open", "fold top edge to bottom edge")
    assert "Students fold a sheet into 4 panels and count after every fold." in plan_html(slanted)
    assert "4 panels and say what fraction of it each one is." in plan_html(plain)


def test_only_steps_that_change_the_panels_count_for_the_objective():
    steps = (
        "fold left edge to right edge",
        "open",
        "fold left edge to right edge",
        "open",
        "shade 1 of 2 across",
    )
    assert [row.moment for row in planned(*steps).during.changing] == [0, 4]


def test_folds_have_the_numbers_of_the_worksheet_and_what_follows_the_last_stands_at_the_end():
    made = planned(*TILES, practice=PRODUCTS)
    assert [row.number for row in made.during.rows] == [1, 2, None, None]
    html = plan_html(made)
    assert "Steps 1 and 2: predict, fold, open, count, close" in html
    assert "At the end: shade and count" in html
    assert (html.count(">At the end<"), html.count(">Then<")) == (1, 1)
    assert "At the end" not in plan_html(planned(*EIGHTHS))


def test_a_shading_between_folds_has_the_number_of_the_fold_before_which_the_worksheet_has_it():
    made = planned(*TILES[:2], "shade 1 of 3 across", *TILES[2:4])
    assert [row.number for row in made.during.rows] == [1, 2, 2]
    assert made.sheet.folding.rows[1].before[-1].text == "shade 1 of 3 across"
    assert "Steps 1 and 2: predict" in plan_html(made)


def test_folds_and_a_shading_that_are_left_for_next_time_are_named_as_on_the_worksheet():
    made = planned(*("fold left edge to right edge", "open") * 7, "shade 1 of 2 across")
    assert (made.before.later.numbers, made.before.later.end) == ((7,), True)
    assert "Next time: step 7; the shading at the end." in plan_html(made)


def test_a_shading_is_counted_in_panels_and_then_measured_by_the_sheet():
    html = re.sub(r"<m?frac><mn>(\d+)</mn><mn>(\d+)</mn></m?frac>", r"\1/\2", plan_html(planned(*TILES)))
    text = re.sub(r"<[^>]+>", " ", html).replace("  ", " ")
    assert re.findall(r"(\d+ panels) +(\d+/\d+) +of the sheet", text)[-2:] == [
        ("12 panels", "12/15"),
        ("8 panels", "8/15"),
    ]
    assert "of the panels" not in text


def test_a_part_of_a_shaded_part_is_shaded_inside_it_on_the_plan_as_on_the_worksheet():
    html = plan_html(planned(*TILES))
    assert "Shade 4 of the 5 rows. " not in html
    assert "Shade 2 of the 3 columns, inside the shaded part." in html


def test_a_long_lesson_says_what_is_left_for_next_time_and_lists_no_more_than_fits():
    made = planned(*("fold left edge to right edge", "open") * 30)
    assert made.before.hour.later_steps == 30 - made.before.hour.steps
    assert len(made.during.rows) + len(made.during.short_rows) + made.during.unlisted == 30
    assert "Next time: steps 7 to 30." in plan_html(made)


def test_the_lesson_stops_at_the_last_fold_but_one_that_is_good_and_at_the_last_only_if_no_other_is():
    assert planned("fold left edge to right edge").during.stop.number == 1
    assert planned("fold left edge to right edge", "fold top edge to bottom edge").during.stop.number == 1
    assert planned(*EIGHTHS, "fold top edge to bottom edge").during.stop.number == 3


@pytest.mark.parametrize(
    ("steps", "practice", "told"),
    [
        (TILES, ("2/3 × 4/5",), "the product needs every step. Leave out the talk."),
        (TILES, PRODUCTS, "the product needs every step. Leave out <math>"),
        (TILES[:5], PRODUCTS, "stop after step 1."),
    ],
)
def test_where_a_product_is_shaded_no_fold_is_left_out_for_want_of_time(steps, practice, told):
    assert told in plan_html(planned(*steps, practice=practice))


@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_plan_and_slides_ask_whether_the_pages_own_sentence_is_true_and_the_lessons_where_it_has_none(name):
    made = made_up(name)
    sheet = core_sheet(made)
    talks = [slide.talk for slide in slide_show(made, sheet).slides if isinstance(slide, SlipSlide)]
    own = sheet.judged.talk if sheet.judged else sheet.folding.talk
    assert talks == ([own] if own else [])
    assert all(check_claim(str(talk.claim)).true is talk.true for talk in talks)
    assert all(check_claim(str(talk.really)).true for talk in talks)
    assert ("Talk: is" in plan_html(plan(made, sheet, None))) == bool(talks)


@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_a_class_with_pages_of_its_own_talks_about_a_sentence_that_is_on_nobodys_page(name):
    made = made_up(name)
    sheet = core_sheet(made)
    show = slide_show_for_own_pages(made, sheet)
    talks = [slide.talk for slide in show.slides if isinstance(slide, SlipSlide)]
    planned = plan(made, sheet, OwnPages({"core": 28}, (), 56, NOTHING_SHARED))
    assert [planned.talk] == (talks or [None])
    for talk in talks:
        assert check_claim(str(talk.really)).true
        assert not check_claim(str(talk.claim)).true
        for number, level in product(range(10), Level):
            page = with_items(sheet.folding, made, level, SIZES["regular"].models, seed=number)
            assert stacked(talk.claim.asked) not in html(page, "regular", key=True)


@pytest.mark.parametrize(
    ("steps", "asked", "true"),
    [
        (EIGHTHS, "8 × 1/4 = 1", "8 × 1/8 = 1"),
        (TILES[:4], "15 × 1/3 = 1", "15 × 1/15 = 1"),
        ((*EIGHTHS[:2], "fold at 1/3 moving left"), "4 × 1/2 = 1", "4 × 1/4 = 1"),
        (EIGHTHS[:1], None, None),
        (("fold at 1/3 moving left",), None, None),
    ],
)
def test_the_talk_of_a_class_is_of_the_last_fold_that_cuts_all_panels_alike_and_never_of_the_first(
    steps, asked, true
):
    talk = folding_part(proved(*steps)).talk
    assert (talk and str(talk.claim), talk and str(talk.really)) == (asked, true)


def test_a_core_page_that_tells_of_a_booklet_asks_of_a_sentence_and_after_three_folds_of_no_mistake():
    pages = {name: core_sheet(made_up(name)) for name in ("tile-race", "fraction-diary")}
    assert all(page.judged for page in pages.values())
    tile, diary = ({placed.item.kind for placed in page.items} for page in pages.values())
    assert ItemKind.MEND in tile - diary
    assert ItemKind.COUNT_OR_SIZE in diary


@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_a_shipped_lesson_teaches_the_words_that_its_pages_use(name):
    made = made_up(name)
    lesson = made.lesson
    bare = replace(made, lesson=replace(lesson, vocabulary=(), trade_words=()))
    pages = [document.html for document in papers(bare, "letter", "regular", PUPILS_READ).documents.values()]
    if lesson.booklet:
        pages += booklet_papers(bare, lesson.booklet, "letter", "regular").html
    read = re.sub("<[^>]+>", " ", " ".join(pages)).lower()
    assert [
        word for word in (*lesson.trade_words, *lesson.vocabulary) if not re.search(rf"\b{word}", read)
    ] == []


def test_a_booklet_of_paper_that_no_usual_printer_takes_is_said_to_need_another():
    told = {
        name: plan_html(plan(lesson, core_sheet(lesson), None))
        for name in ("plank-marks", "fraction-diary")
        for lesson in [proved_lesson(LESSONS / f"{name}.toml")[0]]
    }
    wanted = "Its sheet is tabloid: it needs a printer that takes it, or a copy shop."
    assert [wanted in page for page in told.values()] == [True, False]


@pytest.mark.parametrize(("pupils", "pages"), [(60, 3), (61, 3), (200, 4)])
def test_the_grid_of_a_class_stands_together_and_that_of_a_longer_list_goes_on(
    pupils, pages, picture_process
):
    labels = tuple(f"Pupil {number}" for number in range(pupils))
    lesson = proved(*EIGHTHS)
    own = OwnPages({"core": pupils}, labels, 2 * pupils, NOTHING_SHARED)
    made = plan(lesson, core_sheet(lesson), own)
    assert made.after.goes_on is (pupils > 60)
    assert page_count(plan_pdf(lesson, made, "letter", picture_process)) == pages
