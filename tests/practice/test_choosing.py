"""The items of a page: right, different, easy to hard, fit for the grade, and none gives another away."""

import re
import subprocess
import sys
from dataclasses import replace
from math import prod
from pathlib import Path

import pytest
from answered_again import rightly_answered, written
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson.kinds import kinds_for
from foldmath.lesson.lesson import PracticeRules, WrittenProduct, usual_standards
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import read_lesson
from foldmath.paper.steps import FoldAt, Pleat
from foldmath.plane.numbers import exact
from foldmath.practice.candidates import candidates
from foldmath.practice.choosing import choose
from foldmath.practice.fold_candidates import all_of
from foldmath.practice.page_of_items import Page
from foldmath.practice.scope import scope_of
from foldmath.statements.answers import worth
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import (
    CountOrSizeItem,
    ExplainItem,
    Frame,
    HowManyPiecesItem,
    ItemKind,
    Level,
    MendItem,
    MissingFactorItem,
    Reach,
    Repeated,
    RepeatedHalvingItem,
    SameSizeItem,
    ShadeItem,
    Told,
    WhichFoldItem,
    make_count_or_size,
    make_explain_more_panels,
)
from foldmath.statements.items.which_fold import sizes_of
from foldmath.statements.products import Product, parse_product
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules import likeliest_rules
from foldmath.statements.rules.problems import CountMended, MissingFactor, PartsAdded, PartsOfParts
from foldmath.statements.sentences import shaded_part
from foldmath.statements.standards import Followed
from foldmath.words.rules import what_it_tells, what_to_try

LESSONS = Path(__file__).parents[2] / "lessons"
PROVED = {path.stem: prove(replace(read_lesson(path), items=())) for path in sorted(LESSONS.glob("*.toml"))}
"""What a teacher wrote in her own words is not chosen, and is looked at elsewhere."""
LANGUAGES = ("en-US", "en-GB")
GRADES = (3, 4, 5, 6)

Pages = st.tuples(
    st.sampled_from(sorted(PROVED)),
    st.sampled_from(GRADES),
    st.sampled_from(LANGUAGES),
    st.sampled_from(Level),
    st.integers(0, 10**6),
)


def lesson(name="seed-trays", *, products=(), **changes) -> ProvedLesson:
    """Give a lesson with other grade, language or rules, and with these products only."""
    proved = PROVED[name]
    practice = tuple(WrittenProduct(text, parse_product(text), 1, 1) for text in products)
    return replace(proved, lesson=replace(proved.lesson, practice=practice, **changes))


def page(drawn):
    name, grade, language, level, seed = drawn
    return choose(lesson(name, grade=grade, language=language), level, seed=seed)


def denominators(text: str) -> list[int]:
    return [int(below) for below in re.findall(r"/(\d+)", text)]


def denominators_chosen(item) -> set[int]:
    """Give the denominators that an item was chosen with, without those that its folds or answers make."""
    match item:
        case CountOrSizeItem(before=before, parts=parts):
            return {before, parts}
        case SameSizeItem(given=given):
            return {given.denominator}
        case HowManyPiecesItem(part=part):
            return {part.denominator}
        case WhichFoldItem(steps=steps):
            cuts = [step.parts if isinstance(step, Pleat) else None for step in steps]
            return {cut for cut in cuts if cut}
        case MendItem(problem=PartsAdded(parts=parts)):
            return set(parts)
        case MendItem(problem=CountMended(parts=parts)):
            return {parts}
        case (
            MendItem(problem=Product(first, second))
            | MissingFactorItem(problem=MissingFactor(known=first, missing=second))
        ):
            return {first.denominator, second.denominator} - {1}
        case RepeatedHalvingItem(problem=PartsOfParts(numbers)):
            return {number.denominator for number in numbers}
        case ExplainItem(frame=Frame.SAME_SHADED, second=given):
            return {given.denominator}
    return {number.denominator for number in item.shown if isinstance(number, Ratio)} - {1}


