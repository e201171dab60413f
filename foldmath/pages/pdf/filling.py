"""Filling pages: takes flowables, shares them out to pages, on as few sheets of paper as may be."""

from collections.abc import Sequence
from itertools import pairwise, product
from typing import NamedTuple

from foldmath.errors import BlockTooHigh
from foldmath.pages.pdf import styles
from foldmath.pages.pdf.columns import shared_out
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.rows import InColumns
from foldmath.pages.pdf.setting import PageStart
from foldmath.pages.pdf.styles import points
from foldmath.phrases import phrase

SPARSE = 0.35
"""A page with less of its height used has little on it."""

SIDES = 2
"""Of a sheet of paper."""

TIGHTER = (0.7, 0.45)
"""Spaces between blocks are this share of their own where that saves a page: no tighter than it takes."""

EVENED = (0.9, 0.8, 0.7, 0.6)
"""Shares of its height to which a page may be filled, so that the one after it has more on it."""


class Laid(NamedTuple):
    """A flowable on a page, with places in points.

    Args:
        flowable: wrapped.
        depth: of its foot below the top of what is filled.
        across: how far its left edge is from the left of that.
    """

    flowable: Painted
    depth: float
    across: float = 0.0


def pages_filled(flowables: Sequence[Painted], width: float, height: float) -> list[list[Laid]]:
    """Share flowables out to pages, of which so much is filled, in points.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    return [page for chapter in _chapters(flowables) for page in _pages_of(chapter, width, height)]


class _Filling:
    """Pages being filled from the top; depths are in points below the top of the usable area.

    Pages begun from now on are filled to ``later``; ``evened`` is the index of the first page that may be
    filled to less than its height, where there is one.
    """

    def __init__(self, width: float, height: float, spacing: float) -> None:
        self.width, self.height, self.spacing = width, height, spacing
        self.later = height
        self.pages: list[list[Laid]] = [[]]
        self.depth = self.space = 0.0
        self.evened: int | None = None

    def turn_page(self) -> None:
        """Begin the next page."""
        self.pages.append([])
        self.height = self.later
        self.depth = self.space = 0.0

    def put(self, flowable: Painted) -> None:
        """Put a flowable below the last one, or on the next page under the head of its table."""
        if isinstance(flowable, InColumns):
            self._put_columns(flowable.flowables, flowable.columns)
            return
        high = flowable.high(self.width, self.height)
        self._refuse_too_high(high)
        above = self._space_above(flowable)
        if self.depth + above + high > self.height:
            above = self._begin_page(flowable, high)
        self.depth += above + high
        self.space = flowable.getSpaceAfter()
        self.pages[-1].append(Laid(flowable, self.depth))

    def _space_above(self, flowable: Painted) -> float:
        space = max(self.space, flowable.getSpaceBefore()) * self.spacing
        return space if self.pages[-1] else 0.0

    def _begin_page(self, flowable: Painted, high: float) -> float:
        """Begin a page with what a flowable asks about, or the heads of its table; give the space above."""
        along = self._taken_along(flowable, high) if flowable.asks_above else []
        self.turn_page()
        for above in (*(along[0] if along else flowable).heads, *along):
            self.put(above)
        return self._space_above(flowable) if along else 0.0

    def _taken_along(self, question: Painted, high: float) -> list[Painted]:
        """Take off the page what a question asks about, if all has room on the next; else nothing."""
        page, count = self.pages[-1], 1
        while count < len(page) and page[-count].flowable.asks_above:
            count += 1
        along = [laid.flowable for laid in page[-count:]]
        spaces = (max(one.getSpaceAfter(), two.getSpaceBefore()) for one, two in pairwise((*along, question)))
        heights = (one.high(self.width, self.height) for one in (*along[0].heads, *along))
        if count >= len(page) or sum(heights) + sum(spaces) * self.spacing + high > self.later:
            return []
        del page[-count:]
        return along

    def _put_columns(self, flowables: list[Painted], columns: int) -> None:
        """Fill the columns of this page, and of as many more as it takes."""
        width = (self.width - (columns - 1) * points(styles.GUTTER_MM)) / columns
        while flowables:
            for flowable in flowables:
                self._refuse_too_high(flowable.high(width, self.height))
            above = self.space * self.spacing if self.pages[-1] else 0.0
            shares = shared_out(flowables, columns, self.height - self.depth - above, self.spacing)
            placed = sum(map(len, shares))
            for number, share in enumerate(shares):
                across = number * (width + points(styles.GUTTER_MM))
                self.pages[-1] += [Laid(one, self.depth + above + depth, across) for one, depth in share]
            if placed:
                self.depth += above + max(share[-1][1] for share in shares if share)
                self.space = flowables[placed - 1].getSpaceAfter()
            flowables = flowables[placed:]
            if flowables:
                self.turn_page()

    def _refuse_too_high(self, high: float) -> None:
        if high > self.height:
            raise BlockTooHigh(
                phrase(
                    "one part of its pages is {times} times as high as a page",
                    times=f"{high / self.height:.1f}",
                ),
                phrase("fewer steps between two folds, and shorter texts"),
            )


def _chapters(flowables: Sequence[Painted]) -> list[list[Painted]]:
    """Part flowables where a page must begin."""
    chapters: list[list[Painted]] = [[]]
    for flowable in flowables:
        if isinstance(flowable, PageStart) and not flowable.soft:
            chapters.append([])
        else:
            chapters[-1].append(flowable)
    return [chapter for chapter in chapters if chapter]


def _pages_of(chapter: list[Painted], width: float, height: float) -> list[list[Laid]]:
    """Fill the pages of a chapter.

    One whose last page would stay almost empty goes on where a page would be begun, or is set a little
    tighter, where that saves this page; and so does one that is then printed on a sheet of paper less.
    """
    filling = _filled(chapter, width, height, 1.0)
    if wanted := _worth(filling, height):
        running_on = [flowable for flowable in chapter if not isinstance(flowable, PageStart)]
        for blocks, spacing in ((running_on, 1.0), *product((chapter, running_on), TIGHTER)):
            fewer = _filled(blocks, width, height, spacing)
            if len(fewer.pages) <= wanted:
                return _evened(blocks, fewer, height).pages
    return _evened(chapter, filling, height).pages


def _worth(filling: _Filling, height: float) -> int:
    """Give how few pages it is worth to try for: 0 where the filled ones are as they should be."""
    pages = len(filling.pages)
    if pages > 1 and filling.depth < SPARSE * height:
        return pages - 1
    return SIDES * ((pages - 1) // SIDES)


def _evened(blocks: list[Painted], filling: _Filling, height: float) -> _Filling:
    """Fill the pages after the last wanted start alike, so that none is crowded before an emptier one."""
    if filling.evened is None or len(filling.pages) - filling.evened <= 1:
        return filling
    for share in EVENED:
        try:
            even = _filled(blocks, filling.width, height, filling.spacing, share)
        except BlockTooHigh:
            break
        if len(even.pages) > len(filling.pages):
            break
        filling = even
    return filling


def _filled(
    chapter: list[Painted], width: float, height: float, spacing: float, share: float = 1.0
) -> _Filling:
    """Fill pages; those begun from the last wanted start on, to a share of their height."""
    filling = _Filling(width, height, spacing)
    last = max((place for place, one in enumerate(chapter) if isinstance(one, PageStart)), default=None)
    for place, flowable in enumerate(chapter):
        if not isinstance(flowable, PageStart):
            filling.put(flowable)
            continue
        filling.later = height * share if place == last else height
        turns = filling.pages[-1] and filling.depth >= SPARSE * height
        if turns:
            filling.turn_page()
        if place == last:
            filling.evened = len(filling.pages) - (1 if turns else 0)
    return filling
