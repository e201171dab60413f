"""What a worksheet says: takes the folding part of a lesson, gives it the items of one level, as values."""

from dataclasses import replace
from functools import cached_property
from itertools import groupby
from random import Random

from foldmath.drawing.area_models import Guide
from foldmath.lesson.kinds import only_names
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.practice.choosing import choose
from foldmath.practice.example import example_beside
from foldmath.statements.items import ExplainItem, Item, ItemKind, Level, MendItem, ShadeItem
from foldmath.statements.rules.folds import COUNT_FOR_SIZE
from foldmath.statements.standards import asks_simplest_form
from foldmath.values import frozen
from foldmath.worksheets.folding_part import FoldingPart, Slip, Talk
from foldmath.worksheets.item_pictures import GUIDES, ItemPicture, ModelSize, example_picture, item_picture
from foldmath.worksheets.judged import Judged, count_judged, sizes_judged
from foldmath.worksheets.version_code import ANY_PAPER, version_code

DRAWING = "drawing"
"""The name of the picture that is an open sheet to draw on."""

TWICE = 2
"""How often a cell is shaded that counts for the product of two fractions."""


@frozen
class PlacedItem:
    """An item on a page, with the names of its empty and its shaded picture; both empty if it has none."""

    item: Item
    picture: ItemPicture | None

    @property
    def pictures(self) -> tuple[str, ...]:
        """The names of all pictures that it places."""
        if isinstance(self.item, ExplainItem):
            return (DRAWING,)
        return (self.picture.name, self.picture.shaded_name) if self.picture else ()

    @property
    def wide(self) -> bool:
        """Whether it is as wide as the page: it has a model to shade that a column has no room for."""
        return self.shades and self.picture is not None and not self.picture.in_column

    @property
    def shades(self) -> bool:
        """Whether it has a model to shade."""
        return self.picture is not None and self.item.kind is ItemKind.SHADE


@frozen
class Run:
    """Items that follow one another, all as wide as the page or all in columns.

    Args:
        wide: whether they are as wide as the page.
        shades: whether the first model to shade on the page begins it.
        items: with their numbers on the page; the example has none.
    """

    wide: bool
    shades: bool
    items: tuple[tuple[int | None, PlacedItem], ...]


OWN_FOR_JUDGED = 2
"""So many items in a teacher's own words take the place of the sentence that is true or false."""


