"""What specs of several categories are made of: ports, amps by rail, peaks, adapters."""

from typing import Any

from service.intake import bounds
from service.intake.fields import Code, Connector, Figure, Flag, Number, Own, Text, Whole, Word
from service.intake.shapes import CATEGORY, CountKey, Many, Messages, One, Only, Pairs, RecordSchema, schema
from service.parts.records import Adapter, AdapterEnd, Need, Offer, Peak, RailRange
from service.parts.words import POWER_CONNECTORS, SIGNAL_CONNECTORS, SPLIT_PLUGS

PORT_CONNECTORS: tuple[str, ...] = POWER_CONNECTORS + SIGNAL_CONNECTORS
PLUG_CONNECTORS: tuple[str, ...] = POWER_CONNECTORS + SPLIT_PLUGS + SIGNAL_CONNECTORS


def category(word: str) -> dict[str, Own]:
    """Return the field that tags a spec with its category."""
    return {CATEGORY: Word((word,), required=True)}


def named() -> dict[str, Own]:
    """Return the field for a name, which no judgement reads."""
    return {"name": Text(bounds.LONGEST_NAME, least=0)}


def load_watts(**settings: Any) -> Figure:
    """Return a field for watts that a device draws."""
    return Figure(0, bounds.MOST_LOAD_WATTS, **settings)


def load_amps(**settings: Any) -> Figure:
    """Return a field for amps that a device draws."""
    return Figure(0, bounds.MOST_AMPS, **settings)


def limit_amps(**settings: Any) -> Number:
    """Return a field for amps that something allows."""
    return Number(bounds.LEAST_LIMIT_AMPS, bounds.MOST_AMPS, **settings)


def size_mm() -> Number:
    """Return a field for a length."""
    return Number(0, bounds.MOST_MM)


def wire() -> dict[str, Own]:
    """Return the fields of equal pairs of wires that lead to one end."""
    return {
        "length_mm": Number(0, bounds.MOST_RUN_MM, required=True),
        "awg": Whole(bounds.LEAST_AWG, bounds.MOST_AWG),
        "parallel_pairs": Whole(1, bounds.MOST_WIRES),
        "ohms_per_contact": Number(0, bounds.MOST_CONTACT_OHMS),
    }


def strip_ohms() -> Number:
    """Return a field for the ohms of a metre of a strip, there and back."""
    return Number(0, bounds.MOST_STRIP_OHMS_PER_METRE)


def _need() -> dict[str, Own]:
    return {
        "connector": Connector(PORT_CONNECTORS, required=True),
        "count": Whole(),
        "optional": Flag(),
        "required_above_watts": Number(0, bounds.MOST_LOAD_WATTS),
    }


NEED = schema("Need", Need, _need() | {"watts": load_watts()})
PLAIN_NEED = schema("PlainNeed", Need, _need())
OFFER = schema("Offer", Offer, {
    "connector": Connector(PORT_CONNECTORS, required=True),
    "count": Whole(),
    "max_amps": limit_amps(),
})
PEAK = schema("Peak", Peak, {
    "microseconds": Whole(bounds.LEAST_PEAK_MICROSECONDS, bounds.MOST_PEAK_MICROSECONDS, required=True),
    "watts": Number(0, bounds.MOST_PEAK_WATTS, required=True),
})


def _amps_on(key: str) -> Figure:
    return Figure(0, bounds.MOST_AMPS, data_key=key)


def _rail_amps() -> dict[str, Own]:
    return {"v12": _amps_on("12v"), "v5": _amps_on("5v"), "v3_3": _amps_on("3v3")}


RAIL_AMPS = schema("RailAmps", RailRange, _rail_amps())
BOARD_AMPS = schema("BoardAmps", RailRange, _rail_amps() | {"v5sb": _amps_on("5vsb")})
TAKEN_END = schema("TakenEnd", AdapterEnd, {
    "connector": Connector(PORT_CONNECTORS, required=True), "count": Whole(),
})
GIVEN_END = schema("GivenEnd", AdapterEnd, {
    "connector": Connector(PLUG_CONNECTORS, required=True), "count": Whole(),
})


def _adapter_faults(adapter: Adapter) -> Messages:
    """Find ratings for more inputs than the adapter takes."""
    over = [inputs for inputs, _ in adapter.rated_watts_by_inputs if inputs > adapter.takes.count]
    said = f"is more inputs than the {adapter.takes.count} that the adapter takes"
    return {"rated_watts_by_inputs": {str(inputs): [said] for inputs in over}} if over else {}


def _adapter_fields() -> dict[str, Own]:
    return named() | {
        "quantity": Whole(),
        "takes": Only(One(TAKEN_END), required=True),
        "gives": Only(One(GIVEN_END), required=True),
        "rated_watts": Number(bounds.LEAST_RATED_WATTS, bounds.MOST_RATED_WATTS),
        "rated_watts_by_inputs": Pairs(
            CountKey(1, bounds.MOST_COUNT), Number(bounds.LEAST_RATED_WATTS, bounds.MOST_RATED_WATTS), bounds.MOST_COUNT
        ),
        "moulded": Flag(),
        "length_mm": size_mm(),
        "awg": Whole(bounds.LEAST_AWG, bounds.MOST_AWG),
    }


BUNDLED_ADAPTER = schema("BundledAdapter", Adapter, _adapter_fields(), _adapter_faults)
ADAPTER: RecordSchema = schema("Adapter", Adapter, category(Adapter.category) | _adapter_fields(), _adapter_faults)


def needs() -> Many:
    """Return a field for the ports that a board or card wants fed, each with its watts."""
    return Many(One(NEED), bounds.MOST_NEEDS)


def plain_needs() -> Many:
    """Return a field for the ports of a device whose own draw is divided equally over them."""
    return Many(One(PLAIN_NEED), bounds.MOST_NEEDS)


def offers() -> Many:
    """Return a field for the ports that a device gives."""
    return Many(One(OFFER), bounds.MOST_OFFERS)


def peaks() -> Many:
    """Return a field for stated peaks."""
    return Many(One(PEAK), bounds.MOST_PEAKS)


def code(**settings: Any) -> Code:
    """Return a field for a short name of the trade."""
    return Code(**settings)
