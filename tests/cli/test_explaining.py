"""``explain`` in the shell: the best sentences of a step, each with its standard."""

import json

import pytest
from conftest import LESSONS

from foldmath.cli import main
from foldmath.statements.checking.claims import check_claim

SEED_TRAYS = str(LESSONS / "seed-trays.toml")


def told(capsys, *words):
    assert main(["explain", SEED_TRAYS, *words]) == 0
    return capsys.readouterr().out


def test_the_third_halving_is_explained_with_its_standards(capsys):
    lines = told(capsys, "--step", "3").splitlines()
    assert lines[0] == "step 3: fold left edge to right edge"
    assert lines[1] == "  count       4 × 2 = 8 panels"
    assert lines[2].startswith("  size        1/2 of 1/4 = 1/8, so 1/4 × 1/2 = 1/8")
    assert lines[2].endswith("5.NF.B.4")
    assert lines[-3].endswith("more; --all tells them")


def test_all_sentences_are_told_if_all_are_wished_for(capsys):
    few, all_of_them = (told(capsys, "--step", "3", *more).splitlines() for more in ((), ("--all",)))
    assert len(all_of_them) > len(few)
    assert any("(1/2)³ = 1/8" in line and "(later)" in line for line in all_of_them)


def test_every_step_is_explained_and_opening_shows_nothing(capsys):
    *parts, _ = told(capsys).split("\n\n")
    assert len(parts) == 4
    assert "shows no sentence" in parts[3]


def test_codes_are_told_with_the_notice_of_their_owners_once_and_no_codes_without_any(capsys):
    """Source: the public licence of the standards asks for it (corestandards.org/public-license)."""
    notice = "© Copyright 2010. National Governors Association Center for Best Practices and Council of Chief"
    assert told(capsys).count(notice) == 1
    assert notice not in told(capsys, "--step", "4")
    third, opened = (json.loads(told(capsys, "--step", step, "--json"))[0] for step in ("3", "4"))
    assert third["notices"][0].startswith(notice)
    assert opened["notices"] == []


def test_as_data_every_sentence_is_true(capsys):
    (step,) = json.loads(told(capsys, "--step", "3", "--json"))
    assert step["step"] == 3
    assert len(step["shows"]) > 30
    assert all(check_claim(shown["text"]).true for shown in step["shows"])


@pytest.mark.parametrize("step", ["0", "5", "-1"])
def test_a_step_that_the_lesson_has_not_is_refused(step, capsys):
    assert main(["explain", SEED_TRAYS, "--step", step]) > 0
    assert "steps 1 to 4" in capsys.readouterr().err
