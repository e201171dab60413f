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
class SharedOut:
    """How many pupils of a class have which file, of what is alike for all who read it.

    Args:
        tickets: of the exit ticket.
        booklets: of the booklet's sheet; empty where there is none, or one without pages.
        foldings: of the page that shows how it is folded; empty where there is none.
    """

    tickets: Mapping[str, int]
    booklets: Mapping[str, int]
    foldings: Mapping[str, int]


@frozen
class OwnPages:
    """The pages of a class in which every pupil has numbers of his or her own, laid out already.

    Args:
        counts: how many pupils have each level.
        labels: of the pupils, in the order of their list; empty where there is none.
        pages: of all their worksheets, in one file.
        handouts: what else they have.
    """

    counts: Mapping[str, int]
    labels: tuple[str, ...]
    pages: int
    handouts: SharedOut


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
        own_booklets: the same of the booklet's sheet, one a pupil.
        own_foldings: the same of the page that shows how it is folded, one a pair.
    """

    levels: tuple[tuple[str, int], ...]
    pupils: int
    spares: int
    tickets: int
    own_pages: int
    own_tickets: tuple[tuple[str, int], ...]
    own_booklets: tuple[tuple[str, int], ...]
    own_foldings: tuple[tuple[str, int], ...]

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
    handouts = own.handouts if own else SharedOut({}, {}, {})
    return CopyList(
        levels=levels,
        pupils=pupils,
        spares=-(-pupils // PUPILS_A_SPARE),
        tickets=_ticket_pages(pupils),
        own_pages=own.pages if own else 0,
        own_tickets=tuple((file, _ticket_pages(some)) for file, some in handouts.tickets.items()),
        own_booklets=tuple(handouts.booklets.items()),
        own_foldings=tuple((file, _pairs(some)) for file, some in handouts.foldings.items()),
    )


def _pairs(pupils: int) -> int:
    """Give how many pairs they work in, one of them alone where their number is odd."""
    return -(-pupils // 2)


def _ticket_pages(pupils: int) -> int:
    return -(-pupils // TICKETS_A_PAGE)
