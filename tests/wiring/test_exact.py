"""The search against every wiring of small random problems, plain and starved, on the whole objective."""

import pytest

from service.wiring.components import clear, solve
from service.wiring.objective import evaluate
from service.wiring.problem import Problem
from service.wiring.search import NoWiring
from service.wiring.search import solve as search
from tests.wiring.brute_force import TooMany, best, every_wiring, scored
from tests.wiring.checker import check
from tests.wiring.random_problems import problem, starved

SEEDS_A_BATCH = 15
BATCHES = 21
MOST_WIRINGS = 700


def _both(seed: int) -> list[Problem]:
    whole = problem(seed)
    return [whole, starved(whole, seed)]


def _batch(number: int) -> range:
    return range(number * SEEDS_A_BATCH, (number + 1) * SEEDS_A_BATCH)


@pytest.mark.parametrize("batch", range(BATCHES))
def test_the_search_finds_what_trying_every_wiring_finds(batch: int) -> None:
    for seed in _batch(batch):
        for twin, posed in enumerate(_both(seed)):
            try:
                expected = best(posed, MOST_WIRINGS)
            except TooMany:
                continue
            for name, solver in (("search", search), ("components", solve)):
                where = f"seed {seed}, twin {twin}, {name}"
                if expected is None:
                    with pytest.raises(NoWiring):
                        solver(posed)
                    continue
                found = solver(posed)
                assert check(posed, found.wiring) == [], where
                assert found.proven, where
                assert found.objective == expected[0], where
                assert evaluate(posed, found.wiring) == expected[0], where


def test_most_of_the_random_problems_are_compared_and_show_what_they_should() -> None:
    """A comparison that skips what is hard, or never meets an adapter, would prove nothing."""
    compared = with_adapter = with_stops = without_wiring = 0
    for seed in range(BATCHES * SEEDS_A_BATCH):
        for posed in _both(seed):
            wirings = 0
            for wirings, _ in enumerate(every_wiring(posed), 1):
                if wirings > MOST_WIRINGS:
                    break
            if wirings <= MOST_WIRINGS:
                compared += 1
                try:
                    found = search(posed)
                except NoWiring:
                    without_wiring += 1
                    continue
                with_adapter += bool(found.wiring.adapter_inputs)
                with_stops += found.objective[0] > 0
    assert compared >= 500
    assert with_adapter >= 40
    assert with_stops >= 150
    assert without_wiring >= 5


@pytest.mark.parametrize("seed", range(0, 60, 3))
def test_the_judge_agrees_on_wirings_that_nobody_would_choose(seed: int) -> None:
    for posed in _both(seed):
        for number, wiring in enumerate(every_wiring(posed)):
            if number % 7 == 0:
                assert check(posed, wiring) == []
                assert evaluate(posed, wiring) == scored(posed, wiring), f"seed {seed}, {wiring}"
            if number > MOST_WIRINGS:
                break


@pytest.mark.parametrize("seed", range(0, 40, 2))
@pytest.mark.parametrize("budget", [0, 5, 25])
def test_over_the_budget_there_is_a_legal_plan_that_says_it_is_not_proven(seed: int, budget: int) -> None:
    clear()
    posed = problem(seed)
    try:
        whole = search(posed)
    except NoWiring:
        return
    try:
        found = search(posed, budget)
    except NoWiring:
        assert any(port.must for device in posed.devices for port in device.ports)
        return
    assert check(posed, found.wiring) == []
    assert evaluate(posed, found.wiring) == found.objective
    assert found.objective == whole.objective if found.proven else found.objective >= whole.objective
