"""Standards of a lesson: touched by what it folds and asks, for its grade and country, in our words."""

from dataclasses import replace

import pytest
from lessons_in_words import EIGHTHS, moments

from foldmath.statements.items import ItemKind
from foldmath.statements.products import parse_product
from foldmath.statements.standards import FACTS, Followed, all_standards, standards_of

MOST_WORDS = 15


def codes(*steps, practice=(), kinds=(), grade=6, followed=Followed.CCSS):
    """Give the codes of a lesson made up from sentences and products."""
    products = [parse_product(text) for text in practice]
    folded = moments(*steps) if steps else ()
    return [
        standard.code
        for standard in standards_of(folded, products, frozenset(kinds), grade=grade, followed=followed)
    ]


def test_halving_to_eighths_names_unit_fractions_and_takes_parts_of_parts():
    assert codes(*EIGHTHS) == ["3.G.A.2", "3.NF.A.1", "5.NF.B.4"]


def test_one_fold_in_half_takes_no_part_of_a_part():
    assert codes("fold left edge to right edge") == ["3.G.A.2", "3.NF.A.1"]


def test_fifths_are_equal_areas_but_no_fractions_of_grade_3():
    assert codes("pleat width into 5", grade=3) == ["3.G.A.2"]


def test_unequal_panels_are_added_to_the_whole_and_name_no_unit_fraction():
    assert codes("fold at 1/3 moving left") == ["4.NF.B.3"]


def test_shading_alone_asks_for_no_second_name_of_a_fraction():
    steps = ("pleat width into 3", "open", "pleat height into 5", "open", "shade 4 of 5 up")
    assert not {"3.NF.A.3", "4.NF.A.1"} & set(codes(*steps))
    assert {"3.NF.A.3", "4.NF.A.1"} <= set(codes(*steps, kinds=["same-size"]))


@pytest.mark.parametrize(
    ("product", "code"),
    [
        ("3 × 2/5", "4.NF.B.4"),
        ("2/5 × 3", "4.NF.B.4"),
        ("2/3 × 4/5", "5.NF.B.4"),
        ("1 1/2 × 2/3", "5.NF.B.4"),
    ],
)
def test_a_product_touches_the_standard_of_its_factors(product, code):
    assert codes(practice=[product]) == [code]


def test_two_whole_factors_touch_no_standard_of_fractions():
    assert codes(practice=["2 × 3"]) == []


@pytest.mark.parametrize(
    ("kind", "code"),
    [
        (ItemKind.BIGGER_OR_SMALLER, "5.NF.B.5"),
        (ItemKind.STORY, "5.NF.B.6"),
        (ItemKind.HOW_MANY_PIECES, "5.NF.B.7"),
        (ItemKind.REPEATED_HALVING, "6.EE.A.1"),
    ],
)
def test_a_kind_of_item_touches_its_own_standard(kind, code):
    assert codes(kinds=[kind.value]) == [code]


@pytest.mark.parametrize("grade", [3, 4, 5, 6])
@pytest.mark.parametrize("followed", [Followed.CCSS, Followed.ENGLAND])
def test_no_lesson_touches_a_later_grade_or_another_country(grade, followed):
    every_kind = frozenset(kind.value for kind in ItemKind)
    products = [parse_product("2/3 × 4/5"), parse_product("3 × 2/5")]
    touched = standards_of(moments(*EIGHTHS), products, every_kind, grade=grade, followed=followed)
    assert touched
    assert all(standard.grade <= grade and standard.curriculum.followed is followed for standard in touched)


def test_repeated_halving_is_no_matter_of_exponents_before_grade_6():
    assert codes(kinds=["repeated-halving"], grade=5) == []


def test_a_line_known_only_from_memory_is_no_fact():
    line = all_standards()[0]
    assert line.known
    assert not replace(line, read="memory").known
    assert not replace(line, curriculum=replace(line.curriculum, read="memory")).known


@pytest.mark.parametrize("standard", all_standards(), ids=lambda standard: standard.words)
def test_a_standard_is_told_shortly_and_served_by_something_that_lessons_have(standard):
    assert len(standard.words.split()) <= MOST_WORDS
    assert standard.words[0].isupper()
    assert standard.words.endswith(".")
    assert standard.touched_by or standard.said_by
    assert standard.touched_by <= FACTS.keys() | {kind.value for kind in ItemKind}
    assert standard.read in ("copy", "memory")


def test_every_fact_touches_some_standard():
    touching = frozenset().union(*(standard.touched_by for standard in all_standards()))
    assert FACTS.keys() <= touching
