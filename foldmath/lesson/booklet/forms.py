"""The forms of a booklet: takes a name and a sheet, gives the steps that fold it, and the booklet."""

import tomllib
from collections.abc import Sequence
from difflib import get_close_matches
from functools import cache
from importlib.resources import files

from foldmath.lesson.grammar.sentences import written_step
from foldmath.paper.booklet.booklet import Booklet, Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Gather
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep


@frozen(kw_only=True)
class BookletForm:
    """One form.

    Args:
        name: such as ``eight-page``.
        holds: what holds its booklet together.
        pages: how many it has.
        landscape: the sentences that fold a sheet which lies on its long side, or a square.
        portrait: those for a sheet that lies on its narrow side.
    """

    name: str
    holds: Form
    pages: int
    landscape: tuple[str, ...]
    portrait: tuple[str, ...]

    def steps_on(self, sheet: Sheet) -> tuple[WrittenStep, ...]:
        """Give the steps for a sheet as it lies."""
        sentences = self.landscape if sheet.width >= sheet.height else self.portrait
        return tuple(written_step(sentence) for sentence in sentences)


@cache
def all_forms() -> dict[str, BookletForm]:
    """Give every form by its name, in the order of ``forms.toml``."""
    table = tomllib.loads(files(__package__).joinpath("forms.toml").read_text(encoding="utf-8"))
    return {
        name: BookletForm(
            name=name,
            holds=Form(given["holds"]),
            pages=given["pages"],
            landscape=tuple(given["landscape"]),
            portrait=tuple(given["portrait"]),
        )
        for name, given in table.items()
    }


def nearest_form(name: str) -> str:
    """Give the name of the form that is nearest to a misspelt one; empty if none is near."""
    plain = name.strip().casefold().replace(" ", "-").replace("_", "-")
    near = get_close_matches(plain[:40], all_forms(), n=1, cutoff=0.5)
    return near[0] if near else ""


def form_of(made: Booklet) -> str:
    """Name the form of a folded booklet, whether ``forms.toml`` lists it or not."""
    for form in all_forms().values():
        if (form.holds, form.pages) == (made.form, len(made.pages)):
            return form.name
    return f"{len(made.pages)}-page"


def folded_booklet(written: Sequence[WrittenStep], sheet: Sheet) -> Booklet:
    """Fold an open sheet by steps up to the last that gathers it, and give the booklet that it becomes.

    Raises:
        StepRefused: this sheet cannot be folded so.
    """
    steps, state = [one.step for one in written], open_sheet(sheet)
    last = max(index for index, step in enumerate(steps) if isinstance(step, Gather))
    for step in steps[:last]:
        state = perform(step, state)
    gather = steps[last]
    return booklet(state, gather.column if isinstance(gather, Gather) else None)
