"""A worksheet says what the folds show, as far as pupils can follow, and checks every claim it makes."""

import re
from collections import Counter
from dataclasses import replace
from itertools import product
from pathlib import Path

import pytest
from lessons_in_words import EIGHTHS, core_sheet, proved, sheet_at

from foldmath.drawing.area_models import Guide
from foldmath.drawing.scenes import Hatching
from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Kept, PracticeRules
from foldmath.making import proved_lesson
from foldmath.practice.choosing import CHOOSING, PLANS, choose
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import ItemKind, Level, Reach, ShadeItem, make_count_or_size, make_shade
from foldmath.statements.products import parse_product
from foldmath.statements.ratios import fraction
from foldmath.worksheets import worksheet
from foldmath.worksheets.exit_ticket import PANELS, exit_ticket
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.item_pictures import GUIDES, item_picture
from foldmath.worksheets.picture_book import SIZES, diagrams, folding_pictures, item_pictures
from foldmath.worksheets.version_code import ALPHABET, LENGTH, LEVEL_SIGNS, version_code
from foldmath.worksheets.word_bank import MOST_NAMES, answers, bank, gives_away
from foldmath.worksheets.worksheet import PlacedItem, with_items

PRACTICE = ("2/3 × 4/5", "3 × 2/5")
PAGES = 240
"""Enough that chance gives none of three sentences to much more than a third of them."""

HALVING = proved(*EIGHTHS, "open", practice=PRACTICE)
LESSONS = [proved_lesson(path)[0] for path in sorted((Path(__file__).parents[2] / "lessons").glob("*.toml"))]
lessons = pytest.mark.parametrize("lesson", LESSONS, ids=lambda made: made.lesson.title)
lessons_that_multiply = pytest.mark.parametrize(
    "lesson",
    [made for made in LESSONS if reach(made.lesson.grade, made.lesson.followed) is not Reach.NAMING],
    ids=lambda made: made.lesson.title,
)
"""Those of grades that multiply fractions."""
levels = pytest.mark.parametrize("level", Level, ids=lambda level: level.value)
REGULAR = SIZES["regular"].models


def folding_of(*steps, **told):
    return folding_part(proved(*steps, **told))


def words(steps):
    return tuple(step.text for step in steps)


# Folding.


def test_every_fold_has_a_row_with_what_came_before_it_and_what_it_shows():
    folding = folding_of(
        "fold left edge to right edge", "open", "turn over", "fold top edge to bottom edge", "open"
    )
    assert [(row.number, row.step.text, words(row.before)) for row in folding.rows] == [
        (1, "fold left edge to right edge", ()),
        (2, "fold top edge to bottom edge", ("open", "turn over")),
    ]
    assert words(folding.afterwards) == ("open",)
    assert [(row.panels, str(row.count), tuple(map(str, row.sizes))) for row in folding.rows] == [
        (2, "1 × 2 = 2", ("1/2 of 1 = 1/2",)),
        (4, "2 × 2 = 4", ("1/2 of 1/2 = 1/4",)),
    ]


def test_the_slip_names_the_row_of_its_fold_and_not_the_step():
    slips = folding_of("turn over", *EIGHTHS, "open").slips
    assert [(slip.row, slip.panels, str(slip.claim)) for slip in slips] == [
        (3, 8, "4 × 1/2 = 8"),
        (2, 4, "2 × 1/2 = 4"),
        (1, 2, "1 × 1/2 = 2"),
    ]


@pytest.mark.parametrize(
    ("steps", "opens"),
    [(("open",), True), (("open last",), False), (("open", "turn over"), False), ((), False)],
)
def test_only_opening_the_sheet_at_the_end_is_said_as_one_sentence(steps, opens):
    assert folding_of(*EIGHTHS, *steps).only_opens is opens


@pytest.mark.parametrize(
    ("steps", "some"),
    [
        (EIGHTHS, False),
        (("fold at 1/3 moving left",), False),
        (("fold at 1/3 moving left", "fold left edge to right edge"), True),
        (("fold left edge to right edge", "open", "fold left edge to right edge"), False),
    ],
)
def test_panels_that_a_fold_left_whole_beside_others_that_it_cut_are_asked_about(steps, some):
    assert (folding_of(*steps).some_cut is not None) is some


