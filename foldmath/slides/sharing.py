"""Creases that a page draws once: an opened sheet repeats those of a slide before it that lie alike."""

from collections.abc import Iterable

from foldmath.slides.motion.opened import Creases, Lines
from foldmath.slides.slides import Slide, StepSlide
from foldmath.values import frozen

NONE = Creases((), (), ())


@frozen
class SharedCreases:
    """The creases of an opened sheet, for a page that has drawn some of them already.

    Args:
        repeated: the numbers of the steps whose own creases it repeats.
        own: those that no step before it draws.
    """

    repeated: tuple[int, ...]
    own: Creases


def shared_creases(shown: Iterable[Slide]) -> dict[int, SharedCreases]:
    """Give the creases of every opened sheet by the number of its step."""
    shared = {}
    repeated: tuple[int, ...] = ()
    drawn = NONE
    for slide in shown:
        if not isinstance(slide, StepSlide) or not slide.opens or slide.picture.opened is None:
            continue
        creases = slide.picture.opened.creases
        if not _holds(creases, drawn):
            repeated, drawn = (), NONE
        own = _without(creases, drawn)
        shared[slide.number] = SharedCreases(repeated, own)
        repeated, drawn = ((*repeated, slide.number) if own != NONE else repeated), creases
    return shared


def _holds(creases: Creases, earlier: Creases) -> bool:
    """Tell whether all earlier creases lie where some of these do, of the same kind and as long."""
    return all(set(before) <= set(lines) for lines, before in _by_kind(creases, earlier))


def _without(creases: Creases, earlier: Creases) -> Creases:
    valley, mountain, cut = (
        tuple(line for line in lines if line not in set(before))
        for lines, before in _by_kind(creases, earlier)
    )
    return Creases(valley, mountain, cut)


def _by_kind(some: Creases, others: Creases) -> tuple[tuple[Lines, Lines], ...]:
    return (some.valley, others.valley), (some.mountain, others.mountain), (some.cut, others.cut)
