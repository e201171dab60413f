"""After a class is marked: takes the answers that were kept, lays the next lesson on the shelf."""

from datetime import date

from foldmath.desk.classes.class_lists import keep_class, kept_answers
from foldmath.desk.marking.classes import asked_grid
from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.desk.visits.desk import Desk
from foldmath.making.marks import MarkOrder, following
from foldmath.marking.reading.sheet import written_csv


def take_next(desk: Desk, opened: OpenLesson) -> str:
    """Lay the lesson that follows from a class's answers on the shelf; give its name.

    The class is kept once more, with the levels that its answers ask for, named for that lesson too.

    Raises:
        NoClass: no answers of this class were kept.
        FoldmathError: the answers no longer fit the lesson, or the folder cannot be written.
    """
    called, grid = asked_grid(desk.folder, opened)
    answers = kept_answers(desk.folder, opened.name)[called]
    order = MarkOrder(answers=answers, out=desk.folder, day=date.today(), class_name=called)
    coming, listed = following(opened.path, order, grid.pupils)
    name = desk.shelf.lay(f"{opened.name}-next", coming.text)
    keep_class(desk.folder, f"{called}-{name}", written_csv(listed))
    return name
