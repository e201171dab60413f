"""The trace: what every step of a lesson does, exactly, as plain data or as a table to read.

Numbers are strings in lowest terms; coordinates are in the sheet's own unit on the opened sheet. Corners
run counter-clockwise from the lowest, then leftmost; panels and creases stand in the order of their first
corner or end, by height, then from the left.
"""

from collections.abc import Iterator
from typing import Any, assert_never

from foldmath.lesson.echo import did_you_mean, echo_of
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.measures import is_plain, share_said, sides_by_ruler, sides_said
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState, Kind
from foldmath.paper.steps import Gather
from foldmath.phrases import Phrase, Said, counted, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, Exact, written
from foldmath.plane.polygons import from_lowest
from foldmath.statements.expressions import Claim, numbers_in
from foldmath.statements.sentences import About, Sentence, ShadedPart, sentences
from foldmath.words.languages import DEFAULT
from foldmath.words.saying import say
from foldmath.words.steps import for_reader, step_sentence

LEAST_LABEL = 7
"""Signs of room for what a sentence is about."""


def trace(proved: ProvedLesson) -> dict[str, Any]:
    """Give the trace of a lesson as plain data for JSON."""
    lesson = proved.lesson
    return {
        "title": lesson.title,
        "sheet": {
            "width": written(lesson.sheet.width),
            "height": written(lesson.sheet.height),
            "unit": lesson.sheet.unit,
        },
        "steps": [
            step_figures(step.text, moment) | _question(did_you_mean(lesson.steps, proved.moments, index))
            for index, (step, moment) in enumerate(zip(lesson.steps, proved.moments, strict=True))
        ],
    }


def _question(question: Said) -> dict[str, str]:
    return {"did_you_mean": say(question, DEFAULT)} if question else {}


def step_figures(text: str, moment: Moment) -> dict[str, Any]:
    """Give everything that one step shows, under its sentence as written and as English says it."""
    state = moment.after
    box = state.table.box
    return {
        "step": text,
        "canonical": step_sentence(moment.step),
        "panels": _panels(state),
        "new_panels": moment.new_panels,
        "sizes": {written(area): count for area, count in moment.sizes.items()},
        "layers": state.table.layers,
        "folded": {
            "width": written(box.width),
            "height": written(box.height),
            "area": written(state.table.area / state.sheet.area),
        },
        "creases": _creases(state),
        "sentences": [_sentence(sentence) for sentence in sentences(moment)],
    } | _cutting(moment)


def _cutting(moment: Moment) -> dict[str, Any]:
    """Give the cuts made so far, if there are any, and the booklet that this step made of the sheet."""
    shown: dict[str, Any] = {}
    cuts = [line for line in _creases(moment.after) if line["fold"] == Kind.CUT.value]
    if cuts:
        shown["cuts"] = [{"from": line["from"], "to": line["to"]} for line in cuts]
    if isinstance(moment.step, Gather):
        shown["booklet"] = booklet_figures(booklet(moment.before, moment.step.column), moment.before)
    return shown


def _height_then_left(point: Point) -> tuple[Exact, Exact]:
    return point.y, point.x


def _panels(state: FoldedState) -> list[dict[str, Any]]:
    ordered = sorted(
        ((from_lowest(panel.corners), panel) for panel in state.panels),
        key=lambda pair: _height_then_left(pair[0][0]),
    )
    return [
        {
            "corners": [_point(corner) for corner in corners],
            "area": written(panel.area),
            "shaded": panel.shaded,
        }
        for corners, panel in ordered
    ]


def booklet_figures(made: Booklet, state: FoldedState) -> dict[str, Any]:
    """Give a booklet's pages in reading order; each names its panel by the corners of the opened sheet."""
    return {
        "form": made.form.value,
        "page": {"width": written(made.width), "height": written(made.height)},
        "pages": [
            {
                "number": page.number,
                "panel": [_point(corner) for corner in from_lowest(state.panels[page.panel].corners)],
                "side": page.face.value,
                "top": page.way_up.value,
            }
            for page in made.pages
        ],
        "leaves": [[leaf.front, leaf.back] for leaf in made.leaves],
        "openings": [[opening.left, opening.right] for opening in made.openings],
        "warnings": [str(warning) for warning in made.warnings],
    }


