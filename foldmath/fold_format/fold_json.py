"""The text of a FOLD file: takes a path, gives the frame that is a crease pattern, or says why there is none.

Source:
    FOLD 1.2, doc/spec.md in github.com/edemaine/fold, sections on file, frame and multiple frames.
"""

import json
from pathlib import Path
from typing import Any, NoReturn

from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.files.opening import Hindrance, Unread, file_bytes
from foldmath.phrases import phrase

LARGEST_FILE = 32 * 1024 * 1024
"""Bytes; the largest sheet of this program with all its folded states has about a third of this."""

MOST_FRAMES = 1_000
LONGEST_INHERITANCE = 50

Frame = dict[str, Any]

NO_FOLD = phrase('a FOLD file begins like {{"file_spec": 1.2, "vertices_coords": [[0, 0], …')


def pattern_frame(path: Path) -> Frame:
    """Read a FOLD file and give its first crease pattern, with what that frame inherits.

    Raises:
        PatternRefused: it cannot be read, is no JSON object, or holds no crease pattern.
    """
    whole = _object(_text(path))
    _require_version(whole.get("file_spec", 1))
    frames = whole.get("file_frames", [])
    if not isinstance(frames, list) or not all(isinstance(frame, dict) for frame in frames):
        raise PatternRefused(phrase("is not a list of frames"), NO_FOLD, at="file_frames")
    if len(frames) > MOST_FRAMES:
        raise PatternRefused(
            phrase("there are more than {most} frames", most=MOST_FRAMES),
            phrase("save the crease pattern by itself"),
            at="file_frames",
        )
    frames = [whole, *frames]
    for number in range(len(frames)):
        frame = _inherited(frames, number)
        if "creasePattern" in _classes(frame):
            return frame
    classes = _classes(whole)
    if classes:
        raise PatternRefused(
            phrase("no frame is a crease pattern; the first is {classes}", classes=", ".join(classes)[:80]),
            phrase('save the opened sheet, with "frame_classes": ["creasePattern"]'),
            at="frame_classes",
        )
    return whole


def _text(path: Path) -> str:
    try:
        content = file_bytes(path, LARGEST_FILE)
    except Unread as unread:
        hints = {
            Hindrance.MISSING: phrase("check the name of the file"),
            Hindrance.TOO_LARGE: phrase("save the crease pattern by itself"),
        }
        other = unread.hint or phrase("name a crease pattern that ends in .fold")
        raise PatternRefused(unread.message, hints.get(unread.hindrance, other)) from None
    try:
        return content.removeprefix(b"\xef\xbb\xbf").decode("utf-8")
    except UnicodeDecodeError:
        raise PatternRefused(phrase("is not UTF-8 text"), NO_FOLD) from None


def _object(text: str) -> Frame:
    try:
        whole = json.loads(text, parse_constant=_no_number)
    except RecursionError:
        raise PatternRefused(phrase("is nested too deeply to be a FOLD file"), NO_FOLD) from None
    except json.JSONDecodeError as error:
        spot = phrase("line {line}, column {column}", line=error.lineno, column=error.colno)
        raise PatternRefused(phrase("is not JSON, as a FOLD file is"), NO_FOLD, at=spot) from None
    except ValueError:
        raise PatternRefused(phrase("holds a number with thousands of digits"), NO_FOLD) from None
    if not isinstance(whole, dict):
        raise PatternRefused(phrase("is JSON, but not an object in braces"), NO_FOLD)
    return whole


def _no_number(word: str) -> NoReturn:
    raise PatternRefused(
        phrase("holds {word}, which is no number", word=word),
        phrase("write every coordinate as a plain number"),
    )


def _require_version(spec: Any) -> None:
    if isinstance(spec, bool) or not isinstance(spec, int | float) or not 1 <= spec < 2:
        raise PatternRefused(
            phrase("is {version}, and versions 1 to 1.2 of FOLD are read here", version=str(spec)[:20]),
            phrase("save it as FOLD 1.2 or earlier"),
            at="file_spec",
        )


def _classes(frame: Frame) -> list[str]:
    return _words(frame, "frame_classes")


def attributes(frame: Frame) -> list[str]:
    """Give the attributes of a frame."""
    return _words(frame, "frame_attributes")


def _words(frame: Frame, key: str) -> list[str]:
    words = frame.get(key, [])
    if not isinstance(words, list) or not all(isinstance(word, str) for word in words):
        raise PatternRefused(phrase("is not a list of words"), f'"{key}": ["creasePattern"]', at=key)
    return words


def _inherited(frames: list[Frame], number: int) -> Frame:
    """Give a frame with what it inherits from its parent, and so on."""
    chain, at = [frames[number]], f"file_frames[{number - 1}]" if number else ""
    while chain[-1].get("frame_inherit") is True:
        parent = chain[-1].get("frame_parent", 0)
        if isinstance(parent, bool) or not isinstance(parent, int) or not 0 <= parent < len(frames):
            raise PatternRefused(
                phrase("frame {number} names a parent that is not there", number=number),
                phrase("name a frame by its number"),
                at=at,
            )
        chain.append(frames[parent])
        if len(chain) > LONGEST_INHERITANCE:
            raise PatternRefused(
                phrase("frame {number} inherits in a circle", number=number),
                phrase("let it inherit from frame 0"),
                at=at,
            )
    gathered: Frame = {}
    for frame in reversed(chain):
        gathered |= frame
    return gathered
