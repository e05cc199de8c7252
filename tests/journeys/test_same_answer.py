"""The same question has the same answer, to the byte, in whatever order, by whatever names, wherever it is asked."""

import copy
import json
import os
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from itertools import pairwise
from pathlib import Path
from typing import Any

import orjson
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.intake.faults import Faults
from service.wiring import components
from service.wiring.memo import Memo
from tests import strategies as changes
from tests.journeys.asked import NAMES, SUPPLIED, ask, example, spec_of
from tests.journeys.canonical_answer import canonical

Json = dict[str, Any]
ROOT = Path(__file__).parents[2]
PLAIN = [name for name in NAMES if not {"wiring", "readings"} & set(example(name))]
# Room for about one part of a wiring problem, so that the memo throws away all the time.
CRAMPED_BYTES = 12_000
PROGRAM = """
import sys
import orjson
from service.catalogue import bundled
from service.journeys.check import check_sheet
from service.journeys.shelf import Shelf
shelf = Shelf(bundled.load())
for line in sys.stdin.buffer:
    sys.stdout.buffer.write(orjson.dumps(check_sheet(line, shelf)) + b"\\n")
"""


@pytest.fixture
def cold() -> Iterator[None]:
    """Start and end with an empty memo."""
    components.clear()
    yield
    components.clear()


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=40)
def test_order_of_lines(sheet: Json, data: st.DataObject) -> None:
    _same(sheet, changes.shuffle(data.draw, sheet))


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=40)
def test_split_of_a_quantity(sheet: Json, data: st.DataObject) -> None:
    changed = changes.split_quantities(data.draw, sheet)
    assume(changed is not None)
    _same(sheet, changed)


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=40)
def test_names(sheet: Json, data: st.DataObject) -> None:
    _same(changes.written_out(sheet), changes.rename(data.draw, sheet))


@pytest.mark.parametrize("name", sorted(set(PLAIN) & set(SUPPLIED)))
def test_labels_of_groups_and_sockets(name: str) -> None:
    sheet = example(name)
    renamed: dict[str, str] = {}
    changed = _relabelled(sheet, renamed)
    assert canonical(sheet) == canonical(changed, renamed)


@pytest.mark.parametrize("name", PLAIN)
def test_reversed_lines_of_an_example(name: str) -> None:
    sheet = example(name)
    changed = sheet | {"parts": sheet["parts"][::-1]}
    assert canonical(sheet) == canonical(changed)


def test_hash_seeds() -> None:
    sheets = b"\n".join(orjson.dumps(example(name)) for name in NAMES) + b"\n"
    answers = {seed: _in_a_process(sheets, seed) for seed in ("0", "1", "random")}
    assert answers["0"].count(b"\n") == len(NAMES)
    assert answers["0"] == answers["1"] == answers["random"]


@pytest.mark.usefixtures("cold")
@pytest.mark.parametrize("name", NAMES)
def test_memo_empty_and_full(name: str) -> None:
    first = _bytes(name)
    for other in NAMES:
        ask(example(other))
    assert _bytes(name) == first


@pytest.mark.usefixtures("cold")
def test_memo_that_throws_away(monkeypatch: pytest.MonkeyPatch) -> None:
    fresh = {name: _bytes(name) for name in NAMES}
    cramped: Memo[Any, Any] = Memo(CRAMPED_BYTES)
    monkeypatch.setattr(components, "_memo", cramped)
    monkeypatch.setattr(components, "_orders", Memo(CRAMPED_BYTES))
    kept = []
    for name in NAMES * 2:
        assert _bytes(name) == fresh[name], name
        kept.append(len(cramped))
    assert cramped.bytes <= CRAMPED_BYTES
    assert any(after < before for before, after in pairwise(kept)), "nothing was thrown away"


@pytest.mark.usefixtures("cold")
def test_threads() -> None:
    alone = [_bytes(name) for name in NAMES]
    components.clear()
    with ThreadPoolExecutor(2) as pool:
        both = list(pool.map(lambda order: [(name, _bytes(name)) for name in order], (NAMES, NAMES[::-1])))
    for found in both:
        assert [dict(found)[name] for name in NAMES] == alone


@given(sheet=changes.sheets())
@settings(max_examples=20)
def test_repeated_calls(sheet: Json) -> None:
    try:
        first = orjson.dumps(ask(sheet))
    except Faults:
        assume(False)
        raise
    components.clear()
    assert orjson.dumps(ask(sheet)) == first
    assert orjson.dumps(ask(sheet)) == first


def test_part_and_its_spec() -> None:
    named = json.loads((ROOT / "openapi" / "examples" / "quiet-office.json").read_text("utf-8"))
    assert canonical(named) == canonical(changes.written_out(named))


def _same(sheet: Json, changed: Json | None) -> None:
    assert changed is not None
    try:
        first = canonical(sheet)
    except Faults:
        assume(False)
        raise
    assert canonical(changed) == first


def _bytes(name: str) -> bytes:
    return orjson.dumps(ask(example(name)))


def _in_a_process(sheets: bytes, seed: str) -> bytes:
    environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
    words = [sys.executable, "-c", PROGRAM]
    return subprocess.run(words, input=sheets, capture_output=True, env=environment, check=True).stdout


def _relabelled(sheet: Json, renamed: dict[str, str]) -> Json:
    """Return the sheet with other names of groups and labels of sockets, in the opposite order of the alphabet."""
    changed = copy.deepcopy(sheet)
    supply = spec_of(changed, "power_supply")
    holders = [*supply.get("groups", ()), *supply.get("sockets", ()), *supply["cables"]]
    named = [one for one in holders if "plugs" not in one]
    words = sorted({one[key] for one in named for key in ("name", "label", "group") if key in one})
    new = {old: f"Zq{len(words) - at}x" for at, old in enumerate(words)}
    renamed |= {there: here for here, there in new.items()}
    for one in holders:
        for key in ("label", "group", "name"):
            if key in one and ("plugs" not in one or key == "group"):
                one[key] = new[one[key]]
        if "occupies" in one:
            one["occupies"] = {new[label]: count for label, count in one["occupies"].items()}
    return changed
