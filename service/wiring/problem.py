"""The wiring problem, stated formally; the search reads nothing but this.

Units. Every current is an integer in milliamps (mA). A *load* is six of them: sustained on 12 V, 5 V, 3.3 V, then at
start-up on the same three rails. ``NO_LIMIT`` stands where nothing limits.

What there is
    *Devices* with ports. A port is of a *port type*, is required or optional, and has a weight of 1 or more.
    *Cable kinds*: ``count`` equal cables, each with plugs in order along it. *Socket types*: ``sockets[s]`` equal
    sockets.
    *Adapter kinds*: ``count`` equal adapters with ``outputs`` equal outputs and up to ``max(inputs)`` equal inputs,
    which are ports of the port type ``input_type``. *Groups*: one limit on one rail.

A wiring
    gives each device port, and each input of each adapter in use, one *source* or none:

    * a plug: one of the ``fits`` of its port type, on a numbered cable of that kind. A plug has ``halves`` halves
      (2 for a plug that splits, else 1) and the fits on it together take no more than that; or
    * an output of an adapter named in ``adapter_fits`` of its port type.

    An adapter in use feeds at least one port, and the number of its inputs that have a source is exactly one of
    ``inputs``; inputs are equal, so the first so many are used. Outputs in use do not exceed ``outputs``. An adapter's
    input may be fed from an adapter, that one's input may not (depth two).
    A cable in use has at least one plug in use and takes ``takes[s]`` sockets of each type s; all sockets taken stay
    within ``sockets``. A device port that is optional may go without; one that is required and goes without is *unfed*.
    An adapter input may never go without, nor may a port that is marked ``must``; only where there are such ports can
    it be that there is no wiring at all.

Loads
    Let F be the ports of a device that are required, and those optional ones that have a source. Port i in F carries,
    on each of the six entries, ``ceil(device.load[k] * weight_i / sum of weights over F)``; an unfed port's share is
    not given to others, and carries nothing. An adapter carries the sum over its outputs; each of its j used inputs
    carries ``ceil(sum / j)``. Segment p of a cable runs from plug p-1 (or the supply, p = 0) to plug p and carries
    the sum over the plugs at p and beyond. A group carries, from each cable in use that names it, ``ceil(l * m / n)``
    where l is the load of segment 0 on the group's rail (sustained), n the length of the kind's ``groups`` and m how
    often the group is in it.

The feed of a port
    is the set of all *places* its current passes: the fit or adapter fit at the port itself; for each adapter on the
    way the adapter, and the fits of its used inputs; for each plug on the way segments 0 to p of its cable. Each
    place has ``Limits`` on each rail, and its current l there is judged:

    * overloaded when sustained l > ``stop`` or start-up l > ``start_stop``;
    * banded when sustained l > ``band``;  *start-banded* when start-up l > ``start_band``;
    * its *use* is ``ceil(1000 * l / comfort)`` with l sustained (0 where comfort is NO_LIMIT; comfort is 1 or more).

    An adapter's limits are ``limits_by_inputs`` at the number of inputs used. A connection (a device port that has a
    source, with its feed) is overloaded, banded, start-banded when some place of its feed is; its use is the largest.

Objective, smallest first, compared in this order, each entry a sum over devices, connections, cables and groups:

    0  stops: unfed ports + overloaded connections + overloaded groups (carry > ``limit``)
    1  unfed ports                     2  unfed ports of role main        3  unfed ports of role processor
    4  devices of role card that have an unfed port                       5  unfed ports of role drive
    6  unfed ports of role rest        7  cables used whose kind is to be bought
    8  points: over connections that are not overloaded, BAND_POINTS if banded, START_POINTS if start-banded; over all
       connections, the ``points`` of the fits, adapter fits and adapters of its feed (each place once); over pairs of a
       device of role card and a cable that feeds two or more of its ports: SHARE_POINTS if the sustained 12 V current
       of those of its ports, taken at the ports, that have a plug of this cable in their feed is over ``share_limit``
    9  adapters moulded, 10 adapters bought, 11 adapters bundled
    12 comfort: over connections, use above COMFORT_FROM, that is max(0, use - COMFORT_FROM)
    13 optional ports without a source, of devices where some connection's use is above COMFORT_FROM
    14 cables used                     15 loose plugs: plugs of used cables with no half in use

Ties. Among equal wirings the one that the search meets first, in the canonical order of devices, ports, kinds, plugs
and adapters of the problem; names do not enter a problem, so they do not enter the choice.
"""

