"""The sentences on count and on the whole that every lesson says of a step, among all the others."""

from collections.abc import Iterator

from foldmath.paper.moment import Moment
from foldmath.statements.claim_grammar import read_claim
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.sentences import count_sentence, whole_sentence


def counted_and_whole(moment: Moment) -> Iterator[Found]:
    """Give the count sentence and the whole sentence of a fold, where they are short enough to be read."""
    said = [(Family.COUNT, sentence) for sentence in count_sentence(moment)]
    for family, sentence in (*said, (Family.WHOLE, whole_sentence(moment))):
        try:
            yield Found(family, read_claim(sentence.text))
        except SentenceRefused:
            # More sizes of panel than a class can read aloud.
            continue
