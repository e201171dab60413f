"""The shape of a lesson file: its keys and what each may hold, and plain words for what does not fit."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import MISSING, Field, field, fields
from difflib import get_close_matches
from functools import cache
from typing import Annotated, Any, cast, get_args

from voluptuous import (
    All,
    In,
    InInvalid,
    Invalid,
    Length,
    Match,
    MultipleInvalid,
    Optional,
    Range,
    Required,
    RequiredFieldInvalid,
    Schema,
)
from voluptuous import Any as Either

from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.wanted import (
    FIRST_GRADE,
    LARGEST_SEED,
    LAST_GRADE,
    LEVELS,
    LONGEST_ITEM,
    LONGEST_LINE,
    LONGEST_NAME,
    LONGEST_NOTE,
    LONGEST_SENTENCE,
    LONGEST_TAG,
    LONGEST_UNIT,
    MOST_ITEMS,
    MOST_NAMES,
    MOST_OWN_ITEMS,
    MOST_PRODUCTS,
    MOST_STEPS,
    MOST_TRANSLATED,
    MOST_WITHOUT,
    MOST_WORDS,
    NEAR_KEYS,
    WANTED,
    WANTED_ITEM,
)
from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS
from foldmath.phrases import Said, phrase
from foldmath.statements.standards import Followed
from foldmath.values import frozen
from foldmath.words.languages import DEFAULT, languages


def _words(longest: int) -> All:
    return All(str, Length(1, longest), Match(r"(?s).*\S"))


def _list(each: object, most: int, fewest: int = 0) -> All:
    # Its length first: of a list that is far too long not every item is told of.
    return All(list, Length(fewest, most), _each_of(Schema(each)))


def _each_of(schema: Schema) -> Callable[[list[object]], list[object]]:
    """Check every item of a list; a list of voluptuous's own ends at the first table with a slip."""

    def checked(given: list[object]) -> list[object]:
        found: list[object] = []
        slips: list[Invalid] = []
        for place, item in enumerate(given):
            try:
                found.append(schema(item))
            except MultipleInvalid as refused:
                refused.prepend([place])
                slips += refused.errors
        if slips:
            raise MultipleInvalid(slips)
        return found

    return checked


def _whole(number: object) -> int:
    # True is a number to Python, and none in a lesson file.
    if type(number) is not int:
        raise ValueError
    return number


def _known_language(name: object) -> object:
    return In(languages())(name)


def _table(shape: type) -> All:
    """Give what a table must hold whose keys are the fields of a class, those without default at least."""
    keys = {_key(each): get_args(each.type)[1] for each in fields(shape)}
    return All(keys, lambda given: shape(**given))


def _key(each: "Field[Any]") -> Required | Optional:
    left_out = each.default is MISSING and each.default_factory is MISSING
    return Required(each.name) if left_out else Optional(each.name)


