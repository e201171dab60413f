"""Refusals: takes an error, gives what a page says of it, with its status."""

from http import HTTPStatus

from foldmath.desk.shelf.open_lesson import ChangedOutside
from foldmath.desk.shelf.shelf import NoSuchLesson
from foldmath.errors import FileRefused, FoldmathError, Problem
from foldmath.phrases import Said, phrase
from foldmath.statements.refusals import SentenceRefused
from foldmath.values import frozen


@frozen
class Refusal:
    """Why something cannot be as it is, and what to do instead.

    Args:
        message: what is wrong.
        hint: the remedy; empty if there is none.
        words: what was typed there; empty if something is missing.
    """

    message: Said
    hint: Said
    words: str = ""


def refusals_of(error: FoldmathError) -> list[Refusal]:
    """Give all that is wrong, the first of them where there are many."""
    if isinstance(error, FileRefused):
        shown = [Refusal(_heading(problem), problem.hint, problem.words) for problem in error.shown]
        return [*shown, Refusal(error.others, "")] if error.others else shown
    if isinstance(error, SentenceRefused):
        # A field of one short line needs no column: its words say where.
        return [Refusal(error.message, error.hint, error.words)]
    return [Refusal(error.heading, error.hint)]


def status_of(error: FoldmathError) -> HTTPStatus:
    """Give the status of a page that refuses something."""
    if isinstance(error, NoSuchLesson):
        return HTTPStatus.NOT_FOUND
    if isinstance(error, ChangedOutside):
        return HTTPStatus.CONFLICT
    return HTTPStatus.UNPROCESSABLE_ENTITY


def _heading(problem: Problem) -> Said:
    """Say where in the one lesson or list that is open, without the file that she never named."""
    if problem.cell:
        return phrase("cell {cell}: {message}", cell=problem.cell, message=problem.message)
    if problem.line:
        return phrase("line {line}: {message}", line=problem.line, message=problem.message)
    return problem.message
