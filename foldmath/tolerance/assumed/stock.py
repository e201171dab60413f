"""Kinds of paper by name, by grammage or by caliper; the values and their sources are in ``stocks.toml``."""

import re
import tomllib
from difflib import get_close_matches
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Any

from foldmath.errors import Unreadable
from foldmath.paper.lengths import NumberRefused, read_length, read_number
from foldmath.phrases import Phrase, either, phrase
from foldmath.plane.numbers import Exact, exact, nearest_whole, written
from foldmath.values import frozen

THINNEST_MM, THICKEST_MM = exact(1, 100), exact(2)
"""No sheet that a class folds is thinner than tissue or thicker than mount board."""

GRAMS_PER_POUND = exact(45359237, 100000)
"""The avoirdupois pound of 1959, exactly."""

METRES_PER_INCH = exact(254, 10000)
SHEETS_IN_A_REAM = 500
MIL_MM = exact(254, 10000)

USUAL_STOCKS = ("copy 20 lb", "80 gsm", "construction", "0.1 mm")
"""Ways to name a paper, offered where none is near."""

_HYPHEN = re.compile(r"(?<=\w)-(?=\w)")
_GRAMMAGE = re.compile(r"(?P<number>[\d.]+)\s*(?:gsm|g/m2|g/m²|g/qm|grams?|g)", re.ASCII)
_POUNDS = re.compile(r"(?P<number>[\d.]+)\s*(?:lbs?|pounds?|#)", re.ASCII)
_MILS = re.compile(r"(?P<number>[\d.]+)\s*(?:mils?|pt|points?)", re.ASCII)


@frozen
class Stock:
    """A kind of paper.

    Args:
        name: as it is usually written.
        caliper_mm: the thickness of one sheet, in mm.
        grammage: in g/m²; None if it is not known.
        source: where the thickness comes from; says "from memory" or "interpolated" where it does.
    """

    name: str
    caliper_mm: Exact
    grammage: Exact | None
    source: str


class StockRefused(Unreadable):
    """Words that name no paper, or more than one.

    Args:
        message: what is wrong.
        hint: the names that would do.
    """


def stock_named(text: str) -> Stock:
    """Read a paper: ``copy 20 lb``, ``110 lb index``, ``construction``, ``90 gsm``, ``0.1 mm``, ``4 mil``.

    A grammage that is not in the table takes its caliper from the line between its neighbours there.

    Raises:
        StockRefused: no paper has this name, pounds without their kind, or a thickness nobody folds.
    """
    plain = " ".join(_HYPHEN.sub(" ", text.casefold()).split())
    known = _by_name().get(_key(plain))
    if known:
        return known
    if found := _MILS.fullmatch(plain):
        return _measured(text, _number(found) * MIL_MM)
    if found := _GRAMMAGE.fullmatch(plain):
        return _of_grammage(f"{found['number']} gsm", _number(found))
    if found := _POUNDS.search(plain):
        return _of_pounds(plain, found)
    try:
        return _measured(text, read_length(plain).in_millimetres)
    except NumberRefused:
        raise _unknown(text, plain) from None


def grammage_of_pounds(pounds: Exact, kind: str) -> Exact:
    """Give g/m² for the weight in pounds of a ream of 500 sheets of the basis size of a kind of paper."""
    across, up = (read_number(str(side)) for side in _table()["basis"][kind])
    ream = across * up * METRES_PER_INCH * METRES_PER_INCH * SHEETS_IN_A_REAM
    return pounds * GRAMS_PER_POUND / ream


def all_stocks() -> list[Stock]:
    """Give every paper of the table, in its order."""
    return list(dict.fromkeys(_by_name().values()))


def _measured(name: str, caliper_mm: Exact) -> Stock:
    if not THINNEST_MM <= caliper_mm <= THICKEST_MM:
        raise StockRefused(
            phrase("'{name}' is no thickness of paper", name=_shown(name)),
            phrase("use 0.01 mm to 2 mm, as in 0.1 mm"),
        )
    return Stock(name.strip(), caliper_mm, None, "as measured")


