"""The next lesson: products on which wrong rules lead elsewhere, old ones again, levels anew."""

from dataclasses import replace
from itertools import combinations

import pytest
from conftest import LESSONS
from hypothesis import given, settings
from hypothesis import strategies as st
from marking_a_class import PAGES, filled, marked

from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in, read_lesson
from foldmath.making import said_in
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.evidence import evidence_of
from foldmath.marking.next_lesson import next_lesson, next_roster
from foldmath.marking.separating import VISIBLE, separating_products
from foldmath.statements.items import Level
from foldmath.statements.products import Product
from foldmath.statements.rules import LIKELIEST_FIRST
from foldmath.words.steps import step_sentence

DENOMINATORS = (2, 3, 4, 5, 6, 8, 9, 10, 12)
NAMED = replace(PAGES.proved, lesson=replace(PAGES.proved.lesson, names=("Ines", "Olu")))
RULES = LIKELIEST_FIRST[Product]
ADDS = {"1": "22/15", "2": "5/4"}


def values(product, rules) -> dict[str, object]:
    found = {rule.name: rule.answers(product)[0].value for rule in rules if rule.answers(product)}
    return {"right": product.value, **found}


@settings(deadline=None, max_examples=25)
@given(st.sets(st.sampled_from(RULES), min_size=1, max_size=len(RULES)))
def test_every_pair_of_rules_is_told_apart_by_some_product(rules):
    ordered = [rule for rule in RULES if rule in rules]
    chosen = separating_products(ordered, DENOMINATORS, 4)
    assert len(chosen) == 4
    apart = set()
    for product in chosen:
        found = values(product, ordered)
        assert found["right"] not in [value for name, value in found.items() if name != "right"]
        apart |= {pair for pair in combinations(found, 2) if abs(found[pair[0]] - found[pair[1]]) >= VISIBLE}
    # Rules for whole numbers lead nowhere on two fractions.
    for_wholes = ("multiply_both_by_whole", "drop_denominator")
    possible = ["right", *(rule.name for rule in ordered if rule.name not in for_wholes)]
    # Nor is there a product of unit fractions in which a part is taken for the whole.
    never_both = {("part_for_whole", "count_for_size")}
    assert set(combinations(possible, 2)) - never_both <= apart


def test_products_are_new_and_no_two_have_the_same_factors():
    first = separating_products(RULES[:2], DENOMINATORS, 4)
    again = separating_products(RULES[:2], DENOMINATORS, 4, known=frozenset(one.text for one in first))
    assert not {one.text for one in first} & {one.text for one in again}
    assert len({frozenset((one.first.text, one.second.text)) for one in first}) == 4


def test_a_class_that_multiplies_by_wholes_gets_wholes():
    assert all(one.first.whole for one in separating_products(RULES, (2, 3, 4, 5, 6), 4, wholes=True))


@pytest.mark.parametrize("name", ["seed-trays", "tile-panels", "sail-cloth"])
def test_the_next_lesson_can_be_read_and_folded(tmp_path, name):
    pages = PAGES if name == "seed-trays" else LessonPages(prove(read_lesson(LESSONS / f"{name}.toml")))
    evidence = evidence_of(marked(tmp_path, filled({"Ann": ADDS, "Bo": {}})))
    made = next_lesson(evidence, pages, tmp_path)
    proved = prove(lesson_in(made.text, str(tmp_path / "next.toml")))
    assert [one.product.text for one in proved.lesson.practice] == [one.text for one in made.products]
    assert (tmp_path / proved.lesson.earlier[0]).resolve() == (LESSONS / f"{name}.toml").resolve()


def test_folds_that_are_done_again_make_no_second_booklet(tmp_path):
    pages = LessonPages(prove(read_lesson(LESSONS / "tile-race.toml")))
    made = next_lesson(evidence_of(marked(tmp_path, filled({"Ann": ADDS}))), pages, tmp_path)
    proved = prove(lesson_in(made.text, str(tmp_path / "next.toml")))
    steps = [step.text for step in proved.lesson.steps]
    assert steps == ["pleat width into 4", "open", "fold top edge to bottom edge", "open"]
    assert "The same folds again." in made.text


def test_a_grade_that_multiplies_nothing_gets_no_products_and_is_told_so(tmp_path):
    pages = LessonPages(prove(read_lesson(LESSONS / "plank-marks.toml")))
    made = next_lesson(evidence_of(marked(tmp_path, filled({"Ann": ADDS}))), pages, tmp_path)
    assert made.products == ()
    assert "# No products are asked for" in made.text
    assert "the new products" not in made.text


def test_the_next_lesson_speaks_the_language_of_the_last(tmp_path):
    pages = LessonPages(said_in(prove(read_lesson(LESSONS / "seed-trays.toml")), "es"))
    evidence = evidence_of(marked(tmp_path, filled({"Ann": ADDS, "Bo": {}})))
    made = next_lesson(evidence, pages, tmp_path)
    steps = prove(lesson_in(made.text, str(tmp_path / "next.toml"))).lesson.steps
    assert [step.text for step in steps] == [step_sentence(step.step, "es") for step in steps]
    assert "Lo que se pensó mal: suma." in made.text


def test_a_fifth_of_the_products_comes_from_earlier_lessons(tmp_path):
    lesson = (LESSONS / "seed-trays.toml").read_text("utf-8")
    for name, products in (("old.toml", '["1/6 × 3/5"]'), ("older.toml", '["5/6 × 1/5"]')):
        text = lesson.replace('["2/3 × 4/5", "3/4 × 1/2"]', products)
        (tmp_path / name).write_text(text, encoding="utf-8")
    (tmp_path / "now.toml").write_text(f'earlier = ["old.toml", "older.toml"]\n{lesson}', encoding="utf-8")
    pages = LessonPages(prove(read_lesson(tmp_path / "now.toml")))
    made = next_lesson(evidence_of(marked(tmp_path, filled({"Ann": ADDS}))), pages, tmp_path)
    assert len(made.products) == 5
    assert [one.text for one in made.products if one.text in ("1/6 × 3/5", "5/6 × 1/5")] == ["1/6 × 3/5"]
    assert 'earlier = ["now.toml", "old.toml", "older.toml"]' in made.text


@pytest.mark.parametrize(
    ("answers", "level"),
    [({}, "stretch"), ({"1": "22/15"}, "core"), (ADDS, "guided"), ({"1": "absent"}, "core")],
    ids=["all right", "one slip", "a pattern", "absent"],
)
def test_levels_follow_what_was_shown(tmp_path, answers, level):
    evidence = evidence_of(marked(tmp_path, filled({"Ann": answers}, level=Level.CORE)))
    assert next_roster(evidence) == [("name", "level"), ("Ann", level)]


def test_pupils_of_the_next_lesson_read_the_language_that_they_read(tmp_path):
    known = marked(tmp_path, filled({"Ann": {}, "Bo": {}}))
    ann, bo = known.pupils
    mixed = replace(known, pupils=(replace(ann, pupil=replace(ann.pupil, language="es")), bo))
    assert next_roster(evidence_of(mixed)) == [
        ("name", "level", "language"),
        ("Ann", "stretch", "es"),
        ("Bo", "stretch", ""),
    ]


def test_the_next_lesson_is_for_the_same_class_so_it_keeps_the_names_of_stories(tmp_path):
    evidence = evidence_of(marked(tmp_path, filled({"Ada": ADDS})))
    for proved, names in ((PAGES.proved, ()), (NAMED, ("Ines", "Olu"))):
        coming = next_lesson(evidence, LessonPages(proved), tmp_path)
        assert lesson_in(coming.text, "next.toml").names == names
