"""Schemas of what draws power and of what holds it all: boards, cards, drives, coolers, lights, cases."""

from collections.abc import Callable
from typing import Any

from service.intake import bounds
from service.intake.fields import Figure, Flag, Number, Own, PrintedWhole, Whole, Word
from service.intake.shapes import Many, Messages, One, Pairs, RecordSchema, Unlike, no_faults, schema
from service.intake.specs_common import (
    BOARD_AMPS,
    BUNDLED_ADAPTER,
    RAIL_AMPS,
    category,
    code,
    load_amps,
    load_watts,
    named,
    needs,
    offers,
    peaks,
    plain_needs,
    size_mm,
    strip_ohms,
    wire,
)
from service.parts.figures import Range
from service.parts.records import (
    Backplane,
    Bay,
    Bracket,
    CaseBox,
    Controller,
    Cooler,
    Drive,
    ExpansionCard,
    Fan,
    GraphicsCard,
    Lead,
    Lighting,
    Memory,
    Motherboard,
    OpticalDrive,
    Part,
    Peak,
    Processor,
    Pump,
    Riser,
    Strip,
)
from service.parts.words import FUNCTIONS, MAIN

INTERFACES = ("sata", "sas", "nvme")
DRIVE_SIZES = ("3.5", "2.5", "m2")
FAN_SIDES = ("top", "bottom")

BAY = schema("Bay", Bay, {
    "form_factors": Unlike(code(), bounds.MOST_FORM_FACTORS, least=1, required=True),
    "depth_mm": size_mm(),
    "plugs_clear_mm": size_mm(),
    "fan_vent": Word(FAN_SIDES),
})


LEAD = schema("Lead", Lead, wire())
STRIP = schema("Strip", Strip, {"length_mm": Number(0, bounds.MOST_RUN_MM), "ohms_per_metre": strip_ohms()})


def _light_faults(light: Lighting) -> Messages:
    """Find a strip of which the way to it is not stated, so that nothing can be said of it."""
    alone = light.strip is not None and light.lead is None
    return {"strip": ["must be left out where the lead to it is not given"]} if alone else {}


def _device(
    name: str, record: type[Part], stated: dict[str, Own], check: Callable[[Any], Messages] = no_faults
) -> RecordSchema:
    return schema(name, record, category(record.category) | named() | stated, check)


def board_faults(board: Motherboard) -> Messages:
    """Find watts stated of a main port, which has three rails and carries what else is listed."""
    said = "must be left out at a main port: it carries what the board, its slots and its headers draw"
    stated = [at for at, need in enumerate(board.needs) if need.connector in MAIN and need.watts is not None]
    return {"needs": {at: {"watts": [said]} for at in stated}} if stated else {}


def card_faults(card: GraphicsCard | ExpansionCard) -> Messages:
    """Find peaks below what a card draws for long."""
    return _low_peaks(card.peaks, card.board_watts, "board_watts")


def processor_faults(processor: Processor) -> Messages:
    """Find peaks below what a processor draws for long, by the figure of it that counts."""
    for field in ("plug_watts", "turbo_watts", "base_watts"):
        watts: Range | None = getattr(processor, field)
        if watts is not None:
            return _low_peaks(processor.peaks, watts, field)
    return {}


def _low_peaks(peaks: tuple[Peak, ...], sustained: Range, field: str) -> Messages:
    """Find peaks below even the low end of a sustained draw."""
    said = f"must not be below {field}: the greatest mean over a stretch is no less than what is drawn for long"
    low = {index: {"watts": [said]} for index, peak in enumerate(peaks) if peak.watts < sustained.low}
    return {"peaks": low} if low else {}


def _card() -> dict[str, Own]:
    return {
        "board_watts": load_watts(required=True),
        "slot_watts": Figure(0, bounds.MOST_SLOT_WATTS),
        "needs": needs(),
        "peaks": peaks(),
        "length_mm": size_mm(),
        "adapters": Many(One(BUNDLED_ADAPTER), bounds.MOST_BUNDLED_ADAPTERS),
    }


def _mover() -> dict[str, Own]:
    """Return the fields of what moves air or water."""
    return {"needs": plain_needs(), "amps": load_amps(), "starting_amps": load_amps()}


MOTHERBOARD = _device("Motherboard", Motherboard, {
    "processor_socket": code(),
    "processors": Whole(1, bounds.MOST_PROCESSORS),
    "memory_type": code(),
    "needs": needs(),
    "offers": offers(),
    "own_amps": One(BOARD_AMPS),
}, board_faults)
PROCESSOR = _device("Processor", Processor, {
    "base_watts": load_watts(),
    "turbo_watts": load_watts(),
    "plug_watts": load_watts(),
    "class_watts": Whole(bounds.LEAST_CLASS_WATTS, bounds.MOST_CLASS_WATTS),
    "socket": code(),
    "peaks": peaks(),
}, processor_faults)
GRAPHICS_CARD = _device("GraphicsCard", GraphicsCard, _card(), card_faults)
EXPANSION_CARD = _device("ExpansionCard", ExpansionCard, _card(), card_faults)
DRIVE = _device("Drive", Drive, {
    "interface": Word(INTERFACES),
    "size": Word(DRIVE_SIZES),
    "needs": plain_needs(),
    "running_amps": One(RAIL_AMPS),
    "starting_amps": One(RAIL_AMPS),
    "power_disable": Flag(),
})
OPTICAL_DRIVE = _device("OpticalDrive", OpticalDrive, {
    "interface": Word(INTERFACES),
    "needs": plain_needs(),
    "running_amps": One(RAIL_AMPS),
})
COOLER = _device("Cooler", Cooler, _mover())
PUMP = _device("Pump", Pump, _mover())
FAN = _device("Fan", Fan, _mover())
CONTROLLER = _device("Controller", Controller, {"needs": plain_needs(), "offers": offers(), "amps": load_amps()})
LIGHTING = _device("Lighting", Lighting, {
    "volts": PrintedWhole(bounds.LIGHTING_VOLTS, required=True),
    "leds": Whole(1, bounds.MOST_LEDS),
    "amps": load_amps(),
    "needs": plain_needs(),
    "lead": One(LEAD),
    "strip": One(STRIP),
}, _light_faults)
BACKPLANE = _device("Backplane", Backplane, {"needs": plain_needs(), "offers": offers()})
RISER = _device("Riser", Riser, {
    "needs": plain_needs(),
    "feeds_slot_watts": Number(0, bounds.MOST_SLOT_WATTS, required=True),
})
CASE = _device("Case", CaseBox, {
    "bays": Many(One(BAY), bounds.MOST_BAYS),
    "routes_mm": Pairs(Word(FUNCTIONS), size_mm(), len(FUNCTIONS)),
    "card_length_mm": size_mm(),
})
BRACKET = _device("Bracket", Bracket, {
    "from_form_factor": code(required=True),
    "to_form_factor": code(required=True),
})
MEMORY = _device("Memory", Memory, {
    "type": code(),
    "modules": Whole(1, bounds.MOST_MODULES),
    "watts": load_watts(),
})
