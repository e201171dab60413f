"""A cover that a fan hides: takes a lesson's steps, gives its booklet, with what brings page 1 out."""

from collections.abc import Sequence
from dataclasses import replace

from foldmath.lesson.booklet.forms import folded_booklet
from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import Sheet
from foldmath.paper.steps import FoldStep, Step, TurnOver, TurnQuarter
from foldmath.phrases import Said, joined, phrase
from foldmath.words.steps import WrittenStep, as_written

TURNS: tuple[tuple[Step, ...], ...] = ((TurnOver(),), (TurnQuarter(left=False),) * 2)
"""What is put before a fan so that its first fold goes the other way: one serves an even fan, one an odd."""


def cover_told(written: Sequence[WrittenStep], sheet: Sheet) -> Booklet:
    """Fold a booklet; if its cover lies inside when it is closed, say so, and which steps bring it out.

    Raises:
        StepRefused: this sheet cannot be folded so.
    """
    made = folded_booklet(written, sheet)
    if made.cover_outside:
        return made
    return replace(made, warnings=(*made.warnings, _hidden(written, sheet)))


def _hidden(written: Sequence[WrittenStep], sheet: Sheet) -> Said:
    fan = max(index for index, one in enumerate(written) if isinstance(one.step, FoldStep))
    for turns in TURNS:
        if _brings_out([*written[:fan], *map(as_written, turns), *written[fan:]], sheet):
            return phrase(
                "Closed like this, the title page lies inside. Before step {number}: {steps}.",
                number=fan + 1,
                steps=joined(", ", turns),
            )
    return phrase("Closed like this, the title page lies inside.")


def _brings_out(written: Sequence[WrittenStep], sheet: Sheet) -> bool:
    try:
        return folded_booklet(written, sheet).cover_outside
    except StepRefused:
        return False
