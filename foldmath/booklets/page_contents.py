"""Telling: takes a planned page, gives what its contents say as HTML, and the pictures that it places."""

from collections.abc import Iterable
from dataclasses import replace
from functools import partial, singledispatchmethod

from markupsafe import Markup

from foldmath.booklets.booklet_styles import Columns, PageRoom
from foldmath.booklets.drawings import (
    Drawing,
    board_drawings,
    creased_sheet,
    fold_drawing,
    line_drawings,
    model_drawings,
    opened_drawing,
)
from foldmath.lesson.booklet.plan import (
    Content,
    CreasesPicture,
    FoldPicture,
    Frame,
    Game,
    GamePage,
    Heading,
    Lines,
    ModelPicture,
    NumberLine,
    PlannedPage,
    Prompt,
    RecordFold,
    RecordProduct,
    SheetPicture,
    Story,
    Table,
    Title,
)
from foldmath.lesson.booklet.race import Race
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.markup.mathml import boxed
from foldmath.pages.templating import render
from foldmath.paper.steps import Axis
from foldmath.phrases import Said
from foldmath.practice.naming import with_name
from foldmath.statements.composing import equation
from foldmath.statements.expressions import Figures
from foldmath.statements.ratios import fraction
from foldmath.values import frozen
from foldmath.words.page_texts import page_text
from foldmath.words.stories import story_words
from foldmath.worksheets.fold_rows import FoldRow
from foldmath.worksheets.folding_part import FoldingPart

PANELS_BESIDE_MM, SHEET_BESIDE_MM = 78.0, 108.0
"""On narrower pages "panels" and "of the sheet" stand below their boxes."""


@frozen(kw_only=True)
class WrittenPage:
    """What one page says.

    Args:
        parts: the HTML of each of its contents.
        drawings: the pictures that they place.
        tables: the words of its tables, column by column.
        cover: whether it begins with the title.
    """

    parts: tuple[str, ...]
    drawings: tuple[Drawing, ...]
    tables: tuple[Columns, ...]
    cover: bool


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
    parts = tuple(telling.html(_told(content, proved.lesson)) for content in page.contents)
    cover = bool(page.contents) and isinstance(page.contents[0], Title)
    return WrittenPage(
        parts=parts,
        drawings=tuple(telling.drawings),
        tables=tuple(telling.tables),
        cover=cover,
    )


def _told(content: Content, lesson: Lesson) -> Content:
    """Say the texts of one content, those that come with the program in the language of the pages."""
    match content:
        case Title(text) | Heading(text) | Prompt(text):
            return replace(content, text=page_text(text, lesson.language, lesson.own_words))
        case Frame(caption):
            return replace(content, caption=page_text(caption, lesson.language, lesson.own_words))
        case Lines(_, answer):
            return replace(content, answer=page_text(answer, lesson.language, lesson.own_words))
        case Table(columns, rows, answers):
            return Table(
                _cells(columns, lesson),
                tuple(_cells(row, lesson) for row in rows),
                tuple(_cells(row, lesson) for row in answers),
            )
        case _:
            return content


def _cells(cells: Iterable[Said], lesson: Lesson) -> tuple[str, ...]:
    return tuple(page_text(cell, lesson.language, lesson.own_words) for cell in cells)


def broken_boxes(figures: Figures, language: str) -> Markup:
    """Put boxes for the numbers of a sentence; a line may end before a sign, as pages are narrow."""
    return boxed(figures, gap=" ", language=language)


class _PageWriter:
    """Fills the template of each content, and gathers the drawings and tables of a page."""

    def __init__(self, number: int, proved: ProvedLesson, folding: FoldingPart, room: PageRoom) -> None:
        self.number, self.proved, self.folding, self.room = number, proved, folding, room
        self.drawings: list[Drawing] = []
        self.tables: list[Columns] = []

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
        return self._pictured(fold_drawing(self._name(), self.proved.moments[content.step]))

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
    def _(self, content: CreasesPicture) -> str:  # noqa: ARG002  there is one of a lesson
        return self._pictured(opened_drawing(self._name(), creased_sheet(self.proved)))

    @html.register
    def _(self, content: SheetPicture) -> str:  # noqa: ARG002  there is one of a lesson
        return self._pictured(opened_drawing(self._name(), self.proved.states[0]))

    @html.register
    def _(self, content: NumberLine) -> str:
        blank, shown = line_drawings(self._name(), content.creases, content.names, self.room.width_mm)
        return render(
            "booklets/number_line.html",
            self.proved.lesson.language,
            along_width=content.axis is Axis.WIDTH,
            picture=self._drawn(blank),
            shown=self._drawn(shown),
        )

    @html.register
    def _(self, content: Story) -> str:
        lesson, product = self.proved.lesson, content.item.product
        language = lesson.language
        return render(
            "booklets/story.html",
            language,
            words=story_words(with_name(content.item, lesson.names, self.number), language),
            sum=equation(product.asked, product.unreduced),
            boxes=partial(broken_boxes, language=language),
        )

    @html.register
    def _(self, content: Game) -> str:
        if content.page is GamePage.RULES:
            return self._rules(content.race)
        blank, shown = board_drawings(self._name(), content.race, self.room.width_mm, self.room.height_mm)
        return render(
            "booklets/model_picture.html",
            self.proved.lesson.language,
            picture=self._drawn(blank),
            shown=self._drawn(shown),
        )

    @html.register
    def _(self, content: Table) -> str:
        rows = [
            tuple(zip(row, answers, strict=True))
            for row, answers in zip(content.rows, content.answers, strict=True)
        ]
        written = [[cell or answer for cell, answer in row] for row in rows]
        self.tables.append(tuple(zip(content.columns, *written, strict=True)))
        return render(
            "booklets/table.html",
            self.proved.lesson.language,
            content=content,
            rows=rows,
            table=len(self.tables) - 1,
        )

    def _rules(self, race: Race) -> str:
        """Tell the game; what a player has and needs after a round of 1 and of the most is the example."""
        have, _ = race.moved(race.fingers - 1, race.fingers)
        return render(
            "booklets/game_rules.html",
            self.proved.lesson.language,
            race=race,
            have=fraction(have, race.panels),
            need=fraction(race.panels - have, race.panels),
        )

    def _pictured(self, drawing: Drawing) -> str:
        return render("booklets/fold_picture.html", self.proved.lesson.language, picture=self._drawn(drawing))

    def _row(self, step: int) -> FoldRow:
        return next(row for row in self.folding.rows if row.moment == step)

    def _name(self) -> str:
        return f"page-{self.number}-{len(self.drawings)}"

    def _drawn(self, drawing: Drawing) -> str:
        self.drawings.append(drawing)
        return drawing.name