@pytest.mark.parametrize(
    ("practice", "twice"),
    [(("3 × 2/5", "2 × 2/5"), False), (("3 × 2/5", "2/3 × 4/5"), True), (("5/4 × 2/3",), True)],
)
def test_parts_shaded_twice_are_told_of_where_a_model_has_them(practice, twice):
    items = tuple(PlacedItem(make_shade(parse_product(text)), None) for text in practice)
    sheet = replace(core_sheet(HALVING), items=items)
    assert sheet.shades_twice is twice


def test_a_lesson_without_folds_has_no_rows_and_no_slip():
    folding = folding_of("turn over", "turn left")
    assert (folding.rows, folding.slips, folding.whole, folding.legend) == ((), (), None, ())


def test_more_than_two_kinds_of_cut_are_told_as_a_tally():
    row = folding_of("fold at 1/3 moving left", "fold at 1/4 moving bottom").rows[1]
    assert row.sizes == ()
    assert [(count, str(area)) for count, area in row.tally] == [
        (1, "1/12"),
        (1, "1/6"),
        (1, "1/4"),
        (1, "1/2"),
    ]


def test_sizes_too_small_for_pupils_are_not_asked():
    """No pupil sentence with a denominator above 24 [common practice, no source]."""
    row = folding_of("pleat width into 5", "open", "pleat height into 6").rows[1]
    assert (str(row.count), row.sizes, row.tally) == ("5 × 6 = 30", (), ())


def test_a_fold_along_an_old_crease_cuts_nothing():
    row = folding_of("fold left edge to right edge", "open", "fold right edge to left edge").rows[1]
    assert (row.cut, row.count, row.panels) == (False, None, 2)


def test_the_slip_is_a_false_claim_and_its_mending_is_two_true_ones():
    """Counting written as size, 4 × 1/2 = 8, is the common slip [common practice, no source]."""
    slip = folding_part(HALVING).slips[0]
    assert str(slip.claim) == "4 × 1/2 = 8"
    assert not check_claim(str(slip.claim)).true
    assert (str(slip.count), str(slip.size)) == ("4 × 2 = 8", "1/2 of 1/4 = 1/8")
    assert check_claim(str(slip.count)).true
    assert [str(claim) for claim in slip.corrections] == ["4 × 2 = 8", "4 × 1/2 = 2"]
    assert all(check_claim(str(claim)).true for claim in slip.corrections)
    assert check_claim(str(slip.size)).true


@pytest.mark.parametrize(
    ("steps", "legend"),
    [
        (EIGHTHS, ("valley",)),
        (("fold left edge to right edge, behind",), ("mountain",)),
        (("pleat width into 3", "open", "fold top edge to bottom edge"), ("valley", "mountain", "crease")),
        (("pleat width into 2",), ("valley",)),
    ],
)
def test_the_legend_names_the_lines_that_the_pictures_have_and_no_other(steps, legend):
    assert folding_of(*steps).legend == legend


def test_panels_shaded_twice_are_asked_for_only_where_there_are_some():
    thirds = ("pleat width into 3", "open", "pleat height into 5", "open", "shade 4 of 5 up")
    assert folding_of(*thirds).shaded is None
    assert str(folding_of(*thirds, "shade 2 of 3 across").shaded) == "8/15"


# Three levels of one lesson.


@lessons
def test_all_levels_have_the_same_folds_and_the_same_objective(lesson):
    guided, core, stretch = (sheet_at(level, lesson) for level in Level)
    assert guided.folding == core.folding == stretch.folding


@lessons
def test_guided_pages_have_an_example_and_three_items_or_four_without_a_model_and_the_others_six(lesson):
    """Two fewer stand at core below what is told of a booklet."""
    sheets = {level: sheet_at(level, lesson) for level in Level}
    guided, core, stretch = (len(sheet.items) for sheet in sheets.values())
    assert guided == (3 if sheets[Level.GUIDED].shading else 4)
    told = lesson.lesson.title in ("Fraction diary", "A part of a part")
    assert core == 6 - 2 * told
    assert stretch == 6
    assert [bool(sheet.example) for sheet in sheets.values()] == [True, False, False]


