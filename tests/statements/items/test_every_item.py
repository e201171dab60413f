"""What holds for every item that any class can be asked, of every kind."""

from pathlib import Path

import pytest
from answered_again import number, rightly_answered

from foldmath.lesson.kinds import CHOSEN_KINDS, kinds_for
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.practice.candidates import candidates
from foldmath.practice.scope import EvenFold, Scope
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import ItemKind, Level
from foldmath.statements.items.item import STEPS_OF_NUMBERS
from foldmath.statements.standards import Followed

FOLDS = (EvenFold(4, 2, 2), EvenFold(2, 2, 1), EvenFold(1, 2, 0))
NUMBERS_ONLY = (ItemKind.SHADE, ItemKind.MISSING_FACTOR, ItemKind.HOW_MANY_PIECES, ItemKind.REPEATED_HALVING)
EVERY = 11
"""Every eleventh item of a large group is looked at, and all of a small one."""


def items(kind: ItemKind):
    for followed in (Followed.CCSS, Followed.ENGLAND):
        for grade in (3, 4, 5, 6):
            if kind in kinds_for(grade, followed):
                for level in Level:
                    scope = Scope(
                        grade=grade,
                        followed=followed,
                        level=level,
                        denominators=(2, 3, 4, 5, 6, 8),
                        named=False,
                        folds=FOLDS,
                    )
                    for group in candidates(kind, scope):
                        yield from (make() for make in (group[::EVERY] if len(group) > EVERY else group))


@pytest.mark.parametrize("kind", CHOSEN_KINDS)
def test_answers_are_right_and_workings_true(kind):
    seen = {(item.asks, item.answer): item for item in items(kind)}
    assert len(seen) > 1
    for item in seen.values():
        assert item.kind is kind
        assert rightly_answered(item), item
        assert all(check_claim(sentence).true for sentence in str(item.working).split(", ")), item


@pytest.mark.parametrize("kind", NUMBERS_ONLY)
def test_accepted_forms_are_worth_the_answer_and_wrong_ones_are_not(kind):
    for item in items(kind):
        answer = number(str(item.answer))
        assert item.answer not in item.accepted
        assert all(number(str(form)) == answer for form in item.accepted), item
        assert all(number(str(wrong.answer)) != answer for wrong in item.wrong), item


def test_mended_forms_that_are_accepted_are_true():
    for item in items(ItemKind.MEND):
        assert all(check_claim(str(form)).true for form in item.accepted), item


@pytest.mark.parametrize("kind", [kind for kind in CHOSEN_KINDS if kind is not ItemKind.STORY])
def test_an_item_does_not_show_its_own_answer(kind):
    """In a story the rest may happen to be as large as a part told; such a telling is never chosen."""
    for item in items(kind):
        assert item.answer not in item.shown, item


@pytest.mark.parametrize("kind", CHOSEN_KINDS)
def test_the_forms_of_a_kind_have_places_of_their_own_from_easy_to_hard(kind):
    bands = {item.difficulty // STEPS_OF_NUMBERS for item in items(kind)}
    assert 1 <= len(bands) <= 2


def test_folds_of_a_lesson_are_those_that_cut_all_panels_alike():
    from foldmath.practice.scope import scope_of

    lessons = Path(__file__).parents[3] / "lessons"
    folds = {
        name: scope_of(prove(read_lesson(lessons / f"{name}.toml")), Level.CORE).folds
        for name in ("seed-trays", "tile-panels", "sail-cloth")
    }
    assert folds["seed-trays"] == FOLDS
    assert folds["tile-panels"] == (EvenFold(3, 5, 2), EvenFold(1, 3, 0))
    assert folds["sail-cloth"] == ()
