"""Clusters: parts the runs of a paragraph where a line may end, gives what stays on one line together."""

from copy import copy
from functools import lru_cache

from foldmath.pages.markup.blocks import LineBreak, Run, Stack, Text
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.inline import (
    CLUSTERS_KEPT,
    BoxPiece,
    Bracket,
    Piece,
    Setting,
    StackPiece,
    Word,
    stacked,
    word,
)

SMALL_FIGURES = "⁰¹²³⁴⁵⁶⁷⁸⁹"


def _ends_in_figure(pieces: list[Piece]) -> bool:
    last = pieces[-1] if pieces else None
    return isinstance(last, Word) and last.text[-1:].isdigit()


def _wider(piece: Piece, by: float) -> Piece:
    wider = copy(piece)
    wider.width += by
    return wider


class Cluster:
    """Pieces that stay on one line together, and what they need; lengths in points.

    Args:
        pieces: from left to right.
        ends_line: whether a line must end after them.
    """

    def __init__(self, pieces: tuple[Piece, ...], *, ends_line: bool) -> None:
        self.pieces, self.ends_line = pieces, ends_line
        self.width = self.ascent = self.descent = 0.0
        self.fills, self.holds_box = 0, False
        for piece in pieces:
            self.width += piece.width
            self.ascent = max(self.ascent, piece.ascent)
            self.descent = max(self.descent, piece.descent)
            self.fills += isinstance(piece, BoxPiece) and piece.style.fills
            self.holds_box |= piece.holds_box

    def filled(self, by: float) -> "Cluster":
        """Give the same with each of its pieces that fill a line wider, by so many points."""
        fills = [isinstance(piece, BoxPiece) and piece.style.fills for piece in self.pieces]
        widened = (
            _wider(piece, by) if wide else piece for piece, wide in zip(self.pieces, fills, strict=True)
        )
        return Cluster(tuple(widened), ends_line=self.ends_line)


@lru_cache(maxsize=CLUSTERS_KEPT)
def clusters_of(runs: tuple[Run, ...], setting: Setting) -> tuple[Cluster, ...]:
    """Part runs at their spaces."""
    clusters: list[Cluster] = []
    pieces: list[Piece] = []

    def close(ends_line: bool = False) -> None:
        if pieces or ends_line:
            clusters.append(Cluster(_embraced(pieces), ends_line=ends_line))
            pieces.clear()

    for run in runs:
        if isinstance(run, LineBreak):
            close(ends_line=True)
        elif isinstance(run, Text):
            font = fonts.font_name(run.bold or setting.bold)
            for number, letters in enumerate(run.text.replace("\n", " ").replace("\t", " ").split(" ")):
                if number:
                    close()
                if letters:
                    pieces.append(word(letters, font, setting.size, run.language))
        elif isinstance(run, Stack):
            pieces.append(stacked(run, setting, mixed=_ends_in_figure(pieces)))
        else:
            pieces.append(BoxPiece(run, setting))
    close()
    return tuple(clusters)


def _embraced(pieces: list[Piece]) -> tuple[Piece, ...]:
    """Have brackets that touch a fraction on both sides embrace it."""
    stacks = [place for place, piece in enumerate(pieces) if isinstance(piece, StackPiece)]
    for place in reversed(stacks):
        before, after = pieces[place - 1 : place], pieces[place + 1 : place + 2]
        match [*before, pieces[place], *after]:
            case [Word() as left, StackPiece() as stack, Word() as right] if left.text.endswith(
                "("
            ) and right.text.startswith(")"):
                rest = right.text[1:].lstrip(SMALL_FIGURES)
                figure = right.text[1 : len(right.text) - len(rest)]
                pieces[place + 1 : place + 2] = [Bracket(")", figure, stack, right), *_word(rest, right)]
                pieces[place - 1 : place] = [*_word(left.text[:-1], left), Bracket("(", "", stack, left)]
    return tuple(pieces)


def _word(text: str, like: Word) -> list[Word]:
    """Give a word set as another; none where nothing is left of it."""
    return [word(text, like.font, like.size, like.language)] if text else []
