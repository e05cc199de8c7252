"""Type of each memory kit against the type that the board takes.

Names are compared without case, spaces and hyphens. Speed, size and the number of slots are not looked at.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.mates import MEMORY_TYPES
from service.parts.records import Memory, Motherboard
from service.rules.mating.units import units
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.same import same


def check(case: Case) -> Iterator[Said]:
    """Yield each memory kit that no board on the sheet takes."""
    boards = list(units(case, Motherboard))
    if not boards:
        return
    for at, memory in units(case, Memory):
        if memory.type is None:
            yield Unknown(Place("unit", at), "type")
        else:
            yield from _against(Place("unit", at), memory.type, boards)


def _against(at: Place, kind: str, boards: list[tuple[int, Motherboard]]) -> Iterator[Said]:
    if any(board.memory_type is not None and same(board.memory_type, kind) for _, board in boards):
        return
    unstated = next((place for place, board in boards if board.memory_type is None), None)
    if unstated is not None:
        yield Unknown(Place("unit", unstated), "memory_type")
    else:
        yield Finding(at, values=(("type", kind), ("board_type", str(boards[0][1].memory_type))))


RULE = Rule(
    id="MATE102", title="The board does not take this memory", weight="stop", points=0, aspect="mating", since="0.1",
    rests_on=(MEMORY_TYPES,), check=check,
    message="The memory is {type}, the board takes {board_type}.",
    why="The notch is elsewhere and the volts differ: it does not go in, and must not be forced.",
    remedy="Choose memory of the type that the board takes.",
)
