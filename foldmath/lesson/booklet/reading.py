"""Reading a booklet: takes the table of a lesson file, gives its plan, or every slip in it."""

from collections.abc import Iterator
from dataclasses import replace
from difflib import get_close_matches
from itertools import pairwise
from typing import Any

from foldmath.lesson.booklet.borrowing import PageSource
from foldmath.lesson.booklet.covers import cover_told
from foldmath.lesson.booklet.forms import all_forms, folded_booklet, form_of, nearest_form
from foldmath.lesson.booklet.matter import Folds, Matter, uncut
from foldmath.lesson.booklet.pages import PagesRead, read_pages
from foldmath.lesson.booklet.plan import BookletPlan
from foldmath.lesson.files.positions import Path, Positions
from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.wanted import LAST_GRADE
from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.lengths import Length, NumberRefused, read_length
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import FoldStep, Gather
from foldmath.phrases import phrase
from foldmath.plane.numbers import exact
from foldmath.statements.items import Reach
from foldmath.statements.items.story import StoryFrame
from foldmath.statements.products import Product
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

RULINGS = {3: Length(exact(1, 2), "in"), 4: Length(exact(3, 8), "in")}
"""From one ruled line to the next, by the first grade that writes so (from memory: ruled school paper is
sold with 1/2 in for grade 3 and 3/8 in from grade 4 up); used for metric paper too."""

KEYS = ("form", "ruling", "pages")
NEAR_KEYS = {
    "page": "pages",
    "contents": "pages",
    "lines": "ruling",
    "spacing": "ruling",
    "kind": "form",
    "shape": "form",
    "layout": "form",
}
"""Keys that people might choose, and that are spelt unlike the right ones."""

NARROWEST, WIDEST = Length(exact(1, 4), "in"), Length(exact(9, 8), "in")
"""From narrow ruling to that of a kindergarten (from memory)."""


@frozen(kw_only=True)
class Setting:
    """What a booklet is read in.

    Args:
        file: the lesson file, as the user gave it.
        grade: as the file gives it, right or not.
        sheet: as it lies; None if the paper cannot be used.
        steps: of the lesson; None if one of them cannot be read.
        products: of its practice; None if one of them cannot be read.
        stage: how far the grade has come in multiplying fractions; None if the file gives no grade.
        stories: those that the grade can be told.
        positions: in the lesson file.
    """

    file: str
    grade: Any
    sheet: Sheet | None
    steps: tuple[WrittenStep, ...] | None
    products: tuple[Product, ...] | None
    stage: Reach | None
    stories: tuple[StoryFrame, ...]
    positions: Positions


@frozen
class BookletRead:
    """What was found in a booklet's table.

    Args:
        plan: None if there are slips, or the paper or the steps cannot be used.
        slips: in the lesson file.
        source: the file that pages were taken from, if they were.
        slips_there: in that file.
    """

    plan: BookletPlan | None
    slips: tuple[Slip, ...] = ()
    source: PageSource | None = None
    slips_there: tuple[Slip, ...] = ()


@frozen
class _Folded:
    """A booklet, and the steps that fold it."""

    steps: tuple[WrittenStep, ...]
    booklet: Booklet


def read_booklet(table: dict[str, Any], setting: Setting) -> BookletRead:
    """Read and check the table ``booklet`` of a lesson file, and fold its sheet.

    Raises:
        LessonRefused: another file that pages are taken from cannot be read.
    """
    states = _states(setting)
    ruling = _ruling(table.get("ruling"), setting.grade)
    form = _form(table, setting)
    matter = Matter(
        folds=_folds(setting, states),
        products=setting.products,
        grade=setting.grade,
        stage=setting.stage,
        stories=setting.stories,
    )
    read = read_pages(table.get("pages"), setting.file, setting.positions, matter)
    folded = None
    if setting.sheet and states and not isinstance(form, Slip):
        folded = _folded(form, setting, setting.sheet)
    crowded = _crowded(read, folded.booklet, own=_gathers(setting)) if isinstance(folded, _Folded) else None
    slips = [*_unknown_keys(table), *read.slips]
    slips += [slip for slip in (ruling, form, folded, crowded) if isinstance(slip, Slip)]
    if slips or read.slips_there or isinstance(ruling, Slip) or not isinstance(folded, _Folded):
        return BookletRead(None, tuple(slips), read.source, read.slips_there)
    name = form_of(folded.booklet)
    plan = BookletPlan(
        form=name,
        steps=folded.steps,
        booklet=folded.booklet,
        pages=read.pages,
        ruling=ruling,
        lent=read.source.digest if read.source else "",
    )
    return BookletRead(plan, (), read.source)


def on_sheet(plan: BookletPlan, sheet: Sheet) -> BookletPlan:
    """Fold a planned booklet from another sheet, which lies as the first did.

    Raises:
        StepRefused: that sheet cannot be folded so.
    """
    return replace(plan, booklet=cover_told(plan.steps, sheet))


