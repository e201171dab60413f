"""What CI installs is named to the version, within the ranges that the project states."""

import re
import tomllib
from datetime import date
from pathlib import Path

import lock
import pytest
from lock import LOCK, MOST_PASSED_OVER, frozen_on
from packaging.requirements import Requirement

PROJECT = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text("utf-8"))["project"]
ASKED = [
    Requirement(words)
    for group in (PROJECT["dependencies"], *PROJECT["optional-dependencies"].values())
    for words in group
]


def plain(name):
    return re.sub(r"[-_.]+", "-", name).lower()


LOCKED = {
    plain(line.partition("==")[0]): line.partition("==")[2]
    for line in LOCK.read_text("utf-8").splitlines()
    if "==" in line
}


@pytest.mark.parametrize("asked", ASKED, ids=str)
def test_every_package_asked_for_is_locked_within_its_range(asked):
    assert asked.specifier.contains(LOCKED[plain(asked.name)])


def test_the_lock_says_when_it_was_frozen():
    assert frozen_on(LOCK.read_text("utf-8")) >= date(2026, 11, 29)


@pytest.mark.parametrize(
    ("code", "told", "verdict"),
    [
        (0, "No known vulnerabilities found", 0),
        (1, "Found 2 known vulnerabilities in 1 package", 1),
        (1, "ConnectionError", None),
        (0, "could not be audited\n" * MOST_PASSED_OVER + "No known vulnerabilities found", 0),
        (0, "could not be audited\n" * (MOST_PASSED_OVER + 1) + "No known vulnerabilities found", None),
    ],
)
def test_an_audit_counts_that_looked_the_packages_up(code, told, verdict):
    assert lock.verdict(code, told) == verdict
