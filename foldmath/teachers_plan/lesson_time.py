"""A lesson of 45 minutes: takes how many folds, shadings and products there are, gives what fits, in minutes.

Source: start 5, three folds 15, two products 15, the slip 5, exit 5 [common practice, no source].
"""

from foldmath.values import frozen

START, SLIP, EXIT = 5, 5, 5
WORKING = 30
"""What is left of 45 minutes for folding and for products."""

FOLD, SHADING = 5, 2
TWO_PRODUCTS = 15
PRODUCTS_FIRST = 2
"""So many products have their time before folds past the first few take it."""

MOST_A_FOLD = 8
"""A fold opened, counted and talked about needs no longer than this."""


@frozen(kw_only=True)
class Hour:
    """What one lesson has time for.

    Args:
        steps: how many folds and shadings fit, from the first on.
        products: how many products fit.
        folding, multiplying, spare: minutes; the spare ones go to early finishers' work.
        later_steps, later_products: how many are left for next time.
    """

    steps: int
    products: int
    folding: int
    multiplying: int
    spare: int
    later_steps: int
    later_products: int

    @property
    def minutes(self) -> int:
        """The whole lesson."""
        return START + self.folding + self.multiplying + SLIP + self.spare + EXIT


def hour(steps: tuple[int, ...], products: int) -> Hour:
    """Share 45 minutes out.

    Args:
        steps: the minutes of each fold or shading, in order: ``FOLD`` or ``SHADING``.
        products: how many products there are to solve.
    """
    fitting = min(products, PRODUCTS_FIRST)
    room = WORKING - _multiplying(fitting)
    today = 0
    while today < len(steps) and sum(steps[: today + 1]) <= room:
        today += 1
    spent = sum(steps[:today])
    while fitting < products and spent + _multiplying(fitting + 1) <= WORKING:
        fitting += 1
    free = WORKING - spent - _multiplying(fitting)
    slower = min(free, (MOST_A_FOLD - FOLD) * today)
    return Hour(
        steps=today,
        products=fitting,
        folding=spent + slower,
        multiplying=_multiplying(fitting),
        spare=free - slower,
        later_steps=len(steps) - today,
        later_products=products - fitting,
    )


def _multiplying(products: int) -> int:
    """Give the minutes for so many products, a half minute rounded up."""
    return (TWO_PRODUCTS * products + 1) // 2
