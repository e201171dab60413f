"""Items in a teacher's own words, for tests of all that they go through."""

from dataclasses import replace

from foldmath.lesson.lesson import WrittenItem
from foldmath.lesson.proving import ProvedLesson
from foldmath.statements.items import Level, OwnItem, make_own
from foldmath.statements.sums import parse_sum


def own(text: str, asked: str, unit: str = "") -> OwnItem:
    return make_own(text, parse_sum(asked), unit)


BED = own(
    "A bed is 3/4 planted. Beans grow in 2/3 of the planted part. What fraction of the whole bed has beans?",
    "2/3 × 3/4",
    "of the bed",
)
OAR = own(
    "The crew varnishes 5/6 of an oar. Of this part, 1/4 gets a second coat. What fraction gets two coats?",
    "1/4 × 5/6",
    "of the oar",
)
SOIL = own("One tray takes 1 1/2 kg of soil. How much soil do 5 trays take?", "5 × 1 1/2", "kg")


def having(proved: ProvedLesson, *items: OwnItem, levels: tuple[Level, ...] = tuple(Level)) -> ProvedLesson:
    """Give a lesson in which a teacher wrote items of her own."""
    written = tuple(WrittenItem(item, levels) for item in items)
    return replace(proved, lesson=replace(proved.lesson, items=written))
