"""Printed files against the rules of PDF/UA-1 (ISO 14289-1:2014) that a program can check.

Source: the 104 rules of ``page-validation`` (github.com/josephbarbierdarnal/page), which passes the test
files of the veraPDF corpus.
"""

import pytest
from conftest import FILES
from page import validate_pdf

RULES = 104


def failures(path):
    report = validate_pdf(path, profile="ua1")
    assert report.rules.total == RULES
    return {(failure.rule_id, failure.message) for failure in report.failures}


@pytest.mark.parametrize("name", FILES)
def test_no_rule_fails_in_any_file_of_a_lesson(pages, name):
    assert failures(pages.folder / name) == set()
