"""What a card's plugs would carry if it shared its watts over them equally, and not in proportion to their ratings."""

from collections.abc import Sequence

from service.demand.current import VOLTS_12
from service.parts.records import ExpansionCard, GraphicsCard, Part
from service.parts.words import SIGNAL_CONNECTORS
from service.wiring.problem import Device, Source

_MILLI = 1000


def equal_watts(part: Part, device: Device, sources: Sequence[Source | None], port: int) -> float:
    """Return the sustained 12 V watts of a card's port if all ports without stated watts carried the same.

    Over the ports that are fed or must be. 0 where it is no card's port, where all carry the same as it is, or where
    its maker states what the port carries.
    """
    alike = len({each.weight for each in device.ports}) == 1
    if alike or not isinstance(part, GraphicsCard | ExpansionCard):
        return 0.0
    power = [need for need in part.needs if need.connector not in SIGNAL_CONNECTORS]
    stated = [need.watts is not None for need in power for _ in range(need.count)]
    counted = [at for at, each in enumerate(device.ports) if each.required or sources[at] is not None]
    shared = [at for at in counted if not stated[at]]
    if port not in shared:
        return 0.0
    part_of_all = sum(device.ports[at].weight for at in shared) / sum(device.ports[at].weight for at in counted)
    return device.load[0] * part_of_all / len(shared) * VOLTS_12 / _MILLI
