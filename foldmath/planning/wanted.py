"""What a teacher may want of a sheet: a product, a number of equal panels, or panels of given sizes.

Each is read into grids, the creases along both axes, any of which will do.
"""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from math import lcm, prod
from typing import NamedTuple, TypeAlias

from foldmath.errors import Unreadable
from foldmath.paper.lengths import read_number
from foldmath.paper.steps import MOST_PLEATS
from foldmath.phrases import Phrase, Said, counted, joined, phrase
from foldmath.plane.numbers import ONE, ZERO, Exact, denominator, exact, numerator, written
from foldmath.planning.strip_search import Target, even_target
from foldmath.statements.products import Product, parse_product
from foldmath.statements.ratios import Ratio
from foldmath.values import frozen

MOST_PARTS = MOST_PLEATS
"""On one axis; past twelve, parts of a sheet are narrower than a finger."""

FINEST_LATTICE = 120
"""Sizes along one axis have a common denominator up to this."""

MOST_ARRANGEMENTS = 360
"""Orders of different sizes along one axis, mirror images taken as one."""

Parts: TypeAlias = tuple[Exact, ...]
"""Widths, or heights, as parts of an axis."""

DIVIDERS = ",;"
TO_BLANKS = str.maketrans(DIVIDERS, "  ")
LONGEST_SAID = 60
"""Sizes are listed in titles up to so many characters."""


class WantRefused(Unreadable):
    """A wish that cannot be read, or that no sheet of paper can be folded into.

    Args:
        message: what is wrong.
        hint: the remedy.
    """


class Grid(NamedTuple):
    """Creases along both axes.

    Args:
        across: those that cut the width.
        up: those that cut the height.
        shaded: the columns and the rows that a product shades; None if nothing is shaded.
        turned: whether the product's second factor is shaded across, not up.
    """

    across: Target
    up: Target
    shaded: tuple[Ratio, Ratio] | None = None
    turned: bool = False

    @property
    def smallest(self) -> tuple[Exact, Exact]:
        """The width of the narrowest column and the height of the lowest row, as parts of the sheet."""
        return smallest_part(self.across), smallest_part(self.up)


@frozen
class Wanted:
    """One wish.

    Args:
        said: it in words, for titles: ``2/3 × 4/5``, ``24 equal panels``.
        grids: all that fulfil it.
        product: to be practised; None if none was named.
    """

    said: Said
    grids: tuple[Grid, ...]
    product: Product | None = None


def smallest_part(target: Target) -> Exact:
    """Give the smallest part between creases, as a part of the axis."""
    places = [0, *sorted(target.creases), target.length]
    return exact(min(end - start for start, end in pairwise(places)), target.length)


def wanted_product(text: str) -> Wanted:
    """Read a product of two factors up to one whole, each with up to ``MOST_PARTS`` parts.

    Raises:
        SentenceRefused: it is no product.
        WantRefused: it does not fit on one sheet.
    """
    product = parse_product(text).in_fractions
    first, second = product.first, product.second
    for factor, other in ((first, second), (second, first)):
        if factor.numerator > factor.denominator:
            raise WantRefused(
                phrase("{factor} is more than one whole, and one sheet is one whole", factor=factor),
                _by_sheets(factor, other),
            )
        if factor.denominator > MOST_PARTS:
            hint = phrase("a denominator up to {most}", most=MOST_PARTS)
            raise WantRefused(_too_fine(factor), hint)
    if first.denominator == second.denominator == 1:
        whole = phrase("{product} is the whole sheet, with nothing to fold", product=product.text)
        raise WantRefused(whole, "1/2 × 2/3")
    grids = [
        Grid(even_target(one.denominator), even_target(other.denominator), (one, other), turned)
        for one, other, turned in ((first, second, False), (second, first, True))
    ]
    alike = first.denominator == second.denominator
    return Wanted(product.text, tuple(grids[:1] if alike else grids), product)


def _too_fine(factor: Ratio) -> Phrase:
    told = {"factor": factor, "parts": factor.denominator, "most": MOST_PARTS}
    return phrase("{factor} needs {parts} parts along one side; hands can fold {most} at most", **told)


def _by_sheets(factor: Ratio, other: Ratio) -> Phrase:
    """Say how a factor over one whole is folded on several sheets."""
    wholes, above = divmod(factor.numerator, factor.denominator)
    sheets = counted(
        "plan 1 × {other} and fold it on {count} sheet",
        "plan 1 × {other} and fold it on {count} sheets",
        wholes,
        other=other,
    )
    rest = f"{above}/{factor.denominator}"
    more = phrase("{sheets}, and {rest} × {other} on one more", sheets=sheets, rest=rest, other=other)
    return more if above else sheets


def wanted_panels(number: int) -> Wanted:
    """Want a number of equal panels, in rows and columns.

    Raises:
        WantRefused: fewer than two, or a number that no rows and columns of up to ``MOST_PARTS`` give.
    """
    if number < 2:
        raise WantRefused(
            phrase("a sheet that is folded has 2 panels at least"), phrase("{number} panels", number=2)
        )
    shapes = _shapes(number)
    if not shapes:
        most = MOST_PARTS * MOST_PARTS
        near = min((n for n in range(2, most + 1) if _shapes(n)), key=lambda n: (abs(n - number), n))
        raise WantRefused(
            phrase(
                "no rows and columns of at most {most} make {number} equal panels",
                most=MOST_PARTS,
                number=number,
            ),
            phrase("{number} panels", number=near),
        )
    grids = tuple(Grid(even_target(columns), even_target(rows)) for columns, rows in shapes)
    return Wanted(phrase("{number} equal panels", number=number), grids)


