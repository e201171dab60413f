"""Pupils without a class list are called by their numbers, in the language of the page."""

import pytest
from conftest import LESSONS

from foldmath.errors import Unreadable
from foldmath.lesson.numbered_pupils import called_in, number_in, pupils_without_roster
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.roster import MOST_PUPILS, Pupil
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level

CALLED = {"en-US": "Student 28", "en-GB": "Pupil 28", "es": "Estudiante 28"}


@pytest.mark.parametrize("language", CALLED)
def test_a_class_without_a_list_is_numbered_and_all_at_core(language):
    pupils = called_in(pupils_without_roster(28), language)
    assert (len(pupils), pupils[-1].label) == (28, CALLED[language])
    assert {pupil.level for pupil in pupils} == {Level.CORE}


def test_a_pupil_without_a_name_has_the_same_numbers_in_every_language():
    lesson = read_lesson(LESSONS / "seed-trays.toml")
    seeds = {
        tuple(pupil_seed(lesson, pupil) for pupil in called_in(pupils_without_roster(3), language))
        for language in CALLED
    }
    assert len(seeds) == 1
    assert len(set(*seeds)) == 3


def test_what_stands_in_a_list_is_called_as_it_stands_there():
    listed = Pupil("Student 3", Level.CORE, 1)
    assert called_in([listed], "es") == (listed,)


@pytest.mark.parametrize(
    ("label", "number"),
    [*((label, 28) for label in CALLED.values()), ("Ann", 0), ("Ann 28", 0), ("Student", 0), ("", 0)],
)
def test_a_number_is_read_in_every_language_and_not_in_a_name(label, number):
    assert number_in(label) == number


@pytest.mark.parametrize("count", [0, -3, MOST_PUPILS + 1])
def test_a_class_of_none_or_of_too_many_is_refused(count):
    with pytest.raises(Unreadable, match="--students 28"):
        pupils_without_roster(count)
