"""No accepted field is without effect: moving it changes some byte of the answer other than what only says it back."""

import copy
from collections.abc import Generator
from contextlib import closing
from functools import cache
from typing import Any

import orjson
import pytest

from service.intake.faults import Faults
from service.intake.sheet import LINE, SHEET
from service.intake.specs import BY_CATEGORY
from tests.journeys.asked import NAMES, ask, example, with_wiring
from tests.journeys.bench import DRIVE, bench, plugged
from tests.journeys.schema_fields import FieldAt, fields_of, holders, other_values
from tests.journeys.workshop import bare, by_adapters, by_loose_cables, crowded, everything, heavy

Json = dict[str, Any]

# Fields for which no effect could be found. It stays empty: a field here is to be judged by a rule, or to go.
# What an answer only says back.
ECHO = frozenset({"reference", "max_amps", "mains_volts", "power_factor"})
REFUSED = b""
# Where a refusal is an effect too: fields that name a piece, and have to agree with each other.
COORDINATES = frozenset({"wiring", "readings"})
OF_SPECS = [(category, at) for category, schema in BY_CATEGORY.items() for at in fields_of(schema)]
OF_SHEETS = [("sheet", at) for at in fields_of(SHEET)] + [("line", at) for at in fields_of(LINE)]


@pytest.mark.parametrize(("of", "at"), [pytest.param(of, at, id=f"{of}/{at}") for of, at in (*OF_SPECS, *OF_SHEETS)])
def test_field_has_an_effect(of: str, at: FieldAt) -> None:
    assert _has_effect(of, at)


def _has_effect(of: str, at: FieldAt) -> bool:
    refused = None if at.way[0] in COORDINATES else REFUSED
    for sheet, before in _sheets():
        with closing(_moved(sheet, of, at)) as moved:
            if any(_answer(changed) not in (refused, before) for changed in moved):
                return True
    return False


@cache
def _sheets() -> list[tuple[Json, bytes]]:
    """Return sheets on which fields are moved: one of everything first, for most show their effect there."""
    in_parts = [by_adapters(rated=True), by_adapters(rated=False)]
    found = [everything(), bare(), *in_parts, by_loose_cables(), *map(example, NAMES)]
    for sheet in (everything(), in_parts[0], _two_drives()):
        first = ask(sheet)["plan"]["connections"]
        found += [with_wiring(sheet, first), with_wiring(sheet, first[::2], "plan")]
    found += [with_wiring(bench(), plugged(card="six")), heavy(), crowded()]
    return [(sheet, _answer(sheet)) for sheet in found]


def _two_drives() -> Json:
    sheet = bench()
    sheet["parts"][DRIVE]["quantity"] = 2
    return sheet


def _moved(sheet: Json, of: str, at: FieldAt) -> Generator[Json]:
    """Yield the sheet with the field moved, in each place where it may stand."""
    for holder, key in _places(sheet, of, at):
        was = holder.get(key) if isinstance(holder, dict) else holder[key]
        try:
            for value in other_values(at.field, was):
                holder[key] = value
                yield sheet
        finally:
            if was is None:
                del holder[key]
            else:
                holder[key] = was


def _places(sheet: Json, of: str, at: FieldAt) -> list[tuple[Any, Any]]:
    if of == "sheet":
        return list(holders(sheet, at.way)) if at.way[0] not in ("wiring", "aspects") or sheet.get(at.way[0]) else []
    lines = [line for line in sheet["parts"] if of in ("line", line["spec"]["category"])]
    return [spot for line in lines for spot in holders(line if of == "line" else line["spec"], at.way)]


def _answer(sheet: Json) -> bytes:
    """Return the answer without what it only says back, or ``REFUSED`` where the sheet is at fault."""
    try:
        return orjson.dumps(_without_echo(ask(copy.deepcopy(sheet))))
    except Faults:
        return REFUSED


def _without_echo(node: Any) -> Any:
    if isinstance(node, dict):
        return {key: _without_echo(value) for key, value in node.items() if key not in ECHO}
    return [_without_echo(item) for item in node] if isinstance(node, list) else node
