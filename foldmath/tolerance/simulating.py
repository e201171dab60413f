"""Many sheets folded at random: the same frozen folding with drawn errors, all sheets at once."""

from itertools import pairwise
from typing import TYPE_CHECKING

from foldmath.tolerance.accuracy import edges_of_parts, mean_mm
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.landmarks.frozen import Frozen
from foldmath.values import frozen

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOST_SHEETS = 10_000_000


@frozen
class Simulated:
    """Simulated sheets; every array has a row a sheet, in mm.

    Args:
        creases: how far each crease lies off, in the order of ``Frozen.creases``.
        parts: how far each column and then each row is off in size, in the order of ``Accuracy.parts``.
        gaps: how far the slit runs past each crease, in the order of ``Frozen.gaps``.
    """

    creases: "NDArray[np.float64]"
    parts: "NDArray[np.float64]"
    gaps: "NDArray[np.float64]"

    def worst_mm(self, share: float = 0.95) -> float:
        """Give how far off the worst panel is, at most, on so large a share of the sheets."""
        import numpy as np

        return float(np.quantile(np.abs(self.parts).max(axis=1), share))


def simulated(frozen: Frozen, spread: Spread, sheets: int, seed: int) -> Simulated:
    """Fold many sheets, each with errors of its own, drawn from normal distributions.

    The tape is run forward with an array for each entry: no coefficients and no covariance.

    Args:
        frozen: the folding.
        spread: of the hands, in mm.
        sheets: how many, from 1 to ``MOST_SHEETS``.
        seed: the same seed draws the same sheets.
    """
    if not 1 <= sheets <= MOST_SHEETS:
        raise ValueError(f"from 1 to {MOST_SHEETS} sheets can be simulated, not {sheets}")
    values = _run(frozen, spread, sheets, seed)
    parts = [
        values[high] - values[low]
        for axis, _ in frozen.lengths
        for (_, low), (_, high) in pairwise(edges_of_parts(frozen, axis))
    ]
    return Simulated(
        _beside(sheets, [values[crease.error] for crease in frozen.creases]),
        _beside(sheets, parts),
        _beside(sheets, [values[gap.error] for gap in frozen.gaps]),
    )


def _run(frozen: Frozen, spread: Spread, sheets: int, seed: int) -> "list[NDArray[np.float64]]":
    """Run the tape forward; the last array is for ``UNERRING``."""
    import numpy as np

    drawing = np.random.default_rng(seed)
    drawn = {
        source.entry: drawing.normal(mean_mm(source, spread), spread.of(source.placing), sheets)
        for source in frozen.sources
    }
    unerring = np.zeros(sheets)
    values: list[NDArray[np.float64]] = []
    for entry, terms in enumerate(frozen.tape):
        value = drawn.get(entry, unerring)
        for factor, earlier in terms:
            value = value + factor * values[earlier]
        values.append(value)
    return [*values, unerring]


def _beside(sheets: int, arrays: "list[NDArray[np.float64]]") -> "NDArray[np.float64]":
    import numpy as np

    return np.column_stack(arrays) if arrays else np.zeros((sheets, 0))