from typing import Literal, NamedTuple

NO_LIMIT = 1 << 40
COMFORT_FROM = 600

Role = Literal["main", "processor", "card", "drive", "rest"]
Load = tuple[int, int, int, int, int, int]
NOTHING: Load = (0, 0, 0, 0, 0, 0)


class Limits(NamedTuple):
    """What one place allows on one rail [mA]: sustained stop, band and comfort; start-up stop and band."""

    stop: int = NO_LIMIT
    band: int = NO_LIMIT
    comfort: int = NO_LIMIT
    start_stop: int = NO_LIMIT
    start_band: int = NO_LIMIT


FREE = Limits()
RailLimits = tuple[Limits, Limits, Limits]
UNLIMITED: RailLimits = (FREE, FREE, FREE)


class Fit(NamedTuple):
    """A plug that a port takes: plug ``plug`` of cable kind ``cable``, using ``halves`` of it."""

    cable: int
    plug: int
    halves: int
    limits: RailLimits
    points: int = 0


class AdapterFit(NamedTuple):
    """An adapter whose output a port takes."""

    adapter: int
    limits: RailLimits
    points: int = 0


class PortType(NamedTuple):
    """What may be the source of a port."""

    fits: tuple[Fit, ...]
    adapter_fits: tuple[AdapterFit, ...] = ()


class Port(NamedTuple):
    """A port of a device; weights divide the device's load. ``must``: it has a source in every wiring, as plugged."""

    type: int
    required: bool
    weight: int
    must: bool = False


class Device(NamedTuple):
    """A device: its load is divided over the ports that are fed."""

    role: Role
    ports: tuple[Port, ...]
    load: Load


class CableKind(NamedTuple):
    """Equal cables. ``segments[p]`` limits the stretch before plug p; ``halves[p]`` is 2 where plug p splits."""

    count: int  # type: ignore[assignment]  # hides tuple.count, which nobody calls here
    takes: tuple[int, ...]
    halves: tuple[int, ...]
    segments: tuple[RailLimits, ...]
    groups: tuple[int, ...] = ()
    bought: bool = False


class AdapterKind(NamedTuple):
    """Equal adapters. ``inputs`` lists, ascending, how many inputs may be used; ``limits_by_inputs`` what each allows.

    ``rank`` is 0 moulded, 1 bought, 2 bundled.
    """

    count: int  # type: ignore[assignment]  # hides tuple.count, which nobody calls here
    rank: int
    outputs: int
    input_type: int
    inputs: tuple[int, ...]
    limits_by_inputs: tuple[RailLimits, ...]
    points: int = 0


class GroupLimit(NamedTuple):
    """One limit [mA, sustained] on one rail (0: 12 V, 1: 5 V, 2: 3.3 V)."""

    rail: int
    limit: int


class Points(NamedTuple):
    """Points of the cautions that a plan decides, and the current of a card [mA] above which sharing a cable is one."""

    band: int
    start: int
    share: int
    share_limit: int


class Problem(NamedTuple):
    """The whole of it."""

    devices: tuple[Device, ...]
    port_types: tuple[PortType, ...]
    cables: tuple[CableKind, ...]
    sockets: tuple[int, ...]
    adapters: tuple[AdapterKind, ...]
    groups: tuple[GroupLimit, ...]
    points: Points


class PlugSource(NamedTuple):
    """A plug as source: ``fit`` indexes the port type's fits, ``copy`` numbers the cable within its kind from 0."""

    fit: int
    copy: int


class AdapterSource(NamedTuple):
    """An output of an adapter as source: ``fit`` indexes the port type's adapter fits, ``copy`` numbers the adapter."""

    fit: int
    copy: int


Source = PlugSource | AdapterSource


class Wiring(NamedTuple):
    """A choice: for each device and port its source or None; for each adapter in use the sources of its inputs.

    ``adapter_inputs``: (adapter kind, copy, sources), sorted by kind and copy.
    """

    sources: tuple[tuple[Source | None, ...], ...]
    adapter_inputs: tuple[tuple[int, int, tuple[Source, ...]], ...] = ()


Objective = tuple[int, ...]
LEVELS = 16


class Solution(NamedTuple):
    """The best wiring found, its objective, whether it is proven best, and the search nodes that it took."""

    wiring: Wiring
    objective: Objective
    proven: bool
    nodes: int
