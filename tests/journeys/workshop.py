"""A machine with one of everything, so that every field of every category stands somewhere on a sheet."""

import copy
from typing import Any

Json = dict[str, Any]


def _supply(**other: Any) -> Json:
    return {
        "category": "power_supply", "rated_watts": 850, "design": "atx-3.0", "form_factor": "atx", "depth_mm": 150,
        "modularity": "semi",
        "efficiency_points": [{"load_percent": 20, "percent": 88}, {"load_percent": 100, "percent": 85}],
        "power_factor": 0.95, "rated_at_celsius": 40, "inlet": "c14", "fan_side": "bottom", "cable_family": "loft-1",
        "rails": {"12v": {"max_amps": 70}, "5v": {"max_amps": 20}, "3v3": {"max_amps": 20}, "5vsb": {"max_amps": 3}},
        "groups": [
            {"name": "A", "max_amps": 50, "feeds": ["main", "processor"]},
            {"name": "B", "max_amps": 50, "feeds": ["card"]},
            {"name": "C", "rail": "5v", "max_amps": 20, "feeds": ["drive"]},
        ],
        "combined_limits": [{"rails": ["5v", "3v3"], "watts": 120}],
        "sockets": [
            {"label": "Disk", "count": 4}, {"label": "Power", "count": 4, "group": "B", "contacts_12v": 4},
            {"label": "Wide", "count": 1},
        ],
        "cables": [
            {"plugs": [{"connector": "atx-20+4", "at_mm": 600}], "awg": 18, "captive": True},
            {"plugs": [{"connector": "cpu-4+4", "at_mm": 700}], "awg": 18, "group": "A", "occupies": {"Power": 1}},
            {"plugs": [{"connector": "pcie-6+2", "at_mm": 600}, {"connector": "pcie-6+2", "at_mm": 750}], "awg": 18,
             "occupies": {"Power": 1}, "quantity": 2, "supply_wires_12v": 3},
            {"plugs": [{"connector": "12v-2x6", "at_mm": 650}], "rated_watts": 450, "occupies": {"Wide": 1}},
            {"plugs": [{"connector": "sata-power", "at_mm": 400}, {"connector": "sata-power", "at_mm": 500},
                       {"connector": "peripheral-4", "at_mm": 650}],
             "awg": 18, "quantity": 3, "occupies": {"Disk": 1}, "carries_3v3": True},
        ],
    } | other


def _rest() -> list[Json]:
    """Return everything but the supply."""
    peaks = [{"microseconds": 1000, "watts": 420}]
    adapter = {
        "takes": [{"connector": "pcie-8", "count": 2}], "gives": [{"connector": "12vhpwr"}],
        "rated_watts_by_inputs": {"2": 300},
    }
    sata = [{"connector": "sata-power"}]
    parts: list[Json] = [
        {"category": "motherboard", "processor_socket": "lug-1", "memory_type": "ddr4", "processors": 1,
         "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}, {"connector": "cpu-4", "optional": True,
                    "required_above_watts": 230}, {"connector": "peripheral-4", "optional": True, "watts": 20}],
         "offers": [{"connector": "fan-4", "count": 3, "max_amps": 1}, {"connector": "sata-data", "count": 8},
                    {"connector": "rgb-4", "max_amps": 3}, {"connector": "argb-3", "max_amps": 3},
                     {"connector": "m2-m"}],
         "own_amps": {"12v": 1, "5v": 1, "3v3": 1, "5vsb": 0.5}},
        {"category": "processor", "turbo_watts": 120, "base_watts": 65, "socket": "lug-1",
         "peaks": [{"microseconds": 10000, "watts": 160}]},
        {"category": "graphics_card", "board_watts": 300, "slot_watts": 50, "length_mm": 280, "peaks": peaks,
         "needs": [{"connector": "12vhpwr", "watts": 250}], "adapters": [adapter]},
        {"category": "expansion_card", "board_watts": 100, "slot_watts": 40, "length_mm": 200, "peaks": peaks,
         "needs": [{"connector": "pcie-6", "watts": 60}],
         "adapters": [{"takes": [{"connector": "peripheral-4", "count": 2}], "gives": [{"connector": "pcie-6"}],
                       "rated_watts": 75}]},
        {"category": "drive", "interface": "sata", "size": "3.5", "needs": sata, "power_disable": False,
         "running_amps": {"12v": 0.5, "5v": 0.5, "3v3": 0.1}, "starting_amps": {"12v": 2, "5v": 0.7, "3v3": 0.1}},
        {"category": "optical_drive", "interface": "sata", "needs": sata, "running_amps": {"12v": 1, "5v": 1,
         "3v3": 0.1}},
        {"category": "cooler", "needs": [{"connector": "fan-4"}], "amps": 0.3, "starting_amps": 0.5},
        {"category": "fan", "needs": [{"connector": "fan-4"}], "amps": 0.3, "starting_amps": 0.5},
        {"category": "pump", "needs": sata, "amps": 1, "starting_amps": 1.5},
        {"category": "controller", "needs": sata, "amps": 0.1, "offers": [{"connector": "fan-4", "count": 2,
         "max_amps": 1}]},
        {"category": "lighting", "volts": 5, "leds": 30, "needs": [{"connector": "argb-3"}],
         "lead": {"length_mm": 500, "awg": 22, "parallel_pairs": 1, "ohms_per_contact": 0.01},
         "strip": {"length_mm": 500, "ohms_per_metre": 0.2}},
        {"category": "lighting", "volts": 12, "amps": 1, "needs": [{"connector": "rgb-4"}]},
        {"category": "backplane", "needs": [{"connector": "peripheral-4", "count": 2}],
         "offers": [{"connector": "sata-power", "count": 2, "max_amps": 2}]},
        {"category": "riser", "needs": [*sata, {"connector": "floppy-4", "optional": True}], "feeds_slot_watts": 40},
        {"category": "case", "card_length_mm": 300, "routes_mm": {"main": 500, "processor": 600, "card": 500,
         "drive": 350},
         "bays": [{"form_factors": ["atx"], "depth_mm": 200, "plugs_clear_mm": 60, "fan_vent": "bottom"}]},
        {"category": "bracket", "from_form_factor": "sfx", "to_form_factor": "atx"},
        {"category": "memory", "type": "ddr4", "modules": 2, "watts": 10},
        {"category": "cable", "family": "loft-1", "plugs": [{"connector": "sata-power", "at_mm": 500}], "awg": 18,
         "occupies": {"Disk": 1}, "carries_3v3": False},
        {"category": "adapter", "takes": [{"connector": "peripheral-4"}], "gives": [{"connector": "sata-power",
         "count": 2}],
         "rated_watts": 50},
    ]
    return parts


