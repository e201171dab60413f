"""Pupils' pages in parts: takes worksheets of one lesson, gives each as parts of which most come again.

The parts of a worksheet, one after the other, are what ``rendering.html`` gives as one document.
"""

from collections.abc import Iterator

from foldmath.pages.parts import Part
from foldmath.pages.templating import render
from foldmath.statements.items import Item, Level
from foldmath.worksheets.word_bank import bank
from foldmath.worksheets.worksheet import PlacedItem, Run, Worksheet

OVERLEAF = Part('<section class="soft"></section>')
"""The items begin a page, if there is much on the one before."""


class PupilPages:
    """Gives the worksheets of a class in parts, and renders each part that two of them share once.

    Args:
        look: the name of their style sheet.
        pictures: the names of all that the folding part of a worksheet places.
    """

    def __init__(self, look: str, pictures: tuple[str, ...]) -> None:
        self.look = look
        self.pictures = pictures
        self._folding: dict[tuple[str, Level], Part] = {}
        self._heads: dict[tuple[object, ...], str] = {}
        self._items: dict[tuple[str, Level, int | None, Item, bool], str] = {}
        self._closing: dict[tuple[object, ...], Part] = {}

    def parts(self, sheet: Worksheet) -> tuple[Part, ...]:
        """Give a worksheet in parts."""
        name = _rendered("name_line", sheet, key=False)
        parts = [Part(f"<section>{name}</section>"), self._folding_part(sheet), OVERLEAF]
        for place, run in enumerate(sheet.runs):
            parts += self._run(sheet, run, leads=not place)
        return (*parts, self._closing_part(sheet))

    def _folding_part(self, sheet: Worksheet) -> Part:
        """Give what no pupil has for his or her own; levels differ in it."""
        key = sheet.lesson.language, sheet.level
        if key not in self._folding:
            words = bank(sheet, sheet.lesson.language) if sheet.guided else ()
            html = _rendered("folding", sheet, bank=words, look=self.look)
            self._folding[key] = Part(html, self.pictures, common=True)
        return self._folding[key]

    def _run(self, sheet: Worksheet, run: Run, *, leads: bool) -> Iterator[Part]:
        """Give the items of a run, the first with what stands over it."""
        head = self._head(sheet, run, leads=leads) if leads or run.shades else ""
        for number, placed in run.items:
            pictures = placed.pictures
            yield Part(head + self._item(sheet, number, placed), pictures, in_columns=not run.wide)
            head = ""

    def _head(self, sheet: Worksheet, run: Run, *, leads: bool) -> str:
        key = sheet.lesson.language, sheet.level, run.shades and sheet.shades_twice, run.shades, leads
        if key not in self._heads:
            self._heads[key] = _rendered("run_head", sheet, run=run, leads=leads)
        return self._heads[key]

    def _item(self, sheet: Worksheet, number: int | None, placed: PlacedItem) -> str:
        key = sheet.lesson.language, sheet.level, number, placed.item, placed.wide
        html = self._items.get(key)
        if html is None:
            html = self._items[key] = _rendered("one_item", sheet, number=number, placed=placed)
        return html

    def _closing_part(self, sheet: Worksheet) -> Part:
        judged = sheet.judged
        # Of count and size each row has one sentence, which is much to compare; of sizes alone it has two.
        told = (judged.row, judged.true, None if judged.count else judged.claim) if judged else None
        key = sheet.lesson.language, sheet.level, told, len(sheet.items)
        if key not in self._closing:
            self._closing[key] = Part(_rendered("closing", sheet), in_columns=True)
        return self._closing[key]


def _rendered(template: str, sheet: Worksheet, **values: object) -> str:
    return render(f"worksheets/{template}.html", sheet.lesson.language, sheet=sheet, **values)
