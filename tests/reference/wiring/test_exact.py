"""The solver against two solvers that know only the docstring: some problems of each class and their starved twins.

The command ``python -m tests.reference.wiring`` compares as many as one likes.
"""

from collections.abc import Iterable, Mapping
from random import Random

import pytest

from service.wiring.objective import evaluate
from service.wiring.problem import Problem
from tests.reference.wiring import cp_sat, milp
from tests.reference.wiring.compare import Verdict, answer, cases, compare, verdict
from tests.reference.wiring.generator import CLASSES, realistic, starved
from tests.reference.wiring.stages import Proof

SECONDS = 60
"""An oracle that needs more has failed; these problems take it a tenth of a second or so."""

BY_HIGHS = {
    "small": (0, *range(900, 906)),
    "gaming": range(900, 906),
    "storage": range(900, 903),
    "workstation": range(900, 904),
    "distinct": range(900, 905, 2),
    "big": (900, 901, 904),
    "odd": range(910, 950),
    "chained": (1, *range(900, 903), *range(905, 915)),
}
BY_CP_SAT = {"small": range(950, 953), "gaming": range(950, 951), "odd": range(950, 952), "chained": range(950, 952)}


def _cases(seeds: Mapping[str, Iterable[int]]) -> list[object]:
    return [
        pytest.param(case, problem, id=case)
        for name, some in seeds.items()
        for case, problem in cases(name, some, (False, True))
    ]


@pytest.mark.parametrize(("case", "problem"), _cases(BY_HIGHS))
def test_highs_finds_the_same_optimum(case: str, problem: Problem) -> None:
    found = compare(case, problem, milp.solve, SECONDS)
    assert found.verdict == Verdict.SAME, found


@pytest.mark.parametrize(("case", "problem"), _cases(BY_CP_SAT))
def test_cp_sat_finds_the_same_optimum(case: str, problem: Problem) -> None:
    found = compare(case, problem, cp_sat.solve, SECONDS)
    assert found.verdict == Verdict.SAME, found


@pytest.mark.parametrize("name", CLASSES)
def test_a_seed_names_a_problem_for_good(name: str) -> None:
    one, other = realistic(name, 7), realistic(name, 7)
    assert one == other
    assert starved(one, Random("x")) == starved(other, Random("x"))
    assert realistic(name, 8) != one


def test_a_worse_answer_that_is_called_proven_is_seen() -> None:
    problem = realistic("gaming", 3)
    ours = answer(problem)
    assert ours is not None
    bare = ours.wiring._replace(sources=tuple((None,) * len(each) for each in ours.wiring.sources), adapter_inputs=())
    worse = ours._replace(wiring=bare, objective=evaluate(problem, bare))
    right = Proof(ours.objective, ours.wiring)
    assert verdict(problem, ours, right) == Verdict.SAME
    assert verdict(problem, worse, right) == Verdict.DIFFERENT
    assert verdict(problem, worse._replace(proven=False), right) == Verdict.NOT_CLAIMED
    assert verdict(problem, ours, Proof(worse.objective, worse.wiring)) == Verdict.DIFFERENT
    assert verdict(problem, None, right) == Verdict.DIFFERENT
    assert verdict(problem, ours, Proof(None, None, feasible=False)) == Verdict.DIFFERENT
