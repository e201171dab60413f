"""Each kind of item is made from numbers, and refuses numbers that make no sense."""

import pytest
from answered_again import written

from foldmath.paper.steps import Axis, Edge, FoldEdge, Pleat
from foldmath.plane.numbers import ONE, ZERO
from foldmath.statements.answers import Folds
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import (
    NoSuchItem,
    Pieces,
    Reach,
    Repeated,
    Told,
    make_bigger_or_smaller,
    make_count_or_size,
    make_explain_all_of_it,
    make_explain_all_panels,
    make_explain_fewer_panels,
    make_explain_less,
    make_explain_more_panels,
    make_explain_same,
    make_how_many_pieces,
    make_mend,
    make_mend_adding,
    make_mend_count,
    make_mend_doubling,
    make_missing_factor,
    make_repeated_halving,
    make_same_size,
    make_which_fold,
)
from foldmath.statements.items.count_or_size import ARRANGEMENTS
from foldmath.statements.products import parse_product
from foldmath.statements.ratios import fraction, whole_number
from foldmath.statements.rules.folds import ADD_FOLDS
from foldmath.statements.rules.operations import KEEP_COMMON_DENOMINATOR, MULTIPLY_BOTH_BY_WHOLE
from foldmath.statements.sentences import About

HALF, THIRD = fraction(1, 2), fraction(1, 3)
TWO_THIRDS, FOUR_FIFTHS = fraction(2, 3), fraction(4, 5)
ONE_WHOLE, THREE = whole_number(1), whole_number(3)


def slips(item) -> dict[str, str]:
    return {wrong.rule.name: written(wrong.answer) for wrong in item.wrong}


class TestCountOrSize:
    @pytest.mark.parametrize("reach", Reach)
    @pytest.mark.parametrize("arrangement", range(len(ARRANGEMENTS)))
    def test_two_true_sentences_count_and_two_say_a_size(self, reach, arrangement):
        item = make_count_or_size(4, 2, reach, arrangement=arrangement)
        assert sorted(said.about.value for said in item.sentences) == ["count", "count", "size", "size"]
        assert all(check_claim(str(said.claim)).true for said in item.sentences)
        assert len({said.claim for said in item.sentences}) == 4

    @pytest.mark.parametrize("reach", [Reach.NAMING, Reach.BY_WHOLES])
    def test_a_size_is_that_of_one_panel_where_sizes_are_only_compared(self, reach):
        """1/4 = 2/8 and 2 × 1/8 = 1/4 are about two panels, so they are neither."""
        told = {about: [] for about in About}
        for sentence in make_count_or_size(4, 2, reach).sentences:
            told[sentence.about].append(str(sentence.claim))
        assert (told[About.COUNT], told[About.SIZE]) == (["4 × 2 = 8", "8 > 4"], ["1/8 < 1/4", "1 > 1/8"])

    def test_the_slips_are_to_swap_the_two_and_to_sort_by_the_sign(self):
        item = make_count_or_size(4, 2, Reach.PAIRS)
        assert str(item.answer) == "count, size, count, size"
        assert slips(item)["swap_count_and_size"] == "size, count, size, count"


class TestMissingFactor:
    def test_the_box_stands_on_either_side(self):
        right = make_missing_factor(TWO_THIRDS, FOUR_FIFTHS, box_first=False)
        left = make_missing_factor(fraction(1, 4), HALF, box_first=True)
        assert (right.question, str(right.answer)) == ("2/3 × □ = 8/15", "4/5")
        assert (left.question, str(left.answer), left.first, left.second) == (
            "□ × 1/2 = 1/8",
            "1/4",
            None,
            HALF,
        )

    def test_the_slips_multiply_count_or_subtract(self):
        assert slips(make_missing_factor(TWO_THIRDS, FOUR_FIFTHS, box_first=False)) == {
            "multiply_what_is_shown": "16/45",
            "subtract_tops_and_bottoms": "6/12",
            "subtract_to_undo": "2/15",
        }
        assert slips(make_missing_factor(fraction(1, 4), HALF, box_first=True))["count_for_size"] == "4"

    def test_whole_numbers_of_panels_are_parted(self):
        item = make_missing_factor(whole_number(4), THREE, box_first=False)
        assert (item.question, str(item.answer), item.counts) == ("4 × □ = 12", "3", True)


