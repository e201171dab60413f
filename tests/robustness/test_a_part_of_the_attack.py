"""A small part of the attack; ``whole.py`` beside this makes all of it."""

import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pytest
from robustness.attacks import KINDS, Attack, attack
from robustness.enduring import End, endured, faults
from robustness.sequences import broken, sequence, states
from robustness.whole import blocks, done_before, run

from foldmath.paper.steps import Gather, Slit, TurnOver

SEED = 7
PART = 100
"""One in so many of each kind of attack runs with the tests."""

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="processes are forked")


@pytest.mark.sweep("patterns", "lines")
@pytest.mark.parametrize("kind", KINDS)
def test_a_part_of_the_attack_finds_nothing(kind):
    hostile = [attack(kind, SEED, number) for number in range(KINDS[kind][1] // PART)]
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as fresh:
        assert fresh.submit(faults, hostile).result() == []


def test_a_part_of_the_sequences_keeps_every_law():
    done = [broken(SEED, number) for number in range(300)]
    assert {fault for _, fault in done} == {""}
    assert sum(steps for steps, _ in done) > 900


def test_slits_gathers_and_turns_are_among_the_sequences():
    met = [step for number in range(300) for step, _ in states(*sequence(SEED, number))]
    for kind in (Slit, Gather, TurnOver):
        assert sum(isinstance(step, kind) for step in met) > 5


@pytest.mark.parametrize("kind", KINDS)
def test_the_same_seed_gives_the_same_attack(kind):
    assert attack(kind, SEED, 3) == attack(kind, SEED, 3) != attack(kind, SEED + 1, 3)


@pytest.mark.parametrize(
    ("end", "fault"),
    [
        (End(0, 1.0, 100, ""), ""),
        (End(1, 1.0, 100, "this file is empty"), ""),
        (End(1, 1.0, 100, " "), "said nothing"),
        (End(70, 1.0, 100, "Traceback"), "ended with 70"),
        (End(-9, 1.0, 100, ""), "ended with -9"),
        (End(1, 1.0, 100, "Traceback (most recent call last)"), "traceback"),
        (End(0, 5.1, 100, ""), "took 5.1 s"),
        (End(0, 5.0, 501, ""), "took 501 MB"),
    ],
)
def test_what_is_a_fault_is_told_from_what_is_none(end, fault):
    assert end.fault(("trace", "lesson.toml")) == fault


def test_a_hostile_command_is_seen_to_fail():
    """A harness that finds no fault where there is one would say that all is well."""
    assert endured(Attack(("roster",), {})).fault(("roster",)) == "ended with 70"


def test_that_a_sentence_is_false_is_an_answer_and_no_fault():
    words = ("check", "1/2 < 1/3")
    # In a process that has little memory of its own yet: that of this one would count.
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as fresh:
        end = fresh.submit(endured, Attack(words, {})).result()
    assert (end.code, end.fault(words)) == (1, "")
    assert end.said.startswith("false:")


def test_a_run_that_was_stopped_goes_on_where_it_was(tmp_path, capsys):
    log = tmp_path / "log"
    assert run({"sequences": 40}, SEED, log, 1) == 0
    assert "sequences: 40 (" in capsys.readouterr().out
    assert done_before(log, SEED) == {("sequences", 0, 40)}
    assert done_before(log, SEED + 1) == set()
    assert run({"sequences": 40}, SEED, log, 1) == 0
    assert "sequences: 0 (" in capsys.readouterr().out


def test_all_work_is_shared_out_and_none_twice():
    numbers = [number for first, count in blocks("rosters", 47) for number in range(first, first + count)]
    assert numbers == list(range(47))
