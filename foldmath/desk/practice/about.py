"""What a lesson says of itself: takes its text and a form, gives the text with title, class and paper so."""

from typing import Any

from werkzeug.datastructures import MultiDict

from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.lesson.editing import with_list, with_value
from foldmath.words.languages import DEFAULT

MULTILINE_FROM = 2
"""Of so many notes each has a line of its own in the file."""


def about_the_lesson(opened: OpenLesson, form: MultiDict[str, str]) -> str:
    """Set title, grade, paper, how it lies, language, standards and notes; what is usual is left unsaid.

    Raises:
        CannotEdit: the text is no TOML.
    """
    asked: dict[str, Any] = {"title": form.get("title", "").strip(), "grade": form.get("grade", 0, int)}
    if form.get("paper"):
        # A paper given by its measures is not among the names, and stays.
        asked |= {"paper": form["paper"], "orientation": form.get("orientation")}
    language = form.get("language")
    asked |= {"language": None if language == DEFAULT else language}
    asked |= {"standards": form.get("standards") or None}
    text, table = opened.text, opened.table
    for key, value in asked.items():
        # What is said already is left as it was written, with its comment.
        if table.get(key) != value and not (key == "language" and table.get(key) == language):
            text = with_value(text, (key,), value)
    return _with_notes(text, [line.strip() for line in form.get("notes", "").splitlines() if line.strip()])


def _with_notes(text: str, notes: list[str]) -> str:
    if len(notes) >= MULTILINE_FROM:
        return with_list(text, ("notes",), notes)
    return with_value(text, ("notes",), notes[0] if notes else None)