def _sheet(parts: list[Json], **other: Any) -> Json:
    return copy.deepcopy({"parts": [{"spec": part, "quantity": 1} for part in parts], **other})


_SITE = {"mains_volts": 120, "circuit_amps": 15, "code": "nec", "room_celsius": 30, "ups": {"watts": 900,
    "volt_amperes": 1200}}
_USE = {"drives_starting_together": 1, "graphics_limit_percent": 100}


_RUNS: list[Json] = [
    {"name": "By amps", "source_volts": 12, "length_mm": 800, "awg": 18, "parallel_pairs": 1, "ohms_per_contact": 0.01,
     "amps": 3, "lowest_volts": 11.4, "max_amps": 9},
    {"source_volts": 12, "length_mm": 800, "watts": 30, "lowest_volts": 11.4},
    {"source_volts": 5, "length_mm": 500, "lowest_volts": 4.5,
     "strip": {"length_mm": 1000, "amps_per_metre": 1, "ohms_per_metre": 0.2}},
]


_READINGS: list[Json] = [
    {"part": "/parts/0", "copy": 1, "rail": "12v", "volts": 12.1, "amps": 20},
    {"part": "/parts/1", "copy": 1, "port": {"connector": "atx-24", "number": 1}, "rail": "5v", "amps": 2},
    {"part": "/parts/5", "rail": "12v", "amps": 0.4},
]


def everything() -> Json:
    """Return the machine with all figures."""
    return _sheet([_supply(), *_rest()], site=_SITE, use=_USE, runs=_RUNS, readings=_READINGS)


def bare() -> Json:
    """Return the machine with few figures, so that what is assumed shows."""
    kept = {"category", "rated_watts", "design", "board_watts", "feeds_slot_watts", "volts", "from_form_factor",
            "to_form_factor", "plugs", "takes", "gives", "bays"}
    parts = [{key: value for key, value in part.items() if key in kept} for part in _rest()]
    return _sheet([{"category": "power_supply", "rated_watts": 850, "design": "atx-3.0"}, *parts], site={}, use={})


def heavy() -> Json:
    """Return the machine with more than its supply, inlet and circuit carry, and two processors on a board for one."""
    sheet = everything()
    _drop(sheet, "backplane", "riser", "adapter", "cable", "pump", "optical_drive")
    _spec(sheet, "drive")["power_disable"] = True
    for category in ("graphics_card", "expansion_card"):
        del _spec(sheet, category)["adapters"]
    _spec(sheet, "graphics_card").update(board_watts=900, needs=[{"connector": "12vhpwr"}])
    _spec(sheet, "expansion_card").update(board_watts=400)
    _line(sheet, "processor")["quantity"] = 2
    sheet["site"]["mains_volts"] = 100
    return sheet