@lessons
def test_the_example_solves_nothing_that_is_asked_of_the_class_or_on_its_ticket(lesson):
    """Two pupils side by side, on different levels, find no answer of one on the page of the other."""
    sheets = [sheet_at(level, lesson) for level in Level]
    solved = sheets[0].example.item
    asked = [placed.item for sheet in sheets for placed in sheet.items]
    assert solved.asks not in {item.asks for item in asked}
    assert solved.working.worked not in {item.working.worked for item in asked}
    assert solved.answer not in {item.answer for item in asked}
    assert solved.answer not in {area for row in sheets[0].folding.rows for area in row.areas}
    assert exit_ticket(sheets[0].folding, sheets).answer != solved.answer


def test_the_ticket_asks_another_product_than_the_example():
    """3 × 1/4 = 3/4 is the easiest of both for a class that multiplies by whole numbers."""
    sheet = sheet_at(Level.GUIDED, proved(*EIGHTHS, grade=4, practice=("2 × 1/6",)))
    solved = replace(sheet, example=PlacedItem(make_shade(parse_product("3 × 1/4")), None))
    assert [str(exit_ticket(one.folding, [one]).product.asked) for one in (sheet, solved)] == [
        "3 × 1/4",
        "2 × 2/5",
    ]


@lessons
@levels
def test_no_item_asks_or_shows_what_another_on_the_page_answers(lesson, level):
    items = [placed.item for placed in sheet_at(level, lesson).items]
    assert len({item.asks for item in items}) == len(items)
    for one, other in product(items, items):
        if one is not other:
            assert one.answer not in other.shown, (one.asks, other.asks)


@lessons
@levels
def test_no_item_tells_how_the_slip_is_mended(lesson, level):
    sheet = sheet_at(level, lesson)
    shown = frozenset().union(*(placed.item.shown for placed in sheet.items))
    assert sheet.slip in (None, *sheet.folding.slips)
    assert not sheet.slip or shown.isdisjoint({sheet.slip.count, sheet.slip.size})


@levels
@pytest.mark.parametrize("lesson", ["seed-trays", "tile-race"])
def test_the_same_lesson_asks_the_same_on_every_paper(lesson, level):
    path = Path(__file__).parents[2] / "lessons" / f"{lesson}.toml"
    pages = [sheet_at(level, proved_lesson(path, paper)[0]) for paper in ("letter", "A4")]
    letter, metric = ([*(placed.item.asks for placed in page.items), page.judged] for page in pages)
    assert letter == metric


def test_one_sentence_in_three_is_true_where_pupils_are_asked_if_it_is():
    sheet = core_sheet(HALVING)
    told = [replace(sheet, chosen_by=f"{number}").judged for number in range(300)]
    assert 80 < sum(one.true for one in told) < 120
    assert all(check_claim(str(one.claim)).true is one.true for one in told)
    assert {one.claim for one in told if one.true} == {sheet.slip.rejoined}
    assert str(sheet.folding.slips[0].rejoined) == "2 × 1/8 = 1/4"


@pytest.mark.parametrize(
    ("told", "claims"),
    [
        ((), {"4 × 1/2 = 8", "2 × 1/2 = 4", "1 × 1/2 = 2"}),
        ((4,), {"2 × 1/2 = 4", "1 × 1/2 = 2"}),
        ((4, 2), {"1 × 1/2 = 2"}),
    ],
)
def test_the_slip_is_of_any_fold_that_no_item_tells_of_and_pages_differ_in_it(told, claims, monkeypatch):
    def choose(proved, level, seed):
        return [make_count_or_size(before, 2, Reach.PAIRS) for before in told]

    monkeypatch.setattr(worksheet, "choose", choose)
    pages = [
        with_items(folding_part(HALVING), HALVING, Level.CORE, REGULAR, seed=seed) for seed in range(PAGES)
    ]
    slips = Counter(str(page.slip.claim) for page in pages)
    assert set(slips) == claims
    assert max(slips.values()) < PAGES * 0.42 or len(claims) < 3
    assert core_sheet(HALVING).slip == core_sheet(HALVING).slip