def _shapes(number: int) -> list[tuple[int, int]]:
    return [
        (columns, number // columns)
        for columns in range(1, MOST_PARTS + 1)
        if number % columns == 0 and number // columns <= MOST_PARTS
    ]


def wanted_sizes(text: str) -> Wanted:
    """Read the sizes of all panels, as fractions of the sheet: ``1/6, 1/6, 2/3`` or ``1/6 1/6 2/3``.

    Raises:
        NumberRefused: a size is no number.
        WantRefused: they are not the sizes of all panels of one sheet, or too many or too fine.
    """
    sizes = sorted(read_number(part) for part in text.translate(TO_BLANKS).split())
    total = sum(sizes, ZERO)
    if len(sizes) < 2 or sizes[0] <= ZERO:
        raise WantRefused(phrase("name the sizes of all panels, two or more, each above 0"), "1/3, 2/3")
    if total != ONE:
        more = phrase("add a panel of {lacking}", lacking=written(ONE - total))
        sums = phrase("these sizes add up to {total} of the sheet, not to 1", total=written(total))
        raise WantRefused(sums, more if total < ONE else phrase("smaller sizes"))
    if len(sizes) > MOST_PARTS * MOST_PARTS or denominator(sizes[0]) > FINEST_LATTICE * FINEST_LATTICE:
        too_many = phrase("these are too many panels to fold, or too small")
        raise WantRefused(too_many, "1/6, 1/6, 2/3")
    grids = tuple(
        Grid(across, up)
        for widths, heights in _factored(sizes)
        for across in _arranged(widths)
        for up in _arranged(heights)
    )
    if not grids:
        raise WantRefused(
            phrase("no rows and columns of at most {most} give panels of these sizes", most=MOST_PARTS),
            phrase("sizes with smaller denominators, or fewer different ones"),
        )
    return Wanted(phrase("panels: {sizes}", sizes=_sizes_said(sizes)), grids)


def _sizes_said(sizes: list[Exact]) -> Phrase:
    """Say how many panels have which size; of many sizes only the smallest and the largest."""
    tally = Counter(map(written, sizes)).items()
    told = joined(", ", (phrase("{number} of {size}", number=number, size=size) for size, number in tally))
    if len(str(told)) <= LONGEST_SAID:
        return told
    least, most = written(sizes[0]), written(sizes[-1])
    return phrase("{number} of {least} to {most}", number=len(sizes), least=least, most=most)


def _factored(sizes: list[Exact]) -> list[tuple[Parts, Parts]]:
    """Give every pair of widths and heights whose products are the sizes, each adding up to 1.

    The smallest size is the smallest width by the smallest height. The smallest one not explained yet has
    one of them as a factor, so it names a new width or a new height, and with it a whole row or column.
    """
    smallest = sizes[0]
    first: Parts = (smallest,)
    waiting = [(first, first, Counter(sizes) - Counter([smallest]))]
    found, known = set(), {(first, first)}
    while waiting:
        widths, heights, rest = waiting.pop()
        if not rest:
            found.add((_whole(widths), _whole(heights)))
            continue
        new = min(rest)
        row = Counter(new * width / smallest for width in widths)
        column = Counter(new * height / smallest for height in heights)
        for one, other, explained in (
            ((*widths, new), heights, column),
            (widths, (*heights, new), row),
        ):
            fits = max(len(one), len(other)) <= MOST_PARTS and explained <= rest
            if fits and (one, other) not in known:
                known.add((one, other))
                waiting.append((one, other, rest - explained))
    return sorted(found)


def _whole(parts: Parts) -> Parts:
    """Scale parts so that they add up to 1."""
    total = sum(parts, ZERO)
    return tuple(sorted(part / total for part in parts))


def _arranged(parts: Parts) -> list[Target]:
    """Give the targets of all orders of parts, mirror images taken as one; none if there are too many."""
    length = lcm(*(denominator(part) for part in parts))
    if length > FINEST_LATTICE:
        return []
    cells = [numerator(part * length) for part in parts]
    if orders_of(cells) > 2 * MOST_ARRANGEMENTS:
        return []
    found: dict[tuple[int, ...], Target] = {}
    for order in _permuted(Counter(cells), len(cells)):
        if order[::-1] not in found:
            places = [sum(order[:count]) for count in range(1, len(order))]
            found[order] = Target(length, frozenset(places))
    return list(found.values())


def orders_of(cells: list[int]) -> int:
    """Count the different orders of parts: the multinomial coefficient."""
    ways = prod(range(1, len(cells) + 1))
    for count in Counter(cells).values():
        ways //= prod(range(1, count + 1))
    return ways


def _permuted(left: Counter[int], places: int) -> Iterator[tuple[int, ...]]:
    if not places:
        yield ()
        return
    for cell in sorted(left):
        if left[cell]:
            rest = left.copy()
            rest[cell] -= 1
            for order in _permuted(rest, places - 1):
                yield (cell, *order)