@frozen(kw_only=True)
class Worksheet:
    """Everything that a worksheet and its key say.

    Args:
        folding: what it shares with all worksheets of the lesson.
        level: of support; pupils see it only in the last figure of the code.
        pupil: whose name stands on the page; empty where pupils write it.
        code: ties the worksheet to its key.
        chosen_by: the code that it has on letter paper, by which the sentence to judge is chosen.
        slip: the count/size slip that is asked about, mended by no sentence of an item; may be None.
        items: of practice.
        example: an item like the first, solved, at the level with most support; None without.
    """

    folding: FoldingPart
    level: Level
    pupil: str
    code: str
    chosen_by: str
    slip: Slip | None
    items: tuple[PlacedItem, ...]
    example: PlacedItem | None = None

    @property
    def lesson(self) -> Lesson:
        """The lesson."""
        return self.folding.lesson

    @property
    def multiplies(self) -> bool:
        """Whether this class multiplies fractions by fractions."""
        return self.folding.multiplies

    @property
    def only_names(self) -> bool:
        """Whether this class names fractions and multiplies none, not even by whole numbers."""
        return only_names(self.lesson.grade, self.lesson.followed)

    @property
    def simplest(self) -> bool:
        """Whether this class writes products in simplest form too."""
        return asks_simplest_form(self.lesson.grade, self.lesson.followed)

    @property
    def placed(self) -> tuple[PlacedItem, ...]:
        """All that stands on the page: the items, and the example, if there is one."""
        return (*self.items, self.example) if self.example else self.items

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """The example and the items in their order, those as wide as the page apart from those in columns."""
        solved = [(None, self.example)] if self.example else []
        numbered = [*solved, *enumerate(self.items, start=1)]
        first = next((one for one in numbered if one[1].shades), None)
        runs = ((wide, tuple(items)) for wide, items in groupby(numbered, key=lambda one: one[1].wide))
        return tuple(Run(wide, items[0] is first, items) for wide, items in runs)

    @property
    def shading(self) -> tuple[ShadeItem, ...]:
        """The items with a model to shade."""
        return tuple(placed.item for placed in self.items if isinstance(placed.item, ShadeItem))

    @property
    def shades_twice(self) -> bool:
        """Whether parts shaded twice answer any of the models."""
        return any(item.sheets and item.sheets.times == TWICE for item in self.shading)

    @property
    def roomy(self) -> bool:
        """Whether answers in words have a line more than the fewest: not below a row of sheets to shade."""
        rows = (placed.item for placed in self.items if placed.wide)
        return not any(isinstance(row, ShadeItem) and row.sheet_count > 1 for row in rows)

    @property
    def ruled(self) -> bool:
        """Whether the models have their lines drawn already."""
        return GUIDES[self.level] is Guide.LINES

    @cached_property
    def judged(self) -> Judged | None:
        """The sentence that is true or false; None where other items ask more than it does.

        These are one about the slip, and two in the teacher's own words, which would not have room beside it;
        nor has it at stretch beside models of several sheets, or models and what is told of a booklet.
        """
        own = sum(placed.item.kind is ItemKind.OWN for placed in self.items)
        rules = {placed.item.rule for placed in self.items if isinstance(placed.item, MendItem)}
        several = any(item.sheet_count > 1 for item in self.shading)
        full = self.stretch and (self.folding.making or several) and len(self.shading) > 1
        if COUNT_FOR_SIZE in rules or own >= OWN_FOR_JUDGED or full:
            return None
        number = len(self.items) + 1
        if self.only_names:
            return sizes_judged(self.folding, number, self.chosen_by)
        if self.slip is None:
            return None
        return count_judged(self.slip, number, self.chosen_by, multiplies=self.multiplies)

    @property
    def talked(self) -> int | None:
        """The number of what closes the page in the pupils' own words; None where nothing does."""
        judged = 1 if self.judged else 0
        return len(self.items) + judged + 1 if self.guided or self.stretch else None

    @property
    def talk(self) -> Talk | None:
        """What a class that shares this page talks about: its sentence; the lesson's where it has none."""
        return (self.judged and self.judged.talk) or self.folding.talk

    @property
    def guided(self) -> bool:
        """Whether this level has frames, a word bank and an example."""
        return self.level is Level.GUIDED

    @property
    def stretch(self) -> bool:
        """Whether this level asks pupils to make their own."""
        return self.level is Level.STRETCH


def with_items(
    folding: FoldingPart,
    proved: ProvedLesson,
    level: Level,
    size: ModelSize,
    *,
    seed: int | None = None,
    pupil: str = "",
) -> Worksheet:
    """Give the worksheet of a level.

    Args:
        folding: what all worksheets of the lesson share.
        proved: the lesson.
        level: of support.
        size: of the models.
        seed: of the numbers, where a pupil has numbers of his or her own; else the class's.
        pupil: whose worksheet it is.
    """
    chosen = choose(proved, level, seed=seed)
    items = _side_by_side(tuple(PlacedItem(item, item_picture(item, level, size)) for item in chosen))
    solved = example_beside(chosen, proved) if level is Level.GUIDED else None
    own = "" if seed is None else f"{seed}"
    shown = frozenset().union(*(placed.item.shown for placed in items))
    code = version_code(proved.lesson, level, own)
    chosen_by = version_code(replace(proved.lesson, paper=ANY_PAPER), level, own)
    untold = [slip for slip in folding.slips if shown.isdisjoint((slip.count, slip.size))]
    return Worksheet(
        folding=folding,
        level=level,
        pupil=pupil,
        code=code,
        chosen_by=chosen_by,
        slip=Random(f"{chosen_by}{len(untold)}").choice(untold) if untold else None,
        items=items,
        example=PlacedItem(solved, example_picture(solved, size)) if solved else None,
    )


def _side_by_side(items: tuple[PlacedItem, ...]) -> tuple[PlacedItem, ...]:
    """Place all sheets to shade in rows where some have no room in a column: one alone would leave a gap."""
    if not any(placed.wide for placed in items):
        return items
    return tuple(
        PlacedItem(placed.item, placed.picture.in_row) if placed.shades and placed.picture else placed
        for placed in items
    )
