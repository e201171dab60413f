"""What a field takes, in the words of its page: takes a problem of a lesson file, gives it without the file.

Who types into a field has written no quotes, no key and no table.
"""

from collections.abc import Mapping

from foldmath.desk.visits.refusals import Refusal
from foldmath.errors import Problem
from foldmath.lesson.files.wanted import (
    LONGEST_ITEM,
    LONGEST_LINE,
    LONGEST_NAME,
    LONGEST_NOTE,
    LONGEST_UNIT,
    MOST_ITEMS,
    MOST_NAMES,
    MOST_OWN_ITEMS,
    MOST_PRODUCTS,
    MOST_WORDS,
    WANTED,
    WANTED_ITEM,
)
from foldmath.phrases import Said, phrase
from foldmath.statements.products import EXAMPLE

TAKE_OUT = phrase("take one out first")
FEWER = phrase("fewer or shorter ones")


def _up_to(longest: int) -> Said:
    return phrase("at most {most} characters", most=longest)


def _list(things: Said, longest: int) -> tuple[Said, Said]:
    return phrase("{things}, each of at most {longest} characters", things=things, longest=longest), FEWER


FIELD_WORDS: Mapping[tuple[str, ...], tuple[Said, Said]] = {
    ("title",): (_up_to(LONGEST_LINE), phrase("a few words, such as Seed trays")),
    ("notes",): _list(phrase("at most {most} notes", most=MOST_WORDS), LONGEST_NOTE),
    ("vocabulary",): _list(phrase("at most {most} words", most=MOST_WORDS), LONGEST_LINE),
    ("words",): _list(phrase("at most {most} words", most=MOST_WORDS), LONGEST_LINE),
    ("home_language",): (phrase("the short name of one language, as browsers know it"), "uk"),
    ("names",): _list(phrase("at most {most} names", most=MOST_NAMES), LONGEST_NAME),
    ("practice", "count"): (phrase("a whole number from 1 to {most}", most=MOST_ITEMS), "7"),
    ("practice",): (phrase("at most {most} products", most=MOST_PRODUCTS), TAKE_OUT),
    ("practice", "products"): (phrase("at most {most} products", most=MOST_PRODUCTS), TAKE_OUT),
    ("items",): (phrase("at most {most} items in your own words", most=MOST_OWN_ITEMS), TAKE_OUT),
    ("items", "text"): (
        phrase("your own words, at most {most} characters", most=LONGEST_ITEM),
        phrase("a short story with its numbers"),
    ),
    ("items", "sum"): (
        phrase("the sum behind the words, at most {most} characters", most=LONGEST_LINE),
        EXAMPLE,
    ),
    ("items", "unit"): (_up_to(LONGEST_UNIT), "kg"),
    ("items", "levels"): (phrase("an item is for one level at least"), phrase("choose one of them")),
}
"""By the way to each in the file: what its field takes, and the remedy."""


def of_the_field(problem: Problem) -> Refusal:
    """Say a problem as the page says it, where the file would say how a value is written."""
    for key, (message, hint) in FIELD_WORDS.items():
        told, of_each = WANTED.get(key), WANTED_ITEM.get(key[-1])
        if problem.message in [wanted[0] for wanted in (told, of_each) if wanted]:
            return Refusal(message, hint)
    return Refusal(problem.message, problem.hint)