def _unknown_keys(table: dict[str, Any]) -> Iterator[Slip]:
    for key in table.keys() - set(KEYS):
        near = get_close_matches(key.casefold(), KEYS, n=1, cutoff=0.6)
        meant = NEAR_KEYS.get(key.casefold()) or (
            near[0] if near else phrase("the keys are {keys}", keys=", ".join(KEYS))
        )
        yield Slip(("booklet", key), phrase("a booklet has no key of this name"), meant, at_key=True)


def _ruling(given: Any, grade: Any) -> Length | Slip:
    """Read the ruling, or take that of the grade."""
    path: Path = ("booklet", "ruling")
    if given is None:
        known = grade if isinstance(grade, int) else LAST_GRADE
        return RULINGS[max(first for first in RULINGS if first <= max(known, min(RULINGS)))]
    if not isinstance(given, str):
        return Slip(path, phrase("the ruling must be a number and its unit in quotes"), 'ruling = "3/8 in"')
    try:
        ruling = read_length(given)
    except NumberRefused as error:
        return Slip(path, error.message, error.hint)
    if not NARROWEST.in_millimetres <= ruling.in_millimetres <= WIDEST.in_millimetres:
        return Slip(path, phrase("lines to write on are from 1/4 in to 1 1/8 in apart"), 'ruling = "3/8 in"')
    return ruling


def _gathers(setting: Setting) -> bool:
    return any(isinstance(written.step, Gather) for written in setting.steps or ())


def _form(table: dict[str, Any], setting: Setting) -> str | Slip:
    """Give the name of the form; empty for that of the lesson's own steps."""
    path: Path = ("booklet", "form")
    given = table.get("form")
    names = ", ".join(all_forms())
    if given is None:
        if setting.steps is None or _gathers(setting):
            return ""
        return Slip(path, phrase("the key form is missing"), 'form = "eight-page"', at_key=True)
    if not isinstance(given, str):
        return Slip(path, phrase("the form must be a name in quotes"), 'form = "eight-page"')
    name = given.strip().casefold()
    if name not in all_forms():
        near = nearest_form(given)
        return Slip(
            path,
            phrase("no booklet has a form of this name"),
            f'"{near}"' if near else phrase("the forms are {names}", names=names),
        )
    return name


def _states(setting: Setting) -> list[FoldedState] | None:
    """Do the lesson's steps; None if they cannot be done, which proving the lesson will tell."""
    if setting.steps is None or setting.sheet is None:
        return None
    states = [open_sheet(setting.sheet)]
    try:
        for written in setting.steps:
            states.append(perform(written.step, states[-1]))
    except StepRefused:
        return None
    return states


def _folds(setting: Setting, states: list[FoldedState] | None) -> Folds | None:
    if states is None or setting.steps is None:
        return None
    folding = tuple(
        index for index, written in enumerate(setting.steps) if isinstance(written.step, FoldStep)
    )
    moments = [
        Moment(written.step, *around) for written, around in zip(setting.steps, pairwise(states), strict=True)
    ]
    return Folds(
        folding=folding,
        cutting=tuple(index for index in folding if moments[index].new_panels),
        states=tuple(states),
        creased=states[uncut([written.step for written in setting.steps])],
    )


def _folded(form: str, setting: Setting, sheet: Sheet) -> _Folded | Slip:
    """Fold the booklet: by the lesson's own steps if they gather it, or else as its form says."""
    path: Path = ("booklet", "form")
    if not _gathers(setting):
        try:
            steps = all_forms()[form].steps_on(sheet)
            return _Folded(steps, folded_booklet(steps, sheet))
        except StepRefused as refusal:
            return Slip(
                path,
                phrase("this sheet cannot be folded so: {message}", message=refusal.message),
                phrase("choose another form"),
            )
    written = setting.steps or ()
    last = max(index for index, one in enumerate(written) if isinstance(one.step, Gather))
    made = cover_told(written[: last + 1], sheet)
    if form and form != form_of(made):
        known = form_of(made) in all_forms()
        message = phrase(
            "the steps of this lesson gather a booklet of another form: {made}", made=form_of(made)
        )
        return Slip(path, message, f'form = "{form_of(made)}"' if known else phrase("leave this key out"))
    return _Folded(written[: last + 1], made)


def _crowded(read: PagesRead, made: Booklet, *, own: bool) -> Slip | None:
    """Refuse more pages than the booklet has, at the first that has no room.

    Args:
        read: the pages.
        made: the booklet.
        own: whether the lesson's own steps gather it, so that no other form can be chosen.
    """
    count, room = len(read.pages), len(made.pages)
    if count <= room:
        return None
    larger = next((form.name for form in all_forms().values() if form.pages >= count), "")
    less = phrase("leave out {number}", number=count - room)
    or_form = phrase('leave out {number}, or form = "{form}"', number=count - room, form=larger)
    hint = less if own or not larger else or_form
    path: Path = ("booklet", "pages") if read.source else ("booklet", "pages", read.tables[room])
    return Slip(
        path,
        phrase("there are {count} pages, and {room} fit into this booklet", count=count, room=room),
        hint,
    )
