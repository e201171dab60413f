"""What the steps so far show: panels, sentences, layers, how far off hands may be, and a question if due."""

from collections import Counter
from collections.abc import Sequence

from foldmath.desk.folding.paper_now import PaperNow
from foldmath.lesson.echo import did_you_mean, sizes_in_words
from foldmath.paper.measures import is_plain
from foldmath.paper.moments.moment import Moment
from foldmath.phrases import Said
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.statements.sentences import About, Sentence, ShadedPart, fold_sentences, shaded_part
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import in_one_line
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.values import frozen

MOST_SIZES = 6
"""Of panels that are listed; with more, nobody reads them."""


@frozen(kw_only=True)
class Shown:
    """What is true of the paper now.

    Args:
        panels: how many there are.
        sizes: how many panels have which fraction of the sheet, largest first; empty if they are too many, or
            one has a fraction that tells nobody a size.
        near: the same in words, with near values for such fractions; empty where sizes are told, or too many.
        sentences: of the last fold, as far as they can be said; empty before the first.
        shaded: the part that is shaded; None if nothing is.
        layers: the most of them.
        grade: of the class, whose hands fold.
        off: how far off they may be; empty before the first fold.
        question: whether a common fold was meant; empty if none is near.
    """

    panels: int
    sizes: tuple[tuple[int, Ratio], ...]
    near: Said
    sentences: tuple[Sentence, ...]
    shaded: ShadedPart | None
    layers: int
    grade: int
    off: Said
    question: Said


def shown(now: PaperNow) -> Shown:
    """Tell what the steps so far show."""
    state, moments = now.state, now.moments
    last_fold = _of_the_last_fold(moments)
    sizes = sorted(Counter(panel.area for panel in state.panels).items(), reverse=True)
    few = len(sizes) <= MOST_SIZES
    plain = few and all(is_plain(area) for area, _ in sizes)
    return Shown(
        panels=len(state.panels),
        sizes=tuple((count, lowest_terms(area)) for area, count in sizes if plain),
        near=sizes_in_words(moments[-1]) if moments and few and not plain else "",
        sentences=tuple(one for one in last_fold if plain or one.about is About.COUNT),
        shaded=shaded_part(state) if any(panel.shaded for panel in state.panels) else None,
        layers=state.table.layers,
        grade=now.lesson.grade,
        off=_off(now) if last_fold else "",
        question=did_you_mean(now.lesson.steps, moments, len(moments) - 1) if moments else "",
    )


def _of_the_last_fold(moments: Sequence[Moment]) -> tuple[Sentence, ...]:
    """Give the sentences of the last step that folded; opening and turning change nothing of them."""
    for moment in reversed(moments):
        found = fold_sentences(moment)
        if found:
            return found
    return ()


def _off(now: PaperNow) -> Said:
    spread = default_spread(now.lesson.grade, now.lesson.stock)
    return in_one_line(accuracy(now.moments, spread))
