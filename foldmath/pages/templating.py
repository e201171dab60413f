"""Templates: fills them with values, and gives HTML; each room has its own, named ``room/file.html``."""

from collections.abc import Callable
from functools import cache, partial
from importlib.resources import files
from typing import Any

from jinja2 import Environment, FunctionLoader, StrictUndefined
from jinja2.bccache import Bucket, BytecodeCache
from markupsafe import Markup, escape

from foldmath.cache import keep, read_kept
from foldmath.pages.answers import accepted, answered, key_answer
from foldmath.pages.markup.mathml import (
    GIVEN,
    begun,
    boxed,
    boxed_fraction,
    prose,
    stacked,
    unbroken,
    worked,
    worked_fraction,
)
from foldmath.pages.words_filled import gettext_of, ngettext_of
from foldmath.paper.measures import paper_said
from foldmath.paper.steps import Step
from foldmath.statements.expressions import addends
from foldmath.tolerance.assumed.stock_said import stock_said
from foldmath.words.catalogues import catalogue
from foldmath.words.fraction_names import parts_named
from foldmath.words.languages import DEFAULT, of_one_tongue
from foldmath.words.rules import short_name, what_it_tells, what_to_try, what_went_wrong
from foldmath.words.saying import own_name, say, say_value
from foldmath.words.steps import WrittenStep, in_words, picture_sentence
from foldmath.words.stories import story_words


class _KeptTemplates(BytecodeCache):
    """Keeps compiled templates between runs; compiling them anew takes a third of the time of one lesson."""

    def load_bytecode(self, bucket: Bucket) -> None:
        kept = read_kept(_kept_name(bucket))
        if kept is None:
            return
        try:
            bucket.bytecode_from_string(kept)
        except Exception:
            bucket.reset()

    def dump_bytecode(self, bucket: Bucket) -> None:
        keep(_kept_name(bucket), bucket.bytecode_to_string())


def _kept_name(bucket: Bucket) -> str:
    return f"template-{bucket.key}"


def _source(name: str) -> tuple[str, str, None] | None:
    """Find a template of a room: its text, and a file name by which a traceback tells it."""
    room, _, rest = name.partition("/")
    template = files(f"foldmath.{room}").joinpath("templates", *rest.split("/"))
    return (template.read_text(encoding="utf-8"), str(template), None) if template.is_file() else None


@cache
def _environment(language: str) -> Environment:
    environment = Environment(
        extensions=["jinja2.ext.i18n"],
        loader=FunctionLoader(_source),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        bytecode_cache=_KeptTemplates(),
    )
    environment.policies["ext.i18n.trimmed"] = True
    words = catalogue(language)
    # What {% trans %} becomes asks the environment whether its functions fill places themselves.
    environment.newstyle_gettext = True  # type: ignore[attr-defined]  # by the extension
    gettext = gettext_of(words)
    environment.globals.update(gettext=gettext, ngettext=ngettext_of(words), _=gettext)
    environment.globals.update(
        begun=partial(begun, language=language),
        boxed=partial(boxed, language=language),
        boxed_fraction=boxed_fraction,
        given_mark=Markup(GIVEN),
        language=language,
        own_name=own_name,
        worked=partial(worked, language=language),
        worked_fraction=worked_fraction,
    )
    environment.filters.update(_filters(language))
    return environment


def _filters(language: str) -> dict[str, Callable[..., Any]]:
    """Give what templates call to show values in a language."""
    spoken: dict[str, Callable[..., Any]] = {
        "answered": answered,
        "boxed": boxed,
        "in_words": in_words,
        "english": english,
        "sentence": sentence,
        "heading": heading,
        "picture_heading": picture_heading,
        "beside_picture": beside_picture,
        "stacked": stacked,
        "unbroken": unbroken,
        "short_name": short_name,
        "tells": what_it_tells,
        "tries": what_to_try,
        "went_wrong": what_went_wrong,
        "accepted": accepted,
        "key_answer": key_answer,
        "parts_named": parts_named,
        "story": story_words,
        "said": say_value,
        "paper_name": paper_name,
        "stock_name": stock_name,
    }
    said = {name: partial(show, language=language) for name, show in spoken.items()}
    return {**said, "addends": addends, "prose": prose}


def english(words: str, language: str) -> Markup:
    """Give words that are English on every page, such as a curriculum's name, and mark them elsewhere."""
    return (
        escape(words)
        if of_one_tongue(language, DEFAULT)
        else Markup('<span lang="en">{}</span>').format(words)
    )


def heading(
    step: WrittenStep | Step, language: str, *, after: WrittenStep | None = None, crossing: bool = False
) -> str:
    """Write a step as a heading, right after another step or none: a capital letter, and no full stop."""
    return _capital(in_words(step, language, after=after, crossing=crossing))


def paper_name(name: str, language: str) -> str:
    """Say what a paper is called that a lesson file names."""
    return say(paper_said(name), language)


def stock_name(name: str, language: str) -> str:
    """Say what a kind of paper is called."""
    return say(stock_said(name), language)


def sentence(
    step: WrittenStep | Step, language: str, *, after: WrittenStep | None = None, crossing: bool = False
) -> Markup:
    """Write a step as a sentence, right after another or none: a capital, a full stop, fractions stacked."""
    return prose(heading(step, language, after=after, crossing=crossing) + ".")


def picture_heading(
    step: WrittenStep, language: str, *, after: WrittenStep | None = None, crossing: bool = False
) -> str:
    """Write a step as a heading where its picture shows the rest, right after another step or none."""
    return _capital(picture_sentence(step, language, after=after, crossing=crossing))


def beside_picture(
    step: WrittenStep, language: str, *, after: WrittenStep | None = None, crossing: bool = False
) -> Markup:
    """Write a step as a child reads it beside a picture, right after another step or none, as a sentence."""
    return prose(picture_heading(step, language, after=after, crossing=crossing) + ".")


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def render(template: str, language: str, /, **context: Any) -> str:
    """Fill a template, by the name of its file, in the words of a language."""
    return _environment(language).get_template(template).render(context)
