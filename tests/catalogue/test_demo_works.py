"""The demo edition at work: each supply runs some machine, each card, processor and board has a machine to be in."""

from typing import Any

import pytest

from service.parts.records import GraphicsCard, Motherboard, PowerSupply, Processor
from tests.journeys.asked import ask, shelf

Json = dict[str, Any]

PARTS = {entry.id: entry.part for entry in shelf().edition.entries}
SUPPLIES = {name: part for name, part in PARTS.items() if isinstance(part, PowerSupply)}
SITE = {"mains_volts": 230, "circuit_amps": 16, "code": "iec", "room_celsius": 22}
ASKING_WATTS = 200
GOOD = {"fits", "fits_with_cautions"}
OLD, TWELVE, USUAL = "demo-board-twenty", "demo-board-12vo", "demo-board-plain"
STRONG = ("demo-supply-1600", "demo-supply-750-12vo", "demo-supply-1000-shelf", "demo-supply-400-old")


def _verdict(*parts: str | Json) -> str:
    lines = [{"part": part} if isinstance(part, str) else {"spec": part} for part in parts]
    verdict: str = ask({"parts": lines, "site": SITE})["verdict"]
    return verdict


def _machine(board: str) -> tuple[str | Json, ...]:
    """Return a board with a small processor; a board that names no socket has its own."""
    part = PARTS[board]
    socket = part.processor_socket if isinstance(part, Motherboard) else None
    return (board, {"category": "processor", "plug_watts": 35, "socket": socket}) if socket else (board,)


def _plain(supply: PowerSupply) -> tuple[str | Json, ...]:
    """Return a small machine whose main port the supply feeds."""
    mains = {plug.connector for cable in supply.cables or () for plug in cable.plugs}
    boards = {"atx-20": OLD, "atx12vo-10": TWELVE, "atx-20+4": USUAL}
    return _machine(next(board for plug, board in boards.items() if plug in mains))


@pytest.mark.parametrize("name", SUPPLIES)
def test_every_supply_runs_a_plain_machine(name: str) -> None:
    supply = SUPPLIES[name]
    disk = [] if supply.design == "atx12vo" else ["demo-disk-flat"]
    assert _verdict(name, *_plain(supply), *disk) in GOOD


@pytest.mark.parametrize("name", [name for name, part in PARTS.items() if isinstance(part, GraphicsCard)])
def test_every_card_has_a_supply(name: str) -> None:
    good = [supply for supply in SUPPLIES if _verdict(supply, *_plain(SUPPLIES[supply]), name) in GOOD]
    part = PARTS[name]
    assert good
    assert isinstance(part, GraphicsCard)
    assert part.board_watts.high < ASKING_WATTS or len(good) < len(SUPPLIES), "it asks nothing of a supply"


@pytest.mark.parametrize("name", [name for name, part in PARTS.items() if isinstance(part, Motherboard)])
def test_every_board_has_a_supply(name: str) -> None:
    assert any(_verdict(supply, *_machine(name)) in GOOD for supply in STRONG)


@pytest.mark.parametrize("name", [name for name, part in PARTS.items() if isinstance(part, Processor)])
def test_every_processor_has_a_board(name: str) -> None:
    boards = [board for board, part in PARTS.items() if isinstance(part, Motherboard)]
    good = [board for board in boards if any(_verdict(supply, board, name) in GOOD for supply in STRONG)]
    sockets = {part.processor_socket for board in good if isinstance(part := PARTS[board], Motherboard)}
    assert good
    assert sockets <= {PARTS[name].socket, None}  # type: ignore[union-attr]  # only processors are asked for


def test_supplies_of_12_volts_have_no_drive_plugs() -> None:
    for name, supply in SUPPLIES.items():
        if supply.design == "atx12vo":
            plugs = {plug.connector for cable in supply.cables or () for plug in cable.plugs}
            assert plugs.isdisjoint({"sata-power", "peripheral-4", "floppy-4"}), name
