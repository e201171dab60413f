"""Items of practice: takes numbers, gives what is asked with its answer, its working and likely slips."""

from foldmath.statements.items.bigger_or_smaller import BiggerOrSmallerItem, make_bigger_or_smaller
from foldmath.statements.items.count_or_size import CountOrSizeItem, make_count_or_size
from foldmath.statements.items.explain import (
    ExplainItem,
    Frame,
    make_explain_all_of_it,
    make_explain_as_many_in_all,
    make_explain_equal_groups,
    make_explain_less,
    make_explain_part_of_less,
    make_explain_part_of_panels,
    make_explain_sheet_turned,
)
from foldmath.statements.items.explain_panels import (
    make_explain_all_panels,
    make_explain_bigger_panels,
    make_explain_fewer_panels,
    make_explain_half_of_panels,
    make_explain_more_panels,
    make_explain_more_than_all,
    make_explain_one_missing,
    make_explain_round_half,
    make_explain_same,
    make_explain_sheets_filled,
)
from foldmath.statements.items.how_many_pieces import HowManyPiecesItem, Pieces, make_how_many_pieces
from foldmath.statements.items.item import BOX, Item, ItemKind, Level, NoSuchItem, Reach, figures_in
from foldmath.statements.items.mend import (
    MendItem,
    Told,
    make_mend,
    make_mend_adding,
    make_mend_count,
    make_mend_doubling,
)
from foldmath.statements.items.missing_factor import MissingFactorItem, make_missing_factor
from foldmath.statements.items.own import OwnItem, make_own
from foldmath.statements.items.repeated_halving import Repeated, RepeatedHalvingItem, make_repeated_halving
from foldmath.statements.items.same_size import SameSizeItem, make_same_size
from foldmath.statements.items.shade import ShadeItem, make_shade
from foldmath.statements.items.sheets import Cell, ModelSheet, Sheets, sheets_of
from foldmath.statements.items.which_fold import WhichFoldItem, make_which_fold
from foldmath.statements.rules.problems import Sorted

__all__ = [
    "BOX",
    "BiggerOrSmallerItem",
    "Cell",
    "CountOrSizeItem",
    "ExplainItem",
    "Frame",
    "HowManyPiecesItem",
    "Item",
    "ItemKind",
    "Level",
    "MendItem",
    "MissingFactorItem",
    "ModelSheet",
    "NoSuchItem",
    "OwnItem",
    "Pieces",
    "Reach",
    "Repeated",
    "RepeatedHalvingItem",
    "SameSizeItem",
    "ShadeItem",
    "Sheets",
    "Sorted",
    "Told",
    "WhichFoldItem",
    "figures_in",
    "make_bigger_or_smaller",
    "make_count_or_size",
    "make_explain_all_of_it",
    "make_explain_all_panels",
    "make_explain_as_many_in_all",
    "make_explain_bigger_panels",
    "make_explain_equal_groups",
    "make_explain_fewer_panels",
    "make_explain_half_of_panels",
    "make_explain_less",
    "make_explain_more_panels",
    "make_explain_more_than_all",
    "make_explain_one_missing",
    "make_explain_part_of_less",
    "make_explain_part_of_panels",
    "make_explain_round_half",
    "make_explain_same",
    "make_explain_sheet_turned",
    "make_explain_sheets_filled",
    "make_how_many_pieces",
    "make_mend",
    "make_mend_adding",
    "make_mend_count",
    "make_mend_doubling",
    "make_missing_factor",
    "make_own",
    "make_repeated_halving",
    "make_same_size",
    "make_shade",
    "make_which_fold",
    "sheets_of",
]
