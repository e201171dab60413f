"""A lesson as it was written: read, checked and placed, with nothing folded yet."""

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, Any

from foldmath.lesson.labels import plain
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Step
from foldmath.statements.items import ItemKind, Level, OwnItem
from foldmath.statements.products import Product
from foldmath.statements.standards import Followed
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK, Stock
from foldmath.values import frozen
from foldmath.words.languages import DEFAULT, languages, of_one_tongue
from foldmath.words.steps import WrittenStep

if TYPE_CHECKING:
    # A lesson without a booklet needs nothing of booklets.
    from foldmath.lesson.booklet.plan import BookletPlan


@frozen
class WrittenProduct:
    """A product to practise, as it is written and as it is meant, and where it begins in the file."""

    text: str
    product: Product
    line: int
    column: int


@frozen
class WrittenItem:
    """An item in a teacher's own words, and the levels on whose pages it stands."""

    item: OwnItem
    levels: tuple[Level, ...]

    def stands_beside(self, other: "WrittenItem") -> bool:
        """Tell whether another asks the same on one page with it."""
        return self.item.asks == other.item.asks and not set(self.levels).isdisjoint(other.levels)


@frozen
class Kept:
    """An item that stays on the page of a level, by what it asks."""

    level: Level
    asks: str


def kept_in(given: Any) -> tuple[Kept, ...]:
    """Give the items that a lesson file keeps, by level, as far as it names them rightly."""
    lists = [(level, given.get(level.value)) for level in Level] if isinstance(given, dict) else []
    named = [(level, asks) for level, asked in lists if isinstance(asked, list) for asks in asked]
    return tuple(Kept(level, asks) for level, asks in named if isinstance(asks, str))


@frozen(kw_only=True)
class PracticeRules:
    """What a lesson asks of the items that are chosen for it; whatever it leaves out is chosen by grade.

    Args:
        denominators: those that numbers are chosen with; empty for those of the grade.
        count: how many items the core page has; None for the usual number.
        seed: which of the many choices; None for one that follows from title and steps.
        kinds: those that are chosen, in this order; empty for those of the grade and level.
        without: items that others were taken for, by what they ask.
        keep: those that stay, whatever else is chosen.
    """

    denominators: tuple[int, ...] = ()
    count: int | None = None
    seed: int | None = None
    kinds: tuple[ItemKind, ...] = ()
    without: frozenset[str] = frozenset()
    keep: tuple[Kept, ...] = field(default=(), repr=False)


USUAL_STANDARDS = {"en-US": Followed.CCSS, "en-GB": Followed.ENGLAND}

YEARS_AHEAD = {Followed.CCSS: 0, Followed.ENGLAND: 1, Followed.NONE: 0}
"""How many more years a class of one age has been at school, as each counts them: grade 5 and year 6 are ten
to eleven years old (common knowledge, no source)."""


def usual_standards(language: str) -> Followed:
    """Give the standards that lessons in a language follow where they name none."""
    return USUAL_STANDARDS.get(language, Followed.NONE)


def standards_named(named: Any, language: Any) -> Followed:
    """Give the standards that a lesson file names, or else those that are usual in its language.

    Args:
        named: as the file gives it, right or not.
        language: likewise; None where it says none.
    """
    known = [followed for followed in Followed if followed.value == named]
    return known[0] if known else usual_standards(str(language or DEFAULT))


@frozen(kw_only=True)
class Authored:
    """What the author of a lesson wrote in her own words, whatever language its pages speak.

    Args:
        title, vocabulary, notes, items, words: as in ``Lesson``.
    """

    title: str
    vocabulary: tuple[str, ...]
    notes: tuple[str, ...]
    items: tuple[WrittenItem, ...]
    words: Mapping[str, str]


