"""Reading a lesson file: takes a path, gives a ``Lesson``, or every slip in the file at once."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from hashlib import sha256
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.controls import has_controls, printable
from foldmath.lesson.files.positions import Path, Position, Positions, find_positions
from foldmath.lesson.files.shape import LessonShape, shape_of
from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.text import lesson_text
from foldmath.lesson.files.toml_reading import toml_table
from foldmath.lesson.grammar.refusals import HalfWithoutSide, StepUnreadable
from foldmath.lesson.grammar.sentences import written_step
from foldmath.lesson.kinds import reach, stories_for
from foldmath.lesson.labels import plain
from foldmath.lesson.lesson import Lesson, PracticeRules, WrittenItem, WrittenProduct, standards_named
from foldmath.lesson.lying import PaperSoFar, as_it_lies
from foldmath.lesson.own_items import own_items
from foldmath.lesson.practice_rules import practice_rules
from foldmath.lesson.translated import translation_slips
from foldmath.paper.lengths import NumberRefused, read_length
from foldmath.paper.sizes import PaperRefused, PaperSize, paper_measured, paper_named
from foldmath.paper.state import Sheet
from foldmath.phrases import Said, phrase
from foldmath.statements.products import parse_product
from foldmath.statements.refusals import SentenceRefused
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK, Stock, StockRefused, stock_named, usual_stock
from foldmath.words.steps import WrittenStep

if TYPE_CHECKING:
    from foldmath.lesson.booklet.plan import BookletPlan

LONGEST_WORDS = 80
"""Offending words are shown up to this many characters."""


def read_lesson(path: str | FilePath) -> Lesson:
    """Read and check a lesson file; nothing is folded yet.

    Raises:
        LessonRefused: it cannot be used; carries every ``Problem`` found, in the order of the file.
    """
    file = str(path)
    text = lesson_text(FilePath(path), file)
    return replace(lesson_in(text, file), digest=sha256(text.encode()).hexdigest())


def lesson_in(text: str, file: str) -> Lesson:
    """Read and check the text of a lesson file, its lines ended by a single newline character.

    Raises:
        LessonRefused: as ``read_lesson``.
    """
    table = toml_table(text, file)
    checking = _Checking(file, find_positions(text))
    shape = checking.shape(table)
    paper = checking.paper(table.get("paper"))
    practice, rules, items = checking.practised(table)
    lying = as_it_lies(table, paper) if paper else None
    stock = checking.stock(table.get("stock"), paper)
    steps, booklet = checking.folded(table, lying[0] if lying else None, practice)
    if checking.problems or shape is None or lying is None or paper is None:
        raise LessonRefused(checking.problems)
    return Lesson(
        file=file,
        title=shape.title.strip(),
        grade=shape.grade,
        paper=paper.name,
        sheet=lying[0],
        orientation=lying[1],
        steps=steps,
        practice=practice,
        vocabulary=_stripped(shape.vocabulary),
        notes=_stripped([shape.notes] if isinstance(shape.notes, str) else shape.notes),
        language=shape.language,
        standards=shape.followed,
        rules=rules,
        items=items,
        names=tuple(map(plain, shape.names)),
        words={word.strip(): home.strip() for word, home in shape.words.items()},
        home_language=shape.home_language,
        translated=shape.translated,
        booklet=booklet,
        stock=stock,
        earlier=_stripped(shape.earlier),
    )


def _stripped(texts: Iterable[str]) -> tuple[str, ...]:
    return tuple(text.strip() for text in texts)


class _Checking:
    """The checks of one file under way, and the problems found so far."""

    def __init__(self, file: str, positions: Positions) -> None:
        self.file = file
        self.positions = positions
        self.problems: list[Problem] = []
        self.refused: set[Path] = set()

    def _report(self, path: Path, position: Position | None, message: Said, words: str, hint: Said) -> None:
        self.refused.add(path)
        line, column = (position.line, position.column) if position else (0, 0)
        shown = printable(words.split("\n", 1)[0])[:LONGEST_WORDS]
        self.problems.append(
            Problem(file=self.file, line=line, column=column, message=message, words=shown, hint=hint)
        )

    def shape(self, table: dict[str, Any]) -> LessonShape | None:
        """Check the keys, and all strings; None if there are slips in the keys, which are reported."""
        shape = shape_of(table)
        for slip in shape if isinstance(shape, list) else ():
            self.refuse(slip)
        self.refuse_controls(table)
        return shape if isinstance(shape, LessonShape) else None

    def refuse(self, slip: Slip) -> None:
        """Report what does not fit, inside a string, or at its key, its value, or what is around it."""
        if slip.column:
            self._refuse_inside(slip.path, slip.column, slip.message, slip.words, slip.hint)
            return
        key = self.positions.keys.get(slip.path) if slip.at_key else None
        position = key or self.positions.nearest(slip.path[:-1] if slip.at_key else slip.path)
        missing = slip.at_key and slip.path not in self.positions.keys
        words = "" if missing or position is None else position.first_line
        self._report(slip.path, position, slip.message, words, slip.hint)

    def refuse_controls(self, value: Any, path: Path = ()) -> None:
        """Report every string with characters that a terminal or a printer would obey."""
        if isinstance(value, dict | list):
            for step, inner in value.items() if isinstance(value, dict) else enumerate(value):
                self.refuse_controls(inner, (*path, step))
        elif isinstance(value, str) and path not in self.refused and has_controls(value):
            self._refuse_value(
                path,
                phrase("this has a character that cannot be printed"),
                phrase("leave that character out"),
            )

    def _refuse_value(self, path: Path, message: Said, hint: Said) -> None:
        position = self.positions.nearest(path)
        self._report(path, position, message, position.first_line if position else "", hint)

    def _refuse_inside(self, path: Path, column: int, message: Said, words: str, hint: Said) -> None:
        """Report words inside a quoted string."""
        position = self.positions.values.get(path)
        inside = position.inside(column - 1) if position else self.positions.nearest(path)
        self._report(path, inside, message, words, hint)

    def paper(self, value: Any) -> PaperSize | None:
        """Find the paper, by its name or its measures."""
        if ("paper",) in self.refused:
            return None
        if isinstance(value, str):
            try:
                return paper_named(value)
            except PaperRefused as error:
                self._refuse_value(("paper",), error.message, error.hint)
        elif isinstance(value, dict):
            return self._measured(value)
        return None

    def stock(self, value: Any, paper: PaperSize | None) -> Stock:
        """Find the kind of paper; the usual one of a sheet if nothing is said or nothing is found."""
        if isinstance(value, str) and ("stock",) not in self.refused:
            try:
                return stock_named(value)
            except StockRefused as error:
                self._refuse_value(("stock",), error.message, error.hint)
        return usual_stock(paper.name, paper.unit) if paper else DEFAULT_STOCK

    def _measured(self, table: dict[str, Any]) -> PaperSize | None:
        sides = []
        for key in ("width", "height"):
            path = ("paper", key)
            if path in self.refused or not isinstance(table.get(key), str):
                return None
            try:
                sides.append(read_length(table[key]))
            except NumberRefused as error:
                self._refuse_value(path, error.message, error.hint)
        if len(sides) < 2:
            return None
        try:
            return paper_measured(*sides)
        except PaperRefused as error:
            self._refuse_value(("paper",), error.message, error.hint)
        return None

    def _sentences(self, key: Path, value: Any) -> Iterator[tuple[Path, str]]:
        """Give those strings of a list that are fit to be read."""
        if key in self.refused or not isinstance(value, list):
            return
        for index, text in enumerate(value):
            if isinstance(text, str) and (*key, index) not in self.refused:
                yield (*key, index), text

    def _begin(self, path: Path) -> tuple[int, int]:
        position = self.positions.values.get(path)
        inside = position.inside(0) if position else None
        return (inside.line, inside.column) if inside else (0, 0)

    def folded(
        self, table: dict[str, Any], sheet: Sheet | None, practice: tuple[WrittenProduct, ...]
    ) -> "tuple[tuple[WrittenStep, ...], BookletPlan | None]":
        """Read the steps, and the booklet that they make if there is one."""
        steps = self.steps(table.get("steps"), sheet)
        return steps, self.booklet(table, sheet, steps, practice)

    def steps(self, value: Any, lying: Sheet | None) -> tuple[WrittenStep, ...]:
        """Read every step; of a fold in half, the paper as it lies says which side is the longer."""
        steps: list[WrittenStep] = []
        lies = None if lying is None else PaperSoFar(lying, steps)
        for path, text in self._sentences(("steps",), value):
            try:
                steps.append(written_step(text, *self._begin(path), lies))
            except HalfWithoutSide:  # The paper is not known, which is told already.
                continue
            except StepUnreadable as error:
                self._refuse_inside(path, error.column, error.message, error.words, error.hint)
        return tuple(steps)

    def _products(self, value: Any) -> tuple[WrittenProduct, ...]:
        """Read every product, in a list or among rules."""
        products = []
        key: Path = ("practice",)
        if isinstance(value, dict):
            key, value = ("practice", "products"), value.get("products")
        for path, text in self._sentences(key, value):
            try:
                products.append(WrittenProduct(text.strip(), parse_product(text), *self._begin(path)))
            except SentenceRefused as error:
                self._refuse_inside(path, error.column, error.message, error.words.rstrip("…"), error.hint)
        return tuple(products)

    def practised(
        self, table: dict[str, Any]
    ) -> tuple[tuple[WrittenProduct, ...], PracticeRules, tuple[WrittenItem, ...]]:
        """Read what is practised: products, the rules by which more is chosen, and a teacher's own items."""
        products = self._products(table.get("practice"))
        rules, slips = practice_rules(table, len(products))
        items, further = own_items(table.get("items"))
        self._refuse_further((*slips, *further, *translation_slips(table, items)))
        return products, rules, items

    def _refuse_further(self, slips: Iterable[Slip]) -> None:
        """Report what does not fit, unless its shape is refused already."""
        for slip in slips:
            if slip.path not in self.refused:
                self.refuse(slip)

    def _sound(self, key: str) -> bool:
        return not any(path[0] == key for path in self.refused)

    def booklet(
        self,
        table: dict[str, Any],
        sheet: Sheet | None,
        steps: tuple[WrittenStep, ...],
        practice: tuple[WrittenProduct, ...],
    ) -> "BookletPlan | None":
        """Read and plan the booklet, if there is one; None too if it or what it stands on has slips."""
        asked = table.get("booklet")
        if not isinstance(asked, dict):
            return None
        # Imported here, since most lessons have no booklet.
        from foldmath.lesson.booklet.reading import Setting, read_booklet

        grade, followed = table.get("grade"), standards_named(table.get("standards"), table.get("language"))
        setting = Setting(
            file=self.file,
            grade=grade,
            sheet=sheet,
            steps=steps if self._sound("steps") else None,
            products=tuple(one.product for one in practice) if self._sound("practice") else None,
            stage=reach(grade, followed) if isinstance(grade, int) else None,
            stories=stories_for(grade, followed) if isinstance(grade, int) else (),
            positions=self.positions,
        )
        try:
            read = read_booklet(asked, setting)
        except LessonRefused as refused:
            self.problems += refused.problems
            return None
        self._refuse_further(read.slips)
        if read.source:
            there = _Checking(read.source.file, read.source.positions)
            for slip in read.slips_there:
                there.refuse(slip)
            there.refuse_controls({"booklet": {"pages": read.source.pages}})
            self.problems += there.problems
        return read.plan
