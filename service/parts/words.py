"""The words of the trade that records are made of: connectors, rails, roles, categories."""

from typing import Literal, get_args

Rail = Literal["12v", "5v", "3v3", "5vsb"]
RAILS: tuple[Rail, ...] = get_args(Rail)

PowerConnector = Literal[
    "atx-24", "atx-20", "atx12vo-10", "cpu-8", "cpu-4", "pcie-8", "pcie-6", "12vhpwr", "12v-2x6",
    "sata-power", "peripheral-4", "floppy-4",
]
POWER_CONNECTORS: tuple[PowerConnector, ...] = get_args(PowerConnector)

SignalConnector = Literal[
    "sata-data", "m2-m", "m2-e", "fan-4", "fan-3", "argb-3", "rgb-4", "usb2-9", "usb3-19", "usb-e",
]
SIGNAL_CONNECTORS: tuple[SignalConnector, ...] = get_args(SignalConnector)

SplitPlug = Literal["atx-20+4", "cpu-4+4", "pcie-6+2"]
SPLIT_PLUGS: tuple[SplitPlug, ...] = get_args(SplitPlug)

PLUGS: tuple[str, ...] = POWER_CONNECTORS + SPLIT_PLUGS

OTHER_PREFIX = "other:"
OWN_FAMILY = "own"
"""The pinout family of a cable that is made for the supply of its sheet, whatever that is called."""

SIXTEEN_PIN = frozenset({"12vhpwr", "12v-2x6"})
MAIN = frozenset({"atx-24", "atx-20", "atx12vo-10"})
PROCESSOR = frozenset({"cpu-8", "cpu-4"})
CARD = frozenset({"pcie-8", "pcie-6", "12vhpwr", "12v-2x6"})
DRIVE = frozenset({"sata-power", "peripheral-4", "floppy-4"})

Function = Literal["main", "processor", "card", "drive"]
FUNCTIONS: tuple[Function, ...] = get_args(Function)

Design = Literal["atx-2", "atx-3.0", "atx-3.1", "atx12vo"]
DESIGNS: tuple[Design, ...] = get_args(Design)

Aspect = Literal["power", "connections", "mains", "signals", "fit", "mating", "runs"]
ASPECTS: tuple[Aspect, ...] = get_args(Aspect)

Weight = Literal["stop", "caution", "advice"]