@settings(max_examples=150, deadline=None)
@given(Pages)
def test_every_answer_is_right_when_it_is_worked_out_again(drawn):
    for item in page(drawn):
        assert rightly_answered(item), item


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_every_working_is_true(drawn):
    for item in page(drawn):
        for sentence in str(item.working).split(", "):
            assert check_claim(sentence).true, item


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_wrong_answers_are_wrong_and_worth_different_things(drawn):
    for item in page(drawn):
        values = [worth(wrong.answer) for wrong in item.wrong]
        assert len(set(values)) == len(values) <= 3
        assert not {item.answer, *item.accepted} & {wrong.answer for wrong in item.wrong}
        assert item.wrong or item.kind is ItemKind.EXPLAIN


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_no_item_is_asked_twice_and_none_gives_an_answer_away(drawn):
    items = page(drawn)
    assert len({item.asks for item in items}) == len(items)
    assert len({item.answer for item in items}) == len(items)
    for item in items:
        for other in items:
            assert item.answer not in other.shown, (item.asks, other.asks)


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_items_run_from_easy_to_hard_and_fit_the_grade(drawn):
    items = page(drawn)
    assert [item.difficulty for item in items] == sorted(item.difficulty for item in items)
    assert {item.kind for item in items} <= set(kinds_for(drawn[1], usual_standards(drawn[2])))


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_no_pupil_writes_a_denominator_above_24(drawn):
    for item in page(drawn):
        assert (
            max([*denominators(written(item.answer)), *denominators(str(item.working))], default=1) <= 24
        ), item


@settings(max_examples=60, deadline=None)
@given(Pages)
def test_a_page_has_four_items_with_support_and_six_without(drawn):
    assert len(page(drawn)) == (4 if drawn[3] is Level.GUIDED else 6)


@pytest.mark.parametrize("name", sorted(PROVED))
@pytest.mark.parametrize("level", Level)
def test_the_lessons_own_products_come_first_to_be_shaded(name, level):
    own = [written.product for written in PROVED[name].lesson.practice]
    for seed in (None, 5):
        items = choose(PROVED[name], level, seed=seed)
        named = [item.product for item in items[: len(own)] if isinstance(item, ShadeItem)]
        assert named == own[: len(named)]
        assert len(named) >= min(3, len(own))


def test_no_lesson_of_ours_asks_for_the_product_that_its_own_steps_shade():
    for made in PROVED.values():
        shaded = shaded_part(made.states[-1])
        asked = [item.answer for item in choose(made, Level.CORE)]
        assert not shaded.twice or shaded.counted not in asked


def test_no_item_that_a_glance_solves_stands_on_a_stretch_page():
    asked = [
        item
        for name in PROVED
        for seed in (None, 1, 2, 3)
        for item in choose(PROVED[name], Level.STRETCH, seed=seed)
    ]
    factors = [item for item in asked if item.kind is ItemKind.MISSING_FACTOR and "/" in item.asks]
    assert factors
    assert not any(re.search(r"\b1/\d+ ×|× 1/\d+ =", item.asks) for item in factors)


def test_three_products_of_the_teachers_stand_on_every_page_and_the_fourth_on_the_classs_core_page():
    own = [f"1/{below} × 2/3" for below in (2, 3, 4, 5)]
    for level in Level:
        for seed in (None, 5):
            asked = [item.asks for item in choose(lesson(products=own), level, seed=seed)]
            assert [f"{product} = " in asked for product in own[:3]] == [True] * 3
            assert (f"{own[3]} = " in asked) is (level is Level.CORE and seed is None)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(sorted(PROVED)), st.sampled_from(GRADES), st.integers(0, 10**6) | st.none())
def test_no_item_at_stretch_is_easier_than_one_of_its_kind_on_the_core_page(name, grade, seed):
    made = lesson(name, grade=grade)
    core, stretch = choose(made, Level.CORE), choose(made, Level.STRETCH, seed=seed)
    for hard in stretch:
        for easy in core:
            assert hard.kind != easy.kind or (hard.difficulty >= easy.difficulty and hard.asks != easy.asks)


