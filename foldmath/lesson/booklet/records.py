"""What a page records and pictures: a fold of the lesson, by its step, or a product."""

import re
from dataclasses import dataclass
from typing import Any

from foldmath.lesson.booklet.plan import (
    About,
    FoldPicture,
    ModelPicture,
    RecordFold,
    RecordProduct,
)
from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.shape import Slip
from foldmath.phrases import Said, either, phrase
from foldmath.plane.numbers import ONE
from foldmath.statements.products import Product, parse_product
from foldmath.statements.refusals import SentenceRefused

MOST_PARTS = 24
"""A model on a page of a booklet is cut into no more parts each way (common practice, no source)."""

_FOLD = re.compile(r"(?:fold|step\s*(?P<step>\d{1,4}))(?:\s+(?P<about>count|size))?", re.IGNORECASE)
_MEANT = re.compile(r"\s*(?:step|fold)", re.IGNORECASE)


@dataclass(frozen=True)
class Folds:
    """The folds of a lesson.

    Args:
        steps: how many steps it has.
        folding: those that fold, counted from 0.
        cutting: those of them that make new panels, which have sentences to record.
    """

    steps: int
    folding: tuple[int, ...]
    cutting: tuple[int, ...]


def record(
    value: Any, path: Path, folds: Folds | None, fold: tuple[int, int] | None
) -> RecordFold | RecordProduct | Slip:
    """Read ``fold``, ``fold count``, ``step 2``, ``step 2 count`` or a product.

    Args:
        value: as TOML gives it.
        path: where it stands.
        folds: of the lesson; None if its steps cannot be done, so that none is looked for.
        fold: the step that the page is of, and the fold's number.
    """
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if found := _FOLD.fullmatch(text):
        step = _step(found["step"], path, folds, fold)
        if isinstance(step, Slip):
            return step
        if folds and step not in folds.cutting:
            message = phrase(
                "step {step} makes no new panels, so it has no sentence to record", step=step + 1
            )
            return Slip(path, message, _a_step(folds.cutting))
        return RecordFold(step, About((found["about"] or About.SIZE.value).casefold()))
    product = _product(value, path, 'record = "2/3 × 4/5"', 'record = "step 2 count"')
    return product if isinstance(product, Slip) else RecordProduct(product.text, product)


def picture(
    value: Any, path: Path, folds: Folds | None, fold: tuple[int, int] | None
) -> FoldPicture | ModelPicture | Slip:
    """Read ``fold``, ``step 2``, or a product whose area model is drawn; arguments as for ``record``."""
    text = " ".join(value.split()) if isinstance(value, str) else ""
    if (found := _FOLD.fullmatch(text)) and not found["about"]:
        step = _step(found["step"], path, folds, fold)
        return step if isinstance(step, Slip) else FoldPicture(step)
    product = _product(value, path, 'picture = "1/2 of 1/3"', 'picture = "step 2"')
    if isinstance(product, Slip):
        return product
    for factor in (product.first, product.second):
        if factor.value > ONE or factor.denominator > MOST_PARTS:
            message = phrase(
                "an area model here shows factors up to 1, with at most {most} parts",
                most=MOST_PARTS,
            )
            column = value.find(factor.text) + 1
            return Slip(path, message, 'picture = "1/2 of 1/3"', False, column, factor.text if column else "")
    return ModelPicture(product.text, product)


def _step(written: str | None, path: Path, folds: Folds | None, fold: tuple[int, int] | None) -> int | Slip:
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


def _product(value: Any, path: Path, example: str, step_example: str) -> Product | Slip:
    if not isinstance(value, str) or not value.strip():
        return Slip(path, phrase("this must be a step or a product in quotes"), example)
    if _MEANT.match(value):
        return Slip(path, phrase("this is no step that can be shown here"), step_example)
    try:
        return parse_product(value)
    except SentenceRefused as refusal:
        words = refusal.words.rstrip("…")
        return Slip(path, refusal.message, refusal.hint, False, refusal.column, words)
