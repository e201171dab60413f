"""What all attacks are made of: hostile signs and numbers, and mutations of a text."""

import random
from dataclasses import dataclass

SIGNS = list("\0\x1b\u202e\ud7ff\ufeff\u2028½×÷−/.,;:\"'[]{}()=#\\\t\r\n 09-aé日🧺")
NUMBERS = [
    "0",
    "-1",
    "1/0",
    "1e999",
    "nan",
    "9" * 40,
    "0x10",
    "1_000",
    "½",
    "٣",
    "1/3",
    "0.333",
    "2147483648",
]


PUPILS = ["Ann", "Zoë", '"Oak, Ann"', "Jürgen", "Ngozi"]


@dataclass(frozen=True)
class Attack:
    """One hostile command.

    Args:
        words: behind ``foldmath``; ``{here}`` stands for the folder of the files.
        files: by name, to be laid there.
    """

    words: tuple[str, ...]
    files: dict[str, bytes]


def mutated(text: bytes, chance: random.Random) -> bytes:
    """Change a text in one to six places, as fingers, editors and disks do."""
    content = bytearray(text)
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(content) + 1)
        span = chance.choice([1, 1, 1, 5, 40])
        match chance.randrange(8):
            case 0:
                del content[at : at + span]
            case 1:
                content[at:at] = content[at : at + span] * chance.choice([1, 2, 50])
            case 2:
                content[at:at] = chance.choice(SIGNS).encode("utf-8", "surrogatepass")
            case 3:
                content[at:at] = chance.choice(NUMBERS).encode()
            case 4:
                content[at:at] = bytes(chance.randrange(256) for _ in range(span))
            case 5:
                content[at:at] = chance.choice(SIGNS).encode("utf-8", "surrogatepass") * chance.choice(
                    [90, 9_000]
                )
            case 6:
                content = content[:at]
            case _:
                other = chance.randrange(len(content) + 1)
                content[at:at] = content[other : other + 200]
    return bytes(content)