@settings(max_examples=60, deadline=None)
@given(Pages)
def test_no_fold_that_is_asked_for_is_one_of_the_lessons_own(drawn):
    made = {sizes_of(state) for state in PROVED[drawn[0]].states}
    assert not made & {item.sizes for item in page(drawn) if isinstance(item, WhichFoldItem)}


def test_a_fold_that_the_lesson_itself_makes_is_asked_in_other_lessons():
    makes = [frozenset(), frozenset({((2, exact(1, 6)), (2, exact(1, 3)))})]
    scopes = [replace(scope_of(lesson(grade=3), Level.STRETCH), made=made) for made in makes]
    with_it, without = (candidates(ItemKind.WHICH_FOLD, scope) for scope in scopes)
    assert len(with_it) == len(without) + 1


def panels_of_folds(item) -> int:
    """Give how many panels the folds make that an item tells of; 0 where it tells of none."""
    match item:
        case RepeatedHalvingItem(factors=factors) if all(factor.unit_fraction for factor in factors):
            return item.panels
        case MendItem(problem=CountMended(before=before, parts=parts)):
            return before * parts
        case MendItem(problem=PartsAdded(parts=parts)):
            return prod(parts)
        case ExplainItem(frame=Frame.MORE_PANELS, first=now):
            return now.denominator
    return 0


@settings(max_examples=100, deadline=None)
@given(Pages)
def test_no_item_asks_for_panels_that_the_first_page_has_counted(drawn):
    """2 × 2 = 4 panels and 1/4 of the sheet stand there where a lesson makes them."""
    recorded = scope_of(PROVED[drawn[0]], drawn[3]).recorded
    assert not recorded & {panels_of_folds(item) for item in page(drawn)}


@pytest.mark.parametrize(("grade", "panels"), [(3, {6}), (4, {6, 10, 12}), (5, {6, 9, 10, 12, 16})])
def test_folds_of_folds_make_parts_that_the_grade_names(grade, panels):
    """Ninths wait for grade 5. Of 2, 4 and 8 panels the first page tells."""
    folds = candidates(ItemKind.REPEATED_HALVING, scope_of(lesson(grade=grade), Level.GUIDED))
    assert {make().panels for make in all_of(folds)} == panels


def test_in_grade_3_a_stretch_page_counts_more_panels_than_the_core_page():
    pages = [choose(lesson("plank-marks", grade=3), level) for level in (Level.CORE, Level.STRETCH)]
    mended = [item for items in pages for item in items if item.kind is ItemKind.MEND]
    assert [prod(item.parts) for item in mended] == [16, 24]
    assert mended[1].difficulty > mended[0].difficulty


def test_in_grade_3_a_class_adds_where_panels_multiply_in_three_forms():
    """In turn, so that numbered pupils have each form as often; more than 12 panels wait for stretch."""
    proved, panels = lesson("plank-marks", grade=3), {}
    for level in (Level.CORE, Level.STRETCH):
        groups = candidates(ItemKind.MEND, scope_of(proved, level))
        assert [{make().told for make in group} for group in groups] == [
            {Told.HALVED},
            {Told.FOLDED_TWICE},
            {Told.PANELS_FOLDED},
        ]
        panels[level] = {prod(make().parts) for group in groups[1:] for make in group}
    assert panels == {Level.CORE: {6, 12}, Level.STRETCH: {16, 18, 24}}


