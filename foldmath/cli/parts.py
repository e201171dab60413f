"""``parts``: the ways to fold a side into equal parts, told in short and laid out as a page."""

from pathlib import Path

from foldmath.errors import Unreadable
from foldmath.paper.lengths import MILLIMETRES, NumberRefused, read_length
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, exact, written
from foldmath.planning.parts.instructions import Doing, Instruction
from foldmath.planning.parts.parts import Kind, Way
from foldmath.planning.parts.rounding import tenths, tenths_at_most

FINEST_MM = exact(1, 10)
"""Nobody folds finer by hand (common practice, no source)."""

HEADINGS = {
    Kind.HALVINGS: "in half, and in half again: exact, on any sheet",
    Kind.CROSSING: "two creases that cross: exact, on any sheet",
    Kind.CORNER: "one corner on an edge: exact, on a square",
    Kind.ERRORS: "a guess that gets better: near, on any sheet",
}


def tell_parts(parts: int, paper: str, orientation: str, along: str, accuracy: str, out: str) -> int:
    """Print the ways to fold equal parts, and write the page that shows them; give the exit code.

    Args:
        parts: how many, from 3 to 12.
        paper: the name of a paper; A4 and papers in millimetres are printed on A4, others on letter.
        orientation: ``landscape`` or ``portrait``.
        along: ``width`` or ``height``.
        accuracy: how far off a crease may be where a way is not exact, such as ``1 mm``.
        out: the folder to write in.

    Raises:
        Unreadable: one of the words cannot be read.
        CannotWrite: the page could not be put in place.
    """
    from foldmath.paper.sizes import paper_named
    from foldmath.paper.sizes import sheet as laid
    from foldmath.planning.parts.parts import ways

    _one_of(orientation, ("landscape", "portrait"), "--orientation")
    _one_of(along, tuple(axis.value for axis in Axis), "--along")
    size = paper_named(paper)
    sheet = laid(size, orientation)
    found = ways(sheet, parts, Axis(along), _accuracy_mm(accuracy))
    print(in_words(found, size.name, sheet))
    print(f"\nwrote {_written(found, size.name, sheet, Path(out))}")
    return 0


def in_words(found: tuple[Way, ...], paper: str, sheet: Sheet) -> str:
    """Tell ways in short, numbered: the steps of exact ones in the step language."""
    told = ["\n".join(_told(number, way)) for number, way in enumerate(found, start=1)]
    return "\n\n".join([_heading(found[0], paper, sheet), *told])


def _one_of(word: str, known: tuple[str, ...], option: str) -> None:
    if word not in known:
        raise Unreadable(f"{option} {word}: choose {' or '.join(known)}\n    try:  {option} {known[0]}")


def _accuracy_mm(words: str) -> Exact:
    try:
        accuracy = read_length(words).in_millimetres
    except NumberRefused as error:
        raise Unreadable(f'--accuracy {words}: {error.message}\n    try:  --accuracy "1 mm"') from None
    if accuracy < FINEST_MM:
        raise Unreadable(
            f"--accuracy {words}: nobody folds finer than {written(FINEST_MM)} mm by hand\n"
            '    try:  --accuracy "1 mm"'
        )
    return accuracy


def _written(found: tuple[Way, ...], paper: str, sheet: Sheet, out: Path) -> Path:
    """Lay out the page and put it in place."""
    from foldmath.documents.parts_page import LANGUAGE, LOOK, parts_page
    from foldmath.documents.printing import printed
    from foldmath.drawing.draughtsman import Draughtsman
    from foldmath.writing import put_in_place

    with Draughtsman() as draughtsman:
        page = parts_page(found, paper, "letter" if sheet.unit == "in" else "A4")
        recordings = draughtsman.recordings(list(page.pictures.values()))
        pictures = dict(zip(page.pictures, recordings.result(), strict=True))
    file = out / page.file
    put_in_place({file: printed([page.manuscript], pictures, page.title, LANGUAGE, LOOK)})
    return file


