"""What was done to the steps of a lesson, so that it can be undone and done again, after a reload too.

It lies in the user's own state folder, a file for each lesson that nobody else may read.
"""

import json
import os
from collections.abc import Sequence
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import Any

from platformdirs import user_state_path

from foldmath.making.sets.writing import put_for_owner
from foldmath.values import frozen

MOST_ACTS = 200
"""That can be undone; older ones are forgotten."""

MOST_BYTES = 16 * 1024 * 1024
"""Of a history that is read: 200 acts on 200 steps of 200 letters, each list twice."""

Steps = tuple[str, ...]


@frozen
class StepList:
    """The steps that a lesson had at a time.

    Args:
        steps: their sentences.
        written: the list as it stood in the file, with its comments; empty where there was none.
    """

    steps: Steps
    written: str = ""


@frozen
class History:
    """The lists of steps that a lesson had, oldest first.

    Args:
        lists: at least the present one.
        now: which of them is the present one.
    """

    lists: tuple[StepList, ...]
    now: int

    @property
    def before(self) -> StepList | None:
        """The steps before the last act; None if there was none."""
        return self.lists[self.now - 1] if self.now else None

    @property
    def after(self) -> StepList | None:
        """The steps after the act that was undone last; None if none was."""
        return self.lists[self.now + 1] if self.now + 1 < len(self.lists) else None

    def with_act(self, steps: Sequence[str], written: str = "") -> "History":
        """Give the history after an act; what was undone before it is forgotten.

        Where only comments of the list are others, no act was done.
        """
        if tuple(steps) == self.lists[self.now].steps:
            present = StepList(tuple(steps), written)
            return History((*self.lists[: self.now], present, *self.lists[self.now + 1 :]), self.now)
        lists = (*self.lists[: self.now + 1], StepList(tuple(steps), written))[-MOST_ACTS - 1 :]
        return History(lists, len(lists) - 1)

    def undone(self) -> "History":
        """Give the history after the last act is undone."""
        return History(self.lists, max(0, self.now - 1))

    def redone(self) -> "History":
        """Give the history after the act undone last is done again."""
        return History(self.lists, min(len(self.lists) - 1, self.now + 1))


def history_of(lesson: Path, steps: Sequence[str], written: str = "") -> History:
    """Read the history of a lesson; what changed its steps outside counts as one more act.

    Args:
        lesson: its file.
        steps: those that it has now.
        written: the list of them as it stands there.
    """
    try:
        kept = _kept(_file(lesson))
    except (OSError, ValueError, RecursionError):
        kept = None
    return kept.with_act(steps, written) if kept else History((StepList(tuple(steps), written),), 0)


def keep_history(lesson: Path, history: History) -> None:
    """Keep the history of a lesson; where that cannot be, only undoing after a reload is lost."""
    file = _file(lesson)
    lists = [{"steps": each.steps, "written": each.written} for each in history.lists]
    with suppress(OSError):
        file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        put_for_owner(file, json.dumps({"now": history.now, "lists": lists}, ensure_ascii=False).encode())


def _file(lesson: Path) -> Path:
    name = sha256(os.fsencode(lesson.resolve())).hexdigest()
    return user_state_path("foldmath", appauthor=False) / "desk" / f"{name}.json"


def _kept(file: Path) -> History | None:
    with file.open("rb") as stream:
        content = stream.read(MOST_BYTES + 1)
    if len(content) > MOST_BYTES:
        return None
    return _history_in(json.loads(content))


def _history_in(kept: Any) -> History | None:
    """Give the history in what was kept; None if it is none, whoever wrote it."""
    match kept:
        case {"now": int(now), "lists": list(lists)} if 0 <= now < len(lists):
            found = [_list_in(each) for each in lists[: MOST_ACTS + 1]]
            if None not in found:
                return History(tuple(filter(None, found)), min(now, MOST_ACTS))
    return None


def _list_in(kept: Any) -> StepList | None:
    match kept:
        case {"steps": list(steps), "written": str(written)} if all(isinstance(text, str) for text in steps):
            return StepList(tuple(steps), written)
    return None
