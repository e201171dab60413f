"""Marks: what is to be said of one answer, as a value."""

from enum import Enum

from foldmath.marking.judging.explanations import Explanation
from foldmath.phrases import Said
from foldmath.values import frozen


class Verdict(Enum):
    """How an answer is marked; these words stand in ``marks.csv``, and are the same in every language."""

    RIGHT = "right"
    ANOTHER_FORM = "right in another form"
    WRONG = "wrong"
    NOT_DONE = "not done"
    UNREAD = "unread"

    @property
    def good(self) -> bool:
        """Whether the answer is right, in whatever form."""
        return self in (Verdict.RIGHT, Verdict.ANOTHER_FORM)


@frozen
class Mark:
    """How one answer is marked.

    Args:
        verdict: of the answer.
        explanations: of a wrong one: all that explain it equally well, likeliest first; may be empty.
        reason: why it was left open; empty if it was not.
    """

    verdict: Verdict
    explanations: tuple[Explanation, ...] = ()
    reason: Said = ""

    @property
    def explanation(self) -> Explanation | None:
        """The only one; None where there is none, or several fit equally."""
        return self.explanations[0] if len(self.explanations) == 1 else None
