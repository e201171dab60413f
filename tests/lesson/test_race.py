"""The game for two is fair, and has an end: shown by trying every round of every race."""

from itertools import product

import pytest

from foldmath.lesson.booklet.race import FEWEST_PANELS, MOST_PANELS, Race

RACES = [Race(1, panels) for panels in range(FEWEST_PANELS, MOST_PANELS + 1)]


def rounds(race: Race):
    return product(range(1, race.fingers + 1), repeat=2)


def test_the_smaller_number_goes_on_and_the_same_number_takes_both_one_panel():
    race = Race(4, 2)
    assert race.moved(1, 3) == (1, 0)
    assert race.moved(3, 2) == (0, 2)
    assert race.moved(2, 2) == (1, 1)


@pytest.mark.parametrize(("panels", "fingers"), [(6, 3), (11, 3), (12, 5), (24, 5)])
def test_a_long_race_is_run_with_a_whole_hand(panels, fingers):
    assert Race(1, panels).fingers == fingers


@pytest.mark.parametrize("race", RACES, ids=lambda race: str(race.panels))
def test_whatever_one_player_may_do_the_other_may(race):
    assert all(race.moved(one, other) == race.moved(other, one)[::-1] for one, other in rounds(race))


@pytest.mark.parametrize("race", RACES, ids=lambda race: str(race.panels))
def test_every_round_takes_somebody_on_so_a_race_has_an_end(race):
    assert all(sum(race.moved(one, other)) >= 1 for one, other in rounds(race))


def test_no_number_is_always_the_best_to_show():
    """Whatever is shown, some other number would have been better against what the partner shows."""
    race = Race(4, 2)

    def lead(one: int, other: int) -> int:
        ours, theirs = race.moved(one, other)
        return ours - theirs

    shown = range(1, race.fingers + 1)
    for one in shown:
        assert any(lead(instead, other) > lead(one, other) for other in shown for instead in shown)
