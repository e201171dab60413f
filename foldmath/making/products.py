"""What a lesson's own products say before pages are made: which the grade cannot do, and where they stand."""

from foldmath.lesson.kinds import reach
from foldmath.lesson.proving import ProvedLesson
from foldmath.phrases import Phrase, counted, joined
from foldmath.practice.choosing import MOST_NAMED
from foldmath.statements.items import Reach
from foldmath.statements.products import Product


def told_of_products(proved: ProvedLesson) -> tuple[Phrase, ...]:
    """Say of the products that a teacher wrote what she may not expect of them; often nothing."""
    lesson = proved.lesson
    products = [written.product for written in lesson.practice]
    known = reach(lesson.grade, lesson.followed)
    beyond = [product.text for product in products if needed(product) > known]
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
    return tuple(notes)


def needed(product: Product) -> Reach:
    """Tell how far a class must have come in multiplying for a product."""
    wholes = [factor.whole for factor in (product.first, product.second)]
    if all(wholes):
        return Reach.NAMING
    return Reach.BY_WHOLES if any(wholes) else Reach.PAIRS
