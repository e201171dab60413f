"""The short code at the foot of every page, which ties a worksheet to its key."""

from hashlib import sha256

from foldmath.lesson.lesson import Lesson

ALPHABET = "ACDEFHJKLMNPRTUVWXY34679"
"""Letters and figures that are not taken for one another in a pupil's hand."""

LENGTH = 5


def version_code(lesson: Lesson) -> str:
    """Give the code of a lesson: the same for the same numbers, steps and paper, else almost surely another.

    Five signs of 24 make 7,962,624 codes.
    """
    told = "\n".join(
        (
            lesson.title,
            str(lesson.grade),
            lesson.paper,
            lesson.orientation,
            lesson.language,
            *(step.text for step in lesson.steps),
            *(item.text for item in lesson.practice),
        )
    )
    number = int.from_bytes(sha256(told.encode()).digest(), "big")
    code = ""
    for _ in range(LENGTH):
        number, place = divmod(number, len(ALPHABET))
        code += ALPHABET[place]
    return code
