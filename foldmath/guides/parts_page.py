"""The page that shows how to fold equal parts: takes the ways, gives a document and its pictures."""

from collections.abc import Iterator

from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Scene, enlarged, for_low_vision
from foldmath.drawing.sheets.parts_pictures import fold_with_dot, parted_sheet, sheet_to_cut
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, FoldStep
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact
from foldmath.planning.parts.equal_parts import Kind, Way
from foldmath.planning.parts.halvings import odd_part
from foldmath.planning.parts.instructions import Instruction
from foldmath.planning.parts.rounding import tenths, tenths_at_most
from foldmath.statements.ratios import Ratio, fraction, mixed_form
from foldmath.values import frozen
from foldmath.words.fraction_names import in_words, parts_named
from foldmath.words.saying import say

LOOKS = {REGULAR: "parts", LARGE: "parts-large"}
"""The names of the style sheets."""

BESIDE = {REGULAR: 3, LARGE: 2}
"""How many instructions stand side by side."""

STEP_MM, HIGH_STEP_MM = (54.0, 36.0), (54.0, 46.0)
"""The room for the picture of one instruction, on a sheet that lies on its long side or stands upright."""

FEW, FEW_PARTED_MM = 6, (57.0, 46.0)
MANY_PARTED_MM = {REGULAR: (114.0, 90.0), LARGE: (76.0, 60.0)}
"""The room for the picture of the sheet with up to so many parts, and with more, by the look."""

LARGE_TIMES = 1.5
"""How many times as large pictures are in large print: fractions beside dots are 12 points, and become 18."""

FEW_CELLS, MANY_CELLS = 1, 2
"""Of the width of how many instructions those pictures are."""


@frozen(kw_only=True)
class InstructionWords:
    """What one instruction tells.

    Args:
        doing: which words tell it, by the names of ``Doing`` in small letters, or ``cut`` or ``mark``.
        edge: the edge that travels, or on which the mark is; empty if there is none.
        across: the edge opposite.
        dotted: whether it speaks of a dot.
        opens: whether the sheet is opened at its end.
    """

    doing: str
    edge: str
    across: str
    dotted: bool
    opens: bool


@frozen
class Shown:
    """An instruction with its number, from 1 for each way, and the name of its picture."""

    number: int
    told: InstructionWords
    picture: str


@frozen(kw_only=True)
class Nearing:
    """How a way nears a guessed part, round by round.

    Args:
        part: which is guessed and neared, in words.
        folds: of one round.
        rounds: that are enough.
        factor: by which each round divides what a guess is off.
        errors: at the guess and after each round, in mm, rounded up to tenths.
        wanted: how near is near enough, in mm.
    """

    part: str
    folds: int
    rounds: int
    factor: int
    errors: tuple[str, ...]
    wanted: str


@frozen(kw_only=True)
class Section:
    """One way on the page.

    Args:
        kind: which way, in small letters.
        unit: in which the sheet is measured.
        square: the side of the square to be made first; None if none is made.
        size: the sheet's width and height.
        part: how long one part is.
        about_mm: the same, about, in mm; empty if it says no more.
        finding, finishing: the instructions, before and after the landmark is known.
        nearing: how it nears what it cannot find; None for an exact one.
        picture: the name of the parted sheet's.
        picture_cells: of the width of how many instructions that picture is.
    """

    kind: str
    unit: str
    square: Ratio | None
    size: tuple[Ratio, Ratio]
    part: Ratio
    about_mm: str
    finding: tuple[Shown, ...]
    finishing: tuple[Shown, ...]
    nearing: Nearing | None
    picture: str
    picture_cells: int


@frozen(kw_only=True)
class PartsPage:
    """The document, its title, the names of its file and of its style sheet, and the scenes it places."""

    document: Document
    title: str
    file: str
    look: str
    pictures: dict[str, Scene]


