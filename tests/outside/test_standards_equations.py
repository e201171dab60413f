"""The worked equations of three curricula are read as they are printed, and found true.

The equations, each with its code and source, are in ``standards_equations.toml`` beside this file.
"""

import tomllib
from pathlib import Path

import pytest

from foldmath.statements.checking.claims import check_claim

STANDARDS = tomllib.loads(Path(__file__).with_name("standards_equations.toml").read_text(encoding="utf-8"))
EQUATIONS = [
    pytest.param(equation, id=f"{code}: {equation}")
    for standard in STANDARDS["standards"]
    for code, equations in standard["equations"].items()
    for equation in equations
]


@pytest.mark.parametrize("equation", EQUATIONS)
def test_the_equation_is_read_and_found_true(equation):
    assert check_claim(equation).true


def test_the_sum_that_the_standard_calls_wrong_is_found_wrong():
    """CCSSM (2010) 5.NF.A.2: 2/5 + 1/2 = 3/7 is incorrect, as 3/7 < 1/2."""
    assert not check_claim("2/5 + 1/2 = 3/7").true
    assert check_claim("2/5 + 1/2 > 1/2 > 3/7").true
