"""The same question in another order, with another memo, thread or hash seed has the same answer."""

import os
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from random import Random

import pytest

from service.wiring import components
from service.wiring.components import clear, solve
from service.wiring.memo import ITEM_BYTES, TUPLE_BYTES, Memo, bytes_of, bytes_of_wiring
from service.wiring.objective import judge
from service.wiring.problem import Load, Problem, Solution
from service.wiring.search import NoWiring
from tests.reference.wiring.generator import realistic
from tests.wiring.random_problems import problem, starved

SEEDS = range(0, 240, 4)


@pytest.fixture(autouse=True)
def _empty_memo() -> Iterator[None]:
    clear()
    yield
    clear()


def _solved(posed: Problem) -> Solution | None:
    try:
        return solve(posed)
    except NoWiring:
        return None


def _shuffled(posed: Problem, luck: Random) -> Problem:
    """Return the same problem with everything in another order."""

    def order(number: int) -> tuple[list[int], dict[int, int]]:
        new = luck.sample(range(number), number)
        return new, {old: place for place, old in enumerate(new)}

    devices, _ = order(len(posed.devices))
    types, type_at = order(len(posed.port_types))
    kinds, kind_at = order(len(posed.cables))
    sockets, _ = order(len(posed.sockets))
    groups, group_at = order(len(posed.groups))
    adapters, adapter_at = order(len(posed.adapters))
    new_types = []
    for old in types:
        found = posed.port_types[old]
        fits = [fit._replace(cable=kind_at[fit.cable]) for fit in luck.sample(found.fits, len(found.fits))]
        given = luck.sample(found.adapter_fits, len(found.adapter_fits))
        new_types.append(
            found._replace(
                fits=tuple(fits), adapter_fits=tuple(fit._replace(adapter=adapter_at[fit.adapter]) for fit in given)
            )
        )
    new_devices = []
    for old in devices:
        ports = luck.sample(posed.devices[old].ports, len(posed.devices[old].ports))
        new_devices.append(
            posed.devices[old]._replace(ports=tuple(port._replace(type=type_at[port.type]) for port in ports))
        )
    cables = [
        posed.cables[old]._replace(
            takes=tuple(posed.cables[old].takes[socket] for socket in sockets),
            groups=tuple(
                group_at[group] for group in luck.sample(posed.cables[old].groups, len(posed.cables[old].groups))
            ),
        )
        for old in kinds
    ]
    return Problem(
        tuple(new_devices),
        tuple(new_types),
        tuple(cables),
        tuple(posed.sockets[old] for old in sockets),
        tuple(posed.adapters[old]._replace(input_type=type_at[posed.adapters[old].input_type]) for old in adapters),
        tuple(posed.groups[old] for old in groups),
        posed.points,
    )


def _seen(posed: Problem, solution: Solution | None) -> object:
    """Return what there is to see of a plan when nothing has a number: each port's feed, each cable's load, counted."""
    if solution is None:
        return None
    found = judge(posed, solution.wiring)
    feeds = Counter(
        (posed.devices[each.device].role, each.load, tuple(sorted((at.place.sort, *at[1:]) for at in each.places)))
        for each in found.connections
    )
    along: dict[tuple[int, int], list[Load]] = {}
    for (kind, copy, _), load in sorted(found.segments.items()):
        along.setdefault((kind, copy), []).append(load)
    cables = Counter((posed.cables[kind].segments, tuple(loads)) for (kind, _), loads in along.items())
    return solution.objective, solution.nodes, feeds, cables, sorted(found.groups)


@pytest.mark.parametrize("seed", SEEDS)
def test_another_order_gives_the_same_plan(seed: int) -> None:
    for posed in (problem(seed), starved(problem(seed), seed)):
        expected = _seen(posed, _solved(posed))
        for turn in range(3):
            other = _shuffled(posed, Random(f"{seed}-{turn}"))
            clear()
            assert _seen(other, _solved(other)) == expected, f"seed {seed}, order {turn}"


def test_the_memo_empty_full_or_too_small_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    posed = [problem(seed) for seed in SEEDS]
    expected = []
    for each in posed:
        clear()
        expected.append(_solved(each))
    clear()
    assert [_solved(each) for each in posed] == expected
    assert [_solved(each) for each in posed] == expected
    for most_bytes in (0, 20_000, 4 << 20):
        monkeypatch.setattr(components, "_memo", Memo(most_bytes))
        monkeypatch.setattr(components, "_orders", Memo(most_bytes))
        assert [_solved(each) for each in posed + posed] == expected + expected


def test_two_threads_find_what_one_finds() -> None:
    posed = [problem(seed) for seed in SEEDS]
    expected = [_solved(each) for each in posed]
    clear()
    with ThreadPoolExecutor(2) as pool:
        found = list(pool.map(_solved, posed + posed[::-1]))
    assert found == expected + expected[::-1]


def test_the_hash_seed_changes_nothing() -> None:
    script = (
        "from tests.wiring.test_invariance import _solved, problem\n"
        "print([_solved(problem(seed)) for seed in range(0, 120, 3)])"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", script], env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in ("0", "1", "77")
    }
    assert len(said) == 1
    assert len(said.pop()) > 1000


def test_the_memo_keeps_within_its_bytes_and_drops_what_was_not_used() -> None:
    memo: Memo[tuple[int, ...], tuple[int, ...]] = Memo(4_000)
    for number in range(100):
        entry = tuple(range(number, number + 10))
        memo.put((number,), entry, 456)
        memo.get((0,))
        assert memo.bytes <= 4_000
    assert memo.get((0,)) is not None
    assert memo.get((1,)) is None
    assert memo.get((99,)) == tuple(range(99, 109))
    memo.clear()
    assert (len(memo), memo.bytes) == (0, 0)


def walked(thing: object) -> int:
    """Return the bytes of nested tuples, one by one; a tuple that occurs twice is counted once."""
    seen: set[int] = set()
    total, waiting = 0, [thing]
    while waiting:
        found = waiting.pop()
        if isinstance(found, tuple) and id(found) not in seen:
            seen.add(id(found))
            total += TUPLE_BYTES + ITEM_BYTES * len(found)
            waiting += found
    return total


@pytest.mark.parametrize("name", ["small", "gaming", "storage", "workstation"])
def test_the_bytes_of_a_problem_are_told_about_right_and_not_too_low(name: str) -> None:
    for seed in range(20):
        problem = realistic(name, seed)
        assert walked(problem) <= bytes_of(problem) <= 2 * walked(problem)
        solution = components.solve(problem)
        assert walked(solution) <= bytes_of_wiring(solution.wiring) <= 3 * walked(solution)
