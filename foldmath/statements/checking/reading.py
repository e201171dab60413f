"""Reading a sentence that is to be checked: takes text, gives a claim, or offers a true one near it."""

from foldmath.statements.checking.intended import intended
from foldmath.statements.claim_grammar import parse_comparison, with_nearest
from foldmath.statements.expressions import Claim, is_true
from foldmath.statements.refusals import SentenceRefused


def read_claim(text: str) -> Claim:
    """Read a sentence with at least one comparison.

    Raises:
        SentenceRefused: it cannot be read; the hint is the nearest true sentence that can, if one is near.
    """
    try:
        return parse_comparison(text)
    except SentenceRefused as refusal:
        raise with_nearest(refusal, text, lambda near: str(_made_true(parse_comparison(near)))) from None


def _made_true(near: Claim) -> Claim:
    """Give a sentence that may be tried: itself, or the true one that it was probably meant to be."""
    return near if is_true(near) else intended(near)[0]
