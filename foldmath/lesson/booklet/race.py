"""The game for two: a race over the panels of a sheet, which both run by the same rule at the same time.

Both players show fingers at once, so neither is first: what one may do, the other may. Every round takes at
least one of them on, so a game has an end.
"""

from foldmath.values import frozen

FEWEST_PANELS, MOST_PANELS = 6, 24
"""A shorter race is over before anybody has thought; a longer one has parts with no name in class."""

FINGERS, FINGERS_OF_LONG, LONG_RACE = 3, 5, 12
"""How many fingers may be shown: in a race of twelve panels and more, a whole hand."""

ALIKE = 1
"""How far both go where they show the same number."""


@frozen
class Race:
    """A race over the equal panels of a sheet, each of them one part of it.

    Args:
        columns, rows: of panels.
    """

    columns: int
    rows: int

    @property
    def panels(self) -> int:
        """How many there are."""
        return self.columns * self.rows

    @property
    def fingers(self) -> int:
        """The most that a player may show."""
        return FINGERS_OF_LONG if self.panels >= LONG_RACE else FINGERS

    def moved(self, one: int, other: int) -> tuple[int, int]:
        """Give how far each player goes on: the smaller number goes as many panels as it says."""
        if one == other:
            return ALIKE, ALIKE
        return (one, 0) if one < other else (0, other)
