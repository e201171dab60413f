"""The ways to fold equal parts in plain words, from ``words.toml``: exact ones in the step language."""

import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from importlib.resources import files

from foldmath.paper.state import Sheet
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact, written
from foldmath.planning.parts.equal_parts import Way
from foldmath.planning.parts.instructions import Doing, Instruction
from foldmath.planning.parts.rounding import tenths, tenths_at_most
from foldmath.words.steps import step_sentence

BELOW_STEPS = "        "
"""What is said of several steps stands under their words."""


def in_words(found: tuple[Way, ...], paper: str, sheet: Sheet) -> str:
    """Tell ways in short, numbered.

    Args:
        found: at least one, all for the same number of parts and the same side.
        paper: the name of the paper that is folded.
        sheet: of that paper, as it lies.
    """
    told = ["\n".join(_told(number, way)) for number, way in enumerate(found, start=1)]
    return "\n\n".join([_heading(found[0], paper, sheet), *told])


def _heading(way: Way, paper: str, sheet: Sheet) -> str:
    part = way.direction.along(Point(sheet.width, sheet.height)) / exact(way.parts)
    figures = {"length": written(part), "unit": sheet.unit}
    figures["millimetres"] = tenths(part * sheet.unit_mm)
    return _words(
        "sheet",
        "heading",
        parts=way.parts,
        side=way.direction.axis.value,
        paper=paper,
        width=written(sheet.width),
        height=written(sheet.height),
        unit=sheet.unit,
        part=_words("sheet", "part" if sheet.unit == "mm" else "part_in_mm", **figures),
    )


def _told(number: int, way: Way) -> list[str]:
    """Tell a way: its heading, its numbered instructions, and where its creases are."""
    before, after = list(_before_finishing(way)), list(map(_step_of(way), way.finishing))
    numbered = [f"  {count:3}.  {step}" for count, step in enumerate([*before, *after], start=1)]
    places = ", ".join(f"{part}/{way.parts}" for part in range(1, way.parts))
    creases = _words("creases", "near" if way.nearness else "exact", places=places, side=_side(way))
    return [
        f"{number}. {_words('way', way.kind.name.lower())}",
        *numbered[: len(before)],
        *(f"{BELOW_STEPS}{line}" for line in _rounds(way)),
        *numbered[len(before) :],
        f"{BELOW_STEPS}{creases}",
    ]


def _before_finishing(way: Way) -> Iterator[str]:
    """Tell how a square is made of the sheet, and how the landmark is found or neared."""
    yield from map(_step, way.squaring)
    if way.squaring:
        yield _words("step", "cut", width=written(way.sheet.width), unit=way.sheet.unit)
    yield from map(_step_of(way), way.finding)
    if way.landmark and not way.nearness:
        yield _landmark(way)


def _side(way: Way) -> str:
    side = way.direction.axis.value
    return _words("creases", "of_square", side=side) if way.squaring else side


def _landmark(way: Way) -> str:
    """Say where the landmark is: both coordinates, as fractions of the sheet."""
    assert way.landmark is not None
    place = way.landmark.at
    return _words(
        "step",
        way.kind.name.lower(),
        x=written(place.x / way.sheet.width),
        y=written(place.y / way.sheet.height),
        fraction=written(way.landmark.fraction),
        side=_side(way),
    )


def _step_of(way: Way) -> Callable[[Instruction], str]:
    """Give what says the steps of a way."""
    return _near_step if way.nearness else _step


def _step(instruction: Instruction) -> str:
    """Say an instruction in the step language, and what its fold goes to where that does not tell."""
    steps = ", ".join(step_sentence(step) for step in instruction.steps)
    if instruction.doing in (Doing.EDGE_AGAIN, Doing.CORNER_OVER):
        return _words("step", instruction.doing.name.lower(), steps=steps)
    return steps


def _near_step(instruction: Instruction) -> str:
    """Say an instruction by the crease that its dot is near."""
    key = instruction.doing.name.lower()
    across = instruction.doing is Doing.EDGE_AGAIN and instruction.dot is None
    return _words(
        "near_step",
        f"{key}_across" if across else key,
        edge=instruction.edge.value if instruction.edge else "",
        fraction=written(instruction.dot.fraction) if instruction.dot else "",
        then=_words("near_step", "opened") if instruction.opens else "",
    )


def _rounds(way: Way) -> Iterator[str]:
    near = way.nearness
    if near is None:
        return
    yield _words("rounds", "round", last=near.folds + 1, factor=near.factor)
    yield _words("rounds", "guess", error=tenths_at_most(near.errors_mm[0]))
    for number, error in enumerate(near.errors_mm[1:], start=1):
        yield _words("rounds", "after", number=number, error=tenths_at_most(error))
    yield _words("rounds", "needed", wanted=tenths(near.wanted_mm), rounds=near.rounds)


def _words(group: str, key: str, **figures: object) -> str:
    """Fill in one line of the word list."""
    return _list()[group][key].format(**figures)


@cache
def _list() -> dict[str, dict[str, str]]:
    source = files(__package__).joinpath("words.toml")
    return tomllib.loads(source.read_text(encoding="utf-8"))
