"""Checking a claim: whether it is true, what its side really is, and what was probably meant."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.statements.checking.claims import check_claim, read_claim, verdict_json
from foldmath.statements.composing import equation, plus
from foldmath.statements.ratios import fraction
from foldmath.statements.sameness import same


def meant(claim):
    return list(map(str, check_claim(claim).meant))


def same_claim(one, other):
    return same(read_claim(one), read_claim(other))


class TestCountAndSize:
    """Count and size are two sentences; 4 × 1/2 = 8 mixes them up."""

    def test_halving_four_quarters_written_as_one_sentence_is_false(self):
        verdict = check_claim("4 x 1/2 = 8")
        assert not verdict.true
        assert str(verdict.claim) == "4 × 1/2 = 8"
        assert str(verdict.really) == "4 × 1/2 = 2"
        assert verdict.slip.name == "count_for_size"

    @pytest.mark.parametrize(
        ("claim", "mended"),
        [
            ("4 × 1/2 = 8", ["4 × 2 = 8", "4 ÷ 1/2 = 8", "1/4 × 1/2 = 1/8"]),
            ("8 = 4 × 1/2", ["8 = 4 × 2", "8 = 4 ÷ 1/2", "1/8 = 1/4 × 1/2"]),
            ("1/4 × 1/2 = 8", ["1/4 × 1/2 = 1/8", "4 × 2 = 8", "4 ÷ 1/2 = 8"]),
            ("4 × 2 = 1/8", ["4 × 2 = 8", "1/4 × 1/2 = 1/8", "1/4 ÷ 2 = 1/8"]),
            ("1/2 of 4 = 8", ["2 × 4 = 8", "4 ÷ 1/2 = 8", "1/2 of 1/4 = 1/8"]),
        ],
    )
    def test_the_sentence_of_the_count_and_the_sentence_of_the_size_are_both_offered(self, claim, mended):
        assert meant(claim) == mended


class TestOtherSlips:
    @pytest.mark.parametrize(
        ("claim", "really", "slip"),
        [
            ("1/2 + 1/4 = 2/6", "1/2 + 1/4 = 3/4", "add_tops_and_bottoms"),
            ("2/3 × 4/5 = 6/8", "2/3 × 4/5 = 8/15", "add_tops_and_bottoms"),
            ("3/5 × 1/5 = 3/5", "3/5 × 1/5 = 3/25", "keep_common_denominator"),
            ("3 × 2/5 = 6/15", "3 × 2/5 = 6/5", "multiply_both_by_whole"),
            ("60/20 = 3/5 of 1/4", "3/5 of 1/4 = 3/20", "keep_common_denominator"),
            ("3 × 2/5 = 6", "3 × 2/5 = 6/5", "drop_denominator"),
            ("8 × 1/4 = 8", "8 × 1/4 = 2", "drop_denominator"),
            ("2/3 of 4/5 = 8/12", "2/3 of 4/5 = 8/15", "part_for_whole"),
            ("2/3 of 4/5 = 14/15", "2/3 of 4/5 = 8/15", "all_shaded"),
            ("2³ = 6", "2³ = 8", "times_exponent"),
            ("(1/2)³ = 1/6", "(1/2)³ = 1/8", "times_exponent"),
            ("1/2 × 1/2 × 1/2 = 1/6", "1/2 × 1/2 × 1/2 = 1/8", "add_folds"),
        ],
    )
    def test_a_pupils_rule_is_named_and_the_answer_corrected(self, claim, really, slip):
        verdict = check_claim(claim)
        assert (str(verdict.really), verdict.slip.name) == (really, slip)
        assert len(verdict.meant) == 1
        assert same(verdict.meant[0], read_claim(really))

    def test_twos_added_where_folding_multiplies_are_named(self):
        assert check_claim("2 × 2 × 2 = 6").slip.name == "add_folds"

    @pytest.mark.parametrize(
        ("claim", "really", "mended"),
        [
            ("1/2 × 1/2 = 1/4 × 1/2 = 1/8", "1/2 × 1/2 = 1/4", "1/2 × 1/2 × 1/2 = 1/8"),
            ("3 + 4 = 7 × 2 = 14", "3 + 4 = 7", "(3 + 4) × 2 = 14"),
            ("2 × 2 = 4 × 2 = 9", "2 × 2 = 4", "2 × 2 × 2 = 8"),
            ("1/2 = 2/4 × 3 = 6/4", "2/4 × 3 = 3/2", "1/2 × 3 = 6/4"),
        ],
    )
    def test_equals_signs_that_run_on_are_named_and_the_steps_put_into_one(self, claim, really, mended):
        verdict = check_claim(claim)
        assert (verdict.slip.name, str(verdict.really)) == ("run_on_equals", really)
        assert meant(claim) == [mended]

    @pytest.mark.parametrize("claim", ["1/2 × 1/2 = 1/3 × 1/2 = 1/8", "6 = 2 × 2 = 4 × 2 = 8"])
    def test_an_equals_sign_runs_on_only_from_the_answer_before(self, claim):
        assert check_claim(claim).slip is None

    @pytest.mark.parametrize(
        ("claim", "right"), [("−5 = 5", "−5 < 5"), ("1/2 = −1/2", "1/2 > −1/2"), ("−1 = −2", "−1 > −2")]
    )
    def test_numbers_below_zero_are_compared_and_what_is_meant_is_a_whole_sentence(self, claim, right):
        assert (str(check_claim(claim).really), meant(claim)) == (right, [right])

    def test_an_answer_by_no_rule_names_none(self):
        assert check_claim("2/3 × 4/5 = 7/11").slip is None

    @pytest.mark.parametrize(
        ("claim", "mended"),
        [
            ("2 × 3 = 5", "2 + 3 = 5"),
            ("2 + 3 = 6", "2 × 3 = 6"),
            ("3/4 − 1/4 = 1", "3/4 + 1/4 = 1"),
            ("1/4 − 1/2 = 1/4", "1/2 − 1/4 = 1/4"),
            ("2 ÷ 6 = 3", "6 ÷ 2 = 3"),
            ("1/2 ÷ 4 = 8", "4 ÷ 1/2 = 8"),
            ("2/3 × 4/5 = 5/6", "2/3 ÷ 4/5 = 5/6"),
        ],
    )
    def test_a_sign_or_an_order_mistaken_for_another_is_mended(self, claim, mended):
        assert meant(claim)[0] == mended


class TestComparing:
    @pytest.mark.parametrize(
        ("claim", "right"),
        [
            ("1/3 > 1/2", "1/3 < 1/2"),
            ("1/2 < 2/4", "1/2 = 2/4"),
            ("1/2 ≠ 2/4", "1/2 = 2/4"),
            ("3 ≤ 2", "3 ≥ 2"),
            ("1/2 of 1/4 > 1/4", "1/2 of 1/4 < 1/4"),
            ("2/5 + 1/2 < 1/2", "2/5 + 1/2 > 1/2"),
            ("1/2 = 2/3", "1/2 < 2/3"),
            ("1/2 = 2/4 = 4/6", "1/2 = 2/4 < 4/6"),
        ],
    )
    def test_a_false_comparison_gets_the_right_one(self, claim, right):
        assert meant(claim) == [right]

    def test_the_first_comparison_that_fails_in_a_chain_is_pointed_out(self):
        verdict = check_claim("2/3 + 5/4 = 8/12 + 15/12 = 23/24")
        assert verdict.fails == 1
        assert str(verdict.really) == "8/12 + 15/12 = 23/12"
        assert [str(claim) for claim in verdict.meant] == ["2/3 + 5/4 = 8/12 + 15/12 = 23/12"]

    def test_a_true_chain_needs_no_mending(self):
        verdict = check_claim("1/2 = 2/4 = 4/8")
        assert (verdict.true, verdict.fails, verdict.meant, verdict.slip) == (True, None, (), None)


class TestJson:
    def test_numbers_are_exact_strings_in_lowest_terms(self):
        assert verdict_json(check_claim("4 * 1/2 = 8")) == {
            "claim": "4 × 1/2 = 8",
            "true": False,
            "left": "2",
            "right": "8",
            "really": "4 × 1/2 = 2",
            "meant": ["4 × 2 = 8", "4 ÷ 1/2 = 8", "1/4 × 1/2 = 1/8"],
            "slip": "count_for_size",
        }

    def test_a_true_claim_has_the_same_keys(self):
        said = verdict_json(check_claim("2/4 = ½"))
        assert said == {
            "claim": "2/4 = 1/2",
            "true": True,
            "left": "1/2",
            "right": "1/2",
            "really": "2/4 = 1/2",
            "meant": [],
            "slip": None,
        }


class TestSameClaim:
    @pytest.mark.parametrize(
        ("one", "other"),
        [
            ("2 × 4 = 8", "4 × 2 = 8"),
            ("8 = 2 x 4", "4 × 2 = 8"),
            ("1/2 of 1/4 = 1/8", "1/4 × 1/2 = 1/8"),
            ("1 + 1 × 2 = 3", "2 × 1 + 1 = 3"),
            ("4 ÷ 2 × 3 = 6", "3 × 4 ÷ 2 = 6"),
            ("1 − 1/4 + 2 = 11/4", "2 + 1 − 1/4 = 11/4"),
            ("1/2 > 1/4", "1/4 < 1/2"),
            ("1/2 = 2/4 = 4/8", "4/8 = 1/2 = 2/4"),
        ],
    )
    def test_order_of_terms_factors_and_sides_does_not_matter(self, one, other):
        assert same_claim(one, other)

    @pytest.mark.parametrize(
        ("one", "other"),
        [
            ("1/2 of 2/3 = 2/6", "1/2 of 2/3 = 1/3"),
            ("4 × 2 = 8", "4 ÷ 1/2 = 8"),
            ("4 × 2 = 8", "1/4 × 1/2 = 1/8"),
            ("4 ÷ 2 = 2", "2 ÷ 4 = 2"),
            ("3 − 1 = 2", "1 − 3 = 2"),
            ("1/2 > 1/4", "1/2 < 1/4"),
            ("1/2 > 1/4", "1/2 ≥ 1/4"),
        ],
    )
    def test_other_terms_and_other_signs_make_another_claim(self, one, other):
        assert not same_claim(one, other)

    def test_the_sum_of_as_many_panels_as_a_sheet_may_have_is_compared_and_written(self):
        ones = equation(plus(*[fraction(1, 4096)] * 4096), 1)
        assert same(ones, ones)
        assert str(ones) == " + ".join(["1/4096"] * 4096) + " = 1"


numbers = st.one_of(
    st.integers(1, 12).map(str),
    st.builds("{}/{}".format, st.integers(1, 12), st.integers(2, 12)),
)
signs = st.sampled_from(["×", "÷", "+", "−", "of"])


@settings(max_examples=150, deadline=None)
@given(numbers, signs, numbers, st.sampled_from("=<>≠≤≥"), numbers)
def test_whatever_is_really_so_or_was_meant_is_true(first, sign, second, comparison, answer):
    verdict = check_claim(f"{first} {sign} {second} {comparison} {answer}")
    assert check_claim(str(verdict.really)).true
    assert all(check_claim(str(meant)).true for meant in verdict.meant)
    assert bool(verdict.meant) is not verdict.true
    assert len({*verdict.meant}) == len(verdict.meant) <= 4


@settings(max_examples=100, deadline=None)
@given(numbers, st.sampled_from(["×", "of", "+"]), numbers, numbers)
def test_a_claim_is_the_same_with_its_numbers_changed_over(first, sign, second, answer):
    assert same_claim(f"{first} {sign} {second} = {answer}", f"{answer} = {second} {sign} {first}")