def test_a_level_gives_lines_ticks_or_an_empty_sheet():
    """Lines at guided, ticks at core, nothing at stretch [common practice, no source]."""
    assert GUIDES == {Level.GUIDED: Guide.LINES, Level.CORE: Guide.TICKS, Level.STRETCH: Guide.NOTHING}
    item = make_shade(parse_product("2/3 × 4/5"))
    guided, core, stretch = (item_picture(item, level, REGULAR).blank.marks for level in Level)
    # An area, an outline and a star at every level; 2 + 4 lines, and two ticks in the place of each.
    assert len(guided) - len(stretch) == 6
    assert len(core) - len(stretch) == 12
    assert len(stretch) == 3


@levels
def test_the_shaded_picture_of_a_product_is_the_same_at_every_level(level):
    item = make_shade(parse_product("2/3 × 4/5"))
    picture = item_picture(item, level, REGULAR)
    assert picture.shaded == item_picture(item, Level.CORE, REGULAR).shaded
    assert sum(isinstance(mark, Hatching) for mark in picture.shaded.marks) == 2
    assert not any(isinstance(mark, Hatching) for mark in picture.blank.marks)


@lessons_that_multiply
def test_stretch_asks_first_for_missing_factors_and_comparing(lesson):
    kinds = {placed.item.kind for placed in sheet_at(Level.STRETCH, lesson).items}
    plan = PLANS[reach(lesson.lesson.grade, lesson.lesson.followed), Level.STRETCH]
    # So many have a place beside the lesson's own products.
    assert set(plan[: 6 - len(lesson.lesson.practice)]) <= kinds
    assert ItemKind.MISSING_FACTOR in plan[:3]
    assert ItemKind.BIGGER_OR_SMALLER in plan[:3]


def banked(made):
    rows = bank(sheet_at(Level.GUIDED, made), "en-US")
    return [str(row.word) for row in rows if row.word], [str(row.fraction) for row in rows if row.fraction]


def test_the_word_bank_has_the_lessons_words_each_once():
    assert banked(proved(*EIGHTHS, vocabulary=("crease", "panel", "whole")))[0] == [
        "whole",
        "panel",
        "crease",
    ]


@pytest.mark.parametrize(
    ("steps", "grade", "fractions"),
    [
        (EIGHTHS, 5, ["1/8", "1/4", "1/2"]),
        # In the alphabet, as elsewhere, 1/5 of 1/2 = 1/10 could be read off.
        (("fold left edge to right edge", "pleat width into 5"), 5, ["1/10", "1/2", "1/5"]),
        # A fifth of a third: pupils of grade 5 write both, those of grade 4 the panels only.
        (("pleat width into 3", "open", "pleat height into 5"), 5, ["1/15", "1/5", "1/3"]),
        (("pleat width into 3", "open", "pleat height into 5"), 4, ["1/15", "1/3"]),
        (
            ("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open"),
            5,
            ["1/4", "1/2", "1/6", "1/3", "1/12", "2/3"],
        ),
    ],
)
def test_the_word_bank_has_every_fraction_that_its_folds_make(steps, grade, fractions):
    assert banked(proved(*steps, grade=grade))[1] == fractions


@pytest.mark.parametrize("language", ["en-US", "en-GB", "es"])
@lessons
def test_no_row_of_folds_is_answered_by_copying_the_word_bank_from_its_beginning(lesson, language):
    sheet = sheet_at(Level.GUIDED, lesson)
    told = [row.fraction for row in bank(sheet, language) if row.fraction]
    rows = [answers(row, sheet.folding) for row in sheet.folding.rows[1:]]
    assert any(rows)
    assert not any(gives_away(told, row) for row in rows)


@pytest.mark.parametrize(
    ("asked", "given"),
    [
        ("12 6 4", True),
        ("12 4", True),
        ("6 12 4", False),
        ("12 5 4", True),
        ("4", False),
    ],
)
def test_answers_are_given_away_where_several_stand_in_the_order_in_which_they_are_asked_for(asked, given):
    told, wanted = ([fraction(1, int(below)) for below in parts.split()] for parts in ("12 6 4", asked))
    assert gives_away(told, wanted) is given


