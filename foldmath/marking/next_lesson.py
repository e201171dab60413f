"""The next lesson, made from what was missed: takes a class's evidence, gives a lesson file and a roster."""

import json
import os
from collections.abc import Sequence
from dataclasses import replace
from importlib.resources import files
from pathlib import Path
from string import Template

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.roster_rows import roster_rows
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.evidence import ClassEvidence, Pile, PupilEvidence
from foldmath.marking.separating import separating_products
from foldmath.paper.sizes import PaperRefused, PaperSize, paper_named
from foldmath.paper.steps import Step
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import written
from foldmath.planning.plan_lesson import shadings
from foldmath.planning.planner import NoPlan, plan
from foldmath.planning.ranking import priority_of
from foldmath.planning.wanted import WantRefused, wanted_product
from foldmath.practice.scope import scope_of
from foldmath.statements.items import Level, Reach
from foldmath.statements.products import Product
from foldmath.statements.rules import Rule
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.values import frozen
from foldmath.words.rules import short_name
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence

PRODUCTS = 5
"""In the next lesson."""

AGAIN = 5
"""One product in so many is from an earlier lesson."""

LONGEST_TITLE = 80

STEPS_UP = {Level.GUIDED: Level.CORE, Level.CORE: Level.STRETCH, Level.STRETCH: Level.STRETCH}
STEPS_DOWN = {Level.GUIDED: Level.GUIDED, Level.CORE: Level.GUIDED, Level.STRETCH: Level.CORE}


@frozen
class NextLesson:
    """A lesson to come.

    Args:
        text: of its file.
        products: to shade and solve, those from earlier lessons last.
        rules: that the others tell apart.
    """

    text: str
    products: tuple[Product, ...]
    rules: tuple[Rule, ...]


def rules_found(evidence: ClassEvidence) -> tuple[Rule, ...]:
    """Give the rules that pupils followed in a product, those of most pupils first."""
    found = [thought.explanation.rule for thought in evidence.thoughts]
    return tuple(rule for rule in found if rule and rule.acts_on(Product))


