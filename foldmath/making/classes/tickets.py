"""Exit tickets of a class: takes pupils, gives a file for each tongue that they read, alike for every class.

A ticket has a line for the name, and is the same for all who read it: so one page is printed as often as
needed, with one to spare for whoever comes new.
"""

from collections import Counter
from collections.abc import Iterable, Mapping

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.languages import said_in
from foldmath.making.order import ClassOrder
from foldmath.making.papers import EXIT_TICKET, Masters
from foldmath.making.parts import finished, worksheets
from foldmath.words.languages import of_one_tongue, spoken, tongue


class Tickets:
    """The exit tickets of a lesson in other tongues than the teacher's, each laid out once for all classes.

    Args:
        proved: the lesson, as its teacher reads it.
        order: how pages look.
        picture_process: draws pictures.
    """

    def __init__(self, proved: ProvedLesson, order: ClassOrder, picture_process: PictureProcess) -> None:
        self._proved, self._order, self._picture_process = proved, order, picture_process
        self._made: dict[str, bytes] = {}

    def shared_out(self, pupils: Iterable[Pupil]) -> Mapping[str, int]:
        """Tell how many pupils have the ticket of which file, the teacher's own first."""
        counts = Counter(map(self._file_of, pupils))
        return {file: counts[file] for file in sorted(counts, key=lambda file: (file != EXIT_TICKET, file))}

    def others(self, pupils: Iterable[Pupil]) -> Mapping[str, bytes]:
        """Give the files that some pupils read in place of the teacher's own."""
        wanted = {self._file_of(pupil): pupil.language for pupil in pupils}
        for file in wanted:
            if file != EXIT_TICKET and file not in self._made:
                self._made[file] = self._printed(tongue(wanted[file]))
        return {file: self._made[file] for file in sorted(wanted) if file != EXIT_TICKET}

    def _file_of(self, pupil: Pupil) -> str:
        if not pupil.language or of_one_tongue(pupil.language, self._proved.lesson.language):
            return EXIT_TICKET
        return EXIT_TICKET.replace(".pdf", f"-{tongue(pupil.language)}.pdf")

    def _printed(self, language: str) -> bytes:
        said = said_in(self._proved, spoken(language))
        masters = Masters(said, self._order.page_paper, self._order.look)
        printed = finished([worksheets(said, masters.ticket_paper(""), self._picture_process)])
        return printed[EXIT_TICKET]
