"""What a key of a lesson file may hold: any value at all is taken, or told of."""

from dataclasses import fields

import pytest

from foldmath.lesson.files.shape import ItemShape, LessonShape, PracticeShape, shape_of

LESSON = {"title": "Trays", "grade": 5, "paper": "letter", "steps": ["fold in half"]}
ITEM = {"text": "A bed is 3/4 planted.", "sum": "3/4"}
AMISS = [3, True, 1.5, "", "x" * 2000, [], {}, [3], [""], ["x"] * 500, {"": 3}, {"es": {"": ""}}, [{}], [[]]]


def keys_of(shape):
    return [each.name for each in fields(shape)]


@pytest.mark.parametrize("value", AMISS, ids=lambda value: repr(value)[:12])
def test_whatever_a_key_holds_is_taken_or_told_of_with_a_remedy(value):
    for key in keys_of(LessonShape):
        told = shape_of({**LESSON, key: value})
        assert isinstance(told, LessonShape) or all(slip.hint for slip in told), key
    for key in keys_of(PracticeShape):
        told = shape_of({**LESSON, "practice": {key: value}})
        assert isinstance(told, LessonShape) or all(slip.hint for slip in told), key
    for key in keys_of(ItemShape):
        told = shape_of({**LESSON, "items": [{**ITEM, key: value}]})
        assert isinstance(told, LessonShape) or all(slip.hint for slip in told), key


def test_every_slip_is_told_at_once_in_the_order_of_the_keys():
    told = shape_of({"grade": 9, "titel": "Trays", "items": [{"sum": 3}, "beds"], "names": ["Ines", 4]})
    assert [slip.path for slip in told] == [
        ("grade",),
        ("paper",),
        ("steps",),
        ("items", 1),
        ("items", 0, "text"),
        ("items", 0, "sum"),
        ("names", 1),
        ("titel",),
    ]


def test_of_a_list_that_is_far_too_long_its_length_alone_is_told():
    (slip,) = shape_of({**LESSON, "steps": [3] * 500})
    assert slip.path == ("steps",)


def test_true_is_no_number():
    (slip,) = shape_of({**LESSON, "practice": {"count": True}})
    assert slip.path == ("practice", "count")
