"""The rules of practice in a lesson file: takes its table, gives the rules, and every slip in them."""

from collections.abc import Iterator
from typing import Any

from foldmath.lesson.files.slips import Slip
from foldmath.lesson.kinds import KindRefused, kind_named
from foldmath.lesson.lesson import PracticeRules, kept_in, standards_named
from foldmath.phrases import phrase
from foldmath.statements.items import ItemKind


def practice_rules(table: dict[str, Any], products: int) -> tuple[PracticeRules, tuple[Slip, ...]]:
    """Read the rules of practice; kinds must be known, and known to the grade.

    Args:
        table: of the whole file, its shape right or not.
        products: how many are named.
    """
    given = table.get("practice")
    if not isinstance(given, dict):
        return PracticeRules(), ()
    slips: list[Slip] = []
    count, denominators = given.get("count"), given.get("denominators")
    kinds = list(_kinds(given, table, slips))
    if isinstance(count, int) and count < products:
        named_more = phrase("{count} products are named, more than the count", count=products)
        slips.append(Slip(("practice", "count"), named_more, f"count = {products}"))
    rules = PracticeRules(
        denominators=tuple(dict.fromkeys(denominators)) if isinstance(denominators, list) else (),
        count=count,
        seed=given.get("seed"),
        kinds=tuple(dict.fromkeys(kinds)),
        without=frozenset(text for _, text in _texts(given.get("without"))),
        keep=kept_in(given.get("keep")),
    )
    return rules, tuple(slips)


def _kinds(given: dict[str, Any], table: dict[str, Any], slips: list[Slip]) -> Iterator[ItemKind]:
    followed = standards_named(table.get("standards"), table.get("language"))
    for index, name in _texts(given.get("kinds")):
        try:
            yield kind_named(name, table.get("grade"), followed)
        except KindRefused as error:
            slips.append(Slip(("practice", "kinds", index), error.message, error.hint))


def _texts(value: Any) -> Iterator[tuple[int, str]]:
    """Give the texts of a list, each with its place."""
    listed = enumerate(value) if isinstance(value, list) else ()
    return ((index, text) for index, text in listed if isinstance(text, str))
