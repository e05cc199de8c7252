"""The rest of a machine: board, memory, fans, pumps, hubs and lights, where their draw is not given; the room."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, Fact, Kind, judgement, supposed, usual
from service.facts.sources import FAN_SPEC, LED_MAKER

BOARD_AMPS: Final = MappingProxyType({
    "12v": usual(
        "assumed.board.12v", 0.5, 2.5, "A", "Boards draw 25 to 70 W themselves, most of it from 12 V and 5 V.",
    ),
    "5v": usual("assumed.board.5v", 2.0, 5.0, "A", "Boards draw 25 to 70 W themselves, most of it from 12 V and 5 V."),
    "3v3": usual("assumed.board.3v3", 1.0, 3.0, "A", "Network, sound and small chips of a board run from 3.3 V."),
})
BOARD_STANDBY_AMPS: Final = usual(
    "assumed.board.5vsb", 0.3, 1.5, "A", "Network, clock and charging ports of a board live on standby 5 V.",
)
BOARD_CONVERTER_EFFICIENCY: Final = judgement(
    "rest.board_converter", 0.85, "of the watts taken from 12 V",
    "A board of a 12 V only design makes 5 V and 3.3 V itself; small converters lose about 15 %.",
)
EXTRA_SLOT_PLUG_WATTS: Final = usual(
    "assumed.board.slot_plug", 0, 75, "W",
    "An extra plug beside the slots feeds cards that take much through the board.",
)

MEMORY_MODULE_WATTS: Final = usual(
    "assumed.memory.module", 3, 9, "W", "One module takes 3 to 9 W at work, by size, type and speed.",
)
MEMORY_TYPES_ON_5_VOLTS: Final = frozenset({"ddr5"})

FAN_AMPS: Final = usual("assumed.fan", 0.08, 0.5, "A", "Case and cooler fans take 1 to 6 W.")
FAN_STARTING_AMPS: Final = Assumption(
    "assumed.fan.starting", 0.1, 1.0, "A",
    "A fan starts with more than it runs on. The specification allows 2.2 A for a second; usual fans stay below 1 A.",
    "common practice", FAN_SPEC,
)
PUMP_AMPS: Final = usual("assumed.pump", 0.3, 2.0, "A", "Pumps of closed coolers take 4 to 6 W, large ones up to 23 W.")
PUMP_STARTING_AMPS: Final = usual(
    "assumed.pump.starting", 0.4, 3.0, "A", "A pump starts with up to half as much again.",
)
CONTROLLER_AMPS: Final = usual("assumed.controller", 0.05, 0.25, "A", "A hub takes up to 3 W itself.")

LIGHT_AMPS: Final = usual("assumed.light", 0.3, 3.0, "A", "Strips and rings take up to what a header gives, 3 A.")
LED_FULL_WHITE_MILLIAMPS: Final = Fact(
    "rest.led", 60, "mA a light", Kind.NOMINAL, LED_MAKER, "0.3 W at 5 V", "published", "secondary",
    reason="Full white. Others say 50 mA; the higher one is taken.",
)
LED_AMPS: Final = Assumption(
    "assumed.led", 0.02, LED_FULL_WHITE_MILLIAMPS.value / 1000, "A",
    "One light takes 20 mA for each colour that is on; full white is 60 mA.", "published", LED_MAKER,
)
ROOM_CELSIUS: Final = supposed("assumed.room", 20, 30, "C", "A room where people work, winter and summer.")
