"""The two worst sheets that a builder may in earnest send, frozen: much that is nearly alike, and hardly enough of it.

Eight different cards on adapters of two to four plugs; thirty disks of six models on every sort of drive cable.
"""

from typing import Any

Json = dict[str, Any]


def _cable(name: str, sockets: Json, plugs: list[str], quantity: int) -> Json:
    placed = [{"connector": plug, "at_mm": 500 + 150 * place} for place, plug in enumerate(plugs)]
    return {"name": name, "quantity": quantity, "occupies": sockets, "plugs": placed, "awg": 18}


def _supply() -> Json:
    sockets = (("Main", 1, ["main"]), ("Processor", 2, ["processor"]), ("Card", 20, ["card"]), ("Drive", 9, ["drive"]))
    return {
        "category": "power_supply",
        "name": "Tallowmere Rig 4000",
        "rated_watts": 4000,
        "design": "atx-3.1",
        "modularity": "full",
        "rails": {"12v": {"max_amps": 330}, "5v": {"max_amps": 40}, "3v3": {"max_amps": 30}, "5vsb": {"max_amps": 4}},
        "sockets": [{"label": label, "count": count} for label, count, _ in sockets],
        "cables": [
            _cable("Main", {"Main": 1}, ["atx-20+4"], 1),
            _cable("Processor", {"Processor": 1}, ["cpu-4+4"], 2),
            _cable("Card", {"Card": 1}, ["pcie-6+2"], 12),
            _cable("Card, double-ended", {"Card": 1}, ["pcie-6+2", "pcie-6+2"], 8),
            _cable("Drives, four", {"Drive": 1}, ["sata-power"] * 4, 4),
            _cable("Drives, three", {"Drive": 1}, ["sata-power"] * 3, 2),
            _cable("Drives, mixed", {"Drive": 1}, ["sata-power", "sata-power", "peripheral-4", "peripheral-4"], 3),
            _cable("Peripheral", {"Drive": 1}, ["peripheral-4"] * 3, 2),
        ],
    }


def _machine() -> list[Json]:
    return [
        {"spec": _supply()},
        {"part": "demo-board-two-eight"},
        {"part": "demo-processor-big-165"},
        {"part": "demo-memory-4x32"},
        {"part": "demo-cooler-tower"},
    ]


def _card(number: int) -> Json:
    adapter = {
        "name": f"To 16 pins, {number}",
        "takes": [{"connector": "pcie-8", "count": 4}],
        "gives": [{"connector": "12v-2x6", "count": 1}],
        "rated_watts_by_inputs": {"2": 300, "3": 450, "4": 600},
    }
    return {
        "category": "graphics_card",
        "name": f"Brindlehock Rig card {number}",
        "board_watts": 330 + 11 * number,
        "slot_watts": 20 + number,
        "needs": [{"connector": "12v-2x6"}],
        "adapters": [adapter],
    }


def _disk(model: int) -> Json:
    return {
        "category": "drive",
        "name": f"Osiermoor disk {model}",
        "interface": "sata",
        "size": "3.5",
        "needs": [{"connector": "sata-power"}],
        "running_amps": {"12v": round(0.45 + 0.07 * model, 2), "5v": round(0.4 + 0.05 * model, 2)},
        "starting_amps": {"12v": round(1.7 + 0.11 * model, 2)},
    }


def eight_cards() -> Json:
    """Return the sheet with eight different cards, each with an adapter."""
    return {"parts": [*_machine(), *({"spec": _card(number)} for number in range(8)), {"part": "demo-ssd-m2"}]}


def thirty_disks() -> Json:
    """Return the sheet with thirty disks of six models, two fewer plugs than disks, and adapters that help out."""
    adapter = {
        "category": "adapter",
        "name": "Peripheral to drive plug",
        "takes": [{"connector": "peripheral-4", "count": 1}],
        "gives": [{"connector": "sata-power", "count": 1}],
    }
    disks = [{"spec": _disk(model), "quantity": 5} for model in range(6)]
    return {"parts": [*_machine(), *disks, {"spec": adapter, "quantity": 3}]}


WORST = {"eight different cards on adapters": eight_cards, "thirty disks of six models": thirty_disks}
