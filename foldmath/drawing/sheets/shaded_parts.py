"""Which shaded parts of a sheet are hatched: what is shaded second is hatched inside the first part alone.

So a part of a part is seen, and counted where hatches cross; the model itself shades whole rows and columns.
"""

from collections.abc import Mapping

from foldmath.paper.state import FoldedState, Panel
from foldmath.paper.steps import Axis


def shaded_inside(state: FoldedState) -> Mapping[Axis, Axis]:
    """Give the axis along which parts were shaded second, with that of the parts inside which they lie."""
    for panel in state.panels:
        axes = tuple(dict.fromkeys(panel.shadings))
        if len(axes) > 1:
            return {axes[1]: axes[0]}
    return {}


def hatched_axes(panel: Panel, inside: Mapping[Axis, Axis]) -> list[Axis]:
    """Give the axes of a panel's hatches, that of its first shading first.

    Args:
        panel: of a sheet.
        inside: the axis along which parts were shaded second, with that of the parts around them.
    """
    return [axis for axis in dict.fromkeys(panel.shadings) if inside.get(axis, axis) in panel.shadings]
