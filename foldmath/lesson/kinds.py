"""Kinds of item by grade: which ones a class can be asked, and which one a name in a lesson file means."""

from difflib import get_close_matches
from typing import Any

from foldmath.errors import Unreadable
from foldmath.phrases import phrase
from foldmath.statements.items import ItemKind, Reach
from foldmath.statements.items.story import StoryFrame, all_stories
from foldmath.statements.standards import Followed
from foldmath.statements.story_numbers import Asks

FIRST_GRADES = {Followed.CCSS: (4, 5), Followed.ENGLAND: (5, 6), Followed.NONE: (4, 5)}
"""The grades that first multiply a fraction by a whole number, and by a fraction.

Common Core State Standards 4.NF.B.4 and 5.NF.B.4 (2010); England's programmes of study for Years 5 and 6
(DFE-00180-2013). A lesson that follows neither has the grades of the first.
"""

MULTIPLYING = (ItemKind.SHADE, ItemKind.BIGGER_OR_SMALLER, ItemKind.STORY)
"""Kinds with no form that does without multiplying fractions."""

CHOSEN_KINDS = tuple(kind for kind in ItemKind if kind is not ItemKind.OWN)
"""Kinds that items are chosen of; a teacher's own words are written under ``items``."""

NEAR_KINDS = {
    "area": ItemKind.SHADE,
    "multiply": ItemKind.SHADE,
    "sort": ItemKind.COUNT_OR_SIZE,
    "box": ItemKind.MISSING_FACTOR,
    "equivalent": ItemKind.SAME_SIZE,
    "equal": ItemKind.SAME_SIZE,
    "compare": ItemKind.BIGGER_OR_SMALLER,
    "divide": ItemKind.HOW_MANY_PIECES,
    "division": ItemKind.HOW_MANY_PIECES,
    "power": ItemKind.REPEATED_HALVING,
    "powers": ItemKind.REPEATED_HALVING,
    "steps": ItemKind.WHICH_FOLD,
    "word problem": ItemKind.STORY,
    "word-problem": ItemKind.STORY,
    "mistake": ItemKind.MEND,
    "why": ItemKind.EXPLAIN,
}
"""Names that people might choose, and that are spelt unlike the right ones."""


class KindRefused(Unreadable):
    """A name of no kind of item, or of one that a grade cannot be asked."""


def reach(grade: int, followed: Followed) -> Reach:
    """Tell how far a grade has come; a year in England is a grade here."""
    first_whole, first_pair = FIRST_GRADES[followed]
    if grade >= first_pair:
        return Reach.PAIRS
    return Reach.BY_WHOLES if grade >= first_whole else Reach.NAMING


def only_names(grade: int, followed: Followed) -> bool:
    """Tell whether a grade names fractions and multiplies none, not even by whole numbers."""
    return reach(grade, followed) is Reach.NAMING


def kinds_for(grade: int, followed: Followed) -> tuple[ItemKind, ...]:
    """Give the kinds of item that a grade can be asked."""
    naming = only_names(grade, followed)
    return tuple(kind for kind in CHOSEN_KINDS if not (naming and kind in MULTIPLYING))


def kind_named(name: str, grade: Any, followed: Followed) -> ItemKind:
    """Find a kind by its name in a lesson file.

    Args:
        name: as written.
        grade: as the file gives it, right or not; where it is not, no kind is too hard.
        followed: whose standards.

    Raises:
        KindRefused: there is no such kind, or it multiplies fractions before the grade does.
    """
    plain = name.strip().casefold()
    names = [kind.value for kind in CHOSEN_KINDS]
    if plain not in names:
        near = get_close_matches(plain, names, n=1, cutoff=0.5)
        meant = NEAR_KINDS[plain].value if plain in NEAR_KINDS else near[0] if near else ""
        hint = f'"{meant}"' if meant else phrase("the kinds are {names}", names=", ".join(names))
        raise KindRefused(phrase("there is no kind of item of this name"), hint)
    kind = ItemKind(plain)
    if isinstance(grade, int) and kind not in kinds_for(grade, followed):
        message = phrase("items of this kind multiply fractions, which grade {grade} does not", grade=grade)
        raise KindRefused(message, f"grade = {FIRST_GRADES[followed][0]}")
    return kind


def stories_for(grade: int, followed: Followed) -> tuple[StoryFrame, ...]:
    """Give the stories that fit a grade: whole × fraction first, later fraction × fraction."""
    first_whole, first_fraction = FIRST_GRADES[followed]
    if grade < first_whole:
        return ()
    return tuple(
        story for story in all_stories() if (story.asks is Asks.PORTIONS) == (grade < first_fraction)
    )
