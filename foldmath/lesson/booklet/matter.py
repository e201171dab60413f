"""What a lesson gives to the pages of its booklet: its folds, its sheet between them, and its products."""

from collections.abc import Sequence

from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Gather, Slit, Step
from foldmath.statements.items import Reach
from foldmath.statements.items.story import StoryFrame
from foldmath.statements.products import Product
from foldmath.values import frozen


def uncut(steps: Sequence[Step]) -> int:
    """Tell how many steps are done before the first that cuts or gathers; all if none does."""
    return next((index for index, step in enumerate(steps) if isinstance(step, Slit | Gather)), len(steps))


@frozen(kw_only=True)
class Folds:
    """The folds of a lesson.

    Args:
        folding: the steps that fold, counted from 0.
        cutting: those of them that make new panels, which have sentences to record.
        states: of the sheet: before the first step, and after each.
        creased: the sheet with all its creases, before it is cut.
    """

    folding: tuple[int, ...]
    cutting: tuple[int, ...]
    states: tuple[FoldedState, ...]
    creased: FoldedState

    @property
    def steps(self) -> int:
        """How many steps the lesson has."""
        return len(self.states) - 1


@frozen(kw_only=True)
class Matter:
    """What pages may tell of.

    Args:
        folds: of the lesson; None if its steps cannot be done, so that none is looked for.
        products: of the lesson's practice; None if they cannot be read, so that none is looked for.
        grade: as the file gives it, right or not.
        stage: how far the grade has come in multiplying fractions; None if the file gives no grade.
        stories: those that the grade can be told.
    """

    folds: Folds | None
    products: tuple[Product, ...] | None
    grade: object
    stage: Reach | None
    stories: tuple[StoryFrame, ...]
