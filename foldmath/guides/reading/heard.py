"""What a guide sheet shows, for those who hear the page: where on the sheet its lines and marks are."""

from collections.abc import Sequence

from foldmath.guides.marks.guide_sheet import Guides, GuideSheet
from foldmath.guides.reading.distances import EdgeList, edge_lists
from foldmath.lesson.echo import MOST_PLACES_LISTED, places_in_words
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.measures import edge_said
from foldmath.paper.steps import FoldStep
from foldmath.phrases import Phrase, Said, joined, listed, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import written

BACK_HEARD = phrase(
    "The back of the sheet at its exact size: the same marks, right behind those on the front."
)


def folds_heard(proved: ProvedLesson) -> Phrase:
    """Say where every fold line is, under the number that its fold has on the sheet."""
    folds = [moment for moment in proved.moments if isinstance(moment.step, FoldStep)]
    told = [
        phrase("fold {number}, {places}", number=number, places=places_in_words(moment))
        for number, moment in enumerate(folds, start=1)
        if moment.new_places
    ]
    return phrase(
        "The sheet at its exact size, with its numbered fold lines: {folds}.", folds=joined("; ", told)
    )


def marks_heard(shown: Guides) -> Phrase:
    """Say which edges have marks, and where; the middle of the sheet has a cross."""
    told = [_edge_heard(edges) for edges in edge_lists(shown) if _places(edges)]
    told.append(phrase("a cross in the middle of the sheet"))
    return phrase("The sheet at its exact size, with marks: {marks}.", marks=joined("; ", told))


def cut_heard(guide: GuideSheet) -> Phrase:
    """Say from where to where the thick lines run."""
    told = [
        phrase("from {start} to {end}", start=_share(guide, cut.start), end=_share(guide, cut.end))
        for cut in guide.cuts
    ]
    return phrase(
        "The sheet at its exact size, with its folds as thin lines and a thick line to cut: {cuts}.",
        cuts=joined("; ", told),
    )


def _edge_heard(edges: EdgeList) -> Phrase:
    values = {"edges": listed([edge_said(edge) for edge in edges.edges]), "places": _listed(_places(edges))}
    if edges.upright:
        return phrase("{edges} at {places} from the bottom", **values)
    return phrase("{edges} at {places} from the left", **values)


def _places(edges: EdgeList) -> list[str]:
    """Give the places where folds end; a middle without one has no mark on the sheet."""
    return [written(mark.at) for mark in edges.marks if mark.folds]


def _listed(places: Sequence[str]) -> Said:
    if len(places) > MOST_PLACES_LISTED:
        ends = {"first": places[0], "last": places[-1]}
        return phrase("{number} places, from {first} to {last},", number=len(places), **ends)
    return listed(places)


def _share(guide: GuideSheet, point: Point) -> Point:
    return Point(point.x / guide.sheet.width, point.y / guide.sheet.height)
