"""What a stage does to one piece of the paper."""

from foldmath.slides.motion.stages import Piece


def turns_over(piece: Piece) -> bool:
    """Tell whether its other side is up after the stage."""
    return piece.start.printed_side_up is not piece.end.printed_side_up
