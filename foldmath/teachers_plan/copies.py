"""What to copy before a lesson: takes how many pupils work at which level, gives pages and paper."""

from collections.abc import Mapping
from dataclasses import dataclass

LEVELS = ("core", "guided", "stretch")
"""In the order of a copy list: the most first."""

USUAL_CLASS = {"core": 14, "guided": 8, "stretch": 6}
"""A class of 28, where no roster says otherwise [common practice, no source]."""

PUPILS_A_SPARE = 5
"""One spare sheet for so many pupils, and for what is left over [common practice, no source]."""

TICKETS_A_PAGE = 2


@dataclass(frozen=True)
class CopyList:
    """What to copy and count out.

    Args:
        pages: how many worksheets of each level, levels that nobody has left out.
        pupils: how many there are.
        spares: sheets of paper past one a pupil.
        tickets: pages of exit tickets, two tickets to a page.
    """

    pages: tuple[tuple[str, int], ...]
    pupils: int
    spares: int
    tickets: int

    @property
    def sheets(self) -> int:
        """Sheets of paper to fold."""
        return self.pupils + self.spares


def copy_list(counts: Mapping[str, int] | None) -> CopyList:
    """Give the copy list of a class.

    Args:
        counts: how many pupils have each level; None for the usual class.
    """
    counts = USUAL_CLASS if counts is None else counts
    known = [level for level in LEVELS if counts.get(level)]
    others = sorted(level for level in counts if level not in LEVELS and counts[level])
    pages = tuple((level, counts[level]) for level in (*known, *others))
    pupils = sum(number for _, number in pages)
    return CopyList(pages, pupils, -(-pupils // PUPILS_A_SPARE), -(-pupils // TICKETS_A_PAGE))
