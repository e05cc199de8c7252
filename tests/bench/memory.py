"""What a worker keeps: ``python -m tests.bench.memory`` checks sheets that are all different and prints its size.

Every sheet is written out and has figures of its own, so nothing that is remembered serves twice but equal parts of the
wiring.
"""

import argparse
import resource
import sys
from pathlib import Path

import orjson

from service.answers.answer import answer
from service.catalogue import bundled
from service.catalogue.resolve import resolve
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.verdict.check import check
from tests.bench.sheets import COUNT, by_ids, written_out

SHEETS = 100_000
REPORTS = 10
_KIB_A_MIB = 1024


def resident_mib() -> float:
    """Return what the process takes of memory now [MiB]; its peak where the system does not say."""
    status = Path("/proc/self/status")
    if status.exists():
        line = next(each for each in status.read_text().splitlines() if each.startswith("VmRSS"))
        return int(line.split()[1]) / _KIB_A_MIB
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / _KIB_A_MIB


def main() -> None:
    """Check so many sheets and say now and then how large the process is."""
    words = argparse.ArgumentParser(prog="python -m tests.bench.memory")
    words.add_argument("--sheets", type=int, default=SHEETS)
    given = words.parse_args()
    edition = bundled.load()
    plain = [written_out(by_ids(number), edition) for number in range(COUNT)]
    sys.stdout.write(f"begun: {resident_mib():.0f} MiB\n")
    for number in range(given.sheets):
        sheet = plain[number % COUNT]
        fan = sheet["parts"][-1]["spec"]
        own = fan | {"amps": round(0.05 + number * 1e-6, 6), "name": f"Fan {number}"}
        body = orjson.dumps(sheet | {"parts": [*sheet["parts"][:-1], {"spec": own}]})
        orjson.dumps(answer(check(resolve(read_sheet(read_json(body)), edition))))
        if (number + 1) % max(1, given.sheets // REPORTS) == 0:
            sys.stdout.write(f"{number + 1} sheets: {resident_mib():.0f} MiB\n")
            sys.stdout.flush()


if __name__ == "__main__":
    main()
