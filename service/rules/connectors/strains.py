"""What the rules on strains share: the worst strain of a connection, and which connections a stop has already."""

from collections.abc import Collection

from service.case.case import Case, FeedAdapter, Joint, Strain
from service.demand.current import VOLTS_3_3, VOLTS_5, VOLTS_12
from service.rules.rule import Finding, Value

STOPS = frozenset({"stop", "start_stop"})
ONE_CONTACT = frozenset({"contact", "socket", "wire", "start_wire"})
VOLTS = "volts"
_VOLTS = {"12v": VOLTS_12, "5v": VOLTS_5, "3v3": VOLTS_3_3}


def worst(joint: Joint, causes: Collection[str], sixteen_pin: bool | None = None) -> Strain | None:
    """Return the strain past a stop, of these causes, that is furthest past its limit."""
    found = [
        strain for strain in joint.strains
        if strain.level in STOPS and strain.cause in causes and sixteen_pin in (None, strain.sixteen_pin)
    ]
    return max(found, key=_excess, default=None)


def worst_at(joint: Joint, level: str) -> Strain | None:
    """Return the strain of a caution level that is furthest past its limit; none where the connection is past a "
    "stop."""
    if is_past_a_stop(joint):
        return None
    found = (strain for strain in joint.strains if strain.level == level and strain.cause != VOLTS)
    return max(found, key=_excess, default=None)


def is_past_a_stop(joint: Joint) -> bool:
    """Say whether a place on the way of a connection is past a stop."""
    return any(strain.level in STOPS for strain in joint.strains)


def in_amps(joint: Joint, strain: Strain) -> Finding:
    """Return the finding of a strain in amps of one contact or wire, or of one rail of a plug."""
    values: tuple[tuple[str, Value], ...] = (
        ("connector", joint.connector), ("cause", strain.cause), ("spot", strain.spot), ("rail", strain.rail),
    )
    return Finding(joint.at, strain.amps, strain.limit_amps, "A", values)


def in_watts(joint: Joint, strain: Strain) -> Finding:
    """Return the finding of a strain of a whole plug or adapter, in watts at nominal volts."""
    volts = _VOLTS[strain.rail]
    strain = of_all(strain)
    values: tuple[tuple[str, Value], ...] = (("connector", joint.connector), ("rail", strain.rail))
    return Finding(joint.at, strain.amps * volts, strain.limit_amps * volts, "W", values)


def of_all(strain: Strain) -> Strain:
    """Return a strain of one contact as that of all contacts of its rail together."""
    count = max(1, strain.contacts)
    return strain._replace(amps=strain.amps * count, limit_amps=strain.limit_amps * count, contacts=0)


def adapter_watts(case: Case, adapter: FeedAdapter) -> float:
    """Return the sustained 12 V watts of all ports that one adapter feeds."""
    piece = _piece(adapter)
    return sum(joint.watts_12v for joint in case.joints if any(_piece(one) == piece for one in joint.adapters))


def plug_watts(case: Case, joint: Joint) -> float:
    """Return the sustained 12 V watts of one plug that feeds a port: all of the port, or its share of an adapter."""
    if not joint.adapters:
        return joint.watts_12v
    return adapter_watts(case, joint.adapters[0]) / max(1, joint.adapters[0].inputs)


def _piece(adapter: FeedAdapter) -> tuple[int, int, int]:
    return (adapter.unit, adapter.entry, adapter.copy)


def _excess(strain: Strain) -> float:
    return 1.0 - strain.limit_amps / strain.amps