def test_at_core_hands_find_every_fold_that_is_asked_for_in_grade_3_and_else_a_ruler_helps():
    core = candidates(ItemKind.WHICH_FOLD, scope_of(lesson(grade=3), Level.CORE))
    asked = {str(make().working.claims[0].asked) for make in all_of(core)}
    assert {"3 × 1/3", "1 × 1/3 + 1 × 2/3", "1 × 1/4 + 1 × 3/4"} <= asked
    assert not any("1/5" in one or "5/6" in one for one in asked)
    assert not any(make().with_ruler for make in all_of(core))
    stretch = candidates(ItemKind.WHICH_FOLD, scope_of(lesson(grade=5), Level.STRETCH))
    near = {
        (make().steps[0].at, make().with_ruler)
        for make in all_of(stretch)
        if isinstance(make().steps[0], FoldAt)
    }
    assert near == {(exact(1, parts), parts > 4) for parts in (3, 4, 5, 6)}


def test_no_sentence_stands_on_a_page_twice():
    """1/6 < 1/3 to be sorted, and to be explained."""
    sorting, explained = make_count_or_size(3, 2, Reach.NAMING), make_explain_more_panels(3, 2)
    assert explained.statement in sorting.shown
    assert not Page((sorting,), ()).has_room_for(explained)


def test_a_kind_in_store_comes_before_a_second_item_of_one_that_is_there():
    """A sheet in sixths is sorted, so 1/6 is no answer; which folds make 6 panels is asked instead."""
    kinds = [item.kind for item in choose(lesson("plank-marks", grade=3), Level.CORE)]
    assert ItemKind.WHICH_FOLD in kinds
    assert len(set(kinds)) == len(kinds)


@pytest.mark.parametrize("grade", [4, 5])
def test_no_product_is_compared_whose_first_factor_is_written_as_1(grade):
    """5/5 × 5/12 says as much, and has to be thought about."""
    asked = all_of(candidates(ItemKind.BIGGER_OR_SMALLER, scope_of(lesson(grade=grade), Level.STRETCH)))
    firsts = {make().product.first for make in asked}
    assert whole_number(1) not in firsts
    assert (fraction(5, 5) in firsts) == (grade == 5)


@settings(max_examples=60, deadline=None)
@given(Pages)
def test_a_mistake_to_be_corrected_has_one_rule_behind_it(drawn):
    for item in page(drawn):
        if isinstance(item, MendItem) and isinstance(item.problem, Product):
            rules = likeliest_rules(item.problem)
            behind = [rule for rule in rules if item.given.value in map(worth, rule.answers(item.problem))]
            assert behind == [item.rule], item.asks


def test_an_answer_to_which_two_rules_lead_is_not_put_on_a_page():
    asked = [make().asks for make in all_of(candidates(ItemKind.MEND, scope_of(lesson(), Level.CORE)))]
    assert "mend 2/5 × 2/3 = 4/8" not in asked
    assert "mend 2/5 × 2/3 = 60/15" in asked


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10**6), st.sampled_from(Level), st.sampled_from(GRADES))
def test_every_seed_asks_the_same_kinds_in_the_same_order(seed, level, grade):
    usual = choose(lesson(grade=grade), level, seed=0)
    assert [item.kind for item in choose(lesson(grade=grade), level, seed=seed)] == [i.kind for i in usual]


def test_the_same_seed_gives_the_same_page_and_another_seed_another():
    for level in Level:
        first, again, other = (choose(lesson(), level, seed=seed) for seed in (7, 7, 8))
        assert first == again
        assert [item.asks for item in first] != [item.asks for item in other]


def test_pupils_of_a_class_get_many_different_pages():
    for level in Level:
        pages = {tuple(item.asks for item in choose(lesson(), level, seed=seed)) for seed in range(30)}
        assert len(pages) == 30


def test_a_page_is_the_same_in_another_process():
    """Texts hash differently in every process, so nothing may follow from their order in a set."""
    said = "\n".join(item.asks for level in Level for item in choose(PROVED["tile-panels"], level, seed=3))
    program = (
        "from foldmath.practice.choosing import choose, Level\n"
        "from foldmath.lesson.proving import prove\n"
        "from foldmath.lesson.reading import read_lesson\n"
        f"proved = prove(read_lesson({str(LESSONS / 'tile-panels.toml')!r}))\n"
        "print('\\n'.join(item.asks for level in Level for item in choose(proved, level, seed=3)))"
    )
    run = subprocess.run([sys.executable, "-c", program], capture_output=True, encoding="utf-8", check=True)
    assert run.stdout.rstrip("\n") == said


