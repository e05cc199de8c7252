"""What may be wrong with a request: a body that is no JSON, or faults that each have a place and a sentence."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

NO_SUCH_FIELD = "is not a field here"
_WHOLE = "_schema"
_MORE = "has more faults than are listed: {count} were left out"
MOST_FAULTS = 200


class Key(str):
    """A key that the sender chose, as in a map of labels; never mistaken for marshmallow's own key."""

    __slots__ = ()


class Fault(NamedTuple):
    """A JSON pointer into the request, and a sentence that goes on from the name of what stands there."""

    pointer: str
    sentence: str


class Faults(Exception):
    """Everything that is wrong with a request, in order of place."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = _cut(sorted(set(faults), key=_place))
        super().__init__("; ".join(f"{fault.pointer} {fault.sentence}" for fault in self.faults))


class Unreadable(Exception):
    """A body that cannot be read as JSON; the text is a sentence. ``pointer`` is set where a key stands twice."""

    def __init__(self, sentence: str, pointer: str | None = None) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.pointer = pointer


def escape(key: str) -> str:
    """Return a key as a step of a JSON pointer."""
    return key.replace("~", "~0").replace("/", "~1")


def from_messages(messages: Any, at: str) -> Iterator[Fault]:
    """Yield the faults in a tree of messages as marshmallow builds it; ``at`` points at what was loaded."""
    if not isinstance(messages, Mapping):
        for sentence in messages if isinstance(messages, list) else [messages]:
            yield Fault(at, str(sentence))
        return
    for key, below in messages.items():
        of_the_whole = key == _WHOLE and type(key) is str and below != [NO_SUCH_FIELD]
        yield from from_messages(below, at if of_the_whole else f"{at}/{escape(str(key))}")


def _place(fault: Fault) -> tuple[tuple[tuple[int, int, str], ...], str]:
    """Return a sort key: by steps of the pointer, numbers as numbers."""
    steps = fault.pointer.split("/")
    numbered = tuple((0, int(step), "") if _is_index(step) else (1, 0, step) for step in steps)
    return numbered, fault.sentence


def _is_index(step: str) -> bool:
    return step.isascii() and step.isdigit() and len(step) <= len(str(MOST_FAULTS)) + 1


def _cut(faults: list[Fault]) -> tuple[Fault, ...]:
    """Return so many faults as an answer may list, and a last one that counts the rest."""
    if len(faults) <= MOST_FAULTS:
        return tuple(faults)
    return (*faults[:MOST_FAULTS], Fault("", _MORE.format(count=len(faults) - MOST_FAULTS)))
