"""Ways to fold one axis and what they ask of hands: takes a target, gives those worth comparing."""

from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS, Axis
from foldmath.planning.folding_steps import Sentences, fan_steps, sayings
from foldmath.planning.strip import Moves, open_strip
from foldmath.planning.strip_search import MOST_STRIPS_FURTHER, Target, shortest_ways
from foldmath.planning.trials import Trials
from foldmath.tolerance.assumed.spread import Spread
from foldmath.values import frozen

MOST_MORE_FOLDS = 2
"""A way with fewer layers is offered for up to so many folds more than the fewest."""

MOST_WEIGHED, MOST_WEIGHED_FURTHER = 60, 6
"""So many ways with the fewest folds, and with each further number of layers, are weighed by how true they
come out; those that paper guides come first."""


@frozen(kw_only=True)
class Way:
    """A way to fold one axis of a sheet that lies open.

    Args:
        name: the moves that it says, or the parts of its fans.
        steps: to say; what is folded at the end stays folded.
        folds: creases made by hand; a fan into five is four.
        layers: the most layers on the way.
        last_layers: the most layers at its end.
        opens: whether it opens anything on its way.
        off_mm: how far off the worst part of the axis may be, by eye where paper shows no mark.
    """

    name: tuple[object, ...]
    steps: Sentences
    folds: int
    layers: int
    last_layers: int
    opens: bool
    off_mm: float


@frozen
class Ways:
    """Ways for one target along the width and along the height, and whether the search looked everywhere."""

    by_axis: dict[Axis, tuple[Way, ...]]
    complete: bool


def ways_to(target: Target, trials: Trials, spread: Spread, most_layers: int) -> Ways:
    """Give the ways with the fewest folds, then those that buy fewer layers with more folds, then fans.

    None that is no better in anything than another one; empty if there is no way within the layers. Errors
    of hands do not depend on the length of a side, so ways are compared along the width alone.
    """
    if not target.creases:
        return Ways(
            dict.fromkeys(
                Axis, (Way(name=(), steps=(), folds=0, layers=1, last_layers=1, opens=False, off_mm=0),)
            ),
            complete=True,
        )
    moves, complete = _moves_to(target, most_layers)
    kept = _undominated(
        [way for each in moves for way in _weighed(each, target, Axis.WIDTH, trials, spread)]
        + _fans(target, Axis.WIDTH, trials, spread, most_layers)
    )
    names = dict.fromkeys(way.name for way in kept)
    upright = [
        way for each in moves if each in names for way in _weighed(each, target, Axis.HEIGHT, trials, spread)
    ]
    upright += _fans(target, Axis.HEIGHT, trials, spread, most_layers)
    return Ways({Axis.WIDTH: tuple(kept), Axis.HEIGHT: tuple(_undominated(upright))}, complete)


def _moves_to(target: Target, most_layers: int) -> tuple[list[Moves], bool]:
    """Give ways worth weighing, and whether they hold every one with the fewest folds."""
    found = shortest_ways(target, most_layers)
    complete = found.complete and len(found.ways) <= MOST_WEIGHED
    moves = list(found.ways[:MOST_WEIGHED])
    fewest = len(moves[0]) if moves else 0
    while found.ways:
        thinnest = min(_most_layers(way, target) for way in found.ways)
        found = shortest_ways(target, thinnest - 1, MOST_STRIPS_FURTHER)
        if not found.ways or len(found.ways[0]) > fewest + MOST_MORE_FOLDS:
            break
        moves += found.ways[:MOST_WEIGHED_FURTHER]
    return moves, complete


def _undominated(ways: list[Way]) -> list[Way]:
    """Keep the ways that are better in something than any other, best first."""
    kept: list[Way] = []
    for way in sorted(ways, key=lambda way: (_figures(way), way.off_mm)):
        figures = _figures(way)
        if not any(all(a <= b for a, b in zip(_figures(other), figures, strict=True)) for other in kept):
            kept.append(way)
    return kept


def _figures(way: Way) -> tuple[int, ...]:
    return way.folds, round(way.off_mm), way.layers, len(way.steps), way.opens, way.last_layers


def _weighed(moves: Moves, target: Target, axis: Axis, trials: Trials, spread: Spread) -> list[Way]:
    opens = any(move.opened for move in moves)
    return [
        _way(moves, steps, len(moves), trials, spread, opens=opens)
        for steps in sayings(moves, axis, target.length)
    ]


def _way(
    name: tuple[object, ...], steps: Sentences, folds: int, trials: Trials, spread: Spread, *, opens: bool
) -> Way:
    moments = trials.moments(steps)
    layers = [moment.after.table.layers for moment in moments]
    return Way(
        name=name,
        steps=steps,
        folds=folds,
        layers=max(layers),
        last_layers=layers[-1],
        opens=opens,
        off_mm=trials.accuracy(steps, spread).worst_mm,
    )


def _most_layers(moves: Moves, target: Target) -> int:
    strip, most = open_strip(target.length), 1
    for move in moves:
        strip = strip.after(move)
        most = max(most, strip.layers[-1])
    return most


def _fans(target: Target, axis: Axis, trials: Trials, spread: Spread, most_layers: int) -> list[Way]:
    """Give the ways to make equal parts by fans, one into all parts or fans of fans; none for other parts."""
    if len(target.creases) != target.length - 1 or target.length > most_layers:
        return []
    return [
        _way(factors, fan_steps(factors, axis), sum(factors) - len(factors), trials, spread, opens=False)
        for factors in _factorings(target.length)
    ]


def _factorings(number: int) -> list[tuple[int, ...]]:
    """Give every ordered way to write a number as a product of factors that a fan can have."""
    splits: list[tuple[int, ...]] = [(number,)] if FEWEST_PLEATS <= number <= MOST_PLEATS else []
    for first in range(FEWEST_PLEATS, number):
        if number % first == 0:
            splits += [(first, *rest) for rest in _factorings(number // first)]
    return splits
