"""How far hands go wrong at one fold: standard deviations in mm, assumed by grade and free to change."""

import tomllib
from enum import Enum
from functools import cache
from importlib.resources import files

from foldmath.measured import as_float
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK, Stock
from foldmath.values import frozen


class Placing(Enum):
    """What guides a hand to the place of a crease, or of the end of a cut; the value names its ``Spread``."""

    EDGE = "edge"
    EYE = "eye"
    TICK = "tick"
    CUT = "cut"


@frozen(kw_only=True)
class Spread:
    """The errors of one pair of hands, independent of each other; all in mm.

    Args:
        edge_mm: standard deviation of a crease whose landmarks are brought together.
        eye_mm: of a place judged by eye, such as a third of the way.
        tick_mm: of a crease laid on a tick.
        cut_mm: of the end of a cut that is to stop at a crease.
        thickness_mm: of one layer of paper, which a fold rolls round; 0 leaves that out.
        assumed: whether these are this house's assumption, and not measured in a class.
    """

    edge_mm: float
    eye_mm: float
    tick_mm: float
    cut_mm: float
    thickness_mm: float
    assumed: bool = False

    def of(self, placing: Placing) -> float:
        """Give the standard deviation for one way of placing, in mm."""
        return {
            Placing.EDGE: self.edge_mm,
            Placing.EYE: self.eye_mm,
            Placing.TICK: self.tick_mm,
            Placing.CUT: self.cut_mm,
        }[placing]


def default_spread(grade: int, stock: Stock = DEFAULT_STOCK) -> Spread:
    """Give the spread assumed for a grade; grades below 3 fold like 3, grades above 6 like 6.

    Source: none. An ASSUMPTION of this house, in ``spread.toml``, to be changed by who has measured.
    """
    table = _by_grade()
    values = table[min(max(grade, min(table)), max(table))]
    thickness = as_float(stock.caliper_mm)
    return Spread(
        edge_mm=values["edge"],
        eye_mm=values["eye"],
        tick_mm=values["tick"],
        cut_mm=values["cut"],
        thickness_mm=thickness,
        assumed=True,
    )


@cache
def _by_grade() -> dict[int, dict[str, float]]:
    text = files(__package__).joinpath("spread.toml").read_text(encoding="utf-8")
    return {int(grade): values for grade, values in tomllib.loads(text)["grade"].items()}