def test_a_word_bank_names_eight_fractions_and_no_more():
    assert MOST_NAMES == 8
    many = proved(
        "fold at 1/3 moving left", "open", "fold at 1/4 moving bottom", "open", "fold left edge to right edge"
    )
    written = {str(area) for row in folding_part(many).rows for area in row.areas}
    assert len(written) > MOST_NAMES
    assert len(banked(many)[1]) == MOST_NAMES


# Items.


def test_a_product_has_as_many_sheets_as_it_needs():
    """3 × 2/5 = 6/5: Common Core State Standards for Mathematics (2010), 4.NF.B.4.b."""
    one, several = (
        placed for placed in core_sheet(HALVING).items if placed.item.asks.startswith(("2/3", "3 ×"))
    )
    assert (str(one.item.answer), len(one.item.sheets.sheets)) == ("8/15", 1)
    assert (str(several.item.answer), len(several.item.sheets.sheets)) == ("6/5", 3)
    assert "1 1/5" in map(str, several.item.accepted)


def test_no_wrong_answer_equals_the_right_one_and_none_comes_twice():
    made = proved(*EIGHTHS, practice=("2/3 × 4/5", "3/5 × 1/5", "3/4 × 1/2"))
    for level in Level:
        for placed in sheet_at(level, made).items:
            told = [wrong.answer for wrong in placed.item.wrong]
            assert len(set(told)) == len(told)
            assert not set(told) & {placed.item.answer, *placed.item.accepted}
            if isinstance(placed.item, ShadeItem):
                assert len(told) == 3


# Pictures.


@levels
def test_every_row_and_every_model_has_its_pictures(level):
    sheet = sheet_at(level, HALVING)
    pictures = folding_pictures(HALVING, sheet.folding, "regular") | item_pictures(sheet, "regular")
    assert {f"before-{row.moment}" for row in sheet.folding.rows} | {"whole"} <= set(pictures)
    modelled = [placed.picture for placed in sheet.items if placed.picture]
    assert len(modelled) >= len(PRACTICE)
    for picture in modelled:
        assert pictures[picture.name] == picture.blank
        assert pictures[picture.shaded_name] == picture.shaded


def test_pictures_of_one_name_are_one_picture():
    """Three levels of a lesson share a file's pictures by their names."""
    seen = {}
    for made, level in product(LESSONS, Level):
        for placed in sheet_at(level, made).items:
            if placed.picture:
                assert seen.setdefault(placed.picture.name, placed.picture) == placed.picture


def test_every_step_has_a_picture_before_it_and_its_creases_and_the_last_one_after_it():
    sheet = core_sheet(HALVING)
    drawn = diagrams(HALVING, sheet)
    for step in range(1, 5):
        assert f"step-{step:02}-before" in drawn
        assert f"step-{step:02}-creases" in drawn
    assert "step-04-after" in drawn
    models = sum(placed.picture is not None for placed in sheet.items)
    assert {f"product-{number}" for number in range(1, models + 1)} == {
        name for name in drawn if name.startswith("product")
    }


@pytest.mark.parametrize("columns", range(2, 13))
@pytest.mark.parametrize("rows", [2, 5, 12])
def test_no_cell_of_a_model_is_under_8_mm_where_the_page_allows(columns, rows):
    """A child must be able to shade it [common practice, no source]."""
    model = item_picture(make_shade(parse_product(f"1/{columns} × 1/{rows}")), Level.CORE, REGULAR).blank
    assert REGULAR.cell == 8
    most = (REGULAR.most_width, REGULAR.most_height)
    for side, cells, most_mm in zip((model.width_mm, model.height_mm), (columns, rows), most, strict=True):
        assert (side - 1) / cells >= REGULAR.cell or side == most_mm


# The exit ticket.


