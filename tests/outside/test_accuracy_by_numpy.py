"""The covariance of a folding against numpy's own J Σ Jᵀ, and J against finite differences of the tape."""

import numpy as np
import pytest
from lessons_in_words import EIGHTHS, moments

from foldmath.tolerance.accuracy import accuracy, jacobian
from foldmath.tolerance.assumed.spread import default_spread

FOLDINGS = [
    EIGHTHS,
    ("pleat width into 3", "open", "pleat height into 5"),
    (
        "fold both edges to middle",
        "fold top edge to 1/3",
        "turn left",
        "fold left edge to right edge, behind",
    ),
    ("fold at 1/3 moving left", "fold right edge to left edge", "turn over", "fold at 1/4 moving top"),
]


def errors_of(frozen, slips):
    """Run the tape forward with numbers."""
    values = []
    drawn = {source.entry: slip for source, slip in zip(frozen.sources, slips, strict=True)}
    for entry, terms in enumerate(frozen.tape):
        values.append(drawn.get(entry, 0.0) + sum(factor * values[earlier] for factor, earlier in terms))
    return np.array([*values, 0.0])


@pytest.mark.parametrize("steps", FOLDINGS)
def test_the_jacobian_is_what_finite_differences_give(steps):
    frozen = accuracy(moments(*steps), default_spread(5)).frozen
    exact_rows = np.array(jacobian(frozen))
    for column in range(len(frozen.sources)):
        slips = np.zeros(len(frozen.sources))
        slips[column] = 0.25
        difference = (errors_of(frozen, slips) - errors_of(frozen, -slips)) / 0.5
        assert np.abs(difference - exact_rows[:, column]).max() < 1e-12


@pytest.mark.parametrize("steps", FOLDINGS)
def test_variances_are_the_diagonal_of_the_covariance_matrix(steps):
    made = accuracy(moments(*steps), default_spread(5))
    rows = np.array([jacobian(made.frozen)[crease.error] for crease in made.frozen.creases])
    sigma = np.diag([made.spread.of(source.placing) ** 2 for source in made.frozen.sources])
    covariance = rows @ sigma @ rows.T
    assert [crease.error.sd_mm**2 for crease in made.creases] == pytest.approx(np.diag(covariance).tolist())


def test_neighbouring_creases_of_one_fold_are_not_independent():
    """So a column's variance is the sum of its creases' variances less twice their covariance."""
    made = accuracy(moments(*EIGHTHS), default_spread(5))
    rows = np.array([jacobian(made.frozen)[crease.error] for crease in made.frozen.creases[:2]])
    sigma = np.diag([made.spread.of(source.placing) ** 2 for source in made.frozen.sources])
    covariance = rows @ sigma @ rows.T
    between = covariance[0, 0] + covariance[1, 1] - 2 * covariance[0, 1]
    assert covariance[0, 1] != 0
    assert made.parts[1].error.sd_mm ** 2 == pytest.approx(between)
