"""The solver beside an oracle: the same problem to both, and what each said."""

import statistics
import time
from collections.abc import Callable, Iterable, Iterator
from enum import StrEnum
from random import Random
from typing import NamedTuple

from service.wiring import components
from service.wiring.objective import evaluate
from service.wiring.problem import Objective, Problem, Solution
from service.wiring.search import NoWiring
from tests.reference.wiring import milp
from tests.reference.wiring.generator import realistic, starved
from tests.reference.wiring.stages import Proof

PATIENCE = 5
"""How much longer the oracle may take where it is in doubt."""

Oracle = Callable[[Problem, float], Proof]


class Verdict(StrEnum):
    """How two answers stand to each other."""

    SAME = "same"
    DIFFERENT = "different"
    NO_ORACLE = "oracle out of time"
    NOT_CLAIMED = "not claimed as proven"
    """Ours says itself that it is not proven, and it is not the optimum."""


class Outcome(NamedTuple):
    """One problem and both answers; no objective where there is no wiring."""

    case: str
    verdict: Verdict
    ours: Objective | None
    proven: bool
    oracle: Objective | None
    our_seconds: float
    oracle_seconds: float
    taken_back: bool = False
    """The oracle differed at first, and no longer without presolve."""


def cases(name: str, seeds: Iterable[int], twins: Iterable[bool]) -> Iterator[tuple[str, Problem]]:
    """Yield the problems of a class, named, each with its starved twin where wanted."""
    wanted = tuple(twins)
    for seed in seeds:
        problem = realistic(name, seed)
        for twin in wanted:
            if twin:
                label = f"{name}-{seed}-starved"
                yield label, starved(problem, Random(label))
            else:
                yield f"{name}-{seed}", problem


def answer(problem: Problem) -> Solution | None:
    """Return our answer from a cold start; None where it finds that there is no wiring."""
    components.clear()
    try:
        return components.solve(problem)
    except NoWiring:
        return None


def compare(case: str, problem: Problem, oracle: Oracle, seconds: float) -> Outcome:
    """Solve one problem both ways."""
    begun = time.perf_counter()
    ours = answer(problem)
    between = time.perf_counter()
    proof = oracle(problem, seconds)
    done = time.perf_counter()
    found = verdict(problem, ours, proof)
    in_doubt = found == Verdict.DIFFERENT
    if in_doubt:  # HiGHS was seen to be wrong after its presolve: it has to say so without, too
        proof = milp.solve_as_posed(problem, seconds * PATIENCE)
        found = verdict(problem, ours, proof)
    objective = None if ours is None else ours.objective
    return Outcome(
        case, found, objective, ours is None or ours.proven, proof.objective, between - begun, done - between,
        in_doubt and found != Verdict.DIFFERENT,
    )


def verdict(problem: Problem, ours: Solution | None, proof: Proof) -> Verdict:
    """Judge two answers; a wiring of either must also come to what was said of it when it is evaluated."""
    if ours is not None and evaluate(problem, ours.wiring) != ours.objective:
        return Verdict.DIFFERENT
    if proof.wiring is not None and evaluate(problem, proof.wiring) != proof.objective:
        return Verdict.DIFFERENT
    if proof.feasible and proof.objective is None:
        return Verdict.NO_ORACLE
    if ours is None or proof.objective is None:
        return Verdict.SAME if ours is None and not proof.feasible else Verdict.DIFFERENT
    if ours.objective == proof.objective:
        return Verdict.SAME
    claimed = ours.proven or ours.objective < proof.objective
    return Verdict.DIFFERENT if claimed else Verdict.NOT_CLAIMED


def table(title: str, outcomes: list[Outcome]) -> str:
    """Return one line: how many agreed, and the times of both in milliseconds."""
    found = {each: sum(one.verdict == each for one in outcomes) for each in Verdict}
    proven = [one for one in outcomes if one.verdict != Verdict.NO_ORACLE]
    ratios = sorted(one.oracle_seconds / one.our_seconds for one in proven) or [0.0]
    unproven, back = sum(not one.proven for one in outcomes), sum(one.taken_back for one in outcomes)
    return (
        f"{title:20} n {len(outcomes):4}  oracle proved {len(proven):4}  same {found[Verdict.SAME]:4}  "
        f"different {found[Verdict.DIFFERENT]}  taken back {back}  "
        f"ours unproven {unproven} (worse {found[Verdict.NOT_CLAIMED]})  "
        f"ours ms {_spread([one.our_seconds for one in outcomes])}  "
        f"oracle ms {_spread([one.oracle_seconds for one in outcomes])}  "
        f"ratio median {statistics.median(ratios):.1f} p10 {_quantile(ratios, 0.1):.1f} least {ratios[0]:.2f}"
    )


def _spread(seconds: list[float]) -> str:
    ranked = sorted(seconds)
    return " / ".join(f"{1000 * each:.1f}" for each in (
        statistics.median(ranked), _quantile(ranked, 0.9), _quantile(ranked, 0.99), ranked[-1],
    ))


def _quantile(ranked: list[float], share: float) -> float:
    return ranked[min(len(ranked) - 1, int(share * len(ranked)))]
