"""One full spec of each category, with no field at its default, and the strategies for arbitrary JSON."""

from typing import Any

from hypothesis import strategies as st

NEEDS = [
    {
        "connector": "pcie-8",
        "count": 2,
        "optional": True,
        "watts": {"low": 100, "high": 140.5},
        "required_above_watts": 200,
    },
    {"connector": "other:service port"},
]
PLAIN_NEEDS = [
    {"connector": "pcie-8", "count": 2, "optional": True, "required_above_watts": 200},
    {"connector": "other:service port"},
]
AMPS = {"12v": {"low": 0.5, "high": 0.75}, "5v": 0.5, "3v3": 0.1}
BOARD_AMPS = AMPS | {"5vsb": 1}
PEAKS = [{"microseconds": 100, "watts": 700}]
ADAPTER = {
    "name": "Y lead",
    "quantity": 2,
    "takes": [{"connector": "pcie-8", "count": 3}],
    "gives": [{"connector": "12vhpwr"}],
    "rated_watts": 450,
    "rated_watts_by_inputs": {"2": 300, "3": 450},
    "moulded": True, "length_mm": 250, "awg": 18,
}
CABLE = {
    "name": "Card lead",
    "quantity": 2,
    "occupies": {"CARD 1": 1, "a/b~c": 1},
    "group": "g1",
    "plugs": [{"connector": "12v-2x6", "at_mm": 500}, {"connector": "pcie-6+2", "at_mm": 650}],
    "awg": 16,
    "supply_wires_12v": 6,
    "rated_watts": 600,
    "carries_3v3": True,
    "open_contacts": 1,
}
MOVER = {"needs": [{"connector": "fan-4"}], "amps": 0.2, "starting_amps": {"low": 0.3, "high": 0.4}}
CARD = {
    "board_watts": {"low": 300, "high": 350},
    "slot_watts": 66,
    "needs": NEEDS,
    "peaks": PEAKS,
    "length_mm": 310,
    "adapters": [ADAPTER],
}
SPECS: list[dict[str, Any]] = [
    {
        "category": "power_supply",
        "name": "Bench 850",
        "rated_watts": 850,
        "design": "atx-3.1",
        "form_factor": "atx",
        "depth_mm": 160,
        "modularity": "full",
        "efficiency_level": "gold",
        "efficiency_points": [{"load_percent": 10, "percent": 84}, {"load_percent": 50, "percent": 92.5}],
        "power_factor": 0.95,
        "rails": {"12v": {"max_amps": 70.5}, "5v": {"max_amps": 20}},
        "groups": [{"name": "g1", "rail": "5v", "max_amps": 40, "feeds": ["main", "card"]}],
        "combined_limits": [{"rails": ["5v", "3v3"], "watts": 120}],
        "sockets": [{"label": "CARD 1", "count": 2, "group": "g1", "contacts_12v": 3}, {"label": "a/b~c", "count": 2}],
        "cables": [CABLE | {"captive": False}],
        "cable_family": "brass 2",
        "rated_at_celsius": 50,
        "inlet": "c14",
        "fan_side": "bottom",
    },
    {"category": "cable", "family": "brass 2"} | CABLE,
    {"category": "adapter"} | ADAPTER,
    {
        "category": "motherboard",
        "processor_socket": "q7",
        "processors": 2,
        "memory_type": "d5",
        "needs": NEEDS,
        "offers": [{"connector": "fan-4", "count": 6, "max_amps": 1}],
        "own_amps": BOARD_AMPS,
    },
    {
        "category": "processor",
        "base_watts": 65,
        "turbo_watts": {"low": 120, "high": 140},
        "plug_watts": 170,
        "class_watts": 125,
        "socket": "q7",
        "peaks": PEAKS,
    },
    {"category": "graphics_card"} | CARD,
    {"category": "expansion_card"} | CARD,
    {
        "category": "drive",
        "interface": "sata",
        "size": "3.5",
        "needs": PLAIN_NEEDS,
        "running_amps": AMPS,
        "starting_amps": AMPS,
        "power_disable": True,
    },
    {"category": "optical_drive", "interface": "sata", "needs": PLAIN_NEEDS, "running_amps": AMPS},
    {"category": "cooler"} | MOVER,
    {"category": "pump"} | MOVER,
    {"category": "fan"} | MOVER,
    {"category": "controller", "needs": PLAIN_NEEDS, "offers": [{"connector": "argb-3", "count": 4}], "amps": 0.1},
    {"category": "lighting", "volts": 5, "leds": 60, "amps": 1.5, "needs": [{"connector": "argb-3"}],
     "lead": {"length_mm": 600, "awg": 22, "parallel_pairs": 2, "ohms_per_contact": 0.01},
     "strip": {"length_mm": 1000, "ohms_per_metre": 0.2}},
    {"category": "backplane", "needs": PLAIN_NEEDS, "offers": [{"connector": "sata-power", "count": 4}]},
    {"category": "riser", "needs": PLAIN_NEEDS, "feeds_slot_watts": 75},
    {
        "category": "case",
        "bays": [{"form_factors": ["atx"], "depth_mm": 200, "plugs_clear_mm": 30, "fan_vent": "top"}],
        "routes_mm": {"main": 450, "card": 500},
        "card_length_mm": 340,
    },
    {"category": "bracket", "from_form_factor": "sfx", "to_form_factor": "atx"},
    {"category": "memory", "type": "d5", "modules": 2, "watts": 10},
]
BY_CATEGORY = {spec["category"]: spec for spec in SPECS}

_LEAVES = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text()
JSON = st.recursive(_LEAVES, lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner), max_leaves=15)
