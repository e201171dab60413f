"""The class list the other way: takes pupils, gives the rows that ``roster`` reads as the same pupils."""

from collections.abc import Iterable

from foldmath.lesson.roster import LANGUAGE, LEVEL, Pupil


def roster_rows(pupils: Iterable[Pupil]) -> list[tuple[str, ...]]:
    """Write a class as rows, the header first; with languages where any is said."""
    listed = [(pupil.label, pupil.level.value, pupil.language) for pupil in pupils]
    columns = 3 if any(language for *_, language in listed) else 2
    return [row[:columns] for row in (("name", LEVEL, LANGUAGE), *listed)]
