"""Words that pages cannot print: takes a lesson, and refuses it where the fonts have no right letters."""

from collections.abc import Iterator
from pathlib import Path

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.positions import Path as KeyPath
from foldmath.lesson.files.positions import Positions, find_positions
from foldmath.lesson.files.text import lesson_text
from foldmath.lesson.lesson import Lesson
from foldmath.phrases import Said, phrase
from foldmath.words.page_texts import page_text

MESSAGE = phrase("the pages cannot print these words")


def refuse_unprintable(lesson: Lesson, text: str | None = None) -> None:
    """Check that every word of a lesson prints right, those of its booklet among them.

    Args:
        lesson: that is to be printed.
        text: of its file, where that is not written yet; None to read it where it lies.

    Raises:
        LessonRefused: some do not; says where each stands.
    """
    problems = [*_in_lesson(lesson, text), *_in_booklet(lesson)]
    if problems:
        raise LessonRefused(problems)


def _in_lesson(lesson: Lesson, text: str | None) -> list[Problem]:
    wrong = [(path, words, remedy) for path, words in _words(lesson) if (remedy := _remedy(words))]
    if not wrong:
        return []
    found = find_positions(lesson_text(Path(lesson.file), lesson.file) if text is None else text)
    return [_problem(lesson.file, found, path, words, hint) for path, words, hint in wrong]


def _in_booklet(lesson: Lesson) -> Iterator[Problem]:
    if lesson.booklet is None:
        return
    # Imported here, since most lessons have no booklet.
    from foldmath.lesson.booklet.own_words import own_words

    for page in lesson.booklet.pages:
        for said in own_words(page):
            words = page_text(said, lesson.language, lesson.own_words)
            if remedy := _remedy(words):
                yield Problem(
                    file=lesson.file,
                    line=page.line,
                    column=page.column,
                    message=MESSAGE,
                    words=words,
                    hint=remedy,
                )


def _remedy(words: str) -> "Said | None":
    """Say what would have words printed; None for those that are printed as it is."""
    if words.strip() and words.isascii() and words.isprintable():
        # Letters, figures and signs of ASCII are in the fonts of every page, which need not be read to know.
        return None
    from foldmath.pages.names import REMEDIES
    from foldmath.pages.pdf.glyphs import lack_of

    lack = lack_of(words)
    return REMEDIES[lack] if lack else None


def _words(lesson: Lesson) -> Iterator[tuple[KeyPath, str]]:
    yield ("title",), lesson.title
    yield from ((("vocabulary", number), word) for number, word in enumerate(lesson.vocabulary))
    yield from ((("names", number), name) for number, name in enumerate(lesson.names))
    for number, written in enumerate(lesson.items):
        yield ("items", number, "text"), str(written.item.text)
        if written.item.unit.parts:
            yield ("items", number, "unit"), str(written.item.unit)
    yield from ((("notes", number), note) for number, note in enumerate(lesson.notes))
    yield from ((("words", word), f"{word} {home}") for word, home in lesson.words.items())


def _problem(file: str, found: Positions, path: KeyPath, words: str, hint: Said) -> Problem:
    position = found.nearest(path)
    line, column = (position.line, position.column) if position else (0, 0)
    return Problem(file=file, line=line, column=column, message=MESSAGE, words=words, hint=hint)