def test_a_lesson_with_other_steps_or_title_has_other_numbers_of_its_own():
    renamed = lesson(title="Rope lengths")
    assert choose(lesson(), Level.CORE) != choose(renamed, Level.CORE)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(Level), st.integers(0, 10**6))
def test_grade_3_multiplies_no_fractions(level, seed):
    for item in choose(lesson(grade=3), level, seed=seed):
        seen = " ".join(map(str, item.shown))
        assert not re.search(r"/\d+ [×÷]|[×÷] \d+/|/\d+ of|\^", seen), item


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([("en-US", 4), ("en-GB", 5)]), st.sampled_from(Level), st.integers(0, 10**6))
def test_a_grade_that_multiplies_by_whole_numbers_sees_no_pair_of_fractions(grade, level, seed):
    language, number = grade
    for item in choose(lesson(grade=number, language=language), level, seed=seed):
        for said in item.shown:
            assert not re.search(r"/\d+ (×|of|÷) \d+/", str(said)), item


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(LANGUAGES), st.sampled_from(GRADES), st.integers(0, 10**6))
def test_powers_wait_for_grade_6(language, grade, seed):
    items = choose(lesson(grade=grade, language=language), Level.STRETCH, seed=seed)
    powers = [item for item in items if getattr(item, "repeated", None) is Repeated.POWER]
    assert not powers or grade == 6


def test_powers_come_in_grade_6():
    pages = [choose(lesson(grade=6), Level.STRETCH, seed=seed) for seed in range(12)]
    assert any(getattr(item, "repeated", None) is Repeated.POWER for items in pages for item in items)


def test_stretch_has_missing_factors_comparison_three_factors_and_unequal_folds():
    items = {item.kind: item for item in choose(lesson(), Level.STRETCH)}
    wanted = (
        ItemKind.MISSING_FACTOR,
        ItemKind.BIGGER_OR_SMALLER,
        ItemKind.REPEATED_HALVING,
        ItemKind.WHICH_FOLD,
    )
    assert set(wanted) <= set(items)
    assert items[ItemKind.REPEATED_HALVING].times == 3
    assert not items[ItemKind.WHICH_FOLD].equal


