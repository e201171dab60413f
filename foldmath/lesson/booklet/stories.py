"""Stories about a lesson's products: takes a product, gives a story that it makes sense in."""

from collections.abc import Iterable
from typing import Any

from foldmath.lesson.booklet.matter import Matter
from foldmath.lesson.booklet.plan import Story
from foldmath.lesson.booklet.records import product_meant
from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import either, phrase
from foldmath.statements.expressions import Sign
from foldmath.statements.items.story import StoryFrame, StoryItem, make_story
from foldmath.statements.products import Product
from foldmath.statements.ratios import fraction, whole_number
from foldmath.statements.story_numbers import Asks, Filling, fillings

NOTHING_TAKEN = whole_number(1)
EXAMPLES = (
    Product(fraction(2, 3), fraction(3, 4), Sign.OF),
    Product(fraction(1, 2), fraction(4, 5), Sign.OF),
    Product(whole_number(5), fraction(3, 8)),
    Product(whole_number(4), fraction(2, 3)),
)
"""Products that the stories of some grade have room for."""


def story(value: Any, path: Path, matter: Matter) -> Story | Slip:
    """Read a product, or ``product 1``, that a story is told about; arguments as for ``record``."""
    product = product_meant(value, path, matter, 'story = "product 1"', 'story = "2/3 of 3/4"')
    if isinstance(product, Slip):
        return product
    if matter.stage is None:
        return Slip(path, phrase("a story needs the grade of its lesson"), "grade = 5")
    fitting = _fitting(product, matter.stories)
    if not fitting:
        message = phrase(
            "no story of grade {grade} has room for {product}", grade=matter.grade, product=product.asked
        )
        others = [f'"{other.text}"' for other in EXAMPLES if _fitting(other, matter.stories)]
        return Slip(path, message, phrase("a product such as {products}", products=either(others)))
    own = list(matter.products or ())
    number = own.index(product) if product in own else 0
    return Story(fitting[number % len(fitting)])


def _fitting(product: Product, stories: Iterable[StoryFrame]) -> list[StoryItem]:
    """Tell every story in which these numbers are sensible, in their order."""
    told = []
    for frame in stories:
        if frame.asks.one_product:
            filling = _filling(product, frame.asks)
            told += [make_story(frame, filling)] if filling in fillings(frame.asks, frame.ranges) else []
    return told


def _filling(product: Product, asks: Asks) -> Filling:
    """Put the factors where a story tells them: so many portions of an amount, or a part of an amount."""
    if asks is Asks.PORTIONS and product.first.whole:
        return Filling(NOTHING_TAKEN, product.second, product.first.numerator)
    return Filling(product.first, product.second, 1)
