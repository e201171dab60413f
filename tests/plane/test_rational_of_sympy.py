"""Numbers are sympy's own, though the rest of sympy stays where it is."""

import os
import subprocess
import sys

import pytest
from sympy.polys.domains import QQ

from foldmath.plane.rational_of_sympy import rational

ALONE = """
import sys
from foldmath.plane.numbers import exact
opened = [name for name in ("sympy", "mpmath") if name in sys.modules]
import sympy
from sympy.polys.domains import QQ
print(opened, type(exact(1)) is QQ.dtype, QQ(1, 3) + exact(1, 2), sympy.factor("x**2 - 1"))
import mpmath
print(sympy.external.__name__, mpmath.libmp.__name__, sympy.sqrt(2).evalf(5))
"""


@pytest.mark.parametrize("arithmetic", ["auto", "python"])
def test_an_exact_number_is_an_element_of_the_domain_and_sympy_is_whole_for_who_imports_it(arithmetic):
    done = subprocess.run(
        [sys.executable, "-c", ALONE],
        env=os.environ | {"SYMPY_GROUND_TYPES": arithmetic},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout == "[] True 5/6 (x - 1)*(x + 1)\nsympy.external mpmath.libmp 1.4142\n"


def test_where_sympy_keeps_it_elsewhere_the_domain_is_asked():
    assert rational("sympy.nowhere") is QQ.dtype
