"""A small build of our own, on which wirings are tried: everything is given, and nothing speaks."""

import copy
from typing import Any

Json = dict[str, Any]
SUPPLY, BOARD, PROCESSOR, CARD, DRIVE = range(5)
CABLES = ("main", "processor", "card", "card too", "drives", "four", "twenty", "six")

_SHEET: Json = {
    "parts": [
        {"spec": {
            "category": "power_supply", "rated_watts": 650, "design": "atx-3.0", "cable_family": "brink-2",
            "modularity": "full", "rated_at_celsius": 50, "inlet": "c14", "efficiency_level": "gold",
            "power_factor": 0.95,
            "rails": {
                "12v": {"max_amps": 54}, "5v": {"max_amps": 20}, "3v3": {"max_amps": 20}, "5vsb": {"max_amps": 3},
            },
            "sockets": [
                {"label": "Board", "count": 2}, {"label": "Power", "count": 5, "contacts_12v": 4},
                {"label": "Disk", "count": 1},
            ],
            "cables": [
                {"plugs": [{"connector": "atx-20+4", "at_mm": 600}], "awg": 18, "occupies": {"Board": 1}},
                {"plugs": [{"connector": "cpu-4+4", "at_mm": 700}], "awg": 18, "occupies": {"Power": 1}},
                {"plugs": [{"connector": "pcie-6+2", "at_mm": 650}], "awg": 18, "occupies": {"Power": 1}},
                {"plugs": [{"connector": "pcie-6+2", "at_mm": 650}], "awg": 16, "occupies": {"Power": 1}},
                {"plugs": [{"connector": "sata-power", "at_mm": 500}, {"connector": "sata-power", "at_mm": 600}],
                 "awg": 18, "occupies": {"Disk": 1}, "carries_3v3": False},
                {"plugs": [{"connector": "cpu-4", "at_mm": 700}], "awg": 18, "occupies": {"Power": 1}},
                {"plugs": [{"connector": "atx-20", "at_mm": 600}], "awg": 18, "occupies": {"Board": 1}},
                {"plugs": [{"connector": "pcie-6", "at_mm": 650}], "awg": 18, "occupies": {"Power": 1}},
            ],
        }},
        {"spec": {
            "category": "motherboard", "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}],
            "own_amps": {"12v": 1, "5v": 1, "3v3": 1, "5vsb": 0.5},
            "offers": [{"connector": "sata-data", "count": 4}, {"connector": "fan-4", "count": 2, "max_amps": 1}],
        }},
        {"spec": {"category": "processor", "plug_watts": 96}},
        {"spec": {
            "category": "graphics_card", "board_watts": 180, "slot_watts": 60, "needs": [{"connector": "pcie-8"}],
        }},
        {"spec": {
            "category": "drive", "interface": "sata", "size": "3.5", "running_amps": {"12v": 0.4, "5v": 0.4, "3v3": 0},
            "starting_amps": {"12v": 1.8, "5v": 0.6, "3v3": 0}, "needs": [{"connector": "sata-power"}],
        }},
    ],
    "aspects": ["power", "connections", "mains", "signals"],
    "site": {"mains_volts": 230, "circuit_amps": 16, "code": "iec", "room_celsius": 24},
}
_PORTS: dict[str, tuple[int, str]] = {
    "main": (BOARD, "atx-24"), "processor": (BOARD, "cpu-8"), "card": (CARD, "pcie-8"), "drives": (DRIVE, "sata-power"),
}


def bench() -> Json:
    """Return the sheet."""
    return copy.deepcopy(_SHEET)


def plugged(**other: str) -> list[Json]:
    """Return the wiring of every port by its own cable or ``other`` ones: ``card="six"``; ``card=""`` leaves it."""
    wiring = []
    for port, (line, connector) in _PORTS.items():
        cable = other.get(port, port)
        if cable:
            wiring.append({
                "part": f"/parts/{line}", "copy": 1, "port": {"connector": connector, "number": 1}, "adapters": [],
                "plugs": [{"cable": f"/parts/{SUPPLY}/cables/{CABLES.index(cable)}", "copy": 1, "plug": 1}],
            })
    return wiring


def plug_of(wiring: list[Json], port: str) -> Json:
    """Return the plug of a connection."""
    line, connector = _PORTS[port]
    at = (f"/parts/{line}", connector)
    plugs = next(one["plugs"] for one in wiring if (one["part"], one["port"]["connector"]) == at)
    plug: Json = plugs[0]
    return plug


def port_of(port: str) -> tuple[str, str, str]:
    """Return a port as an answer names it: line, connector, number."""
    line, connector = _PORTS[port]
    return (f"/parts/{line}", connector, "1")
