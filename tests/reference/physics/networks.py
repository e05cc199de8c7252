"""Networks twice over: as a netlist with every contact and wire of its own, and by the formulas of the room.

Currents and volts are named as the simulator prints them: ``@r1[i]`` through R1, ``v(a)`` at node a.
"""

from collections.abc import Callable, Iterator, Sequence
from random import Random
from typing import NamedTuple

from service.physics.chain import Chain, chain, rails_chain
from service.physics.contacts import OPEN, divide_amps, feed_watts, parallel_ohms, worst_sharing
from service.physics.copper import pair_ohms, wire_ohms
from service.physics.loads import most_watts
from service.physics.runs import run
from service.physics.strip import even_strip, tapped_strip
from service.physics.tree import ROOT, flow

LINEAR = 1e-9
POWER = 1e-6
"""Relative agreement that is asked for with constant currents alone, and with constant power."""
SIX = (0.0131, 0.0094, 0.0118, 0.0203, 0.0107, 0.0152)
"""Six branches: a contact at each end of 0.65 m of 16 AWG, some good, some worn. [ohm]"""
BACK = (0.0112, 0.0099, 0.0141, 0.0121, 0.0104, 0.0187)

Ours = dict[str, float] | None


class Network(NamedTuple):
    """What it is, its netlist, how near both must lie, and the answer of the formulas; None: there is no solution."""

    name: str
    lines: Sequence[str]
    within: float
    ours: Callable[[], Ours]


def _side(start: str, end: str, ohms: Sequence[float], first: int = 1) -> list[str]:
    return [f"R{number} {start} {end} {one!r}" for number, one in enumerate(ohms, first) if one < OPEN]


def _amps(shares: Sequence[float] | None, first: int = 1) -> dict[str, float]:
    return {f"@r{number}[i]": one for number, one in enumerate(shares or (), first) if one}


def _power(node: str, watts: float, ground: str = "0") -> str:
    return f"B{node} {node} {ground} I={watts!r}/(V({node})-V({ground}))"


def _start(volts: float, *nodes: str) -> str:
    return ".nodeset " + " ".join(f"v({node})={volts!r}" for node in nodes)


def _contacts() -> Iterator[Network]:
    yield Network(
        "six unequal contacts", ["V1 rail 0 12", *_side("rail", "card", SIX), "I1 card 0 50"], LINEAR,
        lambda: _amps(divide_amps(50, SIX)) | {"v(card)": 12 - 50 * parallel_ohms(SIX)},
    )
    one_open = (*SIX[:3], OPEN, *SIX[4:])
    yield Network(
        "one of six open", ["V1 rail 0 12", *_side("rail", "card", one_open), "I1 card 0 50"], LINEAR,
        lambda: _amps(divide_amps(50, one_open)),
    )
    far_apart = (1e-4, 0.1, 0.01, 1.0)
    yield Network(
        "contacts from 0.1 milliohm to 1 ohm", ["V1 rail 0 12", *_side("rail", "card", far_apart), "I1 card 0 8"],
        LINEAR, lambda: _amps(divide_amps(8, far_apart)),
    )
    yield Network(
        "six there and six back, each on its own",
        ["V1 rail 0 12", *_side("rail", "card", SIX), "I1 card ret 50", *_side("ret", "0", BACK, 7)], LINEAR,
        lambda: _amps(divide_amps(50, SIX)) | _amps(divide_amps(50, BACK), 7) | {
            "v(card)": 12 - 50 * parallel_ohms(SIX), "v(ret)": 50 * parallel_ohms(BACK)},
    )
    short, long = wire_ohms(18, 450) + 0.012, wire_ohms(18, 700, stranded=True) + 0.02
    cables = (short, short, short, long, long, long)
    yield Network(
        "two cables of unequal length side by side",
        ["V1 rail 0 12", *_side("rail", "card", cables), "I1 card 0 25"], LINEAR,
        lambda: _amps(divide_amps(25, cables)),
    )
    yield Network("worst sharing with one open", _worst_lines(), LINEAR, _worst)


WIRES = (0.0086, 0.0081, 0.0086, 0.0092, 0.0079, 0.0086)


def _worst_lines() -> list[str]:
    # The shortest wire is the fifth: fresh. The next is the second: open. The others are worn.
    worn = {1: 0.0086, 3: 0.0086, 4: 0.0092, 6: 0.0086}
    lines = ["V1 rail 0 12", "R5 rail e5 0.0079", "RC5 e5 card 0.0016", "I1 card 0 50"]
    return lines + [
        line for number, wire in worn.items()
        for line in (f"R{number} rail e{number} {wire!r}", f"RC{number} e{number} card 0.012")
    ]


