"""Beginning a lesson: takes a title and the paper, or another lesson's text, gives the text of a new one."""

from difflib import get_close_matches
from pathlib import Path

import tomlkit

from foldmath.errors import Unreadable
from foldmath.lesson.editing import with_value
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.text import lesson_text
from foldmath.paper.steps import Edge, FoldEdge, Open
from foldmath.phrases import phrase
from foldmath.words.languages import DEFAULT, usual_paper
from foldmath.words.steps import step_sentence

USUAL_GRADE, USUAL_PAPER, USUAL_ORIENTATION = 5, "letter", "landscape"

FIRST_STEPS = (FoldEdge(Edge.LEFT, Edge.RIGHT.position), Open())
"""Of a lesson begun in a terminal, where a lesson without a step could not be made."""


def empty_sheet(
    title: str,
    grade: int = USUAL_GRADE,
    paper: str = USUAL_PAPER,
    orientation: str = USUAL_ORIENTATION,
    steps: tuple[str, ...] = (),
    language: str = DEFAULT,
) -> str:
    """Write a lesson that begins with a sheet, and with so many steps; a usual language is left unsaid."""
    document = tomlkit.document()
    document.add("title", tomlkit.item(title))
    document.add("grade", tomlkit.item(grade))
    document.add("paper", tomlkit.item(paper))
    document.add("orientation", tomlkit.item(orientation))
    if language != DEFAULT:
        document.add("language", tomlkit.item(language))
    sentences = tomlkit.array()
    sentences.extend(steps)
    document.add("steps", sentences.multiline(bool(steps)))
    return tomlkit.dumps(document)


def first_fold(title: str, language: str) -> str:
    """Write a lesson with a single fold, in a language and on the paper that is usual with it."""
    steps = tuple(step_sentence(step, language) for step in FIRST_STEPS)
    return empty_sheet(title, paper=usual_paper(language), steps=steps, language=language)


def like_another(title: str, text: str) -> str:
    """Write a lesson like another, under a title of its own.

    Raises:
        CannotEdit: the other is no TOML.
    """
    return with_value(text, ("title",), title)


def text_of(name: str) -> str:
    """Give the text of a lesson: of a built-in one by its name, or of a file.

    Raises:
        Unreadable: there is none; offers those that come with the program.
        LessonRefused: it is no text.
    """
    known = built_in_lessons()
    path = known.get(name, Path(name))
    if not name.strip() or not path.exists():
        near = get_close_matches(name, known, n=1) or list(known)
        message = phrase("--from {name}: there is no lesson of this name, and no such file", name=name)
        raise Unreadable(message, phrase("--from {names}", names=", ".join(near)))
    return lesson_text(path, str(path))
