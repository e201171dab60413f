"""The order in which a line is seen: takes text as it is read, gives stretches from left to right.

Source: the Unicode Standard, Annex 9, as python-bidi carries it out.
"""

import unicodedata
from itertools import groupby

from foldmath.pages.lettering.signs import ISOLATES, is_attached, runs_left

RIGHT_TO_LEFT = ("HEBREW", "ARABIC", "SYRIAC", "THAANA", "NKO")
"""Whose marks say by their names that they stand on letters read from right to left."""


def in_visual_order(text: str) -> list[tuple[str, bool]]:
    """Part a line of a page that is read from left to right.

    Returns:
        Stretches from left to right, the signs of each as they are read, and whether that is leftwards.
    """
    if not any(map(runs_left, text)):
        return [(without_isolates(text), False)]
    from bidi import get_display

    seen = _mirrored(without_isolates(str(get_display(text, base_dir="L"))))
    leftward = _leftward(seen)
    signs = iter(seen)
    found = []
    for left, same in groupby(leftward):
        stretch = "".join(next(signs) for _ in same)
        found.append((stretch[::-1] if left else stretch, left))
    return found


def without_isolates(text: str) -> str:
    """Take out the signs that keep a stretch apart; they have no ink."""
    for sign in ISOLATES:
        text = text.replace(sign, "")
    return text


def isolated(text: str) -> str:
    """Keep a text apart from the line that it stands in, as HTML's ``bdi`` does, where it needs that."""
    return text.join(ISOLATES) if any(map(runs_left, text)) else text


def _mirrored(seen: str) -> str:
    """Turn brackets round that close before they open, since they stand among letters read leftwards."""
    from bidi.mirror import MIRRORED

    signs, open_at = list(seen), list[int]()
    for place, sign in enumerate(seen):
        other = MIRRORED.get(sign)
        if other is None:
            continue
        if not open_at or seen[open_at[-1]] != other:
            open_at.append(place)
        elif unicodedata.category(seen[begin := open_at.pop()]) in ("Pe", "Pf"):
            signs[begin], signs[place] = sign, other
    return "".join(signs)


def _leftward(seen: str) -> list[bool]:
    """Tell of each sign, in the order seen, whether its stretch is read from right to left.

    A mark that stands on a letter read leftwards is seen before it, to the left.
    """
    found: list[bool] = []
    for sign in reversed(seen):
        if is_attached(sign):
            own = unicodedata.name(sign, "").startswith(RIGHT_TO_LEFT)
            found.append(own or bool(found and found[-1]))
        else:
            found.append(runs_left(sign))
    return found[::-1]
