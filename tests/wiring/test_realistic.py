"""Wiring problems of the size of real builds: the plan is legal, judged alike, and proven where it should be."""

import pytest

from service.wiring.components import clear, solve
from service.wiring.objective import evaluate
from service.wiring.problem import Problem
from tests.wiring.checker import check
from tests.wiring.random_problems import starved
from tests.wiring.realistic_problems import absurd, cards_on_adapters, different_two_plug_cards, realistic

SEEDS = {"small": 12, "gaming": 24, "storage": 6, "workstation": 10, "distinct": 8, "big": 4}


def _plain_and_starved(name: str) -> list[Problem]:
    plain = [realistic(name, seed) for seed in range(SEEDS[name])]
    return plain + [starved(posed, seed) for seed, posed in enumerate(plain)]


@pytest.mark.parametrize("name", SEEDS)
def test_a_build_of_each_class_has_a_proven_plan(name: str) -> None:
    for number, posed in enumerate(_plain_and_starved(name)):
        found = solve(posed)
        assert found.proven, f"{name} {number}"
        assert check(posed, found.wiring) == [], f"{name} {number}"
        assert evaluate(posed, found.wiring) == found.objective, f"{name} {number}"


@pytest.mark.parametrize(
    ("posed", "expected"),
    [
        (different_two_plug_cards(6), (*(0,) * 12, 78, 0, 9, 0)),
        (cards_on_adapters(8, different=False), (*(0,) * 11, 8, 0, 0, 24, 8)),
        (cards_on_adapters(4, different=True), (*(0,) * 11, 4, 0, 0, 12, 4)),
        (cards_on_adapters(8, different=True), (*(0,) * 11, 8, 134, 0, 24, 8)),
    ],
    ids=["different cards", "equal cards on adapters", "different cards on adapters", "eight of them"],
)
def test_cards_that_compete_for_cables_have_a_proven_plan(posed: Problem, expected: tuple[int, ...]) -> None:
    found = solve(posed)
    assert found.proven
    assert found.objective == evaluate(posed, found.wiring) == expected


def test_a_problem_that_no_build_has_ends_with_a_legal_plan() -> None:
    clear()
    posed = absurd(90, 48, 1)
    found = solve(posed)
    assert not found.proven
    assert check(posed, found.wiring) == []
    assert evaluate(posed, found.wiring) == found.objective
