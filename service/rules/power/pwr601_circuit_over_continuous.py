"""Amps from the wall against the circuit: 80 % of it where the rule for continuous load holds, else all of it.

A load is continuous that runs for three hours or more; the circuit must then be 125 % of it, so the load 80 % of the
circuit. Other machines on the circuit are not counted. A circuit that is not given is passed over while the smallest
usual one would do, else it is unknown. Exactly the limit passes. The inlet is PWR602.
"""

from collections.abc import Iterator

from service.case.case import Case, Wall
from service.facts.mains import CONTINUOUS_CIRCUIT_PERCENT, SMALL_CIRCUIT_AMPS
from service.rules.power.mains import REQUEST
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.shares import part_of

CIRCUIT = "site/circuit_amps"


def check(case: Case) -> Iterator[Said]:
    """Yield the circuit when the machine takes more of it than it may for hours."""
    wall = case.wall
    if wall is None:
        return
    if wall.circuit_amps is not None:
        limit = _share(wall, wall.circuit_amps)
        if wall.amps > limit:
            values = (("circuit_amps", wall.circuit_amps), ("mains_volts", wall.mains_volts))
            yield Finding(REQUEST, wall.amps, limit, "A", values)
    elif wall.amps > _share(wall, SMALL_CIRCUIT_AMPS.value):
        yield Unknown(REQUEST, CIRCUIT)


def _share(wall: Wall, circuit_amps: float) -> float:
    """Return the amps of a circuit that the machine may take for hours."""
    return part_of(circuit_amps, CONTINUOUS_CIRCUIT_PERCENT) if wall.continuous_rule else circuit_amps


RULE = Rule(
    id="PWR601", title="The machine takes more from its circuit than is meant for hours on end", weight="caution",
    points=10, aspect="mains", since="0.1", rests_on=(CONTINUOUS_CIRCUIT_PERCENT, SMALL_CIRCUIT_AMPS), check=check,
    message="The machine takes {measured} {unit} at {mains_volts} V from a {circuit_amps} A circuit; for hours on end "
    "{limit} {unit} is the most. Local code decides, and a licensed electrician.",
    why="A circuit that carries nearly all it can for hours warms its wiring and its breaker, and anything else trips "
    "it.",
    remedy="Use a circuit of its own or a larger one. Local electrical code decides; leave changes to a licensed "
    "electrician.",
)
