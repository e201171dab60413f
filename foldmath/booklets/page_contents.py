"""Telling: takes a planned page, gives what its contents say as HTML, and the pictures that it places."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial, singledispatchmethod

from markupsafe import Markup

from foldmath.booklets.booklet_styles import Columns, PageRoom
from foldmath.booklets.drawings import Drawing, block_drawing, fold_drawing, model_drawings
from foldmath.drawing.place_value import BlocksRefused
from foldmath.lesson.booklet.plan import (
    AboutTheWriter,
    Content,
    FoldPicture,
    Frame,
    Heading,
    Lines,
    ModelPicture,
    NumberForm,
    NumberForms,
    PlannedPage,
    Prompt,
    RecordFold,
    RecordProduct,
    Table,
    Title,
)
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.markup.mathml import boxed
from foldmath.pages.templating import render
from foldmath.statements.expressions import Figures
from foldmath.words.number_forms import expanded_form, in_words, numeral
from foldmath.worksheets.folding_part import FoldingPart, FoldRow

PANELS_BESIDE_MM, SHEET_BESIDE_MM = 78.0, 108.0
"""On narrower pages "panels" and "of the sheet" stand below their boxes."""

LETTER_SHARE = 0.4
"""Of the ruling: the width of a child's written letter (common practice, no source)."""


@dataclass(frozen=True, kw_only=True)
class WrittenPage:
    """What one page says.

    Args:
        parts: the HTML of each of its contents.
        drawings: the pictures that they place.
        tables: the words of its tables, column by column.
        cover: whether it begins with the title.
        undrawn: whether blocks are left out, since the page is too small for them.
    """

    parts: tuple[str, ...]
    drawings: tuple[Drawing, ...]
    tables: tuple[Columns, ...]
    cover: bool
    undrawn: bool


@dataclass(frozen=True)
class PlacedForm:
    """One form of a number: its name, what it reads, the lines to write it on, and its picture's name."""

    name: str
    text: str
    lines: int
    picture: str


def written_page(
    page: PlannedPage, number: int, proved: ProvedLesson, folding: FoldingPart, room: PageRoom
) -> WrittenPage:
    """Tell a page.

    Args:
        page: as it is planned.
        number: of the page, by which its pictures are named.
        proved: the lesson.
        folding: the folding part of its worksheets.
        room: of the page.
    """
    telling = _PageWriter(number, proved, folding, room)
    parts = tuple(telling.html(content) for content in page.contents)
    cover = bool(page.contents) and isinstance(page.contents[0], Title)
    return WrittenPage(
        parts=parts,
        drawings=tuple(telling.drawings),
        tables=tuple(telling.tables),
        cover=cover,
        undrawn=telling.undrawn,
    )


def broken_boxes(figures: Figures, language: str) -> Markup:
    """Put boxes for the numbers of a sentence; a line may end before a sign, as pages are narrow."""
    return boxed(figures, gap=" ", language=language)


class _PageWriter:
    """Fills the template of each content, and gathers the drawings and tables of a page."""

    def __init__(self, number: int, proved: ProvedLesson, folding: FoldingPart, room: PageRoom) -> None:
        self.number, self.proved, self.folding, self.room = number, proved, folding, room
        self.drawings: list[Drawing] = []
        self.tables: list[Columns] = []
        self.undrawn = False

    @singledispatchmethod
    def html(self, content: Content) -> str:
        """Give the HTML of one content."""
        raise TypeError(f"not a content: {content!r}")

    @html.register
    def _(self, content: Title) -> str:
        return render("booklets/title.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: Heading) -> str:
        return render("booklets/heading.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: Prompt) -> str:
        return render("booklets/prompt.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: Lines) -> str:
        return render("booklets/lines.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: Frame) -> str:
        return render("booklets/frame.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: AboutTheWriter) -> str:
        return render("booklets/about_the_writer.html", self.proved.lesson.language, content=content)

    @html.register
    def _(self, content: RecordFold) -> str:
        return render(
            "booklets/record_fold.html",
            self.proved.lesson.language,
            content=content,
            row=self._row(content.step),
            boxes=partial(broken_boxes, language=self.proved.lesson.language),
            multiplies=self.folding.multiplies,
            beside_count=self.room.width_mm > PANELS_BESIDE_MM,
            beside_size=self.room.width_mm > SHEET_BESIDE_MM,
        )

    @html.register
    def _(self, content: RecordProduct) -> str:
        return render(
            "booklets/record_product.html",
            self.proved.lesson.language,
            product=content.product,
            boxes=partial(broken_boxes, language=self.proved.lesson.language),
        )

    @html.register
    def _(self, content: FoldPicture) -> str:
        moment = self.proved.moments[content.step]
        return render(
            "booklets/fold_picture.html",
            self.proved.lesson.language,
            picture=self._drawn(fold_drawing(self._name(), moment)),
        )

    @html.register
    def _(self, content: ModelPicture) -> str:
        blank, shown = model_drawings(self._name(), content.product)
        return render(
            "booklets/model_picture.html",
            self.proved.lesson.language,
            picture=self._drawn(blank),
            shown=self._drawn(shown),
        )

    @html.register
    def _(self, content: NumberForms) -> str:
        return render(
            "booklets/number_forms.html", self.proved.lesson.language, forms=tuple(self._forms(content))
        )

    @html.register
    def _(self, content: Table) -> str:
        columns = zip(content.columns, *content.rows, strict=True)
        self.tables.append(tuple(tuple(column) for column in columns))
        return render(
            "booklets/table.html", self.proved.lesson.language, content=content, table=len(self.tables) - 1
        )

    def _row(self, step: int) -> FoldRow:
        return next(row for row in self.folding.rows if row.moment == step)

    def _name(self) -> str:
        return f"page-{self.number}-{len(self.drawings)}"

    def _drawn(self, drawing: Drawing) -> str:
        self.drawings.append(drawing)
        return drawing.name

    def _forms(self, content: NumberForms) -> Iterator[PlacedForm]:
        """Tell the forms of a number; the first is given."""
        value = content.value
        texts = {
            NumberForm.NUMERAL: numeral(value),
            NumberForm.WORDS: in_words(value, self.proved.lesson.language),
            NumberForm.EXPANDED: expanded_form(value),
            NumberForm.BLOCKS: "",
        }
        for form in content.forms:
            picture = self._blocks(value) if form is NumberForm.BLOCKS else ""
            yield PlacedForm(form.value, texts[form], self._lines_for(texts[form]), picture)

    def _blocks(self, value: int) -> str:
        """Give the name of a number's blocks; nothing where there are none, or too many for the page."""
        try:
            return self._drawn(block_drawing(self._name(), value, self.room.width_mm))
        except BlocksRefused:
            self.undrawn = value > 0
            return ""

    def _lines_for(self, text: str) -> int:
        """Give how many lines a child needs to write a text."""
        written = len(text) * LETTER_SHARE * self.room.ruling_mm
        return int(written // self.room.width_mm) + 1
