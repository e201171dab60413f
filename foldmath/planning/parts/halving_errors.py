"""Parts neared by halving errors: after a guess, the stretch of an even number of parts is halved each time.

With the crease near j/n, n odd, one of the stretches beside it is an even number of parts: the left one if j
is even, the right one if not. Halving it gives a crease near another part, with half the error. After a cycle
of k folds, 2^k = 1 modulo n, the crease is near the first part again, and the error is divided by 2^k.

Source:
    Fujimoto's approximation, as in T. Hull, Project Origami, and in R. J. Lang, Origami and Geometric
    Constructions (1996-2015); the cycle follows from the rule.
"""

from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import FoldAt, FoldEdge, Open
from foldmath.plane.numbers import ONE, Exact, exact
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.instructions import Doing, Dot, Instruction, instructed, on_sheet
from foldmath.values import frozen

GUESS_OFF_PARTS = exact(1, 4)
"""A guess by eye is taken to be off by at most a quarter of one part: an assumption, told on the page."""


def next_part(part: int, odd: int) -> tuple[int, bool]:
    """Give the part that the next crease is near, and whether the far edge travels: it does for odd parts."""
    return ((part + odd) // 2, True) if part % 2 else (part // 2, False)


def cycle(odd: int) -> tuple[bool, ...]:
    """Give, for each fold of a cycle from the first part back to it, whether the far edge travels."""
    part, folds = 1, list[bool]()
    while part != 1 or not folds:
        part, far = next_part(part, odd)
        folds.append(far)
    return tuple(folds)


def factor(odd: int) -> int:
    """Give the number by which a cycle divides the error."""
    return 1 << len(cycle(odd))


def errors(first: Exact, odd: int, rounds: int) -> tuple[Exact, ...]:
    """Give the error at the guess and after each round, in the unit of ``first``."""
    return tuple(first / exact(factor(odd) ** number) for number in range(rounds + 1))


def rounds_needed(first: Exact, wanted: Exact, odd: int) -> int:
    """Give how many rounds bring an error down to a wanted one, both in one unit; 0 if it is small enough."""
    rounds = 0
    while errors(first, odd, rounds)[-1] > wanted:
        rounds += 1
    return rounds


@frozen
class Nearing:
    """A guess and its rounds.

    Args:
        guess: the instruction of the guess.
        round: the instructions of the first round.
        last: where the last crease of the last round is, as a fraction of the side.
        after: the sheet, open, with that crease alone.
    """

    guess: Instruction
    round: tuple[Instruction, ...]
    last: Exact
    after: FoldedState


def worst_guess(odd: int) -> Exact:
    """Give the guess of the first part that is as far off as is allowed for, as a fraction of the side."""
    return exact(1, odd) * (ONE + GUESS_OFF_PARTS)


def neared(guess: Exact, odd: int, rounds: int, direction: Direction, sheet: Sheet) -> Nearing:
    """Crease a guess of the first part, and do the rounds on the model.

    A pupil only pinches the paper at its edge and looks at the newest pinch; so each fold is done on the
    sheet with the newest crease alone.
    """
    guessed = instructed(Doing.GUESS, open_sheet(sheet), FoldAt(guess, direction.near), edge=direction.near)
    place, number, state, done = guess, 1, guessed.after, list[Instruction]()
    for far in cycle(odd) * rounds:
        edge = direction.far if far else direction.near
        dot = Dot(on_sheet(state, direction.point(place, ONE)), exact(number, odd))
        number, _ = next_part(number, odd)
        done.append(instructed(Doing.EDGE_TO_DOT, state, FoldEdge(edge, place), edge=edge, dot=dot))
        place = _newest(done[-1], direction)
        state = perform(Open(), perform(FoldAt(place, direction.near), open_sheet(sheet)))
    return Nearing(guessed, tuple(done[: len(cycle(odd))]), place, state)


def _newest(instruction: Instruction, direction: Direction) -> Exact:
    """Read off the model where an instruction made its crease."""
    moment = Moment(instruction.fold, instruction.before, instruction.after)
    (place,) = (place.at for place in moment.new_places if place.axis is direction.axis)
    assert place is not None
    return place