def next_lesson(evidence: ClassEvidence, pages: LessonPages, folder: Path) -> NextLesson:
    """Make the next lesson.

    Args:
        evidence: of the class.
        pages: of the lesson that was marked.
        folder: in which the file will lie; other lessons are named from there.

    Raises:
        LessonRefused: a lesson named under ``earlier`` cannot be read.
    """
    proved = pages.proved
    lesson = proved.lesson
    stage = reach(lesson.grade, lesson.followed)
    rules = rules_found(evidence)
    earlier = _earlier(lesson)
    products: tuple[Product, ...] = ()
    if stage is not Reach.NAMING:
        again = _products_again(earlier, PRODUCTS // AGAIN)
        known = frozenset(product.text for product in (*_asked(pages), *again))
        denominators = scope_of(proved, Level.CORE).denominators
        wholes = stage is Reach.BY_WHOLES
        new = separating_products(rules, denominators, PRODUCTS - len(again), wholes=wholes, known=known)
        products = (*new, *again)
    text = _text(pages, products, rules, [Path(lesson.file), *(Path(one.file) for one in earlier)], folder)
    return NextLesson(text, products, rules)


def next_roster(evidence: ClassEvidence) -> list[tuple[str, ...]]:
    """Give the class list with new levels: absent pupils keep theirs, and all the language they read."""
    levels = {id(one.marked): _level(one) for one in evidence.pupils}
    pupils = evidence.marked.pupils
    return roster_rows(replace(one.pupil, level=levels.get(id(one), one.pupil.level)) for one in pupils)


def _level(pupil: PupilEvidence) -> Level:
    """Give more support to a pupil with a pattern, less to one with nothing wrong.

    Common practice, no source.
    """
    level = pupil.marked.page.level
    if pupil.patterns:
        return STEPS_DOWN[level]
    good = all(answer.mark.verdict.good for answer in pupil.marked.answers)
    return STEPS_UP[level] if good and pupil.pile is Pile.GO_ON else level


def _earlier(lesson: Lesson) -> list[Lesson]:
    """Read the lessons of weeks before; their files are named as seen from the lesson's own."""
    folder = Path(lesson.file).parent
    return [read_lesson(folder / name) for name in lesson.earlier]


def _products_again(lessons: Sequence[Lesson], count: int) -> list[Product]:
    """Take products from earlier lessons in turn, the last lesson first."""
    taken: list[Product] = []
    products = [[written.product for written in lesson.practice] for lesson in lessons]
    for place in range(max(map(len, products), default=0)):
        taken += [listed[place] for listed in products if place < len(listed)]
    return list(dict.fromkeys(taken))[:count]


def _asked(pages: LessonPages) -> list[Product]:
    """Give the products that the class has done."""
    questions = [question for level in Level for question in pages.of_class(level).questions]
    problems = [question.problem for question in questions if isinstance(question, NumberQuestion)]
    return [problem for problem in problems if isinstance(problem, Product)]


def _text(
    pages: LessonPages,
    products: Sequence[Product],
    rules: Sequence[Rule],
    earlier: Sequence[Path],
    folder: Path,
) -> str:
    lesson = pages.proved.lesson
    steps, folding = _steps(pages, products)
    codes = ", ".join(short_name(rule, lesson.language) for rule in rules)
    named = [_from(folder, file) for file in dict.fromkeys(earlier)]
    comments: dict[str, Said] = {
        "heading": phrase("Made by foldmath mark after “{title}”.", title=lesson.title),
        "why": phrase("What was thought wrongly: {codes}.", codes=codes)
        if codes
        else phrase("No wrong rule was found."),
        "folding": folding,
        "products": phrase(
            "On the new products these ways lead to answers that differ; the last is an old one."
        )
        if products
        else phrase("No products are asked for: the other items are chosen anew."),
        "again": phrase("Products from these lessons come again; add the weeks before."),
    }
    template = files(__package__).joinpath("next_lesson.txt").read_text(encoding="utf-8")
    said_comments = {key: " ".join(say(value, lesson.language).split()) for key, value in comments.items()}
    title = say(phrase("{title}: next", title=lesson.title), lesson.language)
    return Template(template).substitute(
        **said_comments,
        title=_quoted(title[:LONGEST_TITLE]),
        grade=lesson.grade,
        paper=_paper(lesson),
        orientation=_quoted(lesson.orientation),
        language=_quoted(lesson.language),
        steps="\n".join(f"  {_quoted(step)}," for step in steps),
        practice=", ".join(_quoted(product.text) for product in products),
        names=_names(lesson),
        earlier=", ".join(map(_quoted, named)),
    )


def _names(lesson: Lesson) -> str:
    """Write the names that stories borrow, as the class is the same; items in her words were told once."""
    return f"\nnames = [{', '.join(map(_quoted, lesson.names))}]\n" if lesson.names else ""


def _steps(pages: LessonPages, products: Sequence[Product]) -> tuple[list[str], Said]:
    """Plan a folding that shows the first product that one sheet can show; else fold the lesson again.

    The booklet that the sheet became is made once: it has the pages of the lesson that was marked.
    """
    lesson = pages.proved.lesson
    spread = default_spread(lesson.grade, lesson.stock)
    for product in products:
        try:
            wanted = wanted_product(product.text)
            found = plan(
                wanted,
                _size(lesson),
                lesson.orientation,
                spread,
                lesson.stock,
                best=1,
                priority=priority_of(lesson.grade),
            )
        except (NoPlan, WantRefused):
            continue
        ranked = found.ranked[0]
        steps: list[Step] = [*ranked.plan.steps, *shadings(ranked)]
        sentences = [step_sentence(step, lesson.language) for step in steps]
        return sentences, phrase("The sheet for {product}.", product=product.text)
    again = lesson.steps[: len(lesson.steps) - len(pages.folding.making)]
    return [step.text for step in again], phrase("The same folds again.")


def _size(lesson: Lesson) -> PaperSize:
    """Give the paper of a lesson as a size, by its name or by the sheet as it lies."""
    try:
        return paper_named(lesson.paper)
    except PaperRefused:
        narrow, long = sorted((lesson.sheet.width, lesson.sheet.height))
        return PaperSize(name=lesson.paper, width=narrow, height=long, unit=lesson.sheet.unit)


def _paper(lesson: Lesson) -> str:
    """Write the paper as a lesson file does."""
    try:
        return _quoted(paper_named(lesson.paper).name)
    except PaperRefused:
        sheet = lesson.sheet
        sides = {"width": sheet.width, "height": sheet.height}
        named = (f'{side} = "{written(length)} {sheet.unit}"' for side, length in sides.items())
        return f"{{ {', '.join(named)} }}"


def _from(folder: Path, file: Path) -> str:
    return Path(os.path.relpath(file.resolve(), folder.resolve())).as_posix()


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