class TestSameSize:
    def test_a_fold_across_gives_an_equal_fraction(self):
        item = make_same_size(fraction(2, 4), 2)
        assert (item.question, str(item.answer)) == ("2/4 = □/8", "4/8")
        assert len(item.before.twice) == 2
        assert len(item.after.twice) == 4

    @pytest.mark.parametrize("parts", range(2, 13))
    def test_the_fold_that_shows_it_is_across_the_shaded_columns(self, parts):
        fold = make_same_size(HALF, parts).fold
        assert fold == (Pleat(Axis.HEIGHT, parts) if parts > 2 else FoldEdge(Edge.TOP, ZERO))

    def test_the_slips_keep_the_numerator_or_add_to_both(self):
        assert slips(make_same_size(HALF, 3)) == {"keep_numerator": "1/6", "add_to_both": "5/6"}


class TestBiggerOrSmaller:
    @pytest.mark.parametrize(("first", "sign"), [(TWO_THIRDS, "<"), (fraction(4, 3), ">"), (ONE_WHOLE, "=")])
    def test_the_first_factor_decides(self, first, sign):
        item = make_bigger_or_smaller(first, FOUR_FIFTHS)
        assert (str(item.answer), str(item.working)) == (sign, f"{first} {sign} 1")

    @pytest.mark.parametrize(
        ("second", "beside", "question", "working"),
        [
            (fraction(2, 5), whole_number(3), "3 × 2/5 ○ 3", "2/5 < 1"),
            (fraction(2, 5), ONE_WHOLE, "3 × 2/5 ○ 1", "2/5 > 1/3, 3 × 1/3 = 1"),
            (fraction(2, 8), ONE_WHOLE, "3 × 2/8 ○ 1", "2/8 < 1/3, 3 × 1/3 = 1"),
            (THIRD, ONE_WHOLE, "3 × 1/3 ○ 1", "1/3 = 1/3, 3 × 1/3 = 1"),
        ],
    )
    def test_beside_its_first_factor_or_1_the_second_decides(self, second, beside, question, working):
        item = make_bigger_or_smaller(whole_number(3), second, beside)
        assert (item.question, str(item.working)) == (question, working)
        assert str(item.answer) == working.split()[1]

    def test_multiplying_does_not_always_make_more(self):
        assert slips(make_bigger_or_smaller(TWO_THIRDS, FOUR_FIFTHS)) == {"multiplying_makes_more": ">"}


class TestHowManyPieces:
    def test_four_sheets_give_twenty_fifths(self):
        """4 ÷ (1/5) = 20: Common Core State Standards for Mathematics (2010), 5.NF.B.7.b."""
        item = make_how_many_pieces(Pieces.SHEETS_BY_PART, 4, 5)
        assert (str(item.question), str(item.answer)) == ("4 ÷ 1/5", "20")
        assert slips(item)["take_part_of_number"] == "4/5"

    def test_a_third_cut_in_four_is_a_twelfth(self):
        """(1/3) ÷ 4 = 1/12: Common Core State Standards for Mathematics (2010), 5.NF.B.7.a."""
        item = make_how_many_pieces(Pieces.PART_BY_NUMBER, 4, 3)
        assert (str(item.question), str(item.answer)) == ("1/3 ÷ 4", "1/12")
        assert slips(item) == {
            "multiply_for_divide": "4/3",
            "count_for_size": "12",
            "add_denominators": "1/7",
        }

    def test_a_class_that_does_not_divide_fractions_counts(self):
        item = make_how_many_pieces(Pieces.COUNT, 3, 4)
        assert (item.question, str(item.working), str(item.answer)) == (None, "3 × 4 = 12", "12")


