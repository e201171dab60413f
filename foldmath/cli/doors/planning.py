"""``plan``: from what a teacher wants of a sheet to sequences of folds, and one of them to a lesson file."""

import os
import re
import shlex
from pathlib import Path
from textwrap import indent

from foldmath.cli.terminal.new_files import require_ending, require_new
from foldmath.cli.terminal.speaking import in_columns, spoken, tell, tell_written
from foldmath.errors import LONGEST_SHOWN, Unreadable
from foldmath.making.sets.writing import put_in_place
from foldmath.paper.lengths import read_length
from foldmath.paper.measures import orientation_said, paper_said
from foldmath.paper.sizes import ORIENTATIONS, PaperSize, paper_named
from foldmath.phrases import Phrase, either, phrase
from foldmath.plane.numbers import Exact
from foldmath.planning.plan_lesson import GRADES, Class, lesson_text
from foldmath.planning.plan_words import figures, said, why
from foldmath.planning.planner import FEWEST_LAYERS, MOST_LAYERS, Limits, Planned, plan
from foldmath.planning.ranking import Ranked, priority_of
from foldmath.planning.wanted import Wanted, wanted_panels, wanted_product, wanted_sizes
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import details
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import Stock, stock_named, usual_stock
from foldmath.tolerance.assumed.stock_said import stock_said
from foldmath.words.languages import terminal_language
from foldmath.words.steps import step_sentence

MOST_LISTED = 20

MARGIN = "      "

PICTURE_WIDTH_MM, PICTURE_HEIGHT_MM = 160, 160
"""Of the picture of creases; its height is this at most."""

_SIDES = re.compile(r"(?P<one>[\d./ ]+?) ?(?:[x×*] ?(?P<other>[\d./ ]+?) ?)?(?P<unit>[^\d\s./]+)")
"""With single blanks: of many in a row each could belong to several parts, and all would be tried."""


def tell_plans(
    product: str | None,
    *,
    paper: str = "letter",
    orientation: str = "landscape",
    grade: int = 5,
    panels: int | None = None,
    sizes: str | None = None,
    max_layers: int | None = None,
    size_at_least: str | None = None,
    folds: int | None = None,
    stock: str | None = None,
    best: int = 5,
    with_details: bool = False,
    write: str | None = None,
    picture: str | None = None,
    choose: int = 1,
) -> int:
    """Print the best plans; if asked, write the chosen one as a lesson, and draw where creases will fall."""
    wanted = _wanted(product, panels, sizes)
    _refuse_words(orientation, grade, max_layers, folds, best, choose)
    require_new(write, picture)
    require_ending("--write", write, ".toml")
    require_ending("--picture", picture, ".svg")
    size = paper_named(paper)
    kind = stock_named(stock) if stock else usual_stock(size.name, size.unit)
    made_for = _class(grade, size, orientation, kind, kind.name if stock else "")
    limits = Limits(max_layers or MOST_LAYERS, folds, _least(size_at_least))
    planned = _planned(wanted, made_for, kind, limits, max(best, choose))
    _tell_heading(wanted, made_for, kind)
    _tell(planned, made_for, best, with_details=with_details)
    if write is not None:
        _write(wanted, _chosen(planned, choose), made_for, Path(write))
    if picture is not None:
        _draw(_chosen(planned, choose), made_for, Path(picture))
    return 0


def _class(grade: int, size: PaperSize, orientation: str, kind: Stock, stock: str) -> Class:
    """Give for whom to plan."""
    spread = default_spread(grade, kind)
    return Class(grade=grade, size=size, orientation=orientation, spread=spread, stock=stock)


def _planned(wanted: Wanted, made_for: Class, stock: Stock, limits: Limits, best: int) -> Planned:
    """Find the best plans for a class."""
    first = priority_of(made_for.grade)
    size, spread = made_for.size, made_for.spread
    return plan(wanted, size, made_for.orientation, spread, stock, limits=limits, best=best, priority=first)


def _wanted(product: str | None, panels: int | None, sizes: str | None) -> Wanted:
    """Read what is wanted: exactly one of the three."""
    named = [wish for wish in (product, panels, sizes) if wish is not None]
    if len(named) != 1:
        wanted = (
            phrase("name one thing only: a product, --panels or --sizes")
            if named
            else phrase("say what to fold: a product, --panels or --sizes")
        )
        raise Unreadable(wanted, 'foldmath plan "2/3 × 4/5"')
    if product is not None and product.strip().isdecimal():
        wrong = phrase("{number} alone is no product", number=product.strip()[:LONGEST_SHOWN])
        raise Unreadable(wrong, f"--panels {product.strip()[:LONGEST_SHOWN]}")
    if product is not None:
        return wanted_product(product)
    return wanted_panels(panels) if panels is not None else wanted_sizes(sizes or "")


