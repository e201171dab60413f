"""Handouts of a class: takes pupils, gives the files of each tongue that they read, alike for every class.

An exit ticket and a booklet have a line for the name, and are the same for all who read them: so one file is
printed as often as needed.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from foldmath.booklets.papers import BOOKLET
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.booklet import BOOKLET_FOLDING, folding_page, sheet_of_pages, with_fitting_booklet
from foldmath.making.languages import said_in
from foldmath.making.order import ClassOrder
from foldmath.making.papers import EXIT_TICKET, Masters
from foldmath.making.parts import GUIDE_SHEETS, Files, finished, guides, worksheets
from foldmath.paper.steps import Slit
from foldmath.phrases import Said, phrase
from foldmath.teachers_plan.copies import SharedOut
from foldmath.words.languages import of_one_tongue, spoken, tongue

HANDOUTS = (EXIT_TICKET, BOOKLET, BOOKLET_FOLDING, GUIDE_SHEETS)
"""What pupils of another tongue read in it; keys, plan and slides stay the teacher's. So do guide sheets,
which tell how they are printed, but where a lesson cuts: there they tell pupils how, and to take care."""


class Handouts:
    """What pupils keep of a lesson, in other tongues than the teacher's, each laid out once for all classes.

    Args:
        proved: the lesson, as its teacher reads it.
        order: how pages look.
        picture_process: draws pictures.
        hers: the files that the teacher reads herself.
        told: notes that she has already.
    """

    def __init__(
        self,
        proved: ProvedLesson,
        order: ClassOrder,
        picture_process: PictureProcess,
        *,
        hers: Iterable[str],
        told: Iterable[Said],
    ) -> None:
        self._proved, self._order, self._picture_process = proved, order, picture_process
        self._hers, self._told = frozenset(hers), frozenset(told)
        self._begun: dict[str, Files] = {}
        self._made: dict[str, Mapping[str, bytes]] = {}
        self._notes: dict[str, tuple[Said, ...]] = {}

    def begin(self, pupils: Iterable[Pupil]) -> None:
        """Begin the handouts of tongues that no class before had."""
        for language in self._tongues(pupils):
            if language not in self._begun:
                self._begun[language] = self._begin_edition(language)

    def shared_out(self, pupils: Iterable[Pupil]) -> SharedOut:
        """Tell how many pupils have which file, of those that are begun; the teacher's own first."""
        read = Counter(map(self._tongue, pupils))
        files = {handout: self._counted(handout, read) for handout in HANDOUTS}
        return SharedOut(files[EXIT_TICKET], files[BOOKLET], files[BOOKLET_FOLDING])

    def others(self, pupils: Iterable[Pupil]) -> Mapping[str, bytes]:
        """Give the files that some pupils read in place of the teacher's own."""
        wanted = self._tongues(pupils)
        for language in wanted:
            if language not in self._made:
                self._made[language] = finished([self._begun[language]])
        return {name: content for language in wanted for name, content in self._made[language].items()}

    def notes(self, pupils: Iterable[Pupil]) -> Iterator[Said]:
        """Tell what is to be known of the booklets of other tongues, and not of the teacher's own."""
        for language in self._tongues(pupils):
            for note in self._notes[language]:
                yield phrase("{place}: {message}", place=_file(BOOKLET, language), message=note)

    def _tongues(self, pupils: Iterable[Pupil]) -> list[str]:
        """Give the tongues that pupils read and the teacher does not."""
        return sorted({*map(self._tongue, pupils)} - {""})

    def _tongue(self, pupil: Pupil) -> str:
        """Give the tongue that a pupil reads; empty for the teacher's own."""
        if not pupil.language or of_one_tongue(pupil.language, self._proved.lesson.language):
            return ""
        return tongue(pupil.language)

    def _counted(self, handout: str, read: Mapping[str, int]) -> Mapping[str, int]:
        """Share one handout out, where it is there: large print may not fit on one tongue's booklet."""
        files = {_file(handout, language): language for language in sorted(read)}
        return {
            file: read[language]
            for file, language in files.items()
            if file in (self._begun[language] if language else self._hers)
        }

    def _begin_edition(self, language: str) -> Files:
        pages, look = self._order.page_paper, self._order.look
        said = said_in(self._proved, spoken(language))
        proved, left_out = with_fitting_booklet(said, pages, look)
        sheet, notes = sheet_of_pages(proved, pages, look, self._picture_process)
        ticket = worksheets(proved, Masters(proved, pages, look).ticket_paper(""), self._picture_process)
        folding = folding_page(proved, pages, look, self._picture_process)
        cut = guides(proved, pages, look) if proved.lesson.has(Slit) else {}
        begun = {**ticket, **folding, **sheet, **cut}
        self._notes[language] = tuple(note for note in (*left_out, *notes) if note not in self._told)
        return {_file(handout, language): begun[handout] for handout in HANDOUTS if handout in begun}


def _file(handout: str, language: str) -> str:
    """Name a handout in a tongue; empty for the teacher's own."""
    return handout.replace(".pdf", f"-{language}.pdf") if language else handout