class TestRepeatedHalving:
    @pytest.mark.parametrize(
        ("repeated", "question", "working"),
        [
            (Repeated.FOLDS, None, "2 × 2 × 2 = 8"),
            (Repeated.PRODUCT, "1/2 × 1/2 × 1/2", "1/2 × 1/2 × 1/2 = 1/8"),
            (Repeated.POWER, "(1/2)³", "1/2 × 1/2 × 1/2 = 1/8"),
        ],
    )
    def test_three_halvings_are_told_in_three_ways(self, repeated, question, working):
        item = make_repeated_halving((HALF,) * 3, repeated)
        assert (item.question and str(item.question)) == question
        assert (str(item.working), str(item.answer), item.panels) == (working, "1/8", 8)

    def test_adding_twos_gives_a_sixth(self):
        """A prediction of 6 panels at the third halving means adding twos [common practice, no source]."""
        assert slips(make_repeated_halving((HALF,) * 3, Repeated.FOLDS))["add_folds"] == "1/6"

    def test_two_different_folds_are_told_as_folds_and_added_make_a_fifth(self):
        item = make_repeated_halving((HALF, THIRD), Repeated.FOLDS)
        assert (item.question, str(item.working), str(item.answer)) == (None, "2 × 3 = 6", "1/6")
        assert slips(item)["add_folds"] == "1/5"

    def test_the_order_of_factors_makes_no_other_question(self):
        one, other = ((HALF, THIRD, TWO_THIRDS), (TWO_THIRDS, HALF, THIRD))
        asks = {make_repeated_halving(factors, Repeated.PRODUCT).asks for factors in (one, other)}
        assert len(asks) == 1


class TestMend:
    def test_a_worked_answer_shows_the_slip_and_its_middle_step(self):
        item = make_mend(parse_product("3/5 × 1/4"), KEEP_COMMON_DENOMINATOR)
        assert tuple(map(str, item.lines)) == ("3/5 × 1/4", "12/20 × 5/20", "60/20")
        assert str(item.answer) == "3/5 × 1/4 = 3/20"
        assert "60/20" not in slips(item).values()

    def test_a_count_taken_for_a_size_is_mended_either_way(self):
        item = make_mend_count(4, 2)
        assert (str(item.claim), str(item.answer)) == ("4 × 1/2 = 8", "4 × 2 = 8")
        assert all(check_claim(str(form)).true for form in (item.answer, *item.accepted))

    def test_adding_twos_is_mended_by_doubling(self):
        item = make_mend_doubling(3)
        assert (tuple(map(str, item.lines)), str(item.answer)) == (
            ("2 × 2 × 2", "2 + 2 + 2", "6"),
            "2 × 2 × 2 = 8",
        )

    def test_parts_that_are_added_are_mended_by_multiplying(self):
        item = make_mend_adding(4, 3, Told.PANELS_FOLDED)
        assert tuple(map(str, item.lines)) == ("4 × 3", "4 + 3", "7")
        assert (str(item.answer), [str(wrong.answer) for wrong in item.wrong]) == ("4 × 3 = 12", ["4"])


class TestExplain:
    @pytest.mark.parametrize(
        ("item", "statement"),
        [
            (make_explain_less(parse_product("2/3 of 4/5")), "2/3 of 4/5 < 4/5"),
            (make_explain_less(parse_product("3 × 2/5")), "3 × 2/5 > 2/5"),
            (make_explain_more_panels(4, 2), "1/8 < 1/4"),
            (make_explain_same(HALF, 2), "1/2 = 2/4"),
            (make_explain_fewer_panels(8, 3, 5), "3/8 < 5/8"),
            (make_explain_all_panels(6), "6/6 = 1"),
            (make_explain_all_of_it(5, TWO_THIRDS), "5/5 × 2/3 = 2/3"),
        ],
    )
    def test_a_true_statement_has_a_reason_in_figures(self, item, statement):
        assert str(item.statement) == statement
        assert check_claim(statement).true
        assert all(check_claim(reason).true for reason in str(item.answer).split(", "))