def _heading(way: Way, paper: str, sheet: Sheet) -> str:
    side = way.direction.along(Point(sheet.width, sheet.height))
    part = side / exact(way.parts)
    return (
        f"{way.parts} equal parts of the {way.direction.axis.value} of {paper} paper, "
        f"{written(sheet.width)} by {written(sheet.height)} {sheet.unit}: "
        f"one part is {written(part)} {sheet.unit}{_in_mm(part, sheet.unit)}"
    )


def _in_mm(length: Exact, unit: str) -> str:
    return "" if unit == "mm" else f" ({tenths(length * MILLIMETRES[unit])} mm)"


def _told(number: int, way: Way) -> list[str]:
    """Tell a way: its heading, its numbered instructions, and where its creases are."""
    lines = [f"{number}. {HEADINGS[way.kind]}"]
    count = 0

    def say(words: str) -> None:
        nonlocal count
        count += 1
        lines.append(f"  {count:3}.  {words}")

    for instruction in way.squaring:
        say(_said(instruction))
    if way.squaring:
        say(f"cut along the straight crease; the square is {written(way.sheet.width)} {way.sheet.unit} wide")
    nearing = way.kind is Kind.ERRORS
    for instruction in way.finding:
        say(_in_words(instruction) if nearing else _said(instruction))
    if way.landmark and not nearing:
        say(_landmark(way))
    lines += _rounds(way)
    for instruction in way.finishing:
        say(_in_words(instruction) if nearing else _said(instruction))
    creases = ", ".join(f"{part}/{way.parts}" for part in range(1, way.parts))
    lines.append(f"        creases {'near' if nearing else 'exactly at'} {creases} of the {_side(way)}")
    return lines


def _side(way: Way) -> str:
    return way.direction.axis.value + (" of the square" if way.squaring else "")


def _landmark(way: Way) -> str:
    """Say where the landmark is: both coordinates, as fractions of the sheet."""
    assert way.landmark is not None
    place = way.landmark.at
    x, y = place.x / way.sheet.width, place.y / way.sheet.height
    where = "the slanted creases cross" if way.kind is Kind.CROSSING else "the new crease ends"
    return f"{where} at ({written(x)}, {written(y)}): {written(way.landmark.fraction)} of the {_side(way)}"


def _said(instruction: Instruction) -> str:
    """Say the steps in the step language, and what the first of them goes to."""
    from foldmath.lesson.wording import said

    steps = ", ".join(said(step) for step in instruction.steps)
    if instruction.doing is Doing.EDGE_AGAIN:
        return f"{steps}   (the same edge again)"
    if instruction.doing is Doing.CORNER_OVER:
        return f"{steps}   (along the moved edge)"
    return steps


def _in_words(instruction: Instruction) -> str:
    """Say a step of a way that nears, where the fractions of the sheet are as odd as the guess was."""
    edge = instruction.edge.value if instruction.edge else ""
    if instruction.doing is Doing.GUESS:
        return f"guess one part from the {edge} edge, and fold there, open"
    again = " again" if instruction.doing is Doing.EDGE_AGAIN else ""
    where = f"the crease near {written(instruction.dot.fraction)}" if instruction.dot else "the edge across"
    return f"fold {edge} edge to {where}{again}{', open' if instruction.opens else ''}"


def _rounds(way: Way) -> list[str]:
    if not way.nearness:
        return []
    near = way.nearness
    lines = [
        f"        steps 2 to {near.folds + 1} are one round, and divide the error by {near.factor}",
        "        a guess is taken to be off by at most a quarter of a part: "
        f"{tenths_at_most(near.errors_mm[0])} mm",
    ]
    for number, error in enumerate(near.errors_mm[1:], start=1):
        lines.append(f"        after round {number}: at most {tenths_at_most(error)} mm")
    return [*lines, f"        rounds needed for {written(near.wanted_mm)} mm: {near.rounds}"]
