"""ngspice, an electrical circuit simulator: the operating point of a network that is written as a netlist."""

import re
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from tests.reference.physics.programs import program

OPTIONS = ".options reltol=1e-12 abstol=1e-10 vntol=1e-13 itl1=1000"
"""Linear networks come out of one elimination. Behavioural sources are iterated until a step changes less than 1e-12 of
a voltage, where the usual is 1e-3; currents of 1e-10 A are the rounding of 12 V over a tenth of a milliohm, so to ask
for less lets some networks never come to rest. ``set numdgt=16`` prints every digit of a float."""
SECONDS = 30
VALUE = re.compile(r"^(\S+) = (\S+)$", re.MULTILINE)


class NoOperatingPoint(Exception):
    """The simulator tried all its ways and none came to rest."""


def operating_point(lines: Sequence[str], wanted: Sequence[str]) -> dict[str, float]:
    """Return volts ``v(node)`` and amps ``@r1[i]`` of a network; raises NoOperatingPoint."""
    netlist = [
        "* network", *lines, OPTIONS, ".control", "set numdgt=16", "op", f"print {' '.join(wanted)}", "quit 0",
        ".endc", ".end", "",
    ]
    with tempfile.TemporaryDirectory() as scratch:
        file = Path(scratch) / "network.cir"
        file.write_text("\n".join(netlist), encoding="ascii")
        # -n: no settings of the person who runs this.
        result = subprocess.run(
            [program("ngspice"), "-b", "-n", str(file)], capture_output=True, text=True, timeout=SECONDS, check=False,
        )
    if "simulation(s) aborted" in result.stdout + result.stderr:
        raise NoOperatingPoint
    found = {name: float(value) for name, value in VALUE.findall(result.stdout)}
    if set(found) != set(wanted):
        raise RuntimeError(f"not all was printed: {result.stdout}{result.stderr}")
    return found