def _creases(state: FoldedState) -> list[dict[str, Any]]:
    ordered = []
    for crease in state.creases:
        start, end = sorted((crease.start, crease.end), key=_height_then_left)
        ordered.append(((_height_then_left(start), _height_then_left(end)), start, end, crease))
    ordered.sort(key=lambda line: line[0])
    return [
        {"from": _point(start), "to": _point(end), "fold": crease.kind.value, "folded": crease.folded}
        for _, start, end, crease in ordered
    ]


def _point(point: Point) -> list[str]:
    return [written(point.x), written(point.y)]


def _sentence(sentence: Sentence | ShadedPart) -> dict[str, Any]:
    about = sentence.about.value
    match sentence:
        case ShadedPart(counted, times, area):
            return {"about": about, "text": str(counted), "times": times, "area": str(area)}
        case Sentence(_, claim, None):
            return {"about": about, "text": str(claim)}
        case Sentence(_, claim, of):
            return {"about": about, "text": str(claim), "of": str(of)}
    assert_never(sentence)


def table(proved: ProvedLesson, language: str) -> str:
    """Give the trace as a table that a person can read, in a language."""
    lesson = proved.lesson
    sheet = sides_said(lesson.sheet.width, lesson.sheet.height, lesson.sheet.unit)
    head = phrase("{title}: one sheet, {sheet}", title=lesson.title, sheet=sheet)
    lines = [say(head, language), ""]
    for index, (step, moment) in enumerate(zip(lesson.steps, proved.moments, strict=True)):
        lines.append(f"{index + 1:3}.  {for_reader(step, language)}")
        question = did_you_mean(lesson.steps, proved.moments, index)
        told = [*effects(moment), *_sentences_told(moment, language), *([question] if question else [])]
        lines += [f"      {say(line, language)}" for line in told]
        lines.append("")
    return "\n".join(lines)


def effects(moment: Moment) -> Iterator[Said]:
    """Tell what a step did, and how the paper lies after it."""
    echo = echo_of(moment)
    if echo:
        yield echo
    lying = moment.after.table
    yield counted(
        "lies {sides}, {count} layer at most",
        "lies {sides}, {count} layers at most",
        lying.layers,
        sides=sides_by_ruler(lying.box.width, lying.box.height, moment.after.sheet.unit),
    )


def _sentences_told(moment: Moment, language: str) -> Iterator[str]:
    """Tell the sentences that a step shows, what each is about before it, flush right."""
    kinds = {about: say(name, language) for about, name in about_names().items()}
    width = max(LEAST_LABEL, *map(len, kinds.values()))
    for sentence in sentences(moment):
        yield f"{kinds[sentence.about]:>{width}}  {say(_said(sentence, moment), language)}"


def about_names() -> dict[About, Phrase]:
    """Give what sentences are about, in a word."""
    return {
        About.COUNT: phrase("count"),
        About.SIZE: phrase("size"),
        About.WHOLE: phrase("whole"),
        About.SHADED: phrase("shaded"),
    }


def _said(sentence: Sentence | ShadedPart, moment: Moment) -> Said:
    """Say a sentence with what it counts or measures; in near values where its fractions tell no size."""
    if isinstance(sentence, ShadedPart):
        counted = {"number": sentence.counted.numerator, "all": sentence.counted.denominator}
        if sentence.twice:
            return phrase(
                "{number} of {all} panels shaded twice, {area} of the sheet", area=sentence.area, **counted
            )
        return phrase(
            "{number} of {all} panels shaded once, {area} of the sheet", area=sentence.area, **counted
        )
    if sentence.about is About.COUNT:
        return phrase("{claim} panels", claim=sentence.read)
    if sentence.about is About.SIZE:
        return _size_said(sentence.read)
    if all(map(is_plain, moment.sizes)):
        return str(sentence.read)
    return phrase("the {count} panels together make 1 whole sheet", count=len(moment.after.panels))


def _size_said(claim: Claim) -> Said:
    """Say that a share of a panel is a part of the sheet, ``1/2 of 1/4 = 1/8 of the sheet``."""
    share, panel, part = (number.value for side in claim.sides for number in numbers_in(side))
    if all(map(is_plain, (share, panel, part))):
        return phrase("{claim} of the sheet", claim=claim)
    told = {"part": share_said(part)}
    if panel == ONE:
        return phrase("{part} of the sheet", **told)
    return phrase(
        "{share} of {panel} is {part} of the sheet", share=share_said(share), panel=share_said(panel), **told
    )
