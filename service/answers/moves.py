"""The moves from a wiring as plugged to a better plan: each as data and as an English sentence."""

from collections.abc import Iterable
from typing import Any

from service.answers.naming import adapter_name, and_, cable_name, port_name
from service.case.case import Case
from service.case.moves import Move, plugged_of
from service.intake.wiring import connection_of
from service.parts.build import Build, Plugged, PluggedPlug

Json = dict[str, Any]


def shown(build: Build, move: Move, better: Case) -> Json:
    """Return one move: the port, what is in it, what is to be in it, and the sentence."""
    at = move.before or move.after
    assert at is not None
    port = connection_of(at)
    return {
        "action": "plug" if move.before is None else "unplug" if move.after is None else "move",
        "part": port["part"],
        "copy": port["copy"],
        "port": port["port"],
        "from": _way(move.before),
        "to": _way(move.after),
        "message": sentence(build, move, better),
    }


def _way(plugged: Plugged | None) -> Json | None:
    """Return what lies behind a port, in the shape that a connection has."""
    if plugged is None:
        return None
    whole = connection_of(plugged)
    return {"adapters": whole["adapters"], "plugs": whole["plugs"]}


def sentence(build: Build, move: Move, better: Case) -> str:
    """Return a move in words."""
    before, after = move
    if after is None:
        assert before is not None
        return f"Take {_feed(build, before)} out of {_port(build, before)}; nothing takes its place."
    if before is None:
        return f"Put {_feed(build, after)} into {_port(build, after)}{_seat(build, after)}."
    if _only_sockets(before, after):
        return f"Leave the plug in {_port(build, after)} and put {_cables_into_sockets(build, before, after)}."
    return (
        f"Feed {_port(build, after)} from {_feed(build, after)}{_own(build, move, better)} "
        f"instead of {_feed(build, before)}{_seat(build, after)}."
    )


def _port(build: Build, plugged: Plugged) -> str:
    return port_name(build, plugged.line, plugged.copy, plugged.connector, plugged.number)


def _feed(build: Build, plugged: Plugged) -> str:
    """Return the plugs of a connection, and the adapters that they go through."""
    found = and_([f"plug {plug.plug + 1} of {_cable(build, plug)}" for plug in plugged.plugs])
    if not plugged.adapters:
        return found
    return f"{found} through {and_([adapter_name(build, a.line, a.entry, a.copy) for a in plugged.adapters])}"


def _cable(build: Build, plug: PluggedPlug) -> str:
    return cable_name(build, plug.line, plug.cable, plug.copy)


def _own(build: Build, move: Move, better: Case) -> str:
    """Say so where a port that shared its cable gets one for itself."""
    planned = [plugged_of(build, joint) for joint in better.joints]
    is_own = _shares(move.before, build.wiring or ()) and not _shares(move.after, planned)
    return ", a cable of its own," if is_own and move.after and len(move.after.plugs) == 1 else ""


def _shares(one: Plugged | None, wiring: Iterable[Plugged]) -> bool:
    """Say whether another port of a wiring hangs on a cable of this connection."""
    mine = {plug[:3] for plug in one.plugs} if one else set()
    return any(one and each[:4] != one[:4] and mine & {plug[:3] for plug in each.plugs} for each in wiring)


def _seat(build: Build, after: Plugged) -> str:
    """Say into which sockets cables go that were idle."""
    idle = {plug[:3]: plug for plug in after.plugs if not _is_plugged(build, plug)}
    seats = [f"{_cable(build, plug)} into {_sockets(plug)}" for plug in idle.values() if plug.sockets]
    return f"; put {and_(seats)}" if seats else ""


def _is_plugged(build: Build, plug: PluggedPlug) -> bool:
    return any(plug[:3] == one[:3] for each in build.wiring or () for one in each.plugs)


def _sockets(plug: PluggedPlug) -> str:
    """Return the sockets of a cable in words."""
    names = [f"{label} ({plug.sockets.count(label)} of them)" if plug.sockets.count(label) > 1 else label
             for label in dict.fromkeys(plug.sockets)]
    return f"socket{'s' if len(plug.sockets) > 1 else ''} {and_(names)}"


def _only_sockets(before: Plugged, after: Plugged) -> bool:
    bare = [tuple(plug._replace(sockets=()) for plug in each.plugs) for each in (before, after)]
    return before.adapters == after.adapters and bare[0] == bare[1]


def _cables_into_sockets(build: Build, before: Plugged, after: Plugged) -> str:
    pairs = zip(before.plugs, after.plugs, strict=True)
    wrong = [new for was, new in pairs if sorted(was.sockets) != sorted(new.sockets)]
    return and_([f"{_cable(build, plug)} into {_sockets(plug)}" for plug in wrong])
