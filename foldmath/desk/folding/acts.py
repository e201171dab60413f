"""What is done to the list of steps: takes what a page asks for, gives the list after it, or why not."""

from collections.abc import Mapping
from typing import Any

from foldmath.desk.folding.history import History
from foldmath.desk.folding.paper_now import Line, PaperNow, done_from
from foldmath.errors import FoldmathError
from foldmath.lesson.files.wanted import MOST_STEPS
from foldmath.phrases import Said, phrase


class NotDone(FoldmathError):
    """An act that leaves the list of steps as it is.

    Args:
        line: where a step is no step that can be done: with its slip; None where the act itself is none.
    """

    def __init__(self, message: Said, hint: Said = "", line: Line | None = None) -> None:
        super().__init__(message, hint)
        self.line = line


def steps_after(act: Mapping[str, Any], now: PaperNow, history: History) -> list[str]:
    """Give the list of steps after an act.

    Args:
        act: ``do`` is ``add``, ``change``, ``move``, ``remove``, ``undo`` or ``redo``; ``text`` is a step,
            ``at`` and ``to`` are places in the list, counted from 0.
        now: the lesson before it.
        history: what was done before.

    Raises:
        NotDone: it asks for no act, or a step that it adds or changes cannot be done in its place.
    """
    texts = now.texts
    match act:
        case {"do": "add", "text": str(text)}:
            return _tried(now, now.done, [*texts[: now.done], text.strip(), *texts[now.done :]])
        case {"do": "change", "at": int(at), "text": str(text)} if 0 <= at < len(texts):
            return _tried(now, at, [*texts[:at], text.strip(), *texts[at + 1 :]])
        case {"do": "move", "at": int(at), "to": int(to)} if 0 <= min(at, to) <= max(at, to) < len(texts):
            others = texts[:at] + texts[at + 1 :]
            return [*others[:to], texts[at], *others[to:]]
        case {"do": "remove", "at": int(at)} if 0 <= at < len(texts):
            return texts[:at] + texts[at + 1 :]
        case {"do": "undo"} if history.before is not None:
            return list(history.before.steps)
        case {"do": "redo"} if history.after is not None:
            return list(history.after.steps)
    raise NotDone(phrase("there is nothing here to do"), phrase("load this page again"))


def _tried(now: PaperNow, at: int, texts: list[str]) -> list[str]:
    """Give the list if the step at a place can be read, and done there unless it waits for another."""
    if len(texts) > MOST_STEPS:
        raise NotDone(phrase("a lesson has at most {most} steps", most=MOST_STEPS), phrase("leave steps out"))
    line = done_from(now.lesson, texts[: at + 1]).lines[at]
    if line.slip:
        raise NotDone(line.slip.message, line.slip.hint, line)
    return texts
