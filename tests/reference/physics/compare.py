"""One network by both: how far the formulas lie from the simulator."""

from tests.reference.physics.networks import Network
from tests.reference.physics.spice import NoOperatingPoint, operating_point


def farthest(network: Network) -> float | None:
    """Return the greatest relative difference of any volts or amps; None where both say that there is no solution.

    Raises
    ------
    AssertionError
        Where one has a solution and the other has none.
    """
    ours = network.ours()
    try:
        wanted = list(ours) if ours else ["v(0)"]
        theirs = operating_point(network.lines, wanted)
    except NoOperatingPoint:
        assert ours is None, f"{network.name}: the simulator finds no operating point, the formulas do"
        return None
    assert ours is not None, f"{network.name}: the simulator finds an operating point, the formulas do not"
    return max(abs(ours[name] - theirs[name]) / abs(theirs[name]) for name in wanted)