@lessons_that_multiply
def test_the_second_question_of_the_ticket_is_asked_on_no_page(lesson):
    sheets = [sheet_at(level, lesson) for level in Level]
    ticket = exit_ticket(folding_part(lesson), sheets)
    factors = sorted([ticket.product.first.text, ticket.product.second.text])
    for placed in (placed for sheet in sheets for placed in sheet.items):
        worked = re.findall(r"\d+/\d+|\d+", str(placed.item.working).partition(" = ")[0])
        assert sorted(worked) != factors, placed.item.asks
    assert check_claim(f"{ticket.product.text} = {ticket.answer}").true


def test_a_class_that_multiplies_no_fractions_names_a_panel_of_another_fold():
    made = proved(*EIGHTHS[:2], grade=3)
    ticket = exit_ticket(folding_part(made), [core_sheet(made)])
    assert ticket.product is None
    assert ticket.row.panels == PANELS[0] == 4
    assert ticket.panels == 6
    assert str(ticket.answer) == "1/6"


def test_the_first_question_is_about_the_sheet_as_the_last_fold_left_it():
    row = exit_ticket(folding_part(HALVING), [core_sheet(HALVING)]).row
    assert (row.panels, str(row.each)) == (8, "1/8")
    unequal = proved(*EIGHTHS, "open", "fold at 1/3 moving left")
    row = exit_ticket(folding_part(unequal), [core_sheet(unequal)]).row
    assert (row.panels, row.each) == (len(unequal.states[-1].panels), None)
    nothing = proved("turn over")
    assert exit_ticket(folding_part(nothing), [core_sheet(nothing)]).row is None


# The version code.


def test_a_code_is_five_signs_that_no_hand_confuses_and_a_sixth_for_the_level():
    code = version_code(HALVING.lesson, Level.CORE)
    assert re.fullmatch(f"[{ALPHABET}]{{{LENGTH}}}[258]", code)
    assert not set("0O1I5S8B2Z") & set(ALPHABET)
    assert len(set(LEVEL_SIGNS.values())) == len(Level)
    assert not set(LEVEL_SIGNS.values()) & set(ALPHABET)


def test_the_codes_of_all_levels_differ_in_their_last_sign_only():
    codes = [version_code(HALVING.lesson, level) for level in Level]
    assert {code[:-1] for code in codes} == {codes[0][:-1]}
    assert len({code[-1] for code in codes}) == len(Level)


def test_a_code_is_the_same_for_the_same_lesson_and_another_for_any_other():
    lessons = [
        proved(*EIGHTHS),
        proved(*EIGHTHS, "open"),
        proved(*EIGHTHS, practice=("1/2 × 1/2",)),
        proved(*EIGHTHS, practice=("1/2 × 1/3",)),
        proved(*EIGHTHS, title="Seed beds"),
        proved(*EIGHTHS, grade=6),
        proved(*EIGHTHS, paper="A4"),
        proved(*EIGHTHS, language="en-GB"),
    ]
    codes = [version_code(made.lesson, Level.CORE) for made in lessons]
    codes.append(version_code(lessons[0].lesson, Level.CORE, "7"))
    codes.append(version_code(lessons[0].lesson, Level.CORE, version=CHOOSING + 1))
    assert len(set(codes)) == len(codes)
    assert version_code(proved(*EIGHTHS).lesson, Level.CORE) == codes[0]


def test_what_was_exchanged_and_kept_is_in_the_code_in_whatever_order_a_run_has_it():
    def code(**rules):
        return version_code(replace(HALVING.lesson, rules=PracticeRules(**rules)), Level.CORE)

    names = [f"{number} × 1/2 = " for number in range(8)]
    others = [code(without=frozenset(names[:count])) for count in range(8)]
    assert len({*others, code(keep=(Kept(Level.CORE, names[0]),))}) == 9
    shuffled = [code(without=frozenset(order)) for order in (names, names[::-1], names[4:] + names[:4])]
    assert len(set(shuffled)) == 1


def test_a_page_in_another_language_has_the_same_numbers_and_the_same_code():
    english = proved(*EIGHTHS, practice=("2/3 × 4/5",))
    spanish = proved(*EIGHTHS, practice=("2/3 × 4/5",), language="es", standards=english.lesson.followed)
    assert version_code(spanish.lesson, Level.CORE) == version_code(english.lesson, Level.CORE)
    assert choose(spanish, Level.CORE) == choose(english, Level.CORE)
