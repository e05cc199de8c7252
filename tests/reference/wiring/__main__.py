"""The solver beside an oracle over many problems: ``python -m tests.reference.wiring --classes gaming --count 50``."""

import argparse
import math
import sys
import time

from service.wiring import components
from service.wiring.search import NODE_BUDGET
from tests.reference.wiring import milp
from tests.reference.wiring.compare import Oracle, Outcome, Verdict, answer, cases, compare, table
from tests.reference.wiring.generator import CLASSES, ODD, equal_drives

GROWTH = ((1, (6, 24, 96)), (3, (12, 24, 48)))
ROUNDS = 5


def oracle(name: str) -> Oracle:
    """Return an oracle; the second is loaded only when asked for."""
    if name != "cp-sat":
        return milp.solve if name == "highs" else milp.solve_singly
    from tests.reference.wiring import cp_sat  # it takes a while to load

    return cp_sat.solve


def run(name: str, seeds: range, twin: bool, by: Oracle, seconds: float) -> list[Outcome]:
    """Compare the problems of one class, and say at once where they differ."""
    found = []
    for case, problem in cases(name, seeds, (twin,)):
        outcome = compare(case, problem, by, seconds)
        found.append(outcome)
        if outcome.verdict in (Verdict.DIFFERENT, Verdict.NOT_CLAIMED):
            sys.stdout.write(f"{outcome.verdict}: {case}\n  ours   {outcome.ours}\n  oracle {outcome.oracle}\n")
            sys.stdout.flush()
    return found


def growth(by: Oracle, seconds: float) -> None:
    """Print how time grows with the number of drives, and the slope between the ends."""
    for models, sizes in GROWTH:
        times, others = [], []
        for size in sizes:
            problem = equal_drives(size, models)
            tries = []
            for _ in range(ROUNDS):
                begun = time.perf_counter()
                found = answer(problem)
                tries.append(time.perf_counter() - begun)
            times.append(min(tries))
            begun = time.perf_counter()
            proof = by(problem, seconds)
            others.append(time.perf_counter() - begun)
            right = "?" if proof.objective is None else found is not None and proof.objective == found.objective
            sys.stdout.write(
                f"{models} models, {size} drives: ours {1000 * times[-1]:.2f} ms "
                f"(proven {found is not None and found.proven}), oracle {1000 * others[-1]:.1f} ms, same {right}\n"
            )
        slope = math.log(times[-1] / times[0]) / math.log(sizes[-1] / sizes[0])
        sys.stdout.write(f"{models} models: slope {slope:.2f}\n")


def main() -> int:
    """Read the command line, compare, print; 1 where anything differs."""
    parser = argparse.ArgumentParser(prog="tests.reference.wiring", description=__doc__)
    parser.add_argument("--classes", nargs="+", choices=(*CLASSES, *ODD), default=CLASSES)
    parser.add_argument("--count", type=int, default=20, help="seeds of each class")
    parser.add_argument("--first", type=int, default=0, help="first seed")
    parser.add_argument("--twins", choices=("realistic", "starved", "both"), default="both")
    parser.add_argument("--oracle", choices=("highs", "highs-singly", "cp-sat"), default="highs")
    parser.add_argument("--seconds", type=float, default=20, help="time for the oracle on one problem")
    parser.add_argument("--nodes", type=int, default=NODE_BUDGET, help="node budget of ours; to prove what it gives up")
    parser.add_argument("--growth", action="store_true", help="only the growth with the number of drives")
    given = parser.parse_args()
    vars(components)["NODE_BUDGET"] = given.nodes
    by = oracle(given.oracle)
    if given.growth:
        growth(by, given.seconds)
        return 0
    bad = 0
    for name in given.classes:
        for twin in (False, True):
            if given.twins in ("both", "starved" if twin else "realistic"):
                found = run(name, range(given.first, given.first + given.count), twin, by, given.seconds)
                bad += sum(each.verdict == Verdict.DIFFERENT for each in found)
                sys.stdout.write(table(f"{name}{' starved' if twin else ''}", found) + "\n")
                sys.stdout.flush()
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