_LINE, _TEXT = _words(LONGEST_LINE), _words(LONGEST_NOTE)
_SENTENCE = All(str, Length(0, LONGEST_SENTENCE))
_TAG = All(str, Length(0, LONGEST_TAG), Match(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*\Z"))
"""A language with its script or country, as RFC 5646 (BCP 47) writes it: ``uk``, ``zh-Hant``."""

_Asked = Annotated[Sequence[str], _list(_SENTENCE, MOST_ITEMS)]
_Sentences = Annotated[Sequence[str], _list(_SENTENCE, MOST_PRODUCTS)]


@frozen(kw_only=True)
class Measures:
    """A sheet by its sides, each a number with a unit."""

    width: Annotated[str, _LINE]
    height: Annotated[str, _LINE]


@frozen(kw_only=True)
class KeptShape:
    """Items that stay on the pages of the levels, by what they ask."""

    guided: _Asked = ()
    core: _Asked = ()
    stretch: _Asked = ()


@frozen(kw_only=True)
class PracticeShape:
    """Rules by which items are chosen, with or without products of the lesson's own."""

    denominators: Annotated[
        Sequence[int] | None, _list(All(_whole, Range(FEWEST_PLEATS, MOST_PLEATS)), MOST_PLEATS, fewest=1)
    ] = None
    count: Annotated[int | None, All(_whole, Range(1, MOST_ITEMS))] = None
    seed: Annotated[int | None, All(_whole, Range(0, LARGEST_SEED))] = None
    kinds: Annotated[Sequence[str] | None, _list(_LINE, MOST_ITEMS, fewest=1)] = None
    products: _Sentences = ()
    without: Annotated[Sequence[str], _list(_SENTENCE, MOST_WITHOUT)] = ()
    keep: Annotated[KeptShape, _table(KeptShape)] = KeptShape()


@frozen(kw_only=True)
class ItemShape:
    """An item in the teacher's own words."""

    text: Annotated[str, _words(LONGEST_ITEM)]
    sum: Annotated[str, _LINE]
    unit: Annotated[str, All(str, Length(0, LONGEST_UNIT))] = ""
    levels: Annotated[Sequence[str], _list(In(LEVELS), len(LEVELS), fewest=1)] = ()


_CHOICES = {"orientation": ("landscape", "portrait"), "standards": tuple(each.value for each in Followed)}


@frozen(kw_only=True)
class LessonShape:
    """The keys of a lesson file."""

    title: Annotated[str, _LINE]
    grade: Annotated[int, All(_whole, Range(FIRST_GRADE, LAST_GRADE))]
    paper: Annotated[str | Measures, Either(_LINE, _table(Measures))]
    orientation: Annotated[str | None, In(_CHOICES["orientation"])] = None
    stock: Annotated[str | None, _LINE] = None
    steps: Annotated[Sequence[str], _list(_SENTENCE, MOST_STEPS, fewest=1)]
    practice: Annotated[
        Sequence[str] | PracticeShape, Either(_list(_SENTENCE, MOST_PRODUCTS), _table(PracticeShape))
    ] = ()
    vocabulary: Annotated[Sequence[str], _list(_LINE, MOST_WORDS)] = ()
    notes: Annotated[str | Sequence[str], Either(_TEXT, _list(_TEXT, MOST_WORDS))] = ()
    language: Annotated[str, _known_language] = DEFAULT
    standards: Annotated[str | None, In(_CHOICES["standards"])] = None
    words: Annotated[Mapping[str, str], All(dict, Length(0, MOST_WORDS), {_LINE: _LINE})] = field(
        default_factory=dict
    )
    home_language: Annotated[str, _TAG] = ""
    translated: Annotated[
        Mapping[str, Mapping[str, str]],
        {All(str, _known_language): All(dict, Length(0, MOST_TRANSLATED), {_TEXT: _TEXT})},
    ] = field(default_factory=dict)
    booklet: Annotated[Mapping[str, Any] | None, dict] = None
    earlier: Annotated[Sequence[str], _list(_LINE, MOST_WORDS)] = ()
    items: Annotated[Sequence[ItemShape], _list(_table(ItemShape), MOST_OWN_ITEMS)] = ()
    names: Annotated[Sequence[str], _list(_words(LONGEST_NAME), MOST_NAMES)] = ()

    @property
    def followed(self) -> Followed | None:
        """Whose standards the file says that it follows."""
        return Followed(self.standards) if self.standards else None


@cache
def _lesson() -> Schema:
    return Schema(_table(LessonShape))


def shape_of(table: dict[str, Any]) -> LessonShape | list[Slip]:
    """Check the keys of a lesson file; gives the shape, or every slip in it."""
    try:
        shape: LessonShape = _lesson()(table)
    except MultipleInvalid as error:
        slips: dict[Path, Slip] = {}
        for path, found in sorted(((_path(each), each) for each in error.errors), key=_place):
            slips.setdefault(path, _slip(path, found, _value(table, path)))
        # A key that is only misspelt is not missing as well.
        misspelt = {(*slip.path[:-1], slip.hint) for slip in slips.values() if slip.path not in WANTED}
        return [slip for slip in slips.values() if not (slip.at_key and slip.path in misspelt)]
    return shape


def _path(found: Invalid) -> Path:
    """Give the way to a slip; a key that is missing is told as its marker."""
    steps = cast("list[str | int | Required]", found.path)
    return tuple(str(step.schema) if isinstance(step, Required) else step for step in steps)


_PLACES = {keys: place for place, keys in enumerate(WANTED)}


def _place(slip: tuple[Path, Invalid]) -> int:
    """Where keys stand in the list of what is wanted; those that it has not stand last, as in the file."""
    path, _ = slip
    return _PLACES.get(_keys(path), len(_PLACES))


def _keys(path: Path) -> tuple[str, ...]:
    return tuple(step for step in path if isinstance(step, str))


def _value(table: Any, path: Path) -> Any:
    for step in path:
        try:
            table = table[step]
        except (KeyError, IndexError, TypeError):
            return None
    return table


def _slip(path: Path, found: Invalid, value: Any) -> Slip:
    keys = _keys(path)
    if isinstance(found, RequiredFieldInvalid):
        return Slip(path, phrase("the key {key} is missing", key=keys[-1]), WANTED[keys][1], at_key=True)
    if type(found) is Invalid:
        # voluptuous has no class of its own for a key that it does not know.
        return Slip(path, phrase("there is no key of this name"), _nearest_key(path), at_key=True)
    if isinstance(path[-1], int):
        return Slip(path, *WANTED_ITEM[str(path[-2])])
    if path[0] == "words" and len(path) > 1:
        return Slip(path[:2], *WANTED_ITEM["words"])
    if path[0] == "translated" and len(path) > 1:
        return _not_said(path)
    message, hint = WANTED[keys]
    if isinstance(found, InInvalid) and isinstance(value, str):
        choices = _CHOICES.get(str(path[0]), languages())
        near = get_close_matches(value.casefold(), choices, n=1, cutoff=0.4)
        hint = f'{path[0]} = "{near[0]}"' if near else hint
    return Slip(path, message, hint)


def _not_said(path: Path) -> Slip:
    """Tell what is wrong in the words of another language: the language itself, or one of its texts."""
    if path[1] in languages():
        message, hint = WANTED[("translated",)] if len(path) == 2 else WANTED_ITEM["translated"]
        if path[-1] in _names(LessonShape):
            # A line at the end of a file belongs to the last table of it.
            hint = phrase("put {key} before the first line in [brackets]", key=path[-1])
        return Slip(path[:3], message, hint)
    near = get_close_matches(str(path[1]), languages(), n=1, cutoff=0.0)
    message = phrase("pages are written in {languages}", languages=", ".join(languages()))
    return Slip(path[:2], message, f"[translated.{near[0]}]", at_key=True)


INNER: Mapping[str | int, type] = {"paper": Measures, "items": ItemShape}
"""Tables in a lesson, by the key that holds them; those of practice are told apart by how deep they lie."""


def _nearest_key(path: Path) -> Said:
    inner = INNER.get(path[0], KeptShape if len(path) > 2 else PracticeShape)
    known = _names(LessonShape if len(path) == 1 else inner)
    key = str(path[-1]).casefold()
    near = get_close_matches(key, known, n=1, cutoff=0.6)
    if NEAR_KEYS.get(key) in known:
        return NEAR_KEYS[key]
    return near[0] if near else phrase("the keys are {known}", known=", ".join(known))


def _names(shape: type) -> list[str]:
    return [each.name for each in fields(shape)]
