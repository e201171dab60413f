"""The shape of a lesson file: its keys and what each may hold, and plain words for what does not fit."""

from difflib import get_close_matches
from typing import Annotated, Any, Literal, NamedTuple

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints, ValidationError

from foldmath.lesson.files.positions import Path
from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS
from foldmath.phrases import Said, phrase
from foldmath.statements.standards import Followed
from foldmath.words.languages import DEFAULT, languages

FIRST_GRADE, LAST_GRADE = 3, 6
MOST_STEPS = 200
MOST_PRODUCTS = 24
MOST_WORDS = 40
MOST_ITEMS = 24
LARGEST_SEED = 999_999_999

_Line = Annotated[str, StringConstraints(min_length=1, max_length=80, pattern=r"\S")]
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


class PracticeShape(BaseModel):
    """Rules by which items are chosen, with or without products of the lesson's own."""

    model_config = ConfigDict(strict=True, extra="forbid")
    denominators: Annotated[list[_Denominator], Field(min_length=1, max_length=MOST_PLEATS)] | None = None
    count: Annotated[int, Field(ge=1, le=MOST_ITEMS)] | None = None
    seed: Annotated[int, Field(ge=0, le=LARGEST_SEED)] | None = None
    kinds: Annotated[list[_Line], Field(min_length=1, max_length=MOST_ITEMS)] | None = None
    products: Annotated[list[_Sentence], Field(max_length=MOST_PRODUCTS)] = []


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
    booklet: dict[str, Any] | None = None
    earlier: Annotated[list[_Line], Field(max_length=MOST_WORDS)] = []

    @property
    def followed(self) -> Followed | None:
        """Whose standards the file says that it follows."""
        return Followed(self.standards) if self.standards else None


class Slip(NamedTuple):
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
    at_key: bool = False
    column: int = 0
    words: str = ""


WANTED = {
    ("title",): (
        phrase("the title must be one line of words in quotes, at most 80 characters"),
        'title = "Seed trays"',
    ),
    ("grade",): (
        phrase(
            "the grade must be a whole number from {first} to {last}",
            first=FIRST_GRADE,
            last=LAST_GRADE,
        ),
        "grade = 5",
    ),
    ("paper",): (phrase("the paper must be a name in quotes, or a width and a height"), 'paper = "letter"'),
    ("paper", "width"): (phrase("the width must be a number and its unit in quotes"), 'width = "24 in"'),
    ("paper", "height"): (phrase("the height must be a number and its unit in quotes"), 'height = "32 in"'),
    ("stock",): (phrase("the stock must be a kind of paper in quotes"), 'stock = "copy 20 lb"'),
    ("orientation",): (phrase("the orientation must be landscape or portrait"), 'orientation = "landscape"'),
    ("earlier",): (
        phrase("the earlier lessons must be a list of files in quotes"),
        'earlier = ["seed-trays.toml"]',
    ),
    ("steps",): (
        phrase("the steps must be a list of 1 to {most} sentences in quotes", most=MOST_STEPS),
        'steps = ["fold left edge to right edge"]',
    ),
    ("practice",): (
        phrase(
            "the practice must be a list of at most {most} products in quotes, or rules in braces",
            most=MOST_PRODUCTS,
        ),
        'practice = ["2/3 × 4/5"]',
    ),
    ("practice", "denominators"): (
        phrase(
            "the denominators must be a list of whole numbers from {fewest} to {most}",
            fewest=FEWEST_PLEATS,
            most=MOST_PLEATS,
        ),
        "denominators = [2, 3, 4]",
    ),
    ("practice", "count"): (
        phrase("the count must be a whole number from 1 to {most}", most=MOST_ITEMS),
        "count = 7",
    ),
    ("practice", "seed"): (
        phrase("the seed must be a whole number from 0 to {largest}", largest=LARGEST_SEED),
        "seed = 7",
    ),
    ("practice", "kinds"): (
        phrase("the kinds must be a list of kinds of item in quotes"),
        'kinds = ["missing-factor", "same-size"]',
    ),
    ("practice", "products"): (
        phrase(
            "the products must be a list of at most {most} products in quotes",
            most=MOST_PRODUCTS,
        ),
        'products = ["2/3 × 4/5"]',
    ),
    ("vocabulary",): (
        phrase("the vocabulary must be a list of at most {most} words in quotes", most=MOST_WORDS),
        'vocabulary = ["panel"]',
    ),
    ("notes",): (
        phrase("the notes must be words in quotes, or a list of them"),
        'notes = "Fold once before the lesson."',
    ),
    ("words",): (
        phrase(
            "the words must be a table of at most {most} words, each with its home word in quotes",
            most=MOST_WORDS,
        ),
        'words = { panel = "Feld" }',
    ),
    ("home_language",): (
        phrase("the home language must be its short name in quotes, as browsers know it"),
        'home_language = "uk"',
    ),
    ("booklet",): (phrase("the booklet must be a table with its form and its pages"), "[booklet]"),
    ("standards",): (phrase("the standards must be ccss, england or none"), 'standards = "none"'),
    ("language",): (
        phrase("the language must be one of {languages}", languages=", ".join(languages())),
        'language = "en-US"',
    ),
}
"""What each key wants, and an example that works."""

