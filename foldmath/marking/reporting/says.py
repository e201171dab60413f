"""What an explanation says to a teacher, in the words of a language."""

from collections.abc import Iterable

from foldmath.marking.judging.explanations import Explanation, Way
from foldmath.phrases import Said, phrase
from foldmath.words.rules import what_it_tells
from foldmath.words.saying import say

OR = phrase("Or")


def says(explanation: Explanation, language: str) -> str:
    """Say in one sentence or two how a pupil may have come to an answer."""
    return say(_phrase(explanation, language), language)


def _phrase(explanation: Explanation, language: str) -> Said:
    told = what_it_tells(explanation.rule, language) if explanation.rule else ""
    number = explanation.number.text if explanation.number else ""
    match explanation.way:
        case Way.RULE:
            return told
        case Way.COPIED:
            return phrase("Copies {number} from the question.", number=number)
        case Way.ELSEWHERE:
            return phrase("Gives the answer to {column}.", column=explanation.column)
        case Way.ROUNDED:
            return phrase("Gives the right answer, rounded.")
    slip = explanation.slip
    assert slip is not None
    values = {"told": told, "step": slip.step.text, "written": slip.written}
    if explanation.way is Way.SLIP:
        return phrase("The right way with a slip: {step} came out as {written}.", **values)
    return phrase("{told} Then a slip: {step} came out as {written}.", **values)


def says_all(explanations: Iterable[Explanation], language: str) -> str:
    """Say everything that explains an answer equally well."""
    return f" {say(OR, language)}: ".join(says(one, language) for one in explanations)
