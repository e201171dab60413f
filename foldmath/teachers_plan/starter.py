"""Two questions to start with: takes a lesson, asks with its own denominators whether the class is ready."""

from foldmath.lesson.proving import ProvedLesson
from foldmath.plane.numbers import denominator
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction
from foldmath.values import frozen

LARGEST_STARTER_DENOMINATOR = 12


@frozen
class Starter:
    """Two questions of readiness: what part is shaded, and which of two unit fractions is less.

    Args:
        part: of a sheet in equal parts, the shaded ones over all.
        greater, lesser: two unit fractions of the lesson, or near it.
    """

    part: Ratio
    greater: Ratio
    lesser: Ratio


def starter(proved: ProvedLesson, products: tuple[Product, ...]) -> Starter | None:
    """Choose the numbers of the questions from the lesson's own sizes and factors; None if it has none."""
    sizes = {denominator(size) for moment in proved.moments for size in moment.sizes}
    factors = [factor for product in products for factor in (product.second, product.first)]
    known = sorted(sizes | {factor.denominator for factor in factors})
    usable = [number for number in known if 1 < number <= LARGEST_STARTER_DENOMINATOR]
    if not usable:
        return None
    proper = [factor for factor in factors if factor.numerator < factor.denominator in usable]
    part = fraction(proper[0].numerator, proper[0].denominator) if proper else fraction(1, usable[0])
    larger = usable[1] if len(usable) > 1 else usable[0] + 1
    return Starter(part, fraction(1, usable[0]), fraction(1, larger))
