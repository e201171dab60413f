"""What benchmarks share."""

import gc

import pytest

from foldmath.cli.console import NEW_OBJECTS


@pytest.fixture
def _as_a_command():
    """Look for garbage as seldom as a command does."""
    before = gc.get_threshold()
    gc.set_threshold(NEW_OBJECTS)
    yield
    gc.set_threshold(*before)
