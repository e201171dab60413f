"""Choosing for a class: takes pupils, gives their worksheets and key rows as they go to the crew."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Scene
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.classes.pressing import Batch, Key, PupilSheet
from foldmath.making.languages import said_in
from foldmath.making.order import ClassOrder
from foldmath.making.papers import TEACHERS_PLAN, Masters
from foldmath.pages.pdf.imprinted import Imprinted
from foldmath.pages.sharing import Printing
from foldmath.pages.templating import render
from foldmath.practice.choosing import on_every_page
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import ItemKind
from foldmath.teachers_plan.after import grid_rules
from foldmath.teachers_plan.copies import OwnPages
from foldmath.teachers_plan.plan_steps import step_rows
from foldmath.words.languages import read_beside
from foldmath.worksheets.class_key import ClassKey, PupilsListed
from foldmath.worksheets.folding_part import FoldingPart
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.pupil_pages import PupilPages
from foldmath.worksheets.worksheet import Worksheet, with_items


class Chooser:
    """Chooses the numbers of any pupils of a lesson, and has the pictures that they need drawn, each once.

    Args:
        masters: of the lesson.
        picture_process: draws the pictures.
    """

    def __init__(self, masters: Masters, picture_process: PictureProcess) -> None:
        self._masters, self._picture_process = masters, picture_process
        self._order = ClassOrder(masters.page_paper, masters.look)
        self._editions = {masters.proved.lesson.language: (masters.proved, masters.folding)}
        self._drawn: dict[str, Recording] = {}
        self._always = self._pictures(folding_pictures(masters.proved, masters.folding, masters.look))
        self._pages = PupilPages(masters.look, tuple(self._always))
        self._key = _key_of(masters)

    @property
    def proved(self) -> ProvedLesson:
        """The lesson, as its teacher reads it."""
        return self._masters.proved

    def batch(self, pupils: tuple[Pupil, ...]) -> Batch:
        """Prepare the pages of a few pupils, and their rows of the key."""
        sheets = tuple(self._sheet(pupil) for pupil in pupils)
        scenes: dict[str, Scene] = {}
        for sheet in sheets:
            scenes |= item_pictures(sheet, self._order.look)
        language = self.proved.lesson.language
        return Batch(
            worksheets=tuple(self._pupil_sheet(sheet) for sheet in sheets),
            pictures=self._always | self._pictures(scenes),
            key_rows=self._key_rows(sheets),
            language=language,
            order=self._order,
        )

    def _key_rows(self, sheets: Iterable[Worksheet]) -> str:
        language, hers = self.proved.lesson.language, [*map(self._in_key, sheets)]
        return render("worksheets/class_key_rows.html", language, sheets=hers, key=self._key)

    def key(self, rows: tuple[Imprinted, ...], listed: PupilsListed) -> Key:
        """Prepare the key of pupils, or a part of it, whose rows are printed already."""
        masters, lesson = self._masters, self.proved.lesson
        told = {"ticket": masters.ticket, "folding": masters.folding, "key": self._key, "listed": listed}
        begins = render("worksheets/class_key.html", lesson.language, lesson=lesson, **told)
        return Key(begins=begins, rows=rows, title=lesson.title, language=lesson.language, order=self._order)

    def plan(self, own: OwnPages) -> tuple[Printing, list[Recording]]:
        """Prepare the teacher's plan for a class, with the pictures that it places."""
        paper, language = self._masters.plan_paper(own), self.proved.lesson.language
        printing = Printing(
            written=paper.documents[TEACHERS_PLAN],
            scenes=paper.pictures,
            title=paper.title(TEACHERS_PLAN, language),
            language=language,
            look=paper.looks[TEACHERS_PLAN],
        )
        return printing, [*self._pictures(paper.pictures).values()]

    def _edition(self, language: str) -> tuple[ProvedLesson, FoldingPart]:
        """Give the lesson as it is said to pupils of a language; empty for the lesson's own."""
        language = read_beside(language, self.proved.lesson.language)
        if language not in self._editions:
            said = said_in(self.proved, language)
            self._editions[language] = said, replace(self._masters.folding, lesson=said.lesson)
        return self._editions[language]

    def _sheet(self, pupil: Pupil) -> Worksheet:
        proved, folding = self._edition(pupil.language)
        return with_items(
            folding,
            proved,
            pupil.level,
            SIZES[self._order.look].models,
            seed=pupil_seed(self.proved.lesson, pupil),
            pupil=pupil.on_paper,
        )

    def _in_key(self, sheet: Worksheet) -> Worksheet:
        """Give a worksheet with the teacher's own items as she reads them, whatever a pupil reads."""
        if sheet.lesson.language == self.proved.lesson.language:
            return sheet
        hers = iter(self.proved.lesson.items_of(sheet.level))
        items = (
            replace(placed, item=next(hers)) if placed.item.kind is ItemKind.OWN else placed
            for placed in sheet.items
        )
        return replace(sheet, items=tuple(items))

    def _pupil_sheet(self, sheet: Worksheet) -> PupilSheet:
        lesson = sheet.lesson
        return PupilSheet(self._pages.parts(sheet), lesson.title, sheet.code, lesson.language)

    def _pictures(self, scenes: Mapping[str, Scene]) -> dict[str, Recording]:
        """Give pictures, those drawn that were not before."""
        missing = [name for name in scenes if name not in self._drawn]
        if missing:
            recordings = self._picture_process.recordings([scenes[name] for name in missing]).result()
            self._drawn.update(zip(missing, recordings, strict=True))
        return {name: self._drawn[name] for name in scenes}


def _key_of(masters: Masters) -> ClassKey:
    """Say what the key of a class warns of, by the codes that its plan has."""
    proved, core = masters.proved, masters.core
    own = tuple(written.item for written in proved.lesson.items)
    shared = tuple(on_every_page(proved.lesson))
    return ClassKey(grid_rules(core, step_rows(proved, core)), shared, own, masters.ticket)
