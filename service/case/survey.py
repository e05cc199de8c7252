"""A survey of the way to each port: what passes its contacts and wires, how many volts are left, how warm plugs get."""

from collections.abc import Iterator
from typing import NamedTuple

from service.case.case import Drop, Heat, Passage, Spot, Way
from service.case.drops import Added, drops
from service.case.sharing import SHARED, behind, heat, wire_of
from service.case.ways import Stretched, passages, stretched, way
from service.wiring.allowances import Allowance, narrower
from service.wiring.objective import Connection, Judgement, PlaceLoad, inputs_of
from service.wiring.pose import Frame
from service.wiring.problem import AdapterSource, PlugSource, Source, Wiring

SPOTS: dict[str, Spot] = {"port": "at_port", "adapter": "in_adapter", "input": "at_input", "segment": "of_cable"}


_FROM_THE_PORT = tuple(SPOTS.values())


def _in_order(passage: Passage) -> tuple[int, Passage]:
    """Return what puts places in order: the port first; equal inputs in no order of their own, so by what passes."""
    return _FROM_THE_PORT.index(passage.spot), passage


def _by_wire(heat: Heat) -> tuple[float, int, int, float]:
    return heat.length_mm, heat.awg, heat.contacts, heat.even_amps


class Surveyed(NamedTuple):
    """What was found on the way to one port."""

    way: Way
    drops: tuple[Drop, ...]
    heats: tuple[Heat, ...]


class Survey:
    """Looks at the ways of one judged wiring."""

    def __init__(self, frame: Frame, wiring: Wiring, judgement: Judgement) -> None:
        self.frame = frame
        self.problem = frame.problem
        self.wiring = wiring
        self.inputs = inputs_of(wiring)
        self.along = stretched(frame, judgement)

    def of(self, connection: Connection, connector: str) -> Surveyed:
        """Return what is found on the way to a port of this connector."""
        source = self.wiring.sources[connection.device][connection.port]
        if isinstance(source, PlugSource):
            return self._straight(connection, connector, source)
        near = [
            passage
            for at in connection.places
            if at.place.sort != "segment"
            for passage in passages(self.allowances(connection, at), at.load, SPOTS[at.place.sort])
        ]
        ends = [self.along[at.place[1:]] for at in connection.places if at.place.sort == "segment"]
        assert isinstance(source, AdapterSource)
        near.sort(key=_in_order)
        inputs = sorted(self._heats(connection), key=_by_wire)
        heats = (*self._heat_of_adapter(connection, connector, source), *inputs)
        return Surveyed(way(near, ends), self._drops(connection), heats)

    def _straight(self, connection: Connection, connector: str, source: PlugSource) -> Surveyed:
        """Return the same where a cable goes straight to the port, which is what nearly all do."""
        type_at = self.problem.devices[connection.device].ports[connection.port].type
        fit, info = self.problem.port_types[type_at].fits[source.fit], self.frame.fits[type_at][source.fit]
        near = passages(info.allowances, connection.load, "at_port")
        end: Stretched = self.along[fit.cable, source.copy, fit.plug]
        told = connector in SHARED or info.open_contacts
        found = self._heat("at_port", type_at, connector, source, connection.load[0]) if told else None
        return Surveyed(way(near, (end,)), (), () if found is None else (found,))

    def _heat_of_adapter(self, connection: Connection, connector: str, source: AdapterSource) -> Iterator[Heat]:
        """Yield how warm an adapter's plug may get in a heavy port; without its length it cannot be told."""
        type_at = self.problem.devices[connection.device].ports[connection.port].type
        adapter = self.frame.adapters[self.problem.port_types[type_at].adapter_fits[source.fit].adapter].adapter
        if connector in SHARED and connection.load[0] and adapter.length_mm is not None:
            wire = behind(adapter.length_mm, adapter.awg)
            found = heat("at_port", narrower(adapter.gives.connector, connector), connection.load[0], 0, wire)
            if found is not None:
                yield found

    def _heats(self, connection: Connection) -> Iterator[Heat]:
        """Yield how warm each plug may get that goes into an adapter."""
        for at in connection.places:
            sort, kind, copy, step = at.place
            source = self.inputs[kind, copy][step] if sort == "input" else None
            if isinstance(source, PlugSource):
                type_at = self.problem.adapters[kind].input_type
                takes = self.frame.adapters[kind].adapter.takes.connector
                found = self._heat("at_input", type_at, takes, source, at.load[0])
                if found is not None:
                    yield found

    def _heat(self, spot: Spot, type_at: int, connector: str, source: PlugSource, milliamps: int) -> Heat | None:
        fit, info = self.problem.port_types[type_at].fits[source.fit], self.frame.fits[type_at][source.fit]
        cable = self.frame.cables[fit.cable].cable
        if not milliamps:
            return None
        narrow = narrower(cable.plugs[fit.plug].connector, connector)
        return heat(spot, narrow, milliamps, info.open_contacts, wire_of(cable, fit.plug))

    def _drops(self, connection: Connection) -> tuple[Drop, ...]:
        """Return the volts at a port behind adapters, the one at the port first."""
        added = [
            Added(self.frame.adapters[at.place.of].adapter.gives.connector, self.allowances(connection, at), at.load)
            for at in connection.places
            if at.place.sort == "adapter"
        ]
        return tuple(drops(connection.load, added))

    # -- what a place allows ------------------------------------------------------------------------------------------

    def allowances(self, connection: Connection, at: PlaceLoad) -> tuple[Allowance, ...]:
        """Return what a place on the way of a connection allows."""
        place = at.place
        if place.sort == "segment":
            return self.frame.segments[place.of][place.step]
        if place.sort == "adapter":
            used = len(self.inputs[place.of, place.number])
            return self.frame.adapter_allowances[place.of][self.problem.adapters[place.of].inputs.index(used)]
        if place.sort == "input":
            return self._fit_allowances(
                self.problem.adapters[place.of].input_type, self.inputs[place.of, place.number][place.step]
            )
        source = self.wiring.sources[connection.device][connection.port]
        return self._fit_allowances(self.problem.devices[connection.device].ports[connection.port].type, source)

    def _fit_allowances(self, type_at: int, source: Source | None) -> tuple[Allowance, ...]:
        if isinstance(source, AdapterSource):
            return self.frame.adapter_fits[type_at][source.fit]
        assert source is not None
        return self.frame.fits[type_at][source.fit].allowances
