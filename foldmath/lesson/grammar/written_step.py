"""A step as it is written in a file."""

from dataclasses import dataclass

from foldmath.paper.steps import Step


@dataclass(frozen=True)
class WrittenStep:
    """A step, the sentence that asks for it, and where the sentence begins in the file.

    Args:
        text: the sentence, without the spaces round it.
        step: what it asks for.
        line: counted from 1.
        column: counted from 1.
    """

    text: str
    step: Step
    line: int
    column: int
