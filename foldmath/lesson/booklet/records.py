"""What a page records and pictures: a fold of the lesson, by its step, or a product."""

import re
from typing import Any

from foldmath.lesson.booklet.matter import Folds, Matter
from foldmath.lesson.booklet.plan import (
    About,
    CreasesPicture,
    FoldPicture,
    ModelPicture,
    RecordFold,
    RecordProduct,
    SheetPicture,
)
from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import Said, counted, either, phrase
from foldmath.plane.numbers import ONE
from foldmath.statements.items import Reach
from foldmath.statements.products import Product, parse_product
from foldmath.statements.refusals import SentenceRefused

MOST_PARTS = 24
"""A model on a page of a booklet is cut into no more parts each way (common practice, no source)."""

_FOLD = re.compile(r"(?:fold|step\s*(?P<step>\d{1,4}))(?:\s+(?P<about>count|size))?", re.IGNORECASE)
_MEANT = re.compile(r"\s*(?:step|fold)", re.IGNORECASE)
_PRODUCT = re.compile(r"product\s*(?P<number>\d{1,3})", re.IGNORECASE)
CREASES, SHEET = "creases", "sheet"
ANY_PRODUCT = parse_product("1/2 × 1/2")
"""Stands where those of the lesson cannot be read, which is told where they stand."""

Fold = tuple[int, int] | None
"""The step that a page is of, and its number among those with pages; None for other pages."""


def record(value: Any, path: Path, matter: Matter, fold: Fold) -> RecordFold | RecordProduct | Slip:
    """Read ``fold``, ``fold count``, ``step 2``, ``step 2 count``, ``product 1`` or a product.

    Args:
        value: as TOML gives it.
        path: where it stands.
        matter: what the lesson gives to its booklet.
        fold: the step that the page is of.
    """
    folds = matter.folds
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if found := _FOLD.fullmatch(text):
        step = step_meant(found["step"], path, folds, fold)
        if isinstance(step, Slip):
            return step
        if folds and step not in folds.cutting:
            message = phrase(
                "step {step} makes no new panels, so it has no sentence to record", step=step + 1
            )
            return Slip(path, message, _a_step(folds.cutting))
        return RecordFold(step, About((found["about"] or About.SIZE.value).casefold()))
    product = product_meant(value, path, matter, 'record = "2/3 × 4/5"', 'record = "step 2 count"')
    return product if isinstance(product, Slip) else RecordProduct(product.text, product)


def picture(
    value: Any, path: Path, matter: Matter, fold: Fold
) -> FoldPicture | ModelPicture | CreasesPicture | SheetPicture | Slip:
    """Read ``creases``, ``sheet``, ``fold``, ``step 2``, or a product whose area model is drawn.

    What it takes is as for ``record``.
    """
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if text.casefold() == CREASES:
        return CreasesPicture()
    if text.casefold() == SHEET:
        return SheetPicture()
    if (found := _FOLD.fullmatch(text)) and not found["about"]:
        step = step_meant(found["step"], path, matter.folds, fold)
        return step if isinstance(step, Slip) else FoldPicture(step)
    product = product_meant(value, path, matter, 'picture = "1/2 of 1/3"', 'picture = "step 2"')
    if isinstance(product, Slip):
        return product
    for factor in (product.first, product.second):
        if factor.value > ONE or factor.denominator > MOST_PARTS:
            message = phrase(
                "an area model here shows factors up to 1, with at most {most} parts",
                most=MOST_PARTS,
            )
            column = value.find(factor.text) + 1
            words = factor.text if column else ""
            return Slip(path, message, 'picture = "1/2 of 1/3"', column=column, words=words)
    return ModelPicture(product.text, product)


def step_meant(written: str | None, path: Path, folds: Folds | None, fold: Fold) -> int | Slip:
    """Find the step that is meant: by its number, or that of the page."""
    if written is None:
        if fold is None:
            message = phrase('"fold" is one fold only on a page for each fold')
            return Slip(path, message, _a_step(folds.folding if folds else ()))
        return fold[0]
    step = int(written) - 1
    if folds and not 0 <= step < folds.steps:
        message = phrase(
            "this lesson has no step {written}; it has {steps}", written=written, steps=folds.steps
        )
        return Slip(path, message, _a_step(folds.folding))
    if folds and step not in folds.folding:
        return Slip(path, phrase("step {written} folds nothing", written=written), _a_step(folds.folding))
    return step


def _a_step(folding: tuple[int, ...]) -> Said:
    """Name steps that would do."""
    if not folding:
        return phrase("name a step that folds, counted from 1")
    return either([f'"step {step + 1}"' for step in folding[:4]])


def product_meant(value: Any, path: Path, matter: Matter, example: str, step_example: str) -> Product | Slip:
    """Read a product that the grade multiplies, or find one of the lesson's own: ``product 1``.

    Args:
        value: as TOML gives it.
        path: where it stands.
        matter: what the lesson gives to its booklet.
        example: of a product that would do.
        step_example: of a step that would do, if it begins like one.
    """
    product = _product(value, path, matter, example, step_example)
    return product if isinstance(product, Slip) else _for_the_grade(product, path, matter)


def _for_the_grade(product: Product, path: Path, matter: Matter) -> Product | Slip:
    """Refuse a product that the lesson's grade does not multiply yet."""
    if matter.stage is Reach.NAMING:
        message = phrase("grade {grade} multiplies no fractions", grade=matter.grade)
        return Slip(path, message, 'number_line = "width"')
    if matter.stage is Reach.BY_WHOLES and not (product.first.whole or product.second.whole):
        message = phrase("grade {grade} multiplies fractions by whole numbers only", grade=matter.grade)
        return Slip(path, message, '"3 × 1/8"')
    return product


def _product(value: Any, path: Path, matter: Matter, example: str, step_example: str) -> Product | Slip:
    if isinstance(value, str) and (found := _PRODUCT.fullmatch(value.strip())):
        return _own_product(int(found["number"]), path, matter)
    if not isinstance(value, str) or not value.strip():
        return Slip(path, phrase("this must be a step or a product in quotes"), example)
    if _MEANT.match(value):
        return Slip(path, phrase("this is no step that can be shown here"), step_example)
    try:
        return parse_product(value)
    except SentenceRefused as refusal:
        words = refusal.words.rstrip("…")
        return Slip(path, refusal.message, refusal.hint, column=refusal.column, words=words)


def _own_product(number: int, path: Path, matter: Matter) -> Product | Slip:
    """Find a product of the lesson by its number, counted from 1."""
    if matter.products is None:
        return ANY_PRODUCT
    count = len(matter.products)
    if 1 <= number <= count:
        return matter.products[number - 1]
    message = phrase(
        "this lesson has no product {number}; its practice names {products}",
        number=number,
        products=counted("{count} product", "{count} products", count),
    )
    return Slip(path, message, phrase('practice = ["2/3 × 4/5", "3/4 × 1/2"] among the keys of the lesson'))
