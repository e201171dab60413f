"""The sentences that a fold shows: how many panels, what fraction of the sheet is one, and the whole.

Counting and size are two different sentences. A fold that halves each of four quarters shows
``4 × 2 = 8`` panels and ``1/4 × 1/2 = 1/8`` of the sheet. They are values until somebody says them.
"""

from enum import Enum
from typing import ClassVar, assert_never

from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import FoldStep, Gather, OpenStep, Shade, Slit, TurnStep
from foldmath.plane.numbers import ZERO
from foldmath.statements.composing import equation, part_of, plus, times
from foldmath.statements.expressions import Claim
from foldmath.statements.ratios import Ratio, fraction, lowest_terms
from foldmath.values import frozen


class About(Enum):
    """What a sentence is about."""

    COUNT = "count"
    SIZE = "size"
    WHOLE = "whole"
    SHADED = "shaded"


@frozen
class Sentence:
    """A true sentence about a fold.

    Args:
        about: what it says.
        claim: the sentence, as ``1/4 × 1/2 = 1/8``.
        of: the same with "of", read before the sign, as ``1/2 of 1/4 = 1/8``; None if it has none.
    """

    about: About
    claim: Claim
    of: Claim | None = None

    @property
    def read(self) -> Claim:
        """The reading that comes first: with "of" if it has one."""
        return self.of or self.claim


@frozen
class ShadedPart:
    """What is true of a shaded sheet.

    Args:
        counted: the panels shaded so many times over all panels, as ``8/15``.
        times: how many times: 2 where a product shows, else 1.
        area: the fraction of the sheet that they are.
    """

    about: ClassVar[About] = About.SHADED

    counted: Ratio
    times: int
    area: Ratio

    @property
    def twice(self) -> bool:
        """Whether the panels are shaded twice."""
        return self.times > 1

    @property
    def share(self) -> Ratio:
        """The fraction of the sheet: over all panels if that is as much, else in lowest terms."""
        return self.counted if self.counted.value == self.area.value else self.area


def sentences(moment: Moment) -> tuple[Sentence | ShadedPart, ...]:
    """Give every sentence that a step shows; opening, turning, cutting and gathering show none."""
    step = moment.step
    if isinstance(step, FoldStep):
        return fold_sentences(moment)
    if isinstance(step, Shade):
        return (shaded_part(moment.after),)
    if isinstance(step, OpenStep | TurnStep | Slit | Gather):
        return ()
    assert_never(step)


def fold_sentences(moment: Moment) -> tuple[Sentence, ...]:
    """Give every sentence that a fold shows; other steps show none."""
    if not isinstance(moment.step, FoldStep):
        return ()
    return (*count_sentence(moment), *size_sentences(moment), whole_sentence(moment))


def count_sentence(moment: Moment) -> tuple[Sentence, ...]:
    """Say how many panels there are, by what was cut; nothing if nothing was.

    Multiplication is said only where every panel, or every cut panel, was cut into the same number.
    """
    parts = moment.parts
    total = len(moment.after.panels)
    cut = [number for number in parts if number > 1]
    whole = len(parts) - len(cut)
    if not cut:
        return ()
    if len(set(cut)) > 1:
        counted = plus(len(parts), total - len(parts))
    elif whole:
        counted = plus(whole, times(len(cut), cut[0]))
    else:
        counted = times(len(cut), cut[0])
    return (Sentence(About.COUNT, equation(counted, total)),)


def size_sentences(moment: Moment) -> tuple[Sentence, ...]:
    """Say, for every different cut, what share of a panel each part is, and so of the sheet."""
    result = []
    for panel, part in moment.cuts:
        share = part / panel
        claim, of = equation(times(panel, share), part), equation(part_of(share, panel), part)
        result.append(Sentence(About.SIZE, claim, of))
    return tuple(result)


def whole_sentence(moment: Moment) -> Sentence:
    """Say that the panels make one whole sheet."""
    terms = (times(count, area) for area, count in moment.sizes.items())
    return Sentence(About.WHOLE, equation(plus(*terms), 1))


def shaded_part(state: FoldedState) -> ShadedPart:
    """Count the panels that are shaded twice, where a product shows; once, if none is yet."""
    times = 2 if any(panel.shaded >= 2 for panel in state.panels) else 1
    counted = [panel for panel in state.panels if panel.shaded >= times]
    area = sum((panel.area for panel in counted), ZERO)
    return ShadedPart(fraction(len(counted), len(state.panels)), times, lowest_terms(area))
