"""Pupils' pages in parts: takes worksheets of one lesson, gives each as parts of which most come again.

The parts of a worksheet, one after the other, are what ``rendering.html`` gives as one document.
"""

from collections.abc import Callable, Iterator

from foldmath.pages.parts import Part
from foldmath.pages.templating import render
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
        self._rendered: dict[tuple[object, ...], str] = {}

    def parts(self, sheet: Worksheet) -> tuple[Part, ...]:
        """Give a worksheet in parts."""
        name = _rendered("name_line", sheet, key=False)
        parts = [Part(f"<section>{name}</section>"), self._folding_part(sheet), OVERLEAF]
        for place, run in enumerate(sheet.runs):
            parts += self._run(sheet, run, leads=not place)
        return (*parts, self._closing_part(sheet))

    def _folding_part(self, sheet: Worksheet) -> Part:
        """Give what no pupil has for his or her own; levels differ in it."""

        def values() -> dict[str, object]:
            words = bank(sheet, sheet.lesson.language) if sheet.guided else ()
            return {"bank": words, "look": self.look}

        return Part(self._once("folding", sheet, values=values), self.pictures, common=True)

    def _run(self, sheet: Worksheet, run: Run, *, leads: bool) -> Iterator[Part]:
        """Give the items of a run, the first with what stands over it."""
        head = self._head(sheet, run, leads=leads) if leads or run.shades else ""
        for number, placed in run.items:
            pictures = placed.pictures
            yield Part(head + self._item(sheet, number, placed), pictures, in_columns=not run.wide)
            head = ""

    def _head(self, sheet: Worksheet, run: Run, *, leads: bool) -> str:
        told = run.shades and sheet.shades_twice, run.shades, leads
        return self._once("run_head", sheet, *told, values=lambda: {"run": run, "leads": leads})

    def _item(self, sheet: Worksheet, number: int | None, placed: PlacedItem) -> str:
        told = number, placed.item
        return self._once("one_item", sheet, *told, values=lambda: {"number": number, "placed": placed})

    def _closing_part(self, sheet: Worksheet) -> Part:
        judged = sheet.judged
        # Of count and size each row has one sentence, which is much to compare; of sizes alone it has two.
        told = (judged.row, judged.true, None if judged.count else judged.claim) if judged else None
        return Part(self._once("closing", sheet, told, len(sheet.items)), in_columns=True)

    def _once(
        self, template: str, sheet: Worksheet, *told: object, values: Callable[[], dict[str, object]] = dict
    ) -> str:
        """Fill a template for a worksheet, or give what it was filled with for another.

        Args:
            template: of a part of a worksheet.
            sheet: gives its language and level.
            told: all else by which that part differs from page to page.
            values: gives what stands in it besides, where it is filled.
        """
        key = template, sheet.lesson.language, sheet.level, *told
        html = self._rendered.get(key)
        if html is None:
            html = self._rendered[key] = _rendered(template, sheet, **values())
        return html


def _rendered(template: str, sheet: Worksheet, **values: object) -> str:
    return render(f"worksheets/{template}.html", sheet.lesson.language, sheet=sheet, **values)
