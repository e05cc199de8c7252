"""Connections as plugged: from their outside shape to records and back; numbers are from 1 outside, from 0 inside."""

import re
from typing import Any, NamedTuple

from service.intake import bounds
from service.intake.fields import Connector, Own, Pattern, Text, Whole, wrong_kind
from service.intake.shapes import Many, One, schema
from service.parts.build import Plugged, PluggedAdapter, PluggedPlug
from service.parts.words import POWER_CONNECTORS

_INDEX = r"(0|[1-9][0-9]{0,2})"


class Reference(Own):
    """A pointer to a line, or to an entry of a list of the part on that line; kept as line and entry."""

    def __init__(self, entries: str | None = None, **settings: Any) -> None:
        shape = f"/parts/{_INDEX}" + (f"(?:/{entries}/{_INDEX})?" if entries else "")
        said = "must be a pointer such as /parts/0" + (f" or /parts/0/{entries}/2" if entries else "")
        super().__init__(validate=Pattern(shape, error=said), **settings)
        self.entries = entries
        self._shape = re.compile(shape)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is not str:
            raise wrong_kind("text", value)
        super().judge(value)
        match = self._shape.fullmatch(value)
        steps = match.groups() if match else ()
        return tuple(None if step is None else int(step) for step in steps)

    def judge(self, read: Any) -> None:
        """Do nothing: the text was judged before it was taken apart."""


class Port(NamedTuple):
    """Which port of a device, numbered from 0 among those of its connector."""

    connector: str
    number: int


def port_of(connector: str, number: int = 1) -> Port:
    """Return a port from its outside shape."""
    return Port(connector, number - 1)


def _adapter(adapter: tuple[int, int | None], inputs: int, copy: int = 1) -> PluggedAdapter:
    return PluggedAdapter(adapter[0], adapter[1], copy - 1, inputs)


def _plug(
    cable: tuple[int, int | None], plug: int, copy: int = 1, sockets: tuple[str, ...] = (), open_contacts: int = 0
) -> PluggedPlug:
    return PluggedPlug(cable[0], cable[1], copy - 1, plug - 1, sockets, open_contacts)


def _plugged(
    part: tuple[int], port: Port, plugs: tuple[PluggedPlug, ...], copy: int = 1,
    adapters: tuple[PluggedAdapter, ...] = (),
) -> Plugged:
    return Plugged(part[0], copy - 1, port.connector, port.number, adapters, plugs)


PORT = schema("Port", port_of, {
    "connector": Connector(POWER_CONNECTORS, required=True),
    "number": Whole(1, bounds.MOST_NEEDS * bounds.MOST_COUNT),
})
PLUGGED_ADAPTER = schema("PluggedAdapter", _adapter, {
    "adapter": Reference("adapters", required=True),
    "copy": Whole(1, bounds.MOST_COPY),
    "inputs": Whole(required=True),
})
PLUGGED_PLUG = schema("PluggedPlug", _plug, {
    "cable": Reference("cables", required=True),
    "copy": Whole(1, bounds.MOST_COPY),
    "plug": Whole(1, bounds.MOST_PLUGS, required=True),
    "sockets": Many(Text(bounds.LONGEST_LABEL), bounds.MOST_SOCKETS_OF_A_CABLE),
    "open_contacts": Whole(0, bounds.MOST_CONTACTS),
})
CONNECTION = schema("Connection", _plugged, {
    "part": Reference(required=True),
    "copy": Whole(1, bounds.MOST_QUANTITY),
    "port": One(PORT, required=True),
    "adapters": Many(One(PLUGGED_ADAPTER), bounds.MOST_CHAINED_ADAPTERS),
    "plugs": Many(One(PLUGGED_PLUG), bounds.MOST_PLUGS_OF_A_PORT, least=1, required=True),
})


def connection_of(plugged: Plugged) -> dict[str, Any]:
    """Return a connection in its outside shape, every field written out."""
    return {
        "part": f"/parts/{plugged.line}",
        "copy": plugged.copy + 1,
        "port": {"connector": plugged.connector, "number": plugged.number + 1},
        "adapters": [
            {"adapter": _pointer(one.line, "adapters", one.entry), "copy": one.copy + 1, "inputs": one.inputs}
            for one in plugged.adapters
        ],
        "plugs": [
            {
                "cable": _pointer(one.line, "cables", one.cable), "copy": one.copy + 1, "plug": one.plug + 1,
                "sockets": list(one.sockets), "open_contacts": one.open_contacts,
            }
            for one in plugged.plugs
        ],
    }


def _pointer(line: int, entries: str, index: int | None) -> str:
    return f"/parts/{line}" if index is None else f"/parts/{line}/{entries}/{index}"
