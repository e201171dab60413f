"""Clusters: parts the runs of a paragraph where a line may end, gives what stays on one line together."""

from copy import copy
from dataclasses import dataclass
from functools import cached_property, lru_cache

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
)

SMALL_FIGURES = "⁰¹²³⁴⁵⁶⁷⁸⁹"


def _ends_in_figure(pieces: list[Piece]) -> bool:
    last = pieces[-1] if pieces else None
    return isinstance(last, Word) and last.text[-1:].isdigit()


def _wider(piece: Piece, by: float) -> Piece:
    wider = copy(piece)
    wider.width += by
    return wider


@dataclass(frozen=True)
class Cluster:
    """Pieces that stay on one line together; ``ends_line`` where a line must end after them."""

    pieces: tuple[Piece, ...]
    ends_line: bool = False

    @cached_property
    def width(self) -> float:
        """The width of all pieces, in points."""
        return sum(piece.width for piece in self.pieces)

    @cached_property
    def fills(self) -> int:
        """How many of its pieces fill their line."""
        return sum(isinstance(piece, BoxPiece) and piece.style.fills for piece in self.pieces)

    def filled(self, by: float) -> "Cluster":
        """Give the same with each of its pieces that fill a line wider, by so many points."""
        fills = [isinstance(piece, BoxPiece) and piece.style.fills for piece in self.pieces]
        widened = (
            _wider(piece, by) if wide else piece for piece, wide in zip(self.pieces, fills, strict=True)
        )
        return Cluster(tuple(widened), self.ends_line)


@lru_cache(maxsize=CLUSTERS_KEPT)
def clusters_of(runs: tuple[Run, ...], setting: Setting) -> tuple[Cluster, ...]:
    """Part runs at their spaces."""
    clusters: list[Cluster] = []
    pieces: list[Piece] = []

    def close(ends_line: bool = False) -> None:
        if pieces or ends_line:
            clusters.append(Cluster(_embraced(pieces), ends_line))
            pieces.clear()

    for run in runs:
        if isinstance(run, LineBreak):
            close(ends_line=True)
        elif isinstance(run, Text):
            font = fonts.font_name(run.bold or setting.bold)
            for number, word in enumerate(run.text.replace("\n", " ").replace("\t", " ").split(" ")):
                if number:
                    close()
                if word:
                    pieces.append(Word(word, font, setting.size, run.language))
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
    return [Word(text, like.font, like.size, like.language)] if text else []
