"""A memo bounded in bytes, shared by threads; what was used last stays longest."""

from collections import OrderedDict
from threading import Lock
from typing import Generic, TypeVar

from service.wiring.problem import LEVELS, Problem, Wiring

Key = TypeVar("Key")
Value = TypeVar("Value")
ENTRY_BYTES = 200
"""What the table itself takes for an entry, about."""
TUPLE_BYTES, ITEM_BYTES = 56, 40
"""What a tuple takes, and what an item: a reference and a number, as if each number were one of its own."""


class Memo(Generic[Key, Value]):
    """Keys to values, at most so many bytes of them."""

    def __init__(self, most_bytes: int) -> None:
        self.most_bytes = most_bytes
        self.bytes = 0
        self._entries: OrderedDict[Key, tuple[Value, int]] = OrderedDict()
        self._lock = Lock()

    def get(self, key: Key) -> Value | None:
        """Return what is kept for a key."""
        with self._lock:
            found = self._entries.get(key)
            if found is None:
                return None
            self._entries.move_to_end(key)
            return found[0]

    def put(self, key: Key, value: Value, size: int) -> None:
        """Keep a value, which with its key takes so many bytes; those not used for the longest time go for it."""
        size += ENTRY_BYTES
        with self._lock:
            if key in self._entries:
                self.bytes -= self._entries.pop(key)[1]
            self._entries[key] = (value, size)
            self.bytes += size
            while self.bytes > self.most_bytes and self._entries:
                self.bytes -= self._entries.popitem(last=False)[1][1]

    def clear(self) -> None:
        """Forget everything."""
        with self._lock:
            self._entries.clear()
            self.bytes = 0

    def __len__(self) -> int:
        """Return how many entries are kept."""
        return len(self._entries)


def bytes_of(problem: Problem) -> int:
    """Return about the bytes of a problem, no less than its tuples take: limits that are one thing counted once."""
    places = [fit.limits for of in problem.port_types for each in of for fit in each]
    places += [limits for cable in problem.cables for limits in cable.segments]
    places += [limits for adapter in problem.adapters for limits in adapter.limits_by_inputs]
    ports = sum([len(device.ports) for device in problem.devices])
    fits = sum([len(of.fits) + len(of.adapter_fits) for of in problem.port_types])
    segments = sum([len(cable.segments) for cable in problem.cables])
    return (
        _tuples(7, len(problem.devices) * 3 + ports + len(problem.port_types) * 3 + fits)
        + _tuples(7, (len(problem.cables) + len(problem.adapters)) * 5 + len(problem.groups) + 8)
        + _tuples(5, len({id(limits) for limits in places}) * 4)
        + ITEM_BYTES * (fits + 2 * segments + len(problem.cables) * len(problem.sockets) + len(problem.sockets))
    )


def bytes_of_wiring(wiring: Wiring) -> int:
    """Return about the bytes of a wiring and its objective."""
    sources = sum([len(each) for each in wiring.sources]) + sum([len(each) for _, _, each in wiring.adapter_inputs])
    return _tuples(LEVELS, 1) + _tuples(4, sources + len(wiring.sources) + 2 * len(wiring.adapter_inputs) + 4)


def _tuples(items: int, number: int) -> int:
    return number * (TUPLE_BYTES + ITEM_BYTES * items)
