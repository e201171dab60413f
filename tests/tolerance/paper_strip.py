"""A strip of paper that is really folded, with numbers: an independent, clumsy second opinion on errors.

Layers are intervals of the sheet lying on a line; a fold cuts and flips them; nothing is linearised. It
knows halvings of the folded strip and folds of an open strip's edge to a crease, and no other.
"""

from dataclasses import dataclass, field

NEAR = 1.0
"""Ends of layers this near to an end of the strip are flush with it, but for errors."""


@dataclass
class Layer:
    """Paper from ``start`` to ``end`` of the sheet, lying from ``lies(start)`` to ``lies(end)``."""

    start: float
    end: float
    sign: int = 1
    shift: float = 0.0

    def lies(self, place: float) -> float:
        return self.sign * place + self.shift

    @property
    def low(self) -> float:
        return min(self.lies(self.start), self.lies(self.end))

    @property
    def high(self) -> float:
        return max(self.lies(self.start), self.lies(self.end))


@dataclass
class PaperStrip:
    """A strip of some length; ``layers`` from the bottom up, ``creases`` where they fell on the sheet."""

    length: float
    layers: list[Layer] = field(default_factory=list)
    creases: list[float] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.open()

    def open(self) -> None:
        self.layers = [Layer(0.0, self.length)]

    def turn_over(self) -> None:
        """Turn the folded strip over; where on the table it lies then does not matter."""
        self.layers = [
            Layer(layer.start, layer.end, -layer.sign, self.length - layer.shift)
            for layer in reversed(self.layers)
        ]

    def halve(self, *, left_moves: bool, behind: bool, slip: float) -> None:
        """Bring the strip's ends together as they are seen from the side that the fold is made on."""
        seen = self.layers if behind else self.layers[::-1]
        lowest, highest = min(layer.low for layer in seen), max(layer.high for layer in seen)
        left = next(layer.low for layer in seen if layer.low < lowest + NEAR)
        right = next(layer.high for layer in seen if layer.high > highest - NEAR)
        self._fold((left + right) / 2 + slip, left_moves, behind)

    def edge_to_crease(self, crease: float, *, left_moves: bool, slip: float) -> None:
        """Bring an edge of the open strip onto a crease of it."""
        edge = 0.0 if left_moves else self.length
        self._fold((edge + crease) / 2 + slip, left_moves, False)

    def _fold(self, line: float, left_moves: bool, behind: bool) -> None:
        staying, moving = [], []
        for layer in self.layers:
            for part in self._cut(layer, line):
                moves = (part.low + part.high) / 2 < line if left_moves else (part.low + part.high) / 2 > line
                (moving if moves else staying).append(part)
        flipped = [
            Layer(part.start, part.end, -part.sign, 2 * line - part.shift) for part in reversed(moving)
        ]
        self.layers = flipped + staying if behind else staying + flipped

    def _cut(self, layer: Layer, line: float) -> list[Layer]:
        if not layer.low < line < layer.high:
            return [layer]
        place = (line - layer.shift) * layer.sign
        self.creases.append(place)
        return [
            Layer(layer.start, place, layer.sign, layer.shift),
            Layer(place, layer.end, layer.sign, layer.shift),
        ]