WANTED_ITEM = {
    "steps": (phrase("a step must be a sentence in quotes"), "fold left edge to right edge"),
    "practice": (phrase("a product must be written in quotes"), '"2/3 × 4/5"'),
    "products": (phrase("a product must be written in quotes"), '"2/3 × 4/5"'),
    "denominators": (
        phrase(
            "a denominator here must be a whole number from {fewest} to {most}",
            fewest=FEWEST_PLEATS,
            most=MOST_PLEATS,
        ),
        "4",
    ),
    "kinds": (phrase("a kind of item must be a name in quotes"), '"missing-factor"'),
    "vocabulary": (phrase("a word must be in quotes, at most 80 characters"), '"panel"'),
    "words": (phrase("a home word must be in quotes, at most 80 characters"), 'panel = "Feld"'),
    "notes": (
        phrase("a note must be words in quotes, at most 600 characters"),
        '"Fold once before the lesson."',
    ),
}
"""What each thing in a list must be, and an example that works."""

NEAR_KEYS = {
    "name": "title",
    "size": "paper",
    "sheet": "paper",
    "thickness": "stock",
    "grammage": "stock",
    "year": "grade",
    "level": "grade",
    "folds": "steps",
    "products": "practice",
    "exercises": "practice",
    "terms": "vocabulary",
    "translations": "words",
    "comment": "notes",
    "locale": "language",
    "curriculum": "standards",
    "book": "booklet",
    "parts": "denominators",
    "fractions": "denominators",
    "number": "count",
    "items": "count",
    "length": "count",
    "random": "seed",
    "types": "kinds",
    "include": "kinds",
}
"""Keys that people might choose, and that are spelt unlike the right ones."""

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
    if kind == "missing":
        key = path[-1]
        return Slip(path, phrase("the key {key} is missing", key=key), WANTED[path][1], at_key=True)  # type: ignore[index]
    if kind == "extra_forbidden":
        return Slip(path, phrase("there is no key of this name"), _nearest_key(path), at_key=True)
    if isinstance(path[-1], int):
        return Slip(path, *WANTED_ITEM[str(path[-2])])
    if path[0] == "words" and len(path) > 1:
        return Slip(path[:2], *WANTED_ITEM["words"])
    message, hint = WANTED[path]  # type: ignore[index]
    if kind in ("literal_error", "value_error") and isinstance(value, str):
        choices = _CHOICES.get(str(path[0]), languages())
        near = get_close_matches(value.casefold(), choices, n=1, cutoff=0.4)
        hint = f'{path[0]} = "{near[0]}"' if near else hint
    return Slip(path, message, hint)


def _nearest_key(path: Path) -> Said:
    inner = PracticeShape if path[0] == "practice" else Measures
    known = list((LessonShape if len(path) == 1 else inner).model_fields)
    key = str(path[-1]).casefold()
    near = get_close_matches(key, known, n=1, cutoff=0.6)
    if NEAR_KEYS.get(key) in known:
        return NEAR_KEYS[key]
    return near[0] if near else phrase("the keys are {known}", known=", ".join(known))