class TestRules:
    def test_only_the_kinds_that_are_named_are_chosen(self):
        kinds = (ItemKind.MISSING_FACTOR, ItemKind.SHADE)
        items = choose(lesson(rules=PracticeRules(kinds=kinds, count=8)), Level.CORE)
        assert len(items) == 8
        assert {item.kind for item in items} == set(kinds)

    @pytest.mark.parametrize("kind", ItemKind)
    @pytest.mark.parametrize("level", Level)
    def test_every_kind_can_be_asked_alone_in_every_grade_that_has_it(self, kind, level):
        for grade in GRADES:
            if kind in kinds_for(grade, Followed.CCSS):
                items = choose(lesson(grade=grade, rules=PracticeRules(kinds=(kind,), count=1)), level)
                assert [item.kind for item in items] == [kind]

    def test_the_count_is_that_of_the_core_page_and_support_has_fewer(self):
        rules = PracticeRules(count=8)
        assert [len(choose(lesson(rules=rules), level)) for level in Level] == [5, 8, 8]

    @settings(max_examples=40, deadline=None)
    @given(st.sets(st.integers(2, 12), min_size=1, max_size=4), st.integers(0, 999))
    def test_factors_have_the_denominators_that_are_named(self, named, seed):
        rules = PracticeRules(denominators=tuple(named), kinds=(ItemKind.SHADE, ItemKind.MISSING_FACTOR))
        for grade in (4, 5):
            for item in choose(lesson(grade=grade, rules=rules), Level.CORE, seed=seed):
                if isinstance(item, ShadeItem):
                    assert set(denominators(item.product.text)) <= named

    @settings(max_examples=60, deadline=None)
    @given(st.sets(st.integers(2, 12), min_size=1, max_size=4), Pages)
    def test_items_of_all_kinds_have_the_denominators_that_are_named(self, named, drawn):
        _, grade, language, level, seed = drawn
        rules = PracticeRules(denominators=tuple(named))
        for item in choose(lesson(grade=grade, language=language, rules=rules), level, seed=seed):
            assert denominators_chosen(item) <= named, item.asks

    def test_the_lessons_seed_is_used_where_no_other_is_given(self):
        seven, eight = (lesson(rules=PracticeRules(seed=seed)) for seed in (7, 8))
        assert choose(seven, Level.CORE) == choose(lesson(), Level.CORE, seed=7) != choose(eight, Level.CORE)

    def test_every_product_named_is_asked_at_core(self):
        own = [f"1/{below} × 2/3" for below in (2, 3, 4, 5, 6, 7, 8, 9)]
        items = choose(lesson(products=own), Level.CORE)
        assert [item.product.text for item in items] == own

    @pytest.mark.parametrize(
        ("products", "count"),
        [
            (["2/3 × 4/5", "3/4 × 1/2"], 6),
            (["3 × 2/3", "3/4 × 1/2"], 6),
            # Four sheets are a row as wide as the page; of two that are shaded twice there is much to say.
            (["4 × 2/3"], 4),
            (["2/3 × 5/4"], 4),
            (["5/3 × 2/3"], 4),
            (["4 × 2/3", "5 × 2/3", "3/4 × 1/2"], 4),
            # A third product takes the place of another item.
            (["2/3 × 4/5", "3/4 × 1/2", "1/2 × 1/3"], 5),
        ],
    )
    def test_sheets_to_shade_take_the_room_of_other_items(self, products, count):
        assert len(choose(lesson(products=products), Level.CORE)) == count
        asked = choose(lesson(products=products, rules=PracticeRules(count=6)), Level.CORE)
        assert len(asked) == 6

    def test_a_product_named_in_two_ways_is_asked_once(self):
        items = choose(lesson(products=["2/3 × 4/5", "2/3 of 4/5"]), Level.CORE)
        assert sum(item.kind is ItemKind.SHADE and "2/3 × 4/5" in item.asks for item in items) == 1


@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("grade", [4, 5, 6])
def test_items_that_are_chosen_are_shaded_on_sheets_that_a_column_holds_where_any_are(grade, level):
    """Twice 5/4 of a sheet is always four sheets."""
    groups = candidates(ItemKind.SHADE, scope_of(lesson(grade=grade), level))
    counts = [[make().sheet_count for make in group] for group in groups]
    assert all(max(group) <= 3 or min(group) > 3 for group in counts)


@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("grade", GRADES)
def test_every_rule_behind_a_wrong_answer_has_its_words(grade, level):
    scope = scope_of(lesson(grade=grade), level)
    rules = set()
    for kind in kinds_for(grade, Followed.CCSS):
        if kind is not ItemKind.STORY:
            for group in candidates(kind, scope):
                rules |= {wrong.rule for make in group[::9] for wrong in make().wrong}
    assert rules
    for rule in rules:
        assert what_it_tells(rule)
        assert what_to_try(rule)


@pytest.mark.parametrize(("practice", "models"), [((), 1), (("2 × 1/4",), 2), (("2 × 1/4", "3 × 1/8"), 2)])
def test_beside_two_products_of_the_lessons_own_a_page_has_no_third_model_to_shade(practice, models):
    shown = lesson(grade=4, products=practice)
    for level in Level:
        shading = [item for item in choose(shown, level) if item.kind is ItemKind.SHADE]
        assert len(shading) == models, level
