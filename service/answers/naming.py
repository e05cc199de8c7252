"""What things are called in a sentence: by their names on the sheet, else by what and where they are."""

from collections.abc import Sequence
from itertools import accumulate

from service.demand.needs import needs_of
from service.parts.build import Build
from service.parts.records import Adapter, Cable, Part, PowerSupply
from service.wiring.pieces import only_lengthens

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def and_(words: Sequence[str]) -> str:
    """Return words in a row, the last after an "and"."""
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def part_name(build: Build, line: int, copy: int) -> str:
    """Return the name of a piece of a line."""
    part = _part(build, line)
    name = part.name or f"the {part.category.replace('_', ' ')} of line {line + 1}"
    return _piece(name, copy, sum(unit.line == line for unit in build.units))


def port_name(build: Build, line: int, copy: int, connector: str, number: int) -> str:
    """Return the name of a port."""
    of = part_name(build, line, copy)
    alike = sum(need.count for need in needs_of(_part(build, line)) if need.connector == connector)
    return f"the {_nth(number)} {connector} port of {of}" if alike > 1 else f"the {connector} port of {of}"


def cable_name(build: Build, line: int, entry: int | None, copy: int) -> str:
    """Return the name of a cable: one of the supply's box, numbered through the box, or one of a line of its own."""
    part = _part(build, line)
    if entry is None:
        assert isinstance(part, Cable)
        name = f'cable "{part.name}"' if part.name else f"the cable of line {line + 1}"
        return _piece(name, copy, _pieces(build, line, part.quantity))
    assert isinstance(part, PowerSupply)
    box = part.cables or ()
    if box[entry].name:
        return _piece(f'cable "{box[entry].name}"', copy, box[entry].quantity)
    before = [0, *accumulate(cable.quantity for cable in box)]
    return f"cable {before[entry] + copy + 1}"


def adapter_name(build: Build, line: int, entry: int | None, copy: int) -> str:
    """Return the name of an adapter: one of a line of its own, or one that came with a card."""
    part = _part(build, line)
    adapter = part if entry is None else getattr(part, "adapters", ())[entry]
    assert isinstance(adapter, Adapter)
    where = "" if entry is None else f" that came with {part.name or 'the card'}"
    takes, gives = adapter.takes.connector, adapter.gives.connector
    plain = f"the {gives} extension{where}" if only_lengthens(adapter) else f"the adapter {takes} to {gives}{where}"
    name = f'adapter "{adapter.name}"' if adapter.name else plain
    return _piece(name, copy, _pieces(build, line, adapter.quantity))


def _part(build: Build, line: int) -> Part:
    return next(unit.part for unit in build.units if unit.line == line)


def _pieces(build: Build, line: int, quantity: int) -> int:
    return quantity * sum(unit.line == line for unit in build.units)


def _piece(name: str, copy: int, of: int) -> str:
    return f"{name} ({copy + 1} of {of})" if of > 1 else name


def _nth(number: int) -> str:
    return _ORDINALS[number] if number < len(_ORDINALS) else f"{number + 1}th"
