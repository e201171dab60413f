"""How many characters a field of the desk takes: as many as what is typed there may have where it is read."""

from foldmath.lesson.files.wanted import LONGEST_ITEM, LONGEST_LINE, LONGEST_TAG, LONGEST_UNIT
from foldmath.lesson.grammar.step_parser import LONGEST_SENTENCE
from foldmath.statements.claim_grammar import MOST_SIGNS

LONGEST_ANSWER = 80
"""Signs of an answer; a sentence that puts another right has some twenty."""

LONGEST_CLASS_NAME = 40
"""It becomes a part of the names of files."""

LONGEST = {
    "answer": LONGEST_ANSWER,
    "claim": MOST_SIGNS,
    "class_name": LONGEST_CLASS_NAME,
    "item": LONGEST_ITEM,
    "language_tag": LONGEST_TAG,
    "line": LONGEST_LINE,
    "step": LONGEST_SENTENCE,
    "unit": LONGEST_UNIT,
}
"""By the names that templates use."""
