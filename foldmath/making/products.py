"""What a teacher is told of her own products and items before their pages are made."""

from collections.abc import Iterator

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.order import LEVELS
from foldmath.phrases import Phrase, counted, joined, phrase
from foldmath.practice.choosing import MOST_NAMED, places
from foldmath.statements.items import Level, Reach
from foldmath.statements.products import Product


def told_of_products(proved: ProvedLesson) -> tuple[Phrase, ...]:
    """Say of the products and items that a teacher wrote what she may not expect of them; often nothing."""
    lesson = proved.lesson
    products = [written.product for written in lesson.practice]
    known = reach(lesson.grade, lesson.followed)
    behind = [written.item.product for written in lesson.items if written.item.product]
    beyond = [product.text for product in (*products, *behind) if needed(product) > known]
    notes = []
    if beyond:
        notes.append(
            counted(
                "grade {grade} does not multiply such numbers yet; it is printed all the same: {products}",
                "grade {grade} does not multiply such numbers yet; they are printed all the same: {products}",
                len(beyond),
                grade=lesson.grade,
                products=joined("; ", beyond),
            )
        )
    if further := [product.text for product in products[MOST_NAMED:]]:
        notes.append(
            counted(
                "{products} stands on the core page only; the first {most} products stand on every page",
                "{products} stand on the core page only; the first {most} products stand on every page",
                len(further),
                products=joined("; ", further),
                most=MOST_NAMED,
            )
        )
    return (*notes, *told_of_items(lesson))


def told_of_items(lesson: Lesson) -> Iterator[Phrase]:
    """Say of items in a teacher's own words which may ask something else, and which pages they lengthen."""
    strange = dict.fromkeys(str(written.item.sum) for written in lesson.items if written.item.strange)
    for asked in strange:
        yield phrase("no number of {sum} stands in the words of its item: is it the right sum?", sum=asked)
    for level in Level:
        more = len(lesson.items_of(level)) - places(lesson, level)
        if more > 0 and lesson.items_of(level):
            yield counted(
                "your own items take all places of the {level} page and make it {count} item longer",
                "your own items take all places of the {level} page and make it {count} items longer",
                more,
                level=LEVELS[level],
            )


def needed(product: Product) -> Reach:
    """Tell how far a class must have come in multiplying for a product."""
    wholes = [factor.whole for factor in (product.first, product.second)]
    if all(wholes):
        return Reach.NAMING
    return Reach.BY_WHOLES if any(wholes) else Reach.PAIRS