def _refuse_words(
    orientation: str, grade: int, max_layers: int | None, folds: int | None, best: int, choose: int
) -> None:
    """Refuse what no plan can keep to."""
    if orientation not in ORIENTATIONS:
        raise Unreadable(
            phrase(
                "{option} {word}: choose {known}",
                option="--orientation",
                word=orientation[:LONGEST_SHOWN],
                known=either(ORIENTATIONS),
            ),
            f"--orientation {ORIENTATIONS[0]}",
        )
    if grade not in GRADES:
        raise Unreadable(_from_to("--grade", GRADES[0], GRADES[-1]), "--grade 5")
    if max_layers is not None and max_layers < FEWEST_LAYERS:
        raise Unreadable(
            phrase("folded paper has at least {layers} layers", layers=FEWEST_LAYERS), "--max-layers 8"
        )
    if folds is not None and folds < 1:
        raise Unreadable(phrase("--folds must be 1 or more"), "--folds 5")
    for name, number in (("--best", best), ("--choose", choose)):
        if not 1 <= number <= MOST_LISTED:
            raise Unreadable(_from_to(name, 1, MOST_LISTED), f"{name} 1")


def _from_to(option: str, first: int, last: int) -> Phrase:
    return phrase("{option} must be from {first} to {last}", option=option, first=first, last=last)


def _least(text: str | None) -> tuple[Exact, Exact] | None:
    """Read ``40x40mm``, ``1 1/2 x 2 in`` or ``40 mm``: the least sides of a panel, the shorter first."""
    if text is None:
        return None
    found = _SIDES.fullmatch(" ".join(text.split()))
    if not found:
        raise Unreadable(
            phrase("'{text}' is not a panel size with its unit", text=text[:LONGEST_SHOWN]),
            "--size-at-least 40x40mm",
        )
    sides = (found["one"], found["other"] or found["one"])
    short, long = sorted(read_length(f"{side} {found['unit']}").in_millimetres for side in sides)
    return short, long


def _tell_heading(wanted: Wanted, made_for: Class, kind: Stock) -> None:
    tell(
        phrase(
            "{wanted}: {paper}, {orientation}, grade {grade}, {stock}",
            wanted=wanted.said,
            paper=paper_said(made_for.size.name),
            orientation=orientation_said(made_for.orientation),
            grade=made_for.grade,
            stock=stock_said(kind.name),
        )
    )


def _tell(planned: Planned, made_for: Class, best: int, *, with_details: bool) -> None:
    shown = planned.ranked[:best]
    for number, ranked in enumerate(shown, start=1):
        print(_in_words(number, ranked, made_for))
        if with_details:
            told = details(accuracy(ranked.moments, made_for.spread))
            print(indent(f"\n{in_columns(told)}", MARGIN))
    print(f"\n{_ending(planned, len(shown))}")


def _in_words(number: int, ranked: Ranked, made_for: Class) -> str:
    lines = ["", f"{number:3}.  {spoken(figures(ranked, made_for.spread))}"]
    lines.append(MARGIN + spoken(phrase("why: {why}", why=why(ranked))))
    language = terminal_language(os.environ)
    steps = [step_sentence(step, language) for step in ranked.plan.steps]
    lines += [f"      {index:3}  {step}" for index, step in enumerate(steps, start=1)]
    lines += [
        "      " + spoken(phrase("careful at {fact}", fact=judgement.message))
        for judgement in ranked.judgements
    ]
    return "\n".join(lines)


def _ending(planned: Planned, shown: int) -> str:
    last = spoken(said("ending", "complete" if planned.complete else "cut_short"))
    return f"{spoken(said('ending', 'several'))} {last}" if shown > 1 else last


def _chosen(planned: Planned, choose: int) -> Ranked:
    """Give the plan of a number on the list."""
    if choose > len(planned.ranked):
        count = len(planned.ranked)
        raise Unreadable(
            phrase("--choose {number}: the plans are 1 to {count}", number=choose, count=count),
            f"--choose {count}",
        )
    return planned.ranked[choose - 1]


def _write(wanted: Wanted, chosen: Ranked, made_for: Class, path: Path) -> None:
    """Write a plan as a lesson, once it is proved to be one."""
    from foldmath.lesson.proving import prove
    from foldmath.lesson.reading import lesson_in

    text = lesson_text(wanted, chosen, made_for, terminal_language(os.environ))
    prove(lesson_in(text, str(path)))
    put_in_place({path: text.encode("utf-8")})
    command = f"foldmath make {shlex.quote(str(path))}"
    tell(phrase("wrote {file}; make its pages with:  {command}", file=str(path), command=command))


def _draw(chosen: Ranked, made_for: Class, path: Path) -> None:
    """Draw where the creases of a plan will fall, as bands."""
    from foldmath.drawing.rendering.files import svg
    from foldmath.drawing.scenes import told_in
    from foldmath.drawing.sheets.crease_bands import crease_bands, times_wider

    made = accuracy(chosen.moments, made_for.spread)
    look = (chosen.moments[0].before.sheet, made, PICTURE_WIDTH_MM, PICTURE_HEIGHT_MM)
    put_in_place({path: svg(told_in(crease_bands(*look), terminal_language(os.environ)))})
    times = times_wider(*look)
    if times > 1:
        wider = phrase("bands are drawn {times} times their true width", times=times)
        tell(phrase("wrote {file}; {remark}", file=str(path), remark=wider))
    else:
        tell_written(path)