def _worst() -> Ours:
    found = worst_sharing(50, WIRES, 0.0016, 0.012)
    assert found
    assert found.most_loaded == 4
    return _amps(found.branch_amps)


def _along(found: Chain | None, plugs: int) -> Ours:
    """Name a chain: R1 to Rn are its stretches, RC1 to RCn the contacts of its plugs, n1, d1 the nodes there."""
    if found is None:
        return None
    named = {f"v(n{at})": volts for at, volts in enumerate(found.plug_volts, 1)}
    named |= {f"v(d{at})": volts for at, volts in enumerate(found.device_volts, 1)}
    named |= {f"@r{at}[i]": amps for at, amps in enumerate(found.stretch_amps, 1) if amps}
    named |= {f"@rc{at}[i]": amps for at, amps in enumerate(found.plug_amps, 1) if amps}
    assert len(named) >= 2 * plugs
    return named


def _chain_lines(
    volts: float, stretches: Sequence[float], plugs: Sequence[float], amps: Sequence[float], watts: Sequence[float],
) -> list[str]:
    lines = [f"V1 n0 0 {volts!r}"]
    for at, (stretch, plug, i, p) in enumerate(zip(stretches, plugs, amps, watts, strict=True), 1):
        lines += [f"R{at} n{at - 1} n{at} {stretch!r}", f"RC{at} n{at} d{at} {plug!r}", f"I{at} d{at} 0 {i!r}"]
        lines += [_power(f"d{at}", p)] if p else []
    nodes = [f"{kind}{at}" for at in range(1, len(stretches) + 1) for kind in "nd"]
    return [*lines, _start(volts, *nodes)] if any(watts) else lines


def _chained(
    name: str, volts: float, stretches: Sequence[float], plugs: Sequence[float], amps: Sequence[float],
    watts: Sequence[float],
) -> Network:
    return Network(
        name, _chain_lines(volts, stretches, plugs, amps, watts), POWER if any(watts) else LINEAR,
        lambda: _along(chain(volts, stretches, amps, watts, plugs), len(stretches)),
    )


DRIVES = (0.0456, 0.0114, 0.0114, 0.0114)
DRIVE_PLUGS = (0.02, 0.03, 0.02, 0.06)
NOTHING = (0.0, 0.0, 0.0, 0.0)


def _chains() -> Iterator[Network]:
    yield _chained("trunk and tail of two card plugs", 12.0, (0.019, 0.004), (0.0035, 0.004), (12.5, 12.5), (0.0, 0.0))
    yield _chained("four drives that start at once", 12.0, DRIVES, DRIVE_PLUGS, (2.33, 2.33, 2.8, 2.33), NOTHING)
    yield _chained("four drives, the second absent", 5.0, DRIVES, DRIVE_PLUGS, (0.7, 0.0, 0.7, 0.5), NOTHING)
    yield _chained("drives of constant power", 12.0, DRIVES, DRIVE_PLUGS, NOTHING, (9.0, 6.5, 7.0, 9.0))
    yield _chained("drives of both kinds", 5.0, DRIVES, DRIVE_PLUGS, (0.4, 0.0, 0.4, 0.2), (2.5, 3.5, 0.0, 2.0))
    yield _with_extension()
    limit = _chain_limit()
    for name, share in (("just below", 1 - 1e-5), ("just above", 1 + 1e-5), ("far above", 3.0)):
        watts = [limit * share / 4] * 4
        yield _chained(f"long thin chain {name} what it can carry", 12.0, LONG, DRIVE_PLUGS, NOTHING, watts)


LONG = (0.3, 0.15, 0.1, 0.2)


def _chain_limit() -> float:
    """Return the watts, in equal parts at four plugs, at which the formulas stop to find volts."""
    carried, refused = 0.0, 1000.0
    while refused - carried > 1e-9:
        watts = (carried + refused) / 2
        solved = chain(12.0, LONG, NOTHING, [watts / 4] * 4, DRIVE_PLUGS)
        carried, refused = (watts, refused) if solved else (carried, watts)
    return carried


