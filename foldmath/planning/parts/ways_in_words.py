"""The ways to fold equal parts in plain words, from ``words.toml``: exact ones in the step language."""

import tomllib
from collections.abc import Callable, Iterator
from functools import cache, partial
from importlib.resources import files

from foldmath.paper.measures import edge_said, length_said, paper_said, sides_said
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.phrases import Phrase, joined, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact, written
from foldmath.planning.parts.equal_parts import Way
from foldmath.planning.parts.halvings import odd_part
from foldmath.planning.parts.instructions import Doing, Instruction
from foldmath.planning.parts.rounding import tenths, tenths_at_most
from foldmath.words.saying import say

BELOW_STEPS = "        "
"""What is said of several steps stands under their words."""

BY_WHAT_MOVED = {Doing.EDGE_AGAIN, Doing.EDGE_BESIDE, Doing.REST_BEHIND, Doing.CORNER_OVER}
"""The step language would give places that no hand can find, such as (135/391, 1)."""


def in_words(found: tuple[Way, ...], paper: str, sheet: Sheet, language: str) -> str:
    """Tell ways in short, numbered.

    Args:
        found: at least one, all for the same number of parts and the same side.
        paper: the name of the paper that is folded.
        sheet: of that paper, as it lies.
        language: of the words.
    """
    told = ["\n".join(_lines(number, way, language)) for number, way in enumerate(found, start=1)]
    return "\n\n".join([say(_heading(found[0], paper, sheet), language), *told])


def _heading(way: Way, paper: str, sheet: Sheet) -> Phrase:
    part = way.direction.along(Point(sheet.width, sheet.height)) / exact(way.parts)
    length = length_said(part, sheet.unit)
    in_mm = phrase("{length} ({millimeters} mm)", length=length, millimeters=tenths(part * sheet.unit_mm))
    return _words(
        "sheet",
        _axis(way),
        parts=way.parts,
        paper=paper_said(paper),
        sides=sides_said(sheet.width, sheet.height, sheet.unit),
        part=length if sheet.unit == "mm" else in_mm,
    )


def _lines(number: int, way: Way, language: str) -> list[str]:
    """Tell a way: its heading, its numbered instructions, and where its creases are."""
    before, after = list(_before_finishing(way)), list(map(_step_of(way), way.finishing))
    steps = [say(step, language) for step in (*before, *after)]
    numbered = [f"  {count:3}.  {step}" for count, step in enumerate(steps, start=1)]
    places = ", ".join(f"{part}/{way.parts}" for part in range(1, way.parts))
    key = "near" if way.nearness else "square" if way.squaring else "exact"
    creases = _words("creases", f"{key}_{_axis(way)}", places=places)
    return [
        f"{number}. {say(_words('way', way.kind.name.lower()), language)}",
        *numbered[: len(before)],
        *(f"{BELOW_STEPS}{say(line, language)}" for line in _rounds(way)),
        *numbered[len(before) :],
        f"{BELOW_STEPS}{say(creases, language)}",
    ]


def _axis(way: Way) -> str:
    return way.direction.axis.value


def _before_finishing(way: Way) -> Iterator[Phrase]:
    """Tell how a square is made of the sheet, and how the landmark is found or neared."""
    yield from map(_step, way.squaring)
    if way.squaring:
        yield _words("step", "cut", width=length_said(way.sheet.width, way.sheet.unit))
    yield from map(_step_of(way), way.finding)
    if way.landmark and not way.nearness:
        yield _landmark(way)


def _landmark(way: Way) -> Phrase:
    """Say where the landmark is: how far along its side."""
    assert way.landmark is not None
    return _words(
        "step",
        f"{way.kind.name.lower()}_{_axis(way)}",
        edge=edge_said(way.direction.across.far),
        fraction=written(way.landmark.fraction),
    )


def _step_of(way: Way) -> Callable[[Instruction], Phrase]:
    """Give what says the steps of a way."""
    return partial(_near_step, guessed=_guessed(way)) if way.nearness else _step


def _guessed(way: Way) -> str:
    """Give the part that is guessed: of 10 parts it is 1/5, which is halved afterwards."""
    return written(exact(1, odd_part(way.parts)))


def _step(instruction: Instruction) -> Phrase:
    """Say an instruction in the step language, or by what moved where that is plainer."""
    fold, *opened = instruction.steps
    if instruction.doing not in BY_WHAT_MOVED:
        return joined(", ", (fold, *opened))
    key, edge = instruction.doing.name.lower(), instruction.edge
    told = _words(
        "step",
        f"{key}_across" if instruction.doing is Doing.EDGE_AGAIN and instruction.dot is None else key,
        edge=edge_said(edge) if edge else "",
        other=edge_said(Edge.BOTTOM if edge is Edge.LEFT else Edge.LEFT),
    )
    return joined(", ", (told, *opened))


def _near_step(instruction: Instruction, guessed: str) -> Phrase:
    """Say an instruction by the crease that its dot is near."""
    key = instruction.doing.name.lower()
    across = instruction.doing is Doing.EDGE_AGAIN and instruction.dot is None
    fold = _words(
        "near_step",
        f"{key}_across" if across else key,
        edge=edge_said(instruction.edge) if instruction.edge else "",
        fraction=written(instruction.dot.fraction) if instruction.dot else guessed,
    )
    return joined(", ", (fold, _words("near_step", "opened"))) if instruction.opens else fold


def _rounds(way: Way) -> Iterator[Phrase]:
    near = way.nearness
    if near is None:
        return
    yield _words("rounds", "round", last=near.folds + 1, factor=near.factor)
    yield _words("rounds", "guess", fraction=_guessed(way), error=tenths_at_most(near.errors_mm[0]))
    for number, error in enumerate(near.errors_mm[1:], start=1):
        yield _words("rounds", "after", number=number, error=tenths_at_most(error))
    yield _words("rounds", "needed", wanted=tenths(near.wanted_mm), rounds=near.rounds)


def _words(group: str, key: str, **figures: object) -> Phrase:
    """Give one line of the word list, with its figures."""
    return phrase(_list()[group][key], **figures)


@cache
def _list() -> dict[str, dict[str, str]]:
    source = files(__package__).joinpath("words.toml")
    return tomllib.loads(source.read_text(encoding="utf-8"))