def crowded() -> Json:
    """Return the machine with too few headers, data ports and bays, every need optional from some watts on."""
    sheet = everything()
    _drop(sheet, "adapter", "cable")
    for category in ("graphics_card", "expansion_card"):
        del _spec(sheet, category)["adapters"]
    _spec(sheet, "power_supply")["cables"][-1]["quantity"] = 2
    _line(sheet, "fan")["quantity"] = 4
    _line(sheet, "cooler")["quantity"] = 4
    _line(sheet, "lighting")["quantity"] = 2
    for category in ("fan", "cooler"):
        sheet["parts"].append({"spec": _spec(sheet, category) | {"needs": [{"connector": "peripheral-4"}]},
            "quantity": 1})
    light = {"category": "lighting", "volts": 12, "amps": 1, "needs": [{"connector": "sata-power"}]}
    sheet["parts"].append({"spec": light, "quantity": 1})
    _spec(sheet, "motherboard")["offers"] = [{"connector": "fan-4", "max_amps": 1}, {"connector": "argb-3"}]
    _spec(sheet, "controller")["offers"] = [{"connector": "fan-4", "max_amps": 0.2}]
    _spec(sheet, "backplane")["offers"] = [{"connector": "sata-power", "max_amps": 1}]
    _spec(sheet, "power_supply")["form_factor"] = "sfx"
    _spec(sheet, "riser")["needs"] = [{"connector": "sata-power"}]
    for category in ("graphics_card", "expansion_card"):
        _spec(sheet, category)["needs"].append({"connector": "floppy-4"})
    for line in sheet["parts"]:
        for need in line["spec"].get("needs", ()):
            if need["connector"] not in ("atx-24", "cpu-8"):
                need |= {"optional": True, "required_above_watts": 1}
    return copy.deepcopy(sheet)


def by_adapters(*, rated: bool) -> Json:
    """Return the machine with cards and drives fed only by adapters: each ``rated`` as a whole, or by inputs in use."""
    sheet = everything()
    _drop(sheet, "cable", "backplane", "riser", "pump", "controller", "adapter")
    power = _spec(sheet, "power_supply")
    plugs = [{"connector": "peripheral-4", "at_mm": 400 + 100 * at} for at in range(3)]
    chain = {"plugs": plugs, "awg": 18, "quantity": 2, "occupies": {"Disk": 1}}
    power["cables"] = [*power["cables"][:2], chain]
    rating: Json = {"rated_watts": 70} if rated else {"rated_watts_by_inputs": {"1": 40, "2": 70}}
    adapter = {"takes": [{"connector": "peripheral-4", "count": 2}], "gives": [{"connector": "pcie-6"}]} | rating
    for category in ("graphics_card", "expansion_card"):
        card = {"board_watts": 120, "slot_watts": 60, "needs": [{"connector": "pcie-6", "count": 2}],
            "adapters": [adapter]}
        _spec(sheet, category).update(copy.deepcopy(card))
    to_drive = {"takes": [{"connector": "peripheral-4"}], "gives": [{"connector": "sata-power"}]}
    small: Json = {"rated_watts": 54} if rated else {"rated_watts_by_inputs": {"1": 54}}
    sheet["parts"].append({"spec": {"category": "adapter"} | to_drive | small, "quantity": 1})
    for category in ("drive", "optical_drive"):  # a peripheral plug has no 3.3 V
        for amps in ("running_amps", "starting_amps"):
            _spec(sheet, category).get(amps, {}).pop("3v3", None)
    return sheet


def by_loose_cables() -> Json:
    """Return the machine with a box for board and processor only; all other cables were bought."""
    sheet = everything()
    _drop(sheet, "cable", "backplane", "riser")
    power = _spec(sheet, "power_supply")
    power["cables"] = power["cables"][:2]
    _spec(sheet, "drive")["power_disable"] = True
    loose = [
        {"plugs": [{"connector": "12v-2x6", "at_mm": 650}], "rated_watts": 300, "occupies": {"Wide": 1}},
        {"plugs": [{"connector": "pcie-6+2", "at_mm": 650}], "supply_wires_12v": 3, "awg": 18,
         "occupies": {"Power": 1}},
        {"plugs": [{"connector": "sata-power", "at_mm": 500}] * 3, "awg": 18, "carries_3v3": True, "group": "C"},
    ]
    sheet["parts"] += [{"spec": {"category": "cable", "family": "loft-1"} | cable, "quantity": 1} for cable in loose]
    return sheet


def _drop(sheet: Json, *categories: str) -> None:
    sheet["parts"] = [line for line in sheet["parts"] if line["spec"]["category"] not in categories]


def _line(sheet: Json, category: str) -> Json:
    line: Json = next(line for line in sheet["parts"] if line["spec"]["category"] == category)
    return line


def _spec(sheet: Json, category: str) -> Json:
    spec: Json = _line(sheet, category)["spec"]
    return spec