class TestNonsense:
    @pytest.mark.parametrize(
        "make",
        [
            lambda: make_count_or_size(0, 2, Reach.PAIRS),
            lambda: make_count_or_size(4, 1, Reach.PAIRS),
            lambda: make_missing_factor(ONE_WHOLE, FOUR_FIFTHS, box_first=False),
            lambda: make_missing_factor(whole_number(0), FOUR_FIFTHS, box_first=False),
            lambda: make_same_size(fraction(4, 4), 2),
            lambda: make_same_size(HALF, 1),
            lambda: make_same_size(HALF, 13),
            lambda: make_bigger_or_smaller(whole_number(0), HALF),
            lambda: make_bigger_or_smaller(TWO_THIRDS, HALF, ONE_WHOLE),
            lambda: make_explain_fewer_panels(8, 5, 5),
            lambda: make_explain_all_panels(1),
            lambda: make_explain_all_of_it(3, whole_number(0)),
            lambda: make_how_many_pieces(Pieces.COUNT, 1, 4),
            lambda: make_how_many_pieces(Pieces.PART_BY_NUMBER, 4, 13),
            lambda: make_repeated_halving((HALF,), Repeated.FOLDS),
            lambda: make_repeated_halving((HALF, fraction(3, 2)), Repeated.PRODUCT),
            lambda: make_repeated_halving((HALF, THIRD), Repeated.POWER),
            lambda: make_repeated_halving((TWO_THIRDS, TWO_THIRDS), Repeated.FOLDS),
            lambda: make_repeated_halving((HALF, TWO_THIRDS), Repeated.FOLDS),
            lambda: make_repeated_halving((HALF, HALF, THIRD), Repeated.FOLDS),
            lambda: make_mend(parse_product("1/2 × 1/3"), MULTIPLY_BOTH_BY_WHOLE),
            lambda: make_mend(parse_product("1 × 2/3"), MULTIPLY_BOTH_BY_WHOLE),
            lambda: make_mend_count(4, 1),
            lambda: make_mend_doubling(2),
            lambda: make_mend_adding(2, 2, Told.FOLDED_TWICE),
            lambda: make_mend_adding(1, 4, Told.PANELS_FOLDED),
            lambda: make_explain_less(parse_product("1 × 2/3")),
            lambda: make_explain_more_panels(1, 2),
            lambda: make_explain_same(fraction(3, 2), 2),
            lambda: make_which_fold(Folds(()), (), ()),
            lambda: make_which_fold(Folds((FoldEdge(Edge.LEFT, ZERO),)), (), ()),
        ],
    )
    def test_numbers_that_make_no_item_are_refused(self, make):
        with pytest.raises(NoSuchItem):
            make()


class TestWhichFold:
    HALVED = Folds((FoldEdge(Edge.LEFT, ONE),))
    TURNED = Folds((FoldEdge(Edge.TOP, ZERO),))
    THIRDS = Folds((Pleat(Axis.WIDTH, 3),))

    def test_other_steps_with_the_same_sizes_are_accepted_and_the_rest_are_slips(self):
        item = make_which_fold(
            self.HALVED, (self.TURNED, self.THIRDS), ((ADD_FOLDS, self.THIRDS), (ADD_FOLDS, self.TURNED))
        )
        assert item.tally == ((2, HALF),)
        assert item.accepted == (self.TURNED,)
        assert slips(item) == {"add_folds": "fold the width like a fan, into 3 equal parts"}
        assert str(item.working) == "2 × 1/2 = 1"