def parts_page(
    ways: tuple[Way, ...], paper: str, page_paper: str, language: str, look: str = REGULAR
) -> PartsPage:
    """Write the page of all ways to fold equal parts.

    Args:
        ways: at least one, all for the same number of parts and the same side.
        paper: the name of the paper that is folded.
        page_paper: to print on, ``letter`` or ``A4``.
        language: of the page.
        look: ``regular`` or ``large``.
    """
    parts, axis = ways[0].parts, ways[0].direction.axis
    name = parts_named(parts, language)
    title = say(_title(name.capitalize(), axis), language)
    pictures = {f"legend-{line}": legend_sample(line) for line in SAMPLES}
    sections = []
    for way in ways:
        drawn = list(_drawn(way))
        sections.append(_section(way, tuple(shown for shown, _ in drawn), language))
        pictures |= {shown.picture: scene for shown, scene in drawn}
        width, height = FEW_PARTED_MM if parts <= FEW else MANY_PARTED_MM[look]
        pictures[sections[-1].picture] = parted_sheet(way.parted, axis, way.creases, width, height)
    html = render(
        "guides/parts_page.html",
        language,
        title=title,
        name=name,
        parts=parts,
        side=axis.value,
        sections=sections,
        beside=BESIDE[look],
        language=language,
    )
    master = PageMaster(upright(page_paper), f"{title}, {paper}", "", PAGE_WORDS)
    if look == LARGE:
        pictures = {drawn: for_low_vision(enlarged(scene, LARGE_TIMES)) for drawn, scene in pictures.items()}
    document = Document(html, master, answers=True)
    return PartsPage(document=document, title=title, file=f"{name}.pdf", look=LOOKS[look], pictures=pictures)


def _title(parts: str, axis: Axis) -> Phrase:
    if axis is Axis.WIDTH:
        return phrase("{parts} of the width", parts=parts)
    return phrase("{parts} of the height", parts=parts)


def _section(way: Way, shown: tuple[Shown, ...], language: str) -> Section:
    sheet = way.sheet
    side = way.direction.along(Point(sheet.width, sheet.height)) / exact(way.parts)
    part, about = mixed_form(side), tenths(side * sheet.unit_mm)
    split = len(shown) - len(way.finishing)
    return Section(
        kind=way.kind.name.lower(),
        unit=sheet.unit,
        square=mixed_form(sheet.width) if way.squaring else None,
        size=(mixed_form(sheet.width), mixed_form(sheet.height)),
        part=part,
        about_mm="" if (str(part), sheet.unit) == (about, "mm") else about,
        finding=shown[:split],
        finishing=shown[split:],
        nearing=_nearing(way, language),
        picture=f"{way.kind.name.lower()}-parted",
        picture_cells=FEW_CELLS if way.parts <= FEW else MANY_CELLS,
    )


def _nearing(way: Way, language: str) -> Nearing | None:
    near = way.nearness
    if near is None:
        return None
    return Nearing(
        part=in_words(fraction(1, odd_part(way.parts)), language),
        folds=near.folds,
        rounds=near.rounds,
        factor=near.factor,
        errors=tuple(tenths_at_most(error) for error in near.errors_mm),
        wanted=tenths(near.wanted_mm),
    )


def _drawn(way: Way) -> Iterator[tuple[Shown, Scene]]:
    """Number the instructions of a way, each with its picture."""
    for number, (told, scene) in enumerate(_instructions(way), start=1):
        yield Shown(number, told, f"{way.kind.name.lower()}-{number}"), scene


def _instructions(way: Way) -> Iterator[tuple[InstructionWords, Scene]]:
    """Give the instructions in order, with the cut of the square and the mark of the landmark among them."""
    for instruction in way.squaring:
        yield _doing(instruction), _picture(instruction)
    if way.squaring:
        after = way.squaring[-1].after
        yield (
            InstructionWords(doing="cut", edge="", across="", dotted=False, opens=True),
            sheet_to_cut(after, *_room(after)),
        )
    for instruction in way.finding:
        yield _doing(instruction), _picture(instruction)
    if way.landmark and way.kind is not Kind.ERRORS:
        found, dot = way.finding[-1].after, (way.landmark.at, way.landmark.fraction)
        told = InstructionWords(
            doing="mark", edge=way.direction.across.far.value, across="", dotted=True, opens=True
        )
        yield told, fold_with_dot(found, None, dot, *_room(found))
    for instruction in way.finishing:
        yield _doing(instruction), _picture(instruction)


def _doing(instruction: Instruction) -> InstructionWords:
    edge = instruction.edge
    return InstructionWords(
        doing=instruction.doing.name.lower(),
        edge=edge.value if edge else "",
        across=edge.opposite.value if edge else "",
        dotted=instruction.dot is not None,
        opens=instruction.opens,
    )


def _picture(instruction: Instruction) -> Scene:
    fold, dot = instruction.fold, instruction.dot
    if not isinstance(fold, FoldStep):
        raise TypeError(f"not a fold: {fold!r}")
    told = (dot.at, dot.fraction) if dot else None
    return fold_with_dot(instruction.before, fold, told, *_room(instruction.before))


def _room(state: FoldedState) -> tuple[float, float]:
    return HIGH_STEP_MM if state.sheet.height > state.sheet.width else STEP_MM
