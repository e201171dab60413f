"""No test fails by chance: laws are tried on the same examples everywhere, however slow the machine is."""

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

TESTS = Path(__file__).parent
SUPPRESSED = re.compile(r"suppress_health_check=\[([^\]]*)\]")


def test_laws_are_tried_on_the_same_examples_on_every_machine():
    alike = settings.get_profile("alike")
    assert (alike.derandomize, alike.database) == (True, None)
    assert not settings.get_profile("fresh").derandomize


@pytest.mark.parametrize("profile", ["alike", "fresh"])
def test_no_law_fails_for_a_slow_machine(profile):
    assert settings.get_profile(profile).deadline is None
    assert HealthCheck.too_slow in settings.get_profile(profile).suppress_health_check


def test_a_law_that_suppresses_other_checks_still_fails_for_no_slow_machine():
    said = [found for path in TESTS.rglob("*.py") for found in SUPPRESSED.findall(path.read_text("utf-8"))]
    assert len(said) > 3
    assert [checks for checks in said if "too_slow" not in checks] == []
