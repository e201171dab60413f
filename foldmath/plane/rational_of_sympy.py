"""The one part of sympy that this package needs: what its ``QQ`` makes its elements with.

To import anything of sympy is to import all of it, a thousand modules of algebra, and all of mpmath, which
take longer than to fold a lesson and to print it.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from importlib.util import find_spec, module_from_spec
from typing import Any

PLACE = "sympy.external.gmpy"
"""Where sympy chooses its arithmetic: gmpy2, python-flint, or its own where neither is installed."""


def rational(place: str = PLACE) -> Any:
    """Give the class of the elements of ``QQ``.

    Args:
        place: the module of sympy that has it; where there is no such module, the domain itself is asked.
    """
    try:
        with _unopened("sympy"), _unopened("mpmath"):
            return import_module(place).MPQ
    except (ImportError, AttributeError):
        from sympy.polys.domains import QQ

        return QQ.dtype


@contextmanager
def _unopened(package: str) -> Iterator[None]:
    """Let modules of a package be imported by themselves, without what the package imports as a whole.

    Whoever imports the package later on gets the whole of it, and in it the same modules.
    """
    found = None if package in sys.modules else find_spec(package)
    if found is None:
        yield
        return
    before = {*sys.modules}
    sys.modules[package] = module_from_spec(found)
    try:
        yield
    finally:
        # What was imported meanwhile, it would be without: so packages in it are opened anew.
        for name in sys.modules.keys() - before:
            if name.split(".")[0] == package and hasattr(sys.modules[name], "__path__"):
                del sys.modules[name]
