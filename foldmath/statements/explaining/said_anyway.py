"""The sentences on count and on the whole that every lesson says of a step, among all the others."""

from collections.abc import Iterator

from foldmath.paper.moments.moment import Moment
from foldmath.statements.claim_grammar import MOST_NUMBERS, MOST_SIGNS
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.expressions import Claim, numbers_in
from foldmath.statements.sentences import count_sentence, whole_sentence


def counted_and_whole(moment: Moment) -> Iterator[Found]:
    """Give the count sentence and the whole sentence of a fold, where a class can read them aloud."""
    said = [(Family.COUNT, sentence) for sentence in count_sentence(moment)]
    for family, sentence in (*said, (Family.WHOLE, whole_sentence(moment))):
        if _short(sentence.claim):
            yield Found(family, sentence.claim)


def _short(claim: Claim) -> bool:
    """Tell whether a sentence is no longer than one that is read: there may be too many sizes of panel."""
    if len(str(claim)) > MOST_SIGNS:
        return False
    return sum(len(numbers_in(side)) for side in claim.sides) <= MOST_NUMBERS
