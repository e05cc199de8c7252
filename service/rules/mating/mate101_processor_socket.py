"""Socket of each processor against the socket of the board.

Names are compared without case, spaces and hyphens. Whether the board's firmware knows the processor is not looked at.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.mates import SOCKETS_MATED
from service.parts.records import Motherboard, Processor
from service.rules.mating.units import units
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.same import same


def check(case: Case) -> Iterator[Said]:
    """Yield each processor that no board on the sheet has the socket for."""
    boards = list(units(case, Motherboard))
    if not boards:
        return
    for at, processor in units(case, Processor):
        if processor.socket is None:
            yield Unknown(Place("unit", at), "socket")
        else:
            yield from _against(Place("unit", at), processor.socket, boards)


def _against(at: Place, socket: str, boards: list[tuple[int, Motherboard]]) -> Iterator[Said]:
    if any(board.processor_socket is not None and same(board.processor_socket, socket) for _, board in boards):
        return
    unstated = next((place for place, board in boards if board.processor_socket is None), None)
    if unstated is not None:
        yield Unknown(Place("unit", unstated), "processor_socket")
    else:
        yield Finding(at, values=(("socket", socket), ("board_socket", str(boards[0][1].processor_socket))))


RULE = Rule(
    id="MATE101", title="The processor does not go into the board's socket", weight="stop", points=0, aspect="mating",
    since="0.1", rests_on=(SOCKETS_MATED,), check=check,
    message="The processor is made for socket {socket}, the board has {board_socket}.",
    why="It does not go in; force bends pins, and bent pins end board or processor.",
    remedy="Choose a processor and a board for the same socket.",
)
