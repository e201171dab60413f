"""A proved lesson as a FOLD file: takes the lesson, gives the text of the file.

Source:
    FOLD 1.2, doc/spec.md in github.com/edemaine/fold, commit 824f9fa.
"""

import json
from typing import Any

from foldmath import __version__
from foldmath.fold_format.folded_frames import FramedState, frames_of
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.steps import Shade

SPEC = 1.2


def fold_file(proved: ProvedLesson) -> dict[str, Any]:
    """Give the crease pattern and every folded state of a lesson as plain data in the FOLD format.

    The top level is the crease pattern, printed side up, its bottom left corner at (0, 0), in the sheet's
    unit. Each frame is the paper after one step; shading moves no paper and has none.
    """
    framed = [
        FramedState(written.text, state)
        for written, state in zip(proved.lesson.steps, proved.states[1:], strict=True)
        if not isinstance(written.step, Shade)
    ]
    pattern, *frames = frames_of(framed, proved.states[-1])
    return {
        "file_spec": SPEC,
        "file_creator": f"foldmath {__version__}",
        "file_title": proved.lesson.title,
        "file_classes": ["singleModel", "diagrams"],
        **pattern,
        "file_frames": frames,
    }


def fold_text(proved: ProvedLesson) -> str:
    """Give a lesson as the text of a FOLD file, one property a line."""
    return _object(fold_file(proved), "") + "\n"


def _object(properties: dict[str, Any], margin: str) -> str:
    inner = margin + " "
    lines = [f"{inner}{_plain(key)}: {_value(value, inner)}" for key, value in properties.items()]
    return "{\n" + ",\n".join(lines) + f"\n{margin}}}"


def _value(value: Any, margin: str) -> str:
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return "[" + ", ".join(_object(item, margin) for item in value) + "]"
    return _plain(value)


def _plain(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(", ", ": "))
