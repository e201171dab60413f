"""What to copy or print before a lesson: takes how many pupils work at which level, gives pages and paper."""

from collections.abc import Mapping

from foldmath.values import frozen

LEVELS = ("core", "guided", "stretch")
"""In the order of a copy list: the most first."""

USUAL_CLASS = {"core": 14, "guided": 8, "stretch": 6}
"""A class of 28, where no roster says otherwise [common practice, no source]."""

PUPILS_A_SPARE = 5
"""One spare sheet for so many pupils, and for what is left over [common practice, no source]."""

TICKETS_A_PAGE = 2


@frozen
class OwnPages:
    """The pages of a class in which every pupil has numbers of his or her own, laid out already.

    Args:
        counts: how many pupils have each level.
        labels: of the pupils, in the order of their list; empty where there is none.
        pages: of all their worksheets, in one file.
        tickets: how many pupils have the exit ticket of which file.
    """

    counts: Mapping[str, int]
    labels: tuple[str, ...]
    pages: int
    tickets: Mapping[str, int]


@frozen(kw_only=True)
class CopyList:
    """What to copy and count out.

    Args:
        levels: how many worksheets of each level, levels that nobody has left out.
        pupils: how many there are.
        spares: sheets of paper past one a pupil.
        tickets: pages of exit tickets, two tickets to a page.
        own_pages: of worksheets that are pupils' own and printed once; 0 where copies are made.
        own_tickets: files of exit tickets, with how many pages to print of each; empty where copies are made.
    """

    levels: tuple[tuple[str, int], ...]
    pupils: int
    spares: int
    tickets: int
    own_pages: int
    own_tickets: tuple[tuple[str, int], ...]

    @property
    def sheets(self) -> int:
        """Sheets of paper to fold."""
        return self.pupils + self.spares


def copy_list(own: OwnPages | None) -> CopyList:
    """Give the copy list of a class.

    Args:
        own: the pages of a class with numbers of its own; None for copies for the usual class.
    """
    counts = own.counts if own else USUAL_CLASS
    known = [level for level in LEVELS if counts.get(level)]
    others = sorted(level for level in counts if level not in LEVELS and counts[level])
    levels = tuple((level, counts[level]) for level in (*known, *others))
    pupils = sum(number for _, number in levels)
    return CopyList(
        levels=levels,
        pupils=pupils,
        spares=-(-pupils // PUPILS_A_SPARE),
        tickets=_ticket_pages(pupils),
        own_pages=own.pages if own else 0,
        own_tickets=tuple((file, _ticket_pages(some)) for file, some in own.tickets.items()) if own else (),
    )


def _ticket_pages(pupils: int) -> int:
    return -(-pupils // TICKETS_A_PAGE)