def _of_pounds(plain: str, found: re.Match[str]) -> Stock:
    table, pounds = _table(), _number(found)
    words = [
        word for word in (plain[: found.start()] + " " + plain[found.end() :]).split() if word != "paper"
    ]
    kinds = {table["basis_also"].get(word, word) for word in words} & table["basis"].keys()
    if len(kinds) != 1:
        raise StockRefused(
            phrase("'{plain}' does not say what kind of paper the pounds are of", plain=_shown(plain)),
            _kinds_of(pounds),
        )
    kind = kinds.pop()
    return _of_grammage(f"{written(pounds)} lb {kind}", grammage_of_pounds(pounds, kind))


def _kinds_of(pounds: Exact) -> Phrase:
    """Say what the same pounds are in the two kinds that card is sold in."""
    index, cover = (
        f"'{written(pounds)} lb {kind}' ({nearest_whole(grammage_of_pounds(pounds, kind))} g/m²)"
        for kind in ("index", "cover")
    )
    return phrase("say {index}, as most card is, or {cover}", index=index, cover=cover)


def _of_grammage(name: str, grammage: Exact) -> Stock:
    """Read the caliper off the straight lines between the papers of one series of standards."""
    curve = [(read_number(row["grammage"]), row) for row in _table()["stock"] if row.get("curve")]
    if not curve[0][0] * 3 / 4 <= grammage <= curve[-1][0] * 5 / 4:
        raise StockRefused(
            phrase(
                "no caliper is known for '{name}', {grammage} g/m²",
                name=_shown(name),
                grammage=nearest_whole(grammage),
            ),
            phrase("give its thickness, as in 0.1 mm"),
        )
    for (low, row), (high, other) in pairwise(curve):
        if grammage <= high or other is curve[-1][1]:
            start, end = read_number(row["caliper_mm"]), read_number(other["caliper_mm"])
            caliper = start + (end - start) * (grammage - low) / (high - low)
            near = f"{row['name']} and {other['name']}"
            return Stock(name, caliper, grammage, f"interpolated from {near}, GPO standards")
    raise AssertionError("the curve has two ends")


def _unknown(text: str, plain: str) -> StockRefused:
    if "card" in plain:
        return StockRefused(
            phrase("'{text}' may be index or cover", text=_shown(text)),
            phrase("say '110 lb index' or '65 lb cover'"),
        )
    names = {_key(stock.name): stock.name for stock in all_stocks()}
    near = get_close_matches(_key(plain)[:40], names, n=2, cutoff=0.6)
    hint = either([names[match] for match in near] or USUAL_STOCKS)
    return StockRefused(phrase("there is no paper called '{text}'", text=_shown(text)), hint)


def _number(found: re.Match[str]) -> Exact:
    try:
        return read_number(found["number"])
    except NumberRefused as refusal:
        raise StockRefused(refusal.message, refusal.hint) from None


def _key(name: str) -> str:
    return re.sub(r"[\s.]+", "", name.casefold())


def _shown(text: str, longest: int = 40) -> str:
    return text if len(text) <= longest else text[:longest] + "…"


@cache
def _table() -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath("stocks.toml").read_text(encoding="utf-8"))


@cache
def _by_name() -> dict[str, Stock]:
    known = {}
    for row in _table()["stock"]:
        grammage = read_number(row["grammage"]) if "grammage" in row else None
        stock = Stock(row["name"], read_number(row["caliper_mm"]), grammage, row["source"])
        for name in (row["name"], *row.get("also", ())):
            known[_key(name)] = stock
    return known


def usual_stock(sheet: str, unit: str) -> Stock:
    """Give the paper that a sheet is of if nothing is said: what its name tells, or the usual of its unit.

    Args:
        sheet: its name, such as ``letter`` or ``construction 12 x 18``.
        unit: that it is measured in: ``in``, ``cm`` or ``mm``.
    """
    told = (stock for begins, stock in _table()["told_by_name"].items() if sheet.startswith(begins))
    return stock_named(next(told, _table()["usual"][unit]))


DEFAULT_STOCK = usual_stock("letter", "in")
"""The paper that a sheet in inches is folded on if nothing is said."""
