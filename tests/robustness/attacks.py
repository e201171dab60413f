"""Hostile input, drawn from a seed: lessons, class lists, FOLD files, words, answers.

The same seed and number give the same attack, so that a run can be shared out, resumed, and looked at again.
"""

import json
import random
from collections.abc import Callable
from pathlib import Path

from exchanged import crossing_lines
from robustness.hostile import NUMBERS, PUPILS, Attack, mutated
from robustness.hostile_answers import answers_attack
from robustness.hostile_lines import line_attack

LESSONS = sorted((Path(__file__).parents[2] / "lessons").glob("*.toml"))


def position(chance: random.Random) -> str:
    """Draw a position, mostly one that can be."""
    below = chance.choice([2, 2, 3, 4, 5, 6, 8, 12, 97, 9_999])
    return chance.choice(
        [f"{chance.randint(0, below)}/{below}", "middle", "0.25", "½", chance.choice(NUMBERS)]
    )


def sentence(chance: random.Random) -> str:
    """Draw a sentence of the step language."""
    edges = ["left", "right", "top", "bottom"]
    edge, behind = chance.choice(edges), chance.choice(["", "", ", behind"])
    point = [f"({position(chance)}, {position(chance)})" for _ in range(3)]
    opposite = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}[edge]
    return chance.choice(
        [
            f"fold {edge} edge to {opposite} edge{behind}",
            f"fold {edge} edge to {position(chance)}{behind}",
            f"fold at {position(chance)} moving {edge}{behind}",
            f"fold {point[0]} to {point[1]}{behind}",
            f"fold along {point[0]} {point[1]} moving {point[2]}{behind}",
            f"fold both edges to middle{behind}",
            f"pleat {chance.choice(['width', 'height'])} into {chance.randint(1, 13)}",
            "open",
            "open last",
            "open",
            f"turn {chance.choice(['over', 'left', 'right'])}",
            f"shade {chance.randint(0, 5)} of {chance.randint(1, 8)} {chance.choice(['across', 'up'])}",
            f"slit at height {position(chance)} from {position(chance)} to {position(chance)}",
            chance.choice(["gather into booklet", "gather into booklet with cover at column 1"]),
        ]
    )


def lesson(chance: random.Random) -> bytes:
    """Write a lesson by the grammar of lessons: its shape is right, what it says may be anything."""
    count = chance.choice([1, 3, 5, 8, 20, 200])
    lines = [
        f'title = "{"T" * chance.choice([1, 8, 80])}"',
        f"grade = {chance.randint(3, 6)}",
        f'paper = "{chance.choice(["letter", "A4", "tabloid", "A6"])}"',
        f"steps = {json.dumps([sentence(chance) for _ in range(count)], ensure_ascii=False)}",
    ]
    if chance.random() < 0.3:
        lines.append(f'practice = ["{position(chance)} × {position(chance)}"]')
    if chance.random() < 0.2:
        form = chance.choice(["eight-page", "four-page", "six-panel", "sixteen-page-signature", "none"])
        pages = chance.choice(["fraction-diary", "plank-marks", "lesson", "../x"])
        lines += ["[booklet]", f'form = "{form}"', f'pages = "{pages}"']
    return "\n".join(lines).encode()


def any_lesson(chance: random.Random) -> bytes:
    """Write a lesson by grammar, or a mutation of one of ours or of such a one."""
    written = lesson(chance) if chance.random() < 0.6 else chance.choice(LESSONS).read_bytes()
    return mutated(written, chance) if chance.random() < 0.5 else written


def lesson_attack(chance: random.Random) -> Attack:
    """Attack a command that takes a lesson."""
    ways = [
        ("trace", "lesson.toml"),
        ("trace", "--json", "lesson.toml"),
        ("trace", "--details", "lesson.toml"),
        ("explain", "lesson.toml"),
        ("check", "1/2 of 1/4 = 1/8", "lesson.toml"),
        ("export", "lesson.toml", "--out", "{here}"),
        ("project", "lesson.toml", "--no-open", "--out", "{here}"),
        ("booklet", "lesson.toml", "--out", "{here}"),
        ("draw", "lesson.toml", "--out", "{here}"),
        ("make", "lesson.toml", "--out", "{here}"),
    ]
    weights = [30, 15, 5, 20, 5, 10, 6, 3, 3, 3]
    words = chance.choices(ways, weights)[0]
    placed = tuple(word.replace("lesson.toml", "{here}/lesson.toml") for word in words)
    return Attack(placed, {"lesson.toml": any_lesson(chance)})


def roster_attack(chance: random.Random) -> Attack:
    """Attack the class list of ``make`` with rows that are right, wrong, huge or no text."""
    names, levels, heads = (
        PUPILS,
        ["core", "guided", "stretch", "Core "],
        [("name", "level"), ("label", "level")],
    )
    if chance.random() < 0.5:
        names = [*names, '"', "", "n" * 40, "日本", "=1+1", "\u202eAnn", "x" * 140_000]
        levels = [*levels, "", "gided", "3"]
        heads = [*heads, ("nmae", "level"), ("name", "levels"), ("x", "x")]
    separator = chance.choice([",", ";", "\t"])
    rows = [separator.join(chance.choice(heads))]
    for number in range(chance.choice([0, 1, 5, 30, 3_000])):
        name = chance.choice(names)
        own = name if name.startswith('"') else f"{name} {number}" if name else name
        rows.append(separator.join([own, chance.choice(levels)]))
    text = (
        chance.choice(["\n", "\r\n", "\r"])
        .join(rows)
        .encode(chance.choice(["utf-8", "utf-16"]), "surrogatepass")
    )
    if chance.random() < 0.5:
        text = mutated(text, chance)
    return Attack(("roster", "{here}/class.csv"), {"class.csv": text})


def fold_attack(chance: random.Random) -> Attack:
    """Attack ``import`` with random creases, values of the wrong kind, and mutations of the text."""
    across = {chance.randint(1, 15): chance.choice("VMUC") for _ in range(chance.randint(0, 6))}
    up = {chance.randint(1, 11): chance.choice("VMUF") for _ in range(chance.randint(0, 4))}
    fold = crossing_lines(16, 12, across, up)
    if chance.random() < 0.5:
        key = chance.choice(list(fold))
        values = [None, [], {}, -1, 1e300, "x" * 1000, [[0]], [[[]]] * 50, True, [fold[key]]]
        fold[key] = chance.choice(values)
    text = json.dumps(fold).encode()
    if chance.random() < 0.4:
        text = mutated(text, chance)
    return Attack(("import", "{here}/pattern.fold"), {"pattern.fold": text})


KINDS: dict[str, tuple[Callable[[random.Random], Attack], int]] = {
    "lessons": (lesson_attack, 2_000),
    "rosters": (roster_attack, 500),
    "patterns": (fold_attack, 300),
    "lines": (line_attack, 500),
    "answers": (answers_attack, 100),
}
"""Each kind of attack, and how many a whole run makes."""


def attack(kind: str, seed: int, number: int) -> Attack:
    """Give one attack of a kind."""
    return KINDS[kind][0](random.Random(f"{seed} {kind} {number}"))
