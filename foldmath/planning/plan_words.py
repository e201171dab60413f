"""A plan in plain words, from ``words.toml``: its figures in one line, and why it ranks where it does."""

import tomllib
from functools import cache
from importlib.resources import files

from foldmath.paper.lengths import nearest_sixteenth
from foldmath.phrases import Phrase, counted, joined, listed, phrase
from foldmath.plane.numbers import Exact, nearest_whole
from foldmath.planning.ranking import Ranked
from foldmath.statements.ratios import mixed_form
from foldmath.tolerance.accuracy import Accuracy, accuracy
from foldmath.tolerance.accuracy_in_words import about
from foldmath.tolerance.assumed.spread import Placing, Spread


def said(group: str, key: str, **figures: object) -> Phrase:
    """Give one line of the word list, with its figures."""
    return phrase(_words()[group][key], **figures)


@cache
def _words() -> dict[str, dict[str, str]]:
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))


def why(ranked: Ranked) -> Phrase:
    """Say why a plan ranks where it does."""
    figures = {"layers": ranked.plan.layers, "steps": len(ranked.plan.steps)}
    return joined(", ", (said("why", reason.value, **figures) for reason in ranked.reasons))


def figures(ranked: Ranked, spread: Spread) -> Phrase:
    """Say folds, layers, the smallest panel and how true it comes out, in one line."""
    plan = ranked.plan
    return joined(
        "; ",
        [
            folds_said(plan.folds),
            said("figures", "layers", layers=plan.layers),
            smallest_said(plan.smallest_mm, ranked.moments[0].before.sheet.unit),
            trueness(ranked, spread),
        ],
    )


def folds_said(folds: int) -> Phrase:
    """Say a number of folds."""
    return counted("{count} fold", "{count} folds", folds)


def smallest_said(sides_mm: tuple[Exact, Exact], unit: str) -> Phrase:
    """Say the sides of the smallest panel, to the whole millimetre and the sixteenth of an inch.

    What the ruler that goes with the paper shows comes first: ``unit`` is the sheet's, ``in`` or metric.
    """
    (width, height), (width_in, height_in) = (
        [str(nearest_whole(side)) for side in sides_mm],
        [inches(side) for side in sides_mm],
    )
    sides = {"width": width, "height": height, "width_in": width_in, "height_in": height_in}
    return said("figures", "smallest_in" if unit == "in" else "smallest_mm", **sides)


def inches(length_mm: Exact) -> str:
    """Write a length as a mixed number of inches, to the nearest sixteenth."""
    return mixed_form(nearest_sixteenth(length_mm)).text


def trueness(ranked: Ranked, spread: Spread) -> Phrase:
    """Say how far off the worst panel may be, and how much edge marks help where folds are judged by eye."""
    off = _off(accuracy(ranked.moments, spread))
    helped = steps_that_ticks_help(ranked, spread)
    if not helped:
        return said("figures", "off", off=off)
    ticked = _off(accuracy(ranked.moments, spread, ticks=helped))
    return said("figures", "by_eye", off=off, ticked=ticked, where=steps_said(helped))


def _off(made: Accuracy) -> Phrase:
    return about(made.worst_mm, made.frozen.unit)


def steps_that_ticks_help(ranked: Ranked, spread: Spread) -> list[int]:
    """Give the steps, counted from 0, that are judged by eye; none where ticks there make nothing truer.

    By a ruler, so what is less than a sixteenth of an inch or a millimetre makes no difference.
    """
    made = accuracy(ranked.moments, spread)
    eyed = sorted({source.step for source in made.frozen.sources if source.placing is Placing.EYE})
    ticked = accuracy(ranked.moments, spread, ticks=eyed)
    return eyed if ticked.worst_mm < made.worst_mm and _off(ticked) != _off(made) else []


def steps_said(steps: list[int]) -> Phrase:
    """Say steps by their numbers, counted from 1: ``steps 1, 4 and 6``."""
    numbers = [str(step + 1) for step in steps]
    return said("figures", "several_steps" if len(steps) > 1 else "step", steps=listed(numbers))