@frozen(kw_only=True)
class Lesson:
    """One lesson file, read and checked.

    Args:
        file: the path as the user gave it.
        title: what stands at the top of each page.
        grade: from 3 to 6.
        paper: the name of the paper, or its measures.
        sheet: the sheet as it lies.
        orientation: ``landscape`` or ``portrait``, as ``sheet`` lies.
        steps: at least one.
        practice: the products to shade and solve; may be empty.
        vocabulary: the lesson's own words; may be empty.
        trade_words: those of them that every language has, where the pages speak another than the author.
        notes: what the teacher is told; may be empty.
        language: of the pages, as in BCP 47.
        standards: whose are followed, if the file says so.
        told_standards: whose a plan names, where its language has others than those followed; else None.
        rules: by which further items are chosen.
        items: in the teacher's own words; may be empty.
        names: that stories borrow, in turn; may be empty.
        words: words of the lesson in a home language, by the word; may be empty.
        home_language: which that is, as in BCP 47; empty if the file does not say.
        written_in: the language of its author's own words, where the pages speak another; else empty.
        authored: these words, where the pages speak another language; else None.
        translated: her words in other languages, by the language and by the word; may be empty.
        told: those of the texts here that are in the pages' language, though the author wrote in another.
        booklet: what the booklet of the lesson holds, and how it is folded; None without one.
        booklet_left_out: the paper that its pages need in large print, where they are left out; else None.
        stock: the kind of paper, for its thickness.
        earlier: lesson files of weeks before, from which the next lesson takes a few products again.
        digest: SHA-256 of the text, in hexadecimal figures; empty where it was not read from a file.
    """

    file: str
    title: str
    grade: int
    paper: str
    sheet: Sheet
    orientation: str
    steps: tuple[WrittenStep, ...]
    practice: tuple[WrittenProduct, ...] = ()
    vocabulary: tuple[str, ...] = ()
    trade_words: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    language: str = DEFAULT
    standards: Followed | None = None
    told_standards: Followed | None = None
    rules: PracticeRules = PracticeRules()
    items: tuple[WrittenItem, ...] = ()
    names: tuple[str, ...] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    home_language: str = ""
    written_in: str = ""
    authored: Authored | None = None
    translated: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    told: frozenset[str] = frozenset()
    booklet: "BookletPlan | None" = None
    booklet_left_out: str | None = None
    stock: Stock = DEFAULT_STOCK
    earlier: tuple[str, ...] = ()
    digest: str = field(default="", compare=False)

    @property
    def as_written(self) -> Authored:
        """What its author wrote: numbers and codes follow from it, in every language."""
        return self.authored or Authored(
            title=self.title,
            vocabulary=self.vocabulary,
            notes=self.notes,
            items=self.items,
            words=self.words,
        )

    @property
    def own_words(self) -> Mapping[str, str]:
        """The author's words in the language of the pages, so far as the file has them; spaces are plain."""
        said = self.translated.get(self.words_in, {}) if self.written_in else {}
        return {plain(text): plain(words) for text, words in said.items()}

    @property
    def words_in(self) -> str:
        """The language of the table that pages take these words from: theirs, or else one of their tongue."""
        near = (language for language in self.translated if of_one_tongue(language, self.language))
        return self.language if self.language in self.translated else next(near, self.language)

    @property
    def author_writes(self) -> str:
        """The language of the author's own words: the file's, or the first for which it has no others.

        Who sets another language for a file that has its words in it already wants those, and her own are in
        none of the languages that the file translates them into.
        """
        if self.written_in or self.language not in self.translated:
            return self.written_in or self.language
        return next((one for one in languages() if one not in self.translated), self.language)

    @property
    def followed(self) -> Followed:
        """Whose standards are followed: what the file says, or what is usual in its language."""
        return self.standards or usual_standards(self.language)

    @property
    def named_standards(self) -> Followed:
        """Whose standards a plan names: those that teachers of its language have, for the same pages."""
        return self.told_standards or self.followed

    @property
    def named_grade(self) -> int:
        """The grade, or year, that pupils of one age have under the standards that are named."""
        return self.grade + YEARS_AHEAD[self.named_standards] - YEARS_AHEAD[self.followed]

    def items_of(self, level: Level) -> tuple[OwnItem, ...]:
        """Give the items in the teacher's own words that stand on the pages of a level, in her order."""
        return tuple(written.item for written in self.items if level in written.levels)

    def has(self, kind: type[Step]) -> bool:
        """Tell whether a step is of a kind."""
        return any(isinstance(written.step, kind) for written in self.steps)
