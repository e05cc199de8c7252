"""One command, one run: each round asks the echo and the service the same bodies in turn.

Ratios are taken in a round.
"""

import argparse
import os
import platform
import sys
from contextlib import ExitStack
from statistics import median

from tests.bench.pins import MUST_US, STRETCH_US, microseconds
from tests.bench.server import seconds, served
from tests.bench.sheets import COUNT, bodies
from tests.bench.stages import cold, dearest_rules, table
from tests.bench.worst import WORST

GOALS = {"ids, warm": (0.35, 0.50), "inline, warm": (0.22, 0.30), "ids, memo emptied": (0.15, 0.25)}


def main() -> None:
    """Print the ratios, the table of stages and the dearest rules."""
    words = argparse.ArgumentParser(prog="python -m tests.bench")
    words.add_argument("--rounds", type=int, default=5)
    words.add_argument("--bodies", type=int, default=COUNT)
    given = words.parse_args()
    ids, inline = bodies(inline=False)[: given.bodies], bodies(inline=True)[: given.bodies]
    python = f"{platform.python_implementation()} {platform.python_version()}"
    _say(f"{python}, {os.cpu_count()} cores, {len(ids)} bodies a round")
    for name, us in table(ids[:100]).items():
        _say(f"  {name:20} {us:8.0f} us")
    _say("  dearest rules: " + ", ".join(f"{rule} {us:.1f} us" for rule, us in dearest_rules(ids[:20])))
    for name, took in cold(WORST).items():
        _say(f"  {name}, cold: {took:.2f} s")
    for name, us in microseconds().items():
        goal = f" a connector (must {MUST_US:.0f}, stretch {STRETCH_US:.0f})" if name.startswith("pin divider") else ""
        _say(f"  {name:26} {us:8.2f} us{goal}")
    cores = os.sched_getaffinity(0)
    with ExitStack() as stack:
        ports = {}
        for app in ("echo", "plain", "emptied"):
            os.sched_setaffinity(0, cores)
            ports[app] = stack.enter_context(served(app))
        ratios = _rounds(ports, ids, inline, given.rounds)
    os.sched_setaffinity(0, cores)
    for name, (must, stretch) in GOALS.items():
        found = ratios[name]
        said = "stretch" if median(found) >= stretch else "must" if median(found) >= must else "below must"
        _say(
            f"{name:20} share of echo {median(found):.2f} ({min(found):.2f} to {max(found):.2f}); "
            f"must {must}, stretch {stretch}: {said}"
        )
    _say(f"p99 / p50, one connection: {median(ratios['p99/p50']):.2f} (must 3, stretch 2)")


def _rounds(ports: dict[str, int], ids: list[bytes], inline: list[bytes], rounds: int) -> dict[str, list[float]]:
    found: dict[str, list[float]] = {name: [] for name in (*GOALS, "p99/p50")}
    seconds(ports["plain"], ids)
    seconds(ports["plain"], inline)
    for _ in range(rounds):
        echo_ids, warm = sum(seconds(ports["echo"], ids)), sorted(seconds(ports["plain"], ids))
        echo_inline, written = sum(seconds(ports["echo"], inline)), sum(seconds(ports["plain"], inline))
        cold = sum(seconds(ports["emptied"], ids))
        found["ids, warm"].append(echo_ids / sum(warm))
        found["inline, warm"].append(echo_inline / written)
        found["ids, memo emptied"].append(echo_ids / cold)
        found["p99/p50"].append(warm[len(warm) * 99 // 100] / warm[len(warm) // 2])
    return found


def _say(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
