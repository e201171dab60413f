"""Paper sizes against the rules by which their standards were made."""

from itertools import pairwise

import pytest

from foldmath.paper.sizes import PaperSize, paper_named
from foldmath.plane.numbers import denominator, exact, numerator


def millimetres(name: str) -> tuple[int, int]:
    size = paper_named(name)
    assert size.unit == "mm"
    assert denominator(size.width) == denominator(size.height) == 1
    return numerator(size.width), numerator(size.height)


class TestIso216:
    """ISO 216:2007, A and B series: each size is the larger one, its long side halved, rounded down."""

    @pytest.mark.parametrize("series", ["A", "B"])
    def test_each_size_is_the_larger_one_halved_and_rounded_down(self, series):
        sizes = [millimetres(f"{series}{number}") for number in range(9)]
        for (width, height), smaller in pairwise(sizes):
            assert smaller == (height // 2, width)

    def test_a0_is_a_square_metre_but_for_its_rounded_sides(self):
        width, height = millimetres("A0")
        assert abs(width * height - 10**6) < height

    @pytest.mark.parametrize("series", ["A", "B"])
    def test_the_ratio_of_sides_is_the_square_root_of_two_to_the_millimetre(self, series):
        for number in range(9):
            width, height = millimetres(f"{series}{number}")
            # height / width = sqrt 2 within one millimetre: squared, with no root taken.
            assert (height - 1) ** 2 < 2 * width**2 < (height + 1) ** 2 or (
                2 * (width - 1) ** 2 < height**2 < 2 * (width + 1) ** 2
            )

    def test_half_of_a4_is_not_a5(self):
        assert paper_named("A4").height / 2 - paper_named("A5").width == exact(1, 2)


class TestJisB:
    """JIS P 0138: B0 is 1030 mm by 1456 mm; each size is halved as in ISO 216."""

    def test_each_size_is_the_larger_one_halved_and_rounded_down(self):
        sizes = [millimetres(f"JIS B{number}") for number in range(7)]
        assert sizes[0] == (1030, 1456)
        for (width, height), smaller in pairwise(sizes):
            assert smaller == (height // 2, width)


class TestAnsi:
    """https://en.wikipedia.org/wiki/ANSI/ASME_Y14.1: A to E double, ratios 22/17 and 17/11 in turn."""

    SIZES = tuple(f"ANSI {letter}" for letter in "ABCDE")

    def test_each_size_is_the_larger_one_halved_exactly(self):
        for smaller, larger in pairwise(map(paper_named, self.SIZES)):
            assert (smaller.width, smaller.height) == (larger.height / 2, larger.width)

    def test_the_ratios_of_sides_take_turns(self):
        ratios = [ratio_of(paper_named(name)) for name in self.SIZES]
        assert ratios == [exact(22, 17), exact(17, 11)] * 2 + [exact(22, 17)]


class TestArch:
    """https://en.wikipedia.org/wiki/ANSI/ASME_Y14.1: Arch A to E double, ratios 4/3 and 3/2 in turn."""

    def test_the_ratios_of_sides_take_turns(self):
        ratios = [ratio_of(paper_named(f"Arch {letter}")) for letter in "ABCDE"]
        assert ratios == [exact(4, 3), exact(3, 2)] * 2 + [exact(4, 3)]


def test_half_letter_is_half_of_letter():
    """From memory: the statement size; by arithmetic, letter halved."""
    letter, half = paper_named("letter"), paper_named("half-letter")
    assert (half.width, half.height) == (letter.height / 2, letter.width)


def ratio_of(size: PaperSize):
    return size.height / size.width
