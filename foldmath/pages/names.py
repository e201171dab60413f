"""Names on paper: gives pupils whose names no page can print their numbers, and says what to install."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from foldmath.lesson.roster import Pupil
from foldmath.pages.pdf.glyphs import Lack, lack_of
from foldmath.phrases import Said, counted, joined, phrase

MOST_LISTED = 12
"""Numbers that a sentence bears; of more it is said how many there are."""

REMEDIES: dict[Lack, Said] = {
    Lack.LETTERS: phrase("write letters alone, without other signs"),
    Lack.LIBRARIES: phrase(
        "install what joins these letters: {command}", command="pip install 'foldmath[scripts]'"
    ),
    Lack.FONTS: phrase(
        "install a font that has these letters; on Debian and Ubuntu: {command}",
        command="sudo apt install fonts-noto-core fonts-wqy-microhei",
    ),
}


def with_numbers_for_unprintable(pupils: Iterable[Pupil]) -> tuple[Pupil, ...]:
    """Give each pupil whose name cannot be printed the number of the place in the list, to stand for it."""
    return _numbered(pupils, lambda pupil: lack_of(pupil.label) is not None)


def with_numbers(pupils: Iterable[Pupil]) -> tuple[Pupil, ...]:
    """Give every pupil such a number, where names may not be told."""
    return _numbered(pupils, lambda _: True)


def _numbered(pupils: Iterable[Pupil], is_one: Callable[[Pupil], bool]) -> tuple[Pupil, ...]:
    return tuple(
        replace(pupil, instead=f"#{number}") if is_one(pupil) else pupil
        for number, pupil in enumerate(pupils, start=1)
    )


def told_of_names(pupils: Iterable[Pupil]) -> tuple[Said, ...]:
    """Say whose pages carry numbers, and what to install so that they carry names."""
    lacking: dict[Lack, list[str]] = {}
    for pupil in pupils:
        if pupil.instead and (lack := lack_of(pupil.label)):
            lacking.setdefault(lack, []).append(pupil.instead)
    return tuple(_told(numbers, REMEDIES[lack]) for lack, numbers in lacking.items())


def _told(numbers: list[str], remedy: Said) -> Said:
    return counted(
        "{count} name cannot be printed; its page has its number in the list, {numbers}. Remedy: {remedy}",
        "{count} names cannot be printed; pages have their numbers in the list, {numbers}. Remedy: {remedy}",
        len(numbers),
        numbers=joined(", ", [*numbers[:MOST_LISTED], *(["…"] if numbers[MOST_LISTED:] else [])]),
        remedy=remedy,
    )
