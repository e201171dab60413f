"""What was done to the steps of a lesson, so that it can be undone and done again, after a reload too.

It lies in the user's own state folder, a file for each lesson that nobody else may read.
"""

import json
import os
import secrets
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from platformdirs import user_state_path

MOST_ACTS = 200
"""That can be undone; older ones are forgotten."""

MOST_BYTES = 8 * 1024 * 1024
"""Of a history that is read: 200 acts on 200 steps of 200 letters, each list written once."""

Steps = tuple[str, ...]


@dataclass(frozen=True)
class History:
    """The lists of steps that a lesson had, oldest first.

    Args:
        lists: at least the present one.
        now: which of them is the present one.
    """

    lists: tuple[Steps, ...]
    now: int

    @property
    def before(self) -> Steps | None:
        """The steps before the last act; None if there was none."""
        return self.lists[self.now - 1] if self.now else None

    @property
    def after(self) -> Steps | None:
        """The steps after the act that was undone last; None if none was."""
        return self.lists[self.now + 1] if self.now + 1 < len(self.lists) else None

    def with_act(self, steps: Sequence[str]) -> "History":
        """Give the history after an act; what was undone before it is forgotten."""
        if tuple(steps) == self.lists[self.now]:
            return self
        lists = (*self.lists[: self.now + 1], tuple(steps))[-MOST_ACTS - 1 :]
        return History(lists, len(lists) - 1)

    def undone(self) -> "History":
        """Give the history after the last act is undone."""
        return History(self.lists, max(0, self.now - 1))

    def redone(self) -> "History":
        """Give the history after the act undone last is done again."""
        return History(self.lists, min(len(self.lists) - 1, self.now + 1))


def history_of(lesson: Path, steps: Sequence[str]) -> History:
    """Read the history of a lesson; what changed its steps outside counts as one more act.

    Args:
        lesson: its file.
        steps: those that it has now.
    """
    try:
        kept = _kept(_file(lesson))
    except (OSError, ValueError, RecursionError):
        kept = None
    return kept.with_act(steps) if kept else History((tuple(steps),), 0)


def keep_history(lesson: Path, history: History) -> None:
    """Keep the history of a lesson; where that cannot be, only undoing after a reload is lost."""
    file = _file(lesson)
    passing = file.with_name(f".{file.name}.{secrets.token_hex(8)}")
    with suppress(OSError):
        file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle = os.open(passing, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(handle, "w", encoding="utf-8") as stream:
            json.dump({"now": history.now, "lists": history.lists}, stream, ensure_ascii=False)
        os.replace(passing, file)


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
            if all(isinstance(each, list) and all(isinstance(text, str) for text in each) for each in lists):
                return History(tuple(map(tuple, lists))[: MOST_ACTS + 1], min(now, MOST_ACTS))
    return None