def _with_extension() -> Network:
    """Return a chain of two plugs whose tail is lengthened: every wire and contact there and back on its own."""
    wire, added, joint = wire_ohms(18, 500), wire_ohms(20, 300), 0.008
    lines = [
        "V1 n0 0 12", f"R1 n0 n1 {wire!r}", f"R2 n1 a {joint!r}", f"R3 a b {added!r}", f"R4 b n2 {joint!r}",
        "I1 n1 g1 4.5", "I2 n2 g2 3.25",
        f"R5 g2 c {joint!r}", f"R6 c d {added!r}", f"R7 d g1 {joint!r}", f"R8 g1 0 {wire!r}",
        "E1 first 0 n1 g1 1", "E2 last 0 n2 g2 1",
    ]

    def ours() -> Ours:
        tail = pair_ohms(20, 300, ohms_per_contact=joint, contacts_in_series=4)
        found = chain(12, [pair_ohms(18, 500), tail], [4.5, 3.25])
        assert found
        return {
            "v(first)": found.plug_volts[0], "v(last)": found.plug_volts[1],
            "@r1[i]": found.stretch_amps[0], "@r3[i]": found.stretch_amps[1],
        }

    return Network("extension in the tail, wire by wire", lines, LINEAR, ours)


RAILS = (12.0, 5.0)
TAKEN = ((0.6, 2.0, 0.0, 1.72), (0.7, 0.5, 1.0, 0.8))


def _rails() -> Iterator[Network]:
    """Yield a drive cable with a wire for 12 V, one for 5 V, two for the return, and three contacts of each a plug."""
    wire, contact = [wire_ohms(18, length) for length in (450, 150, 150, 150)], (0.01, 0.03, 0.02, 0.006)
    lines = ["V1 a0 0 12", "V2 b0 0 5"]
    for at, (ohms, plug) in enumerate(zip(wire, contact, strict=True), 1):
        lines += [f"R1{at} a{at - 1} a{at} {ohms!r}", f"R2{at} b{at - 1} b{at} {ohms!r}"]
        lines += [f"R{number}{at} {f'g{at - 1}' if at > 1 else 0} g{at} {ohms!r}" for number in (3, 4)]
        lines += [
            f"R{side}{number}{at} {node}{at} {node}d{at} {plug!r}"
            for side, node in enumerate("abg", 5) for number in range(3)
        ]
        lines += [f"I{rail}{at} {'ab'[rail]}d{at} gd{at} {TAKEN[rail][at - 1]!r}" for rail in range(2)]
        lines += [f"E{rail}{at} {'xy'[rail]}{at} 0 {'ab'[rail]}d{at} gd{at} 1" for rail in range(2)]

    def ours() -> Ours:
        thirds = [one / 3 for one in contact]
        found = rails_chain(RAILS, wire, [one / 2 for one in wire], TAKEN, thirds, thirds)
        return {f"v({'xy'[rail]}{at})": volts for rail, row in enumerate(found) for at, volts in enumerate(row, 1)
                } if found else None

    yield Network("drive cable of two rails with a common return", lines, LINEAR, ours)


def _runs() -> Iterator[Network]:
    wire, contact = wire_ohms(16, 650, celsius=40), 0.006
    lines = ["V1 s 0 12"]
    for pair in range(1, 7):
        lines += [
            f"R{pair}1 s a{pair} {contact!r}", f"R{pair}2 a{pair} b{pair} {wire!r}", f"R{pair}3 b{pair} e {contact!r}",
            f"R{pair}4 f c{pair} {contact!r}", f"R{pair}5 c{pair} d{pair} {wire!r}", f"R{pair}6 d{pair} 0 {contact!r}",
        ]
    lines += ["E1 end 0 e f 1"]

    def ours(amps: float, watts: float) -> Ours:
        found = run(
            12, 16, 650, lowest_volts=11.04, amps=amps, watts=watts, parallel_pairs=6, ohms_per_contact=contact,
            celsius=40,
        )
        return {"v(end)": found.end_volts, "@r42[i]": found.pair_amps} if found else None

    yield Network("a run of six pairs at 50 A", [*lines, "I1 e f 50"], LINEAR, lambda: ours(50, 0))
    nodes = [f"{kind}{pair}" for kind in "ab" for pair in range(1, 7)]
    yield Network(
        "a run of six pairs at 5 A and 600 W",
        [*lines, "I1 e f 5", _power("e", 600, "f"), _start(12, "e", *nodes)], POWER, lambda: ours(5, 600),
    )
    most = most_watts(12, pair_ohms(16, 650, parallel_pairs=6, ohms_per_contact=contact, contacts_in_series=4,
                                    celsius=40))
    beyond = most * 1.0001
    yield Network(
        "a run of six pairs above what it can carry",
        [*lines, _power("e", beyond, "f"), _start(12, "e", *nodes)], POWER, lambda: ours(0, beyond),
    )


