"""Phrases: what is to be said to a reader, as a value, until a language is known.

A phrase holds the words in American English and the values that stand in them. ``words.saying`` says it in a
language; ``str`` says it as it is written, for logs and tests.
"""

from collections import namedtuple
from collections.abc import Iterable, Sequence


class Phrase(namedtuple("Phrase", ("text", "values", "plural", "number"), defaults=((), "", 1))):
    """Words for a reader that are not yet said.

    No dataclass and no class of ``typing``, since ``--help`` need not wait for those.

    Args:
        text: in American English, with the names of values in braces: the key of the catalogues.
        values: pairs of those names and of numbers, other phrases, steps, or words that stay as they are.
        plural: the same for every number but one; empty where nothing is counted.
        number: of what is counted, which chooses the form of the words.
    """

    __slots__ = ()

    def __str__(self) -> str:
        text: str = self.plural if self.plural and self.number != 1 else self.text
        return text.format(**{name: str(value) for name, value in self.values})


Said = Phrase | str
"""What is to be said: a phrase, or words that are the same in every language, such as a file's name."""


def phrase(text: str, /, **values: object) -> Phrase:
    """Give the phrase of a text and its values."""
    return Phrase(text, tuple(values.items()))


def counted(one: str, many: str, count: int, /, **values: object) -> Phrase:
    """Give the phrase of a text that counts something; ``{count}`` in it is the number."""
    return Phrase(one, (("count", count), *values.items()), many, count)


def joined(joint: str, parts: Iterable[object]) -> Phrase:
    """Give phrases or other values one after the other, the same signs between them in every language."""
    values = {f"part{number}": part for number, part in enumerate(parts)}
    return Phrase(joint.join(f"{{{name}}}" for name in values), tuple(values.items()))


def listed(parts: Sequence[Said]) -> Said:
    """Give a list as it is spoken: ``1, 4 and 6``."""
    *first, last = parts
    return phrase("{first} and {last}", first=joined(", ", first), last=last) if first else last


def either(parts: Sequence[Said]) -> Said:
    """Give a choice as it is spoken: ``letter, legal or A4``."""
    *first, last = parts
    return phrase("{first} or {last}", first=joined(", ", first), last=last) if first else last
