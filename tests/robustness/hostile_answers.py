"""Hostile answers: a sheet for a lesson's pages filled right and wrong, and sheets for no page."""

import csv
import io
import random
from functools import cache
from pathlib import Path

from robustness.hostile import NUMBERS, SIGNS, Attack, mutated

from foldmath.lesson.numbered_pupils import pupils_without_roster
from foldmath.making.marks import blank_sheet

SEED_TRAYS = Path(__file__).parents[2] / "lessons" / "seed-trays.toml"
ANSWERS = ["", "", "8/15", "8", "1/2", "32/15", "c", "s", "?", "½", "8:15", "25-Mar", "=8/15"]
RUINOUS = ["x" * 5_000, "9" * 60, '"', "\0"]
PIECES = [*NUMBERS, "8", "15", "/", "7⁄8", "⅔", "1 1/2", "8 of 15", "8 out of 15", "one half", "two thirds"]
PIECES += ["tres octavos", "la mitad", "1/2 of 1/4", "2/3 × 4/5", "=SUM(A1)", "3/8/2026", "8-Mar", "mar. 8"]
PIECES += ["panels", "of the sheet", "right", "wrong", "absent", "not done", "more", "<", "?", "c", "s", "T"]
"""What people and spreadsheets put into cells, and what nobody would."""

SIGNS_IN_A_CELL = [sign for sign in SIGNS if sign not in "\0\r\n\u2028\ud7ff"]
LONGEST_CELL = 80
"""Longer ones are refused, as other attacks try."""

MOST_PUPILS = 40


@cache
def blank() -> list[list[str]]:
    """Give the rows of a sheet to fill in: what empty cells mean, the questions, what they ask, pupils."""
    content = blank_sheet(SEED_TRAYS, lambda: pupils_without_roster(MOST_PUPILS), own_numbers=False)(".csv")
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"))))


def filled(chance: random.Random) -> list[list[str]]:
    """Fill some rows of the blank sheet."""
    empty, questions, asked, *pupils = blank()
    typed = [*ANSWERS, *RUINOUS] if chance.random() < 0.2 else ANSWERS
    told = [
        [row[0], *(chance.choice(typed) for _ in questions[1:-1]), row[-1]]
        for row in pupils[: chance.choice([0, 1, 5, MOST_PUPILS, MOST_PUPILS])]
    ]
    return [empty, questions, asked, *told]


def of_no_page(chance: random.Random) -> list[list[str]]:
    """Make rows in the shape of a sheet, for no page that there is."""
    asked = ["2/3 × 4/5", "1/4 ÷ 3", "why 2/3 of 2/5 < 2/5", "ticket: panels", "", "1/0 × 2"]
    count = chance.choice([1, 3, 20, 60])
    rows = [["empty", chance.choice(["right", "not done", "maybe"])]]
    rows.append(["pupil", *map(str, range(1, count + 1)), "code"])
    rows.append(["asks", *(chance.choice(asked) for _ in range(count)), "VYFX75"])
    for number in range(chance.choice([0, 1, 5, 300])):
        code = chance.choice(["VYFX75", "", "AAAAAA"])
        rows.append([f"Pupil {number}", *(chance.choice(ANSWERS) for _ in range(count)), code])
    return rows


def strange(chance: random.Random) -> str:
    """Type something into one cell that a spreadsheet keeps: odd numbers, words, signs and dates."""
    parts = [chance.choice(PIECES) for _ in range(chance.randint(1, 4))]
    if chance.random() < 0.3:
        parts.insert(chance.randrange(len(parts) + 1), chance.choice(SIGNS_IN_A_CELL))
    return chance.choice(["", " ", "/", " × "]).join(parts)[:LONGEST_CELL]


def typed_over(chance: random.Random) -> list[list[str]]:
    """Fill a sheet as a class would, and type strange things over some answers; all else stays right."""
    empty, questions, asked, *pupils = blank()
    told = [[row[0], *(chance.choice(ANSWERS) for _ in questions[1:-1]), row[-1]] for row in pupils]
    for _ in range(chance.choice([1, 5, 40])):
        chance.choice(told)[chance.randrange(1, len(questions) - 1)] = strange(chance)
    return [empty, questions, asked, *told]


def answers_attack(chance: random.Random) -> Attack:
    """Attack ``mark``: more than half of the sheets are right but for what stands in their cells."""
    written = io.StringIO()
    deep = chance.random() < 0.6
    rows = typed_over(chance) if deep else filled(chance) if chance.random() < 0.7 else of_no_page(chance)
    csv.writer(written).writerows(rows)
    text = written.getvalue().encode("utf-8", "surrogatepass")
    if not deep and chance.random() < 0.6:
        text = mutated(text, chance)
    who = chance.choice([[], [], ["--pupils", str(MOST_PUPILS)], ["--own-numbers"], ["--labels"]])
    words = ("mark", "{here}/lesson.toml", "--answers", "{here}/answers.csv", *who, "--out", "{here}")
    return Attack(words, {"lesson.toml": SEED_TRAYS.read_bytes(), "answers.csv": text})
