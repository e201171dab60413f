"""The shape of a lesson file: its keys and what each may hold, and plain words for what does not fit."""

from collections.abc import Mapping
from dataclasses import KW_ONLY
from difflib import get_close_matches
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints, ValidationError

from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.wanted import (
    FIRST_GRADE,
    LARGEST_SEED,
    LAST_GRADE,
    LEVELS,
    LONGEST_ITEM,
    LONGEST_LINE,
    LONGEST_NAME,
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

_Line = Annotated[str, StringConstraints(min_length=1, max_length=LONGEST_LINE, pattern=r"\S")]
_Text = Annotated[str, StringConstraints(min_length=1, max_length=600, pattern=r"\S")]
_Sentence = Annotated[str, StringConstraints(max_length=1000)]
_LanguageTag = Annotated[
    str, StringConstraints(pattern=r"^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$", max_length=35)
]
"""A language with its script or country, as RFC 5646 (BCP 47) writes it: ``uk``, ``zh-Hant``."""

_Denominator = Annotated[int, Field(ge=FEWEST_PLEATS, le=MOST_PLEATS)]


def _known_language(name: str) -> str:
    if name not in languages():
        raise ValueError(name)
    return name


class Measures(BaseModel):
    """A sheet by its sides, each a number with a unit."""

    model_config = ConfigDict(strict=True, extra="forbid")
    width: _Line
    height: _Line


_Asked = Annotated[list[_Sentence], Field(max_length=MOST_ITEMS)]


class KeptShape(BaseModel):
    """Items that stay on the pages of the levels, by what they ask."""

    model_config = ConfigDict(strict=True, extra="forbid")
    guided: _Asked = []
    core: _Asked = []
    stretch: _Asked = []


class PracticeShape(BaseModel):
    """Rules by which items are chosen, with or without products of the lesson's own."""

    model_config = ConfigDict(strict=True, extra="forbid")
    denominators: Annotated[list[_Denominator], Field(min_length=1, max_length=MOST_PLEATS)] | None = None
    count: Annotated[int, Field(ge=1, le=MOST_ITEMS)] | None = None
    seed: Annotated[int, Field(ge=0, le=LARGEST_SEED)] | None = None
    kinds: Annotated[list[_Line], Field(min_length=1, max_length=MOST_ITEMS)] | None = None
    products: Annotated[list[_Sentence], Field(max_length=MOST_PRODUCTS)] = []
    without: Annotated[list[_Sentence], Field(max_length=MOST_WITHOUT)] = []
    keep: KeptShape = KeptShape()


class ItemShape(BaseModel):
    """An item in the teacher's own words."""

    model_config = ConfigDict(strict=True, extra="forbid")
    text: Annotated[str, StringConstraints(min_length=1, max_length=LONGEST_ITEM, pattern=r"\S")]
    sum: _Line
    unit: Annotated[str, StringConstraints(max_length=LONGEST_UNIT)] = ""
    levels: Annotated[
        list[Literal["guided", "core", "stretch"]], Field(min_length=1, max_length=len(LEVELS))
    ] = []


_Name = Annotated[str, StringConstraints(min_length=1, max_length=LONGEST_NAME, pattern=r"\S")]


class LessonShape(BaseModel):
    """The keys of a lesson file."""

    model_config = ConfigDict(strict=True, extra="forbid")
    title: _Line
    grade: Annotated[int, Field(ge=FIRST_GRADE, le=LAST_GRADE)]
    paper: _Line | Measures
    orientation: Literal["landscape", "portrait"] | None = None
    stock: _Line | None = None
    steps: Annotated[list[_Sentence], Field(min_length=1, max_length=MOST_STEPS)]
    practice: Annotated[list[_Sentence], Field(max_length=MOST_PRODUCTS)] | PracticeShape = []
    vocabulary: Annotated[list[_Line], Field(max_length=MOST_WORDS)] = []
    notes: _Text | Annotated[list[_Text], Field(max_length=MOST_WORDS)] = []
    language: Annotated[str, AfterValidator(_known_language)] = DEFAULT
    standards: Literal["ccss", "england", "none"] | None = None
    words: Annotated[dict[_Line, _Line], Field(max_length=MOST_WORDS)] = {}
    home_language: _LanguageTag = ""
    translated: dict[
        Annotated[str, AfterValidator(_known_language)],
        Annotated[dict[_Text, _Text], Field(max_length=MOST_TRANSLATED)],
    ] = {}
    booklet: dict[str, Any] | None = None
    earlier: Annotated[list[_Line], Field(max_length=MOST_WORDS)] = []
    items: Annotated[list[ItemShape], Field(max_length=MOST_OWN_ITEMS)] = []
    names: Annotated[list[_Name], Field(max_length=MOST_NAMES)] = []

    @property
    def followed(self) -> Followed | None:
        """Whose standards the file says that it follows."""
        return Followed(self.standards) if self.standards else None


@frozen
class Slip:
    """What does not fit, and where.

    Args:
        path: the way to it.
        message: what is wrong.
        hint: the remedy.
        at_key: whether the key itself is meant.
        column: where the slip stands inside the quoted string, counted from 1; 0 for all of it.
        words: the words that stand there.
    """

    path: Path
    message: Said
    hint: Said
    _: KW_ONLY
    at_key: bool = False
    column: int = 0
    words: str = ""


_BRANCHES = ("str", "Measures", "PracticeShape", "constrained-str", "list[constrained-str]")
_CHOICES = {"orientation": ("landscape", "portrait"), "standards": ("ccss", "england", "none")}


def shape_of(table: dict[str, Any]) -> LessonShape | list[Slip]:
    """Check the keys of a lesson file; gives the shape, or every slip in it."""
    try:
        return LessonShape.model_validate(table)
    except ValidationError as error:
        slips: dict[Path, Slip] = {}
        for found in error.errors(include_url=False, include_context=False, include_input=False):
            path, branch = _path(found["loc"])
            value = _value(table, path)
            if _meant_otherwise(path, branch, value):
                continue
            slips.setdefault(path, _slip(path, found["type"], value))
        # A key that is only misspelt is not missing as well.
        misspelt = {(*slip.path[:-1], slip.hint) for slip in slips.values() if slip.path not in WANTED}
        return [slip for slip in slips.values() if not (slip.at_key and slip.path in misspelt)]


def _meant_otherwise(path: Path, branch: str, value: Any) -> bool:
    """Tell whether a value was meant for another branch of a choice than the one that refuses it."""
    if path == ("practice",) and branch:
        return isinstance(value, list if branch == "PracticeShape" else dict)
    return branch.endswith("str") and isinstance(value, dict | list)


def _path(where: tuple[str | int, ...]) -> tuple[Path, str]:
    """Take the names that pydantic gives to the branches of a choice out of a place."""
    branches = [step for step in where[1:2] if isinstance(step, str) and _is_branch(step)]
    path = (where[0], *where[1 + len(branches) :])
    return path, str(branches[0]) if branches and len(path) == 1 else ""


def _is_branch(step: str) -> bool:
    return step in _BRANCHES or "[" in step


def _value(table: Any, path: Path) -> Any:
    for step in path:
        try:
            table = table[step]
        except (KeyError, IndexError, TypeError):
            return None
    return table


def _slip(path: Path, kind: str, value: Any) -> Slip:
    keys = tuple(step for step in path if isinstance(step, str))
    if kind == "missing":
        return Slip(path, phrase("the key {key} is missing", key=keys[-1]), WANTED[keys][1], at_key=True)
    if kind == "extra_forbidden":
        return Slip(path, phrase("there is no key of this name"), _nearest_key(path), at_key=True)
    if isinstance(path[-1], int):
        return Slip(path, *WANTED_ITEM[str(path[-2])])
    if path[0] == "words" and len(path) > 1:
        return Slip(path[:2], *WANTED_ITEM["words"])
    if path[0] == "translated" and len(path) > 1:
        return _not_said(path)
    message, hint = WANTED[keys]
    if kind in ("literal_error", "value_error") and isinstance(value, str):
        choices = _CHOICES.get(str(path[0]), languages())
        near = get_close_matches(value.casefold(), choices, n=1, cutoff=0.4)
        hint = f'{path[0]} = "{near[0]}"' if near else hint
    return Slip(path, message, hint)


def _not_said(path: Path) -> Slip:
    """Tell what is wrong in the words of another language: the language itself, or one of its texts."""
    if path[1] in languages():
        message, hint = WANTED[("translated",)] if len(path) == 2 else WANTED_ITEM["translated"]
        if path[-1] in LessonShape.model_fields:
            # A line at the end of a file belongs to the last table of it.
            hint = phrase("put {key} before the first line in [brackets]", key=path[-1])
        return Slip(path[:3], message, hint)
    near = get_close_matches(str(path[1]), languages(), n=1, cutoff=0.0)
    message = phrase("pages are written in {languages}", languages=", ".join(languages()))
    return Slip(path[:2], message, f"[translated.{near[0]}]", at_key=True)


INNER: Mapping[str | int, type[BaseModel]] = {"paper": Measures, "items": ItemShape}
"""Tables in a lesson, by the key that holds them; those of practice are told apart by how deep they lie."""


def _nearest_key(path: Path) -> Said:
    inner = INNER.get(path[0], KeptShape if len(path) > 2 else PracticeShape)
    known = list((LessonShape if len(path) == 1 else inner).model_fields)
    key = str(path[-1]).casefold()
    near = get_close_matches(key, known, n=1, cutoff=0.6)
    if NEAR_KEYS.get(key) in known:
        return NEAR_KEYS[key]
    return near[0] if near else phrase("the keys are {known}", known=", ".join(known))