def _constant_power() -> Iterator[Network]:
    ohms = parallel_ohms(SIX) + parallel_ohms(BACK)
    for name, watts in (
        ("600 W through twelve contacts", 600.0),
        ("a millionth below the most", most_watts(12, ohms) * (1 - 1e-6)),
        ("a hundredth above the most", most_watts(12, ohms) * 1.01),
    ):
        lines = [
            "V1 rail 0 12", *_side("rail", "card", SIX), *_side("ret", "0", BACK, 7), _power("card", watts, "ret"),
            _start(12, "card"),
        ]
        yield Network(name, lines, POWER, lambda watts=watts: _fed(watts))  # type: ignore[misc]


def _fed(watts: float) -> Ours:
    found = feed_watts(12, SIX, watts, parallel_ohms(BACK))
    if found is None:
        return None
    there = _amps(found.branch_amps)
    back = _amps(divide_amps(found.total_amps, BACK), 7)
    return there | back | {"v(card)": 12 - found.total_amps * parallel_ohms(SIX)}


def _strips() -> Iterator[Network]:
    lead, pitch, lights = pair_ohms(22, 400), 0.0021, 60
    lines = ["V1 n0 0 5", f"R1 n0 n1 {lead!r}"]
    lines += [f"R{at} n{at - 1} n{at} {pitch!r}" for at in range(2, lights + 1)]
    names = [f"n{at}" for at in range(1, lights + 1)]

    def ours(found: Chain | None) -> Ours:
        return None if found is None else {
            f"v({name})": volts for name, volts in zip(names, found.device_volts, strict=True)
        } | {"@r1[i]": found.stretch_amps[0], "@r60[i]": found.stretch_amps[-1]}

    yield Network(
        "strip of 60 lights of constant current", [*lines, *(f"I{at} n{at} 0 0.02" for at in range(1, lights + 1))],
        LINEAR, lambda: ours(tapped_strip(5, lead, pitch, lights, light_amps=0.02)),
    )
    yield Network(
        "strip of 60 lights of constant power",
        [*lines, *(_power(name, 0.09) for name in names), _start(5, *names)], POWER,
        lambda: ours(tapped_strip(5, lead, pitch, lights, light_watts=0.09)),
    )
    yield _even()


def _even() -> Network:
    """Return an even strip as cells with half a resistance before and half behind their light: their end is exact."""
    cells, ohms, amps = 40, 0.14, 2.4
    lines = ["V1 s 0 12", "RL s e0 0.05"]
    for cell in range(cells):
        half = ohms / cells / 2
        lines += [f"RA{cell} e{cell} m{cell} {half!r}", f"RB{cell} m{cell} e{cell + 1} {half!r}"]
        lines.append(f"I{cell} m{cell} 0 {amps / cells!r}")

    def ours() -> Ours:
        found = even_strip(12, 0.05, ohms / 2, amps / 2, 2000)
        return {"v(e0)": found.first_volts, "v(e40)": found.last_volts, "@rl[i]": found.total_amps} if found else None

    return Network("even strip of two metres", lines, LINEAR, ours)


def drawn(seed: int) -> Network:
    """Return a tree of random shape with loads of both kinds; some are past what they can carry."""
    chance = Random(f"tree-{seed}")
    count = chance.randint(2, 12)
    volts = chance.choice((3.3, 5.0, 12.0))
    parents = [ROOT, *(chance.randint(max(ROOT, node - 4), node - 1) for node in range(1, count))]
    ohms = [10 ** chance.uniform(-4, -0.5) for _ in parents]
    amps = [chance.choice((0.0, chance.uniform(0.05, 1.5))) for _ in parents]
    watts = [chance.choice((0.0, chance.uniform(0.5, 15))) for _ in parents]
    lines = [f"V1 n{ROOT + 1} 0 {volts!r}"]
    for node, (parent, element, i, p) in enumerate(zip(parents, ohms, amps, watts, strict=True)):
        lines += [f"R{node + 1} n{parent + 1} n{node + 1} {element!r}", f"I{node + 1} n{node + 1} 0 {i!r}"]
        lines += [_power(f"n{node + 1}", p)] if p else []
    lines.append(_start(volts, *(f"n{node + 1}" for node in range(count))))

    def ours() -> Ours:
        found = flow(volts, parents, ohms, amps, watts)
        if found is None:
            return None
        return {f"v(n{node + 1})": at for node, at in enumerate(found.node_volts)} | {
            f"@r{node + 1}[i]": each for node, each in enumerate(found.element_amps) if each}

    return Network(f"random tree {seed}", lines, POWER if any(watts) else LINEAR, ours)


WRITTEN = [*_contacts(), *_chains(), *_rails(), *_runs(), *_constant_power(), *_strips()]
