"""Hostile words behind the command, by a grammar of the commands, and at random."""

import random

from robustness.hostile import NUMBERS, Attack

COMMANDS = ["check", "plan", "parts", "trace", "explain", "export", "import", "draw", "make", "mark", "chek"]
OPTIONS = ["--paper", "--grade", "--panels", "--sizes", "--json", "--step", "--max-layers", "--accuracy"]
OPTIONS += ["--folds", "--size-at-least", "--best", "--along", "--orientation", "--stock", "--to", "--pupils"]
PRODUCTS = ["2/3 × 4/5", "1/2 x 1/2", "5/12 × 7/10", "3/8 of 5/6", "1/6 × 7/12", "2 × 3/4"]
CLAIMS = [
    "4 × 2 = 8",
    "1/2 of 1/4 = 1/8",
    "2/3 = 4/6",
    "1/2 = " * 60 + "1/2",
    "2^99 = 1",
    "1/2 < 1/3",
    "(" * 50,
]
LENGTHS = ["1 mm", "40x40mm", "1 1/2 x 2 in", "0.001 mm", "9 furlongs", "1" + " " * 9_000 + "mm", "1e9 cm"]
PAPERS = ["letter", "A4", "a4", "tabloid", "A6", "A99", "copy"]


def wanted(chance: random.Random) -> list[str]:
    """Draw what is wanted of ``plan``: a product, so many panels, or sizes."""
    parts = [chance.randint(1, 12) for _ in range(chance.randint(1, 9))]
    sizes = ", ".join(f"{part}/{sum(parts)}" for part in parts)
    return chance.choice(
        [[chance.choice(PRODUCTS)], ["--panels", str(chance.randint(0, 200))], ["--sizes", sizes]]
    )


def words_by_grammar(chance: random.Random) -> list[str]:
    """Draw a command and words for it that are mostly of the right kind."""

    def some(options: list[list[str]]) -> list[str]:
        return [word for option in options if chance.random() < 0.4 for word in option]

    number = str(chance.choice([*range(1, 13), 0, -1, 40, 10**30]))
    sheet = [
        ["--paper", chance.choice(PAPERS)],
        ["--orientation", chance.choice(["portrait", "landscape", "slanted"])],
    ]
    planned = [
        *sheet,
        ["--grade", number],
        ["--max-layers", number],
        ["--size-at-least", chance.choice(LENGTHS)],
        ["--folds", number],
        ["--best", number],
        ["--choose", number],
        ["--stock", chance.choice(["copy 20 lb", "card", "x"])],
        ["--details"],
        ["--write", "{here}/plan.toml"],
        ["--picture", "{here}/plan.svg"],
    ]
    along, accuracy = (
        ["--along", chance.choice(["width", "height", "x"])],
        ["--accuracy", chance.choice(LENGTHS)],
    )
    return chance.choice(
        [
            ["check", chance.choice(CLAIMS), *some([["--json"]])],
            ["plan", *wanted(chance), *some(planned)],
            ["parts", number, "--out", "{here}", *some([*sheet, along, accuracy])],
        ]
    )


def any_words(chance: random.Random) -> list[str]:
    """Draw words that need not fit each other."""
    values = [*NUMBERS, *PAPERS, *PRODUCTS, *CLAIMS, *LENGTHS, "1/6, 1/6, 2/3", "width", " " * 9_000]
    values += ["\udcff", "a\x1b[2J", "x" * 20_000, "copy 20 lb"]
    words = [chance.choice(COMMANDS), chance.choice(values)]
    for _ in range(chance.randint(0, 4)):
        words += [chance.choice(OPTIONS), chance.choice(values)]
    return [*words, *(["--out", "{here}"] * chance.randint(0, 1))]


def line_attack(chance: random.Random) -> Attack:
    """Attack the words of a command line."""
    words = words_by_grammar(chance) if chance.random() < 0.6 else any_words(chance)
    return Attack(tuple(word.replace("\0", "") for word in words), {})
