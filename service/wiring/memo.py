"""A memo bounded in bytes, shared by threads; what was used last stays longest."""

from collections import OrderedDict
from threading import Lock
from typing import Generic, TypeVar

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


def size_of(thing: object) -> int:
    """Return about the bytes of nested tuples, those that occur twice counted once; other things count as numbers."""
    seen: set[int] = set()
    total = 0
    waiting = [thing]
    while waiting:
        found = waiting.pop()
        if isinstance(found, tuple) and id(found) not in seen:
            seen.add(id(found))
            total += TUPLE_BYTES + ITEM_BYTES * len(found)
            waiting += found
    return total
