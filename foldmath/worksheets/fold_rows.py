"""What a worksheet tells and asks of each fold: takes the moment of the fold, gives a row as a value."""

from collections import Counter
from collections.abc import Iterable, Mapping

from foldmath.paper.moments.moment import Moment
from foldmath.plane.numbers import Exact, denominator
from foldmath.statements.expressions import Claim, Expression, Operation, Sign, terms
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, lowest_terms
from foldmath.statements.sentences import count_sentence, size_sentences
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

MOST_SIZE_SENTENCES = 2
"""More different cuts in one fold are told as a tally, panel size by panel size."""

WHOLE = 1
"""A panel that no crease crosses stays one part."""


@frozen(kw_only=True)
class FoldRow:
    """A row of "predict, fold, record".

    Args:
        number: of the row, from 1.
        step: the fold.
        before: the steps since the fold before, such as "open".
        moment: the index of the step, which names its pictures.
        crossing: whether the line to fold along goes through a crossing of old creases.
        panels: how many panels there are after it.
        cut: whether the step made new panels.
        count: the count sentence; None if nothing was cut.
        sizes: size sentences in their "of" reading; empty where a tally tells more.
        each: the fraction of the sheet that every panel is; None where they differ.
        tally: how many panels of which area, where there are several sizes.
        smallest: the fraction of the sheet that its smallest panels are; None where pupils do not write it.
    """

    number: int
    step: WrittenStep
    before: tuple[WrittenStep, ...]
    moment: int
    crossing: bool
    panels: int
    cut: bool
    count: Claim | None
    sizes: tuple[Claim, ...]
    each: Ratio | None
    tally: tuple[tuple[int, Ratio], ...]
    smallest: Ratio | None

    @property
    def areas(self) -> tuple[Ratio, ...]:
        """The fractions of the sheet that its panels are, so far as pupils write them."""
        areas = [area for _, area in self.tally]
        told: list[Expression] = [*areas, *(size.answer for size in self.sizes)]
        return tuple(area for area in told if isinstance(area, Ratio))

    @property
    def shares(self) -> tuple[Ratio, ...]:
        """The fractions that are taken of older panels, so far as pupils write them."""
        asked = (size.asked for size in self.sizes)
        told = (of.left for of in asked if isinstance(of, Operation) and of.sign is Sign.OF)
        return tuple(share for share in told if isinstance(share, Ratio))

    @property
    def counted_apart(self) -> bool:
        """Whether panels left whole and panels cut alike are counted apart: ``1 + 1 × 2 = 3``."""
        last = terms(self.count.asked)[-1] if self.count else None
        return self.adds and isinstance(last, Operation)

    @property
    def adds(self) -> bool:
        """Whether the count is a sum: of panels left whole and others, or of old panels and new ones."""
        return self.count is not None and len(terms(self.count.asked)) > 1

    @property
    def one_of_each(self) -> bool:
        """Whether no two panels of a tally are of one size, so that sizes alone tell it."""
        return bool(self.tally) and all(count == 1 for count, _ in self.tally)

    @property
    def several_sizes(self) -> bool:
        """Whether its panels are of several sizes, which take the width of the page."""
        return bool(self.tally) or len(self.sizes) > 1


@frozen
class SomeCut:
    """What a fold did that cut some panels and left others whole.

    Args:
        row: the number of the fold's row, from 1.
        cut, left: how many panels of which area it cut and left; none where they are too small for pupils.
    """

    row: int
    cut: tuple[tuple[int, Ratio], ...]
    left: tuple[tuple[int, Ratio], ...]


def fold_row(
    number: int, index: int, moment: Moment, step: WrittenStep, before: tuple[WrittenStep, ...]
) -> FoldRow:
    """Give the row of a fold, with its number and the index of its moment, and the steps before it."""
    counts = count_sentence(moment)
    cuts = moment.cuts
    tally: tuple[tuple[int, Ratio], ...] = ()
    sizes: tuple[Claim, ...] = ()
    if len(cuts) <= MOST_SIZE_SENTENCES and printable([part for cut in cuts for part in cut]):
        sizes = tuple(sentence.read for sentence in size_sentences(moment))
    elif printable(moment.sizes):
        tally = _tallied(moment.sizes)
    return FoldRow(
        number=number,
        step=step,
        before=before,
        moment=index,
        crossing=moment.at_crossing,
        panels=len(moment.after.panels),
        cut=moment.new_panels > 0,
        count=counts[0].claim if counts else None,
        sizes=sizes,
        each=_each(moment),
        tally=tally,
        smallest=lowest_terms(min(moment.sizes)) if printable(moment.sizes) else None,
    )


def _each(moment: Moment) -> Ratio | None:
    alike = len(moment.sizes) == 1 and printable(moment.sizes)
    return lowest_terms(next(iter(moment.sizes))) if alike else None


def some_cut(moments: list[Moment]) -> SomeCut | None:
    """Tell which panels the last fold cut and left of those folds that did both."""
    rows = [row for row, moment in enumerate(moments, start=1) if moment.new_panels and WHOLE in moment.parts]
    if not rows:
        return None
    moment = moments[rows[-1] - 1]
    before = [(panel.area, parts) for panel, parts in zip(moment.before.panels, moment.parts, strict=True)]
    cut = Counter(area for area, parts in before if parts > WHOLE)
    left = Counter(area for area, parts in before if parts == WHOLE)
    if not printable([*cut, *left]):
        return SomeCut(rows[-1], (), ())
    return SomeCut(rows[-1], _tallied(cut), _tallied(left))


def _tallied(areas: Mapping[Exact, int]) -> tuple[tuple[int, Ratio], ...]:
    """Give how many panels have which area, the smallest first."""
    return tuple((count, lowest_terms(area)) for area, count in sorted(areas.items()))


def printable(numbers: Iterable[Exact]) -> bool:
    """Whether pupils write these numbers: none has too many parts for them."""
    return all(denominator(number) <= LARGEST_DENOMINATOR for number in numbers)
