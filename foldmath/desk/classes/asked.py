"""The class that a form asks for: takes its fields, gives the name of the class and its pupils."""

from pathlib import Path

from flask import request

from foldmath.desk.classes.class_lists import as_list, keep_class, kept_classes
from foldmath.desk.classes.typed_lists import typed_pupils
from foldmath.desk.shelf.shelf import file_name
from foldmath.errors import FoldmathError
from foldmath.lesson.numbered_pupils import called_in, pupils_without_roster
from foldmath.lesson.roster import Pupil, roster_in
from foldmath.phrases import phrase
from foldmath.values import frozen

NAMELESS = "class"


class NoClass(FoldmathError):
    """A form that says of nobody, or twice, who is in the class."""


@frozen
class AskedClass:
    """A class, and what it is called where files are named after it."""

    name: str
    pupils: tuple[Pupil, ...]


def class_name(nameless: str = NAMELESS) -> str:
    """Read what the class is called, as part of the name of a file; ``nameless`` if nothing is said."""
    name = request.form.get("class", "").strip()
    return file_name(name) if name else nameless


def asked_class(folder: Path, language: str) -> AskedClass:
    """Read whose class it is: a kept one, an uploaded list, typed names, or so many pupils without names.

    Args:
        folder: of her own files; a class that she wants to be kept is kept there.
        language: in which pupils without names are called by their numbers.

    Raises:
        NoClass: nobody is named, or one thing says otherwise than another.
        RosterRefused: the list cannot be used; carries every ``Problem`` found in it.
    """
    found = _named_class(folder)
    count = request.form.get("count", 0, int)
    if found is None and not count:
        raise NoClass(phrase("nobody is in this class yet"), phrase("write one student on each line"))
    if found is None:
        pupils = called_in(pupils_without_roster(count), language)
        return AskedClass(class_name(f"pupils-{count}"), pupils)
    if count and count != len(found.pupils):
        message = phrase(
            "the list has {named} students, and the number of students is {count}",
            named=len(found.pupils),
            count=count,
        )
        raise NoClass(message, phrase("take the number out, or name them all"))
    return found


def _named_class(folder: Path) -> AskedClass | None:
    """Read a class with names; None where there is none."""
    kept = kept_classes(folder).get(request.form.get("kept", ""))
    uploaded = request.files.get("list")
    content = uploaded.read() if uploaded else b""
    typed = request.form.get("pupils", "")
    if [kept is not None, bool(content), bool(typed.strip())].count(True) > 1:
        message = phrase("this says twice who is in the class")
        raise NoClass(message, phrase("leave one: the class that you kept, the names, or the file"))
    if kept is not None:
        return AskedClass(kept.stem, roster_in(kept.read_bytes(), kept.name))
    if content:
        pupils = roster_in(content, class_name())
    elif typed.strip():
        pupils = typed_pupils(typed, class_name())
        content = as_list(pupils)
    else:
        return None
    if request.form.get("keep"):
        keep_class(folder, class_name(), content)
    return AskedClass(class_name(), pupils)
