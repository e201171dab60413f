"""A plan as a lesson file: takes a plan and for whom it is, gives TOML that a lesson is read from."""

import json
from importlib.resources import files
from string import Template

from foldmath.paper.sizes import PaperSize
from foldmath.paper.steps import Axis, Shade
from foldmath.phrases import Phrase, phrase
from foldmath.planning.plan_words import figures, said, steps_said, steps_that_ticks_help, why
from foldmath.planning.ranking import Ranked
from foldmath.planning.wanted import Wanted
from foldmath.tolerance.assumed.spread import Spread
from foldmath.values import frozen
from foldmath.words.languages import DEFAULT
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence

GRADES = range(3, 7)
"""Of lessons; said again here, since what checks them in a lesson file is slow to import."""

LONGEST_TITLE = 80
"""A lesson's title is one line of at most so many characters."""


@frozen(kw_only=True)
class Class:
    """For whom a plan is.

    Args:
        grade: from 3 to 6.
        size: of the paper.
        orientation: ``landscape`` or ``portrait``.
        spread: how far hands go wrong.
        stock: the kind of paper, where the teacher named one; empty for the usual kind of that size.
    """

    grade: int
    size: PaperSize
    orientation: str
    spread: Spread
    stock: str = ""


def lesson_text(wanted: Wanted, ranked: Ranked, made_for: Class, language: str) -> str:
    """Write a plan as a lesson file in a language; a product is shaded after the folds, and practised.

    The second factor is shaded first, since 2/3 × 4/5 is read "2/3 of 4/5".
    """
    template = files(__package__).joinpath("plan_lesson.txt").read_text(encoding="utf-8")
    steps = [step_sentence(step, language) for step in (*ranked.plan.steps, *shadings(ranked))]
    practice = (
        f"\npractice = [{json.dumps(wanted.product.text, ensure_ascii=False)}]\n" if wanted.product else ""
    )
    notes = [say(note, language) for note in _notes(wanted, ranked, made_for.spread)]
    return Template(template).substitute(
        made_by=say(said("lesson", "by_plan"), language),
        figures=say(figures(ranked, made_for.spread), language),
        why=say(phrase("Why this way: {why}", why=why(ranked)), language),
        title=say(said("lesson", "title", said=wanted.said), language)[:LONGEST_TITLE],
        language="" if language == DEFAULT else f'language = "{language}"\n',
        grade=made_for.grade,
        paper=made_for.size.name,
        orientation=made_for.orientation,
        stock=f"stock = {json.dumps(made_for.stock)}\n" if made_for.stock else "",
        steps=_listed(steps),
        practice=practice,
        notes=f"\nnotes = [\n{_listed(notes)}\n]\n" if notes else "",
    )


def shadings(ranked: Ranked) -> list[Shade]:
    """Give the steps that shade a plan's product, the second factor first; none if it has none."""
    grid = ranked.plan.grid
    if grid.shaded is None:
        return []
    across, up = grid.shaded
    columns = Shade(across.numerator, across.denominator, Axis.WIDTH)
    rows = Shade(up.numerator, up.denominator, Axis.HEIGHT)
    return [columns, rows] if grid.turned else [rows, columns]


def _notes(wanted: Wanted, ranked: Ranked, spread: Spread) -> list[Phrase]:
    notes = []
    if wanted.product:
        first, second = wanted.product.first, wanted.product.second
        shown = {
            "shown": first.numerator * second.numerator,
            "all": first.denominator * second.denominator,
            "product": wanted.product.unreduced,
        }
        notes.append(said("lesson", "shading", first=first, second=second))
        notes.append(said("lesson", "counting", **shown))
    helped = steps_that_ticks_help(ranked, spread)
    if helped:
        notes.append(said("lesson", "ticks", where=steps_said(helped)))
    return notes


def _listed(words: list[str]) -> str:
    return "\n".join(f"  {json.dumps(word, ensure_ascii=False)}," for word in words)
