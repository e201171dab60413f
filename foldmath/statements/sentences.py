"""The sentences that a fold shows: how many panels, what fraction of the sheet is one, and the whole.

Counting and size are two different sentences. A fold that halves each of four quarters shows
``4 × 2 = 8`` panels and ``1/4 × 1/2 = 1/8`` of the sheet.
"""

from dataclasses import dataclass
from enum import Enum

from foldmath.paper.moment import Moment
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import FoldStep, Shade
from foldmath.plane.numbers import ZERO, written


class About(Enum):
    """What a sentence is about."""

    COUNT = "count"
    SIZE = "size"
    WHOLE = "whole"
    SHADED = "shaded"


@dataclass(frozen=True)
class Sentence:
    """A true sentence about a moment.

    Args:
        about: what it says.
        text: the sentence, in figures, as ``1/4 × 1/2 = 1/8``.
        of: the same with "of", read before the sign, as ``1/2 of 1/4 = 1/8``; empty if it has none.
        times: for a shading, how many times the counted panels are shaded; else 0.
        area: for a shading, the fraction of the sheet; else empty.
    """

    about: About
    text: str
    of: str = ""
    times: int = 0
    area: str = ""


def sentences(moment: Moment) -> tuple[Sentence, ...]:
    """Give every sentence that a step shows; opening and turning show none."""
    if isinstance(moment.step, Shade):
        return (shaded_sentence(moment.after),)
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
        text = f"{len(parts)} + {total - len(parts)} = {total}"
    elif whole:
        text = f"{whole} + {len(cut)} × {cut[0]} = {total}"
    else:
        text = f"{len(cut)} × {cut[0]} = {total}"
    return (Sentence(About.COUNT, text),)


def size_sentences(moment: Moment) -> tuple[Sentence, ...]:
    """Say, for every different cut, what share of a panel each part is, and so of the sheet."""
    result = []
    for panel, part in moment.cuts:
        whole, share, product = written(panel), written(part / panel), written(part)
        result.append(
            Sentence(About.SIZE, f"{whole} × {share} = {product}", of=f"{share} of {whole} = {product}")
        )
    return tuple(result)


def whole_sentence(moment: Moment) -> Sentence:
    """Say that the panels make one whole sheet."""
    terms = [f"{count} × {written(area)}" for area, count in moment.sizes.items()]
    return Sentence(About.WHOLE, f"{' + '.join(terms)} = 1")


def shaded_sentence(state: FoldedState) -> Sentence:
    """Say how many of all panels are shaded twice, where a product shows; once, if none is yet."""
    times = 2 if any(panel.shaded >= 2 for panel in state.panels) else 1
    counted = [panel for panel in state.panels if panel.shaded >= times]
    area = sum((panel.area for panel in counted), ZERO)
    text = f"{len(counted)}/{len(state.panels)}"
    return Sentence(About.SHADED, text, times=times, area=written(area))
