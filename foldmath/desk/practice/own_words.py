"""A teacher's own items at the desk: takes what a form says, gives the lesson's text with her item in it."""

from collections.abc import Mapping, Sequence
from typing import Any

from werkzeug.datastructures import MultiDict

from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.lesson.editing import with_entry, with_list, with_value, without_entry
from foldmath.lesson.lesson import Lesson
from foldmath.statements.items import Item, Level
from foldmath.statements.items.story import StoryItem
from foldmath.words.stories import story_words

ITEMS, NAMES = "items", "names"
"""The keys of a lesson file."""

FIELDS = ("text", "sum", "unit", "levels")
"""Of an item, as its form and the file name them."""

NOWHERE = -1
"""The place of an item that is not written yet."""

Form = MultiDict[str, str]
Values = Mapping[str, Any]


def written(form: Form) -> dict[str, Any]:
    """Give what a form says of an item, spaces run together; all levels are said by naming none of them."""
    told = {field: " ".join(form.get(field, "").split()) for field in ("text", "sum", "unit")}
    levels = [level.value for level in Level if level.value in form.getlist("levels")]
    return {**told, "levels": levels}


def write_item(opened: OpenLesson, form: Form) -> str:
    """Put an item behind those that are there."""
    return _with_item(opened, len(_items(opened)), form)


def rewrite_item(opened: OpenLesson, form: Form) -> str:
    """Change an item where it stands."""
    return _with_item(opened, place_of(form), form)


def take_out_item(opened: OpenLesson, form: Form) -> str:
    """Take an item out of the lesson, at all of its levels."""
    return without_entry(opened.text, ITEMS, place_of(form))


def lend_names(opened: OpenLesson, form: Form) -> str:
    """Set the names of stories, one a line."""
    names = [line.strip() for line in form.get("names", "").splitlines() if line.strip()]
    return with_list(opened.text, (NAMES,), names) if names else with_value(opened.text, (NAMES,), None)


def place_of(form: Form) -> int:
    """Give the place among her items that a form is about; ``NOWHERE`` where it names none."""
    return form.get("place", NOWHERE, int)


def as_written(opened: OpenLesson, lesson: Lesson, level: Level) -> dict[str, tuple[int, Values]]:
    """Give place and values of each of her items on the page of a level, by what it asks."""
    tables = _items(opened)
    return {
        one.item.asks: (place, {"unit": "", "levels": [each.value for each in one.levels], **tables[place]})
        for place, one in enumerate(lesson.items)
        if level in one.levels
    }


def made_hers(item: Item, language: str) -> Values | None:
    """Give the words, the sum and the unit of a story, to become an item of hers; None for all others."""
    if not isinstance(item, StoryItem):
        return None
    told = story_words(item, language)
    return {
        "text": " ".join(map(str, told.sentences)),
        "sum": str(item.working.claims[0].asked),
        "unit": str(told.unit),
        "levels": [level.value for level in Level],
    }


def _with_item(opened: OpenLesson, place: int, form: Form) -> str:
    told = written(form)
    told["unit"] = told["unit"] or None
    if len(told["levels"]) == len(Level):
        # What is usual is left unsaid.
        told["levels"] = None
    return with_entry(opened.text, ITEMS, place, told)


def _items(opened: OpenLesson) -> Sequence[Mapping[str, Any]]:
    given = opened.table.get(ITEMS, [])
    return given if isinstance(given, list) else []
