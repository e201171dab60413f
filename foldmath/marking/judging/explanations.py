"""What may explain a wrong answer, as values, and how likely each kind of explanation is beforehand."""

from enum import Enum

from foldmath.marking.judging.workings import Step
from foldmath.plane.numbers import Exact, exact
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules import Rule
from foldmath.values import frozen

RIGHT_PER_MILLE = 471
"""Right answers, of 480 to four multiplication items by 120 pupils: R. S. Siegler and A. A. Pyke,
Developmental Psychology 49 (2013) 1994-2004, counted by value in github.com/baixiwei/UMA_PR02 (d20f3a4)."""

SLIPS_PER_MILLE = 180
"""Of those who follow the right way, so many slip: of the wrong answers there (529 in a thousand) 19.5 in a
hundred are no errors of strategy (the same study), and 103 : (471 + 103) is 180 in a thousand."""

UNSEEN_PER_MILLE = 5
"""For what no study listed: half of the rarest that is listed (0.8 %), rounded up to a whole number."""

FOLLOWED_PER_MILLE = 500
"""For a rule that the same pupil follows in other answers: as likely as not [common practice, no source]."""

OTHER_PER_MILLE = 92
"""Answers there that no listed rule gives."""

OTHER_ANSWERS = 870
"""Fractions among which an answer that means nothing is looked for: 1 to 30 over 2 to 30."""

ODDS = 10
"""An explanation must be so many times as likely as chance: "strong" evidence on the scale of H. Jeffreys,
Theory of Probability (1961), appendix B [from memory]."""

LEAST = ODDS * exact(OTHER_PER_MILLE, OTHER_ANSWERS)
"""What is rarer explains nothing: an answer that means nothing would look like it too often. Per mille."""

REDUCED, DOUBLED = exact(1, 3), exact(1, 20)
"""How likely a rule's answer is in a simpler form, or with both numbers doubled: of the 39 wrong answers of
R. S. Siegler, C. A. Thompson and M. Schneider, Cognitive Psychology 62 (2011) 273-296, 6 are reduced of the
18 that can be, and 2 are doubled."""


class Way(Enum):
    """What kind of thing explains an answer."""

    RULE = "rule"
    RULE_AND_SLIP = "rule and slip"
    SLIP = "slip"
    COPIED = "copied"
    ELSEWHERE = "elsewhere"
    """It is the right answer to another question."""
    ROUNDED = "rounded"


@frozen
class Slip:
    """A step that came out wrong."""

    step: Step
    written: int


@frozen(kw_only=True)
class Explanation:
    """One way to a wrong answer.

    Args:
        way: of which kind.
        rule: that was followed; None for kinds without one.
        slip: that happened; None where none did.
        number: that was copied, or belongs elsewhere; None for other kinds.
        column: of the question to which the answer belongs; empty for other kinds.
        as_written: whether it leads to the answer as it is written, not to a simpler or a doubled form.
        per_mille: how likely it is beforehand, for each answer that it may lead to.
    """

    way: Way
    rule: Rule | None = None
    slip: Slip | None = None
    number: Ratio | None = None
    column: str = ""
    as_written: bool = True
    per_mille: Exact

    @property
    def plainness(self) -> tuple[bool, bool, bool]:
        """What comes first: no slip before a slip, the answer as written before another form.

        What belongs to another question comes last, since answers to two questions are often alike.
        """
        return self.way is Way.ELSEWHERE, self.slip is not None, not self.as_written

    @property
    def code(self) -> str:
        """One word for a narrow column."""
        return self.rule.code if self.rule else CODES[self.way]

    @property
    def name(self) -> str:
        """By which marks tell it: a rule's name, or the kind's."""
        return self.rule.name if self.rule else self.way.value


CODES = {Way.SLIP: "slip", Way.COPIED: "copy", Way.ELSEWHERE: "other", Way.ROUNDED: "round"}
"""Of the kinds without a rule."""


def share(rule: Rule) -> Exact:
    """Give how likely a rule is beforehand, per mille."""
    return exact(UNSEEN_PER_MILLE if rule.per_mille is None else rule.per_mille)
