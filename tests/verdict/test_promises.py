"""What is promised of every verdict: worse facts never make a build look better.

The promise and its limits stand in the contributors' guide, "What is promised of a verdict".
"""

from collections.abc import Callable
from types import MappingProxyType
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from service.demand.readings import Figure, figure_of
from service.facts import processor as facts
from service.intake.faults import Faults
from service.intake.specs import read_spec
from service.parts.readings import Reading
from tests import strategies as changes
from tests.journeys.asked import ask, badness, walk

Json = dict[str, Any]
Change = Callable[..., Json | None]
WITHOUT_MAINS = ["power", "connections", "signals", "fit", "mating"]

# What may be left out without the promise, and why. Nothing else is excused.
OUTSIDE_OF_THE_PROMISE = MappingProxyType({
    "slot_watts": "splits a card's load between slot and plugs: either side may be the better for it",
    "routes_mm": "reach: an assumed way may be shorter than one that was measured",
    "at_mm": "reach: a plug whose place is not known is not known to be too short",
    "max_amps": "a maker's figure for a run stands for what its gauge is good for, which may be more",
    "awg": "18 AWG is supposed where nothing is said, and there is thinner wire",
})
# A figure for which one figure is supposed, and the worst that this one covers; 50 lights of 60 mA are the 3 A of any.
SUPPOSED_WITHOUT_RANGE = MappingProxyType({"graphics_limit_percent": 100, "leds": 50})


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(changes.heavier, id="more-load"),
        pytest.param(changes.fewer_cables, id="fewer-cables"),
        pytest.param(changes.hotter, id="hotter-room"),
        pytest.param(changes.thinner, id="thinner-wire"),
        pytest.param(changes.longer_run, id="longer-run"),
        pytest.param(changes.longer, id="longer-lead"),
        pytest.param(changes.worn, id="a-stated-wear"),
    ],
)
@given(sheet=changes.sheets(), data=st.data())
def test_worse_facts_never_look_better(change: Change, sheet: Json, data: st.DataObject) -> None:
    changed = change(data.draw, sheet)
    assume(changed is not None)
    assert changed is not None
    _not_better(_judged(sheet), _judged(changed))


@given(sheet=changes.sheets(), data=st.data())
def test_a_figure_left_out_never_looks_better(sheet: Json, data: st.DataObject) -> None:
    changed = changes.delete_figure(data.draw, sheet)
    assume(changed is not None)
    assert changed is not None
    after = _judged(changed)
    assume(_is_covered(changes.written_out(sheet), changed, after))
    _not_better(_judged(sheet), after)


@given(sheet=changes.sheets(), data=st.data())
def test_a_reading_left_out_or_raised_never_looks_better(sheet: Json, data: st.DataObject) -> None:
    """Of a reading within the range that it replaces; from what the sheet states on, for less is not used."""
    sheet = changes.written_out(sheet)
    found = [(line, rail, figure) for line, each in enumerate(sheet["parts"]) for rail in ("12v", "5v", "3v3", "5vsb")
             if (figure := _figure(each["spec"], rail)) is not None]
    line, rail, figure = data.draw(st.sampled_from(found))
    low, high = int(figure.low * 1000), int(figure.high * 1000)
    amps = min(max(data.draw(st.integers(low, high)) / 1000, figure.low), figure.high)
    reading: Json = {"part": f"/parts/{line}", "rail": rail, "amps": amps}
    read = _judged(sheet | {"readings": [reading]})
    _not_better(read, _judged(sheet))
    more = reading | {"amps": round(amps * data.draw(st.sampled_from([1.01, 1.1, 1.5])) + 0.01, 3)}
    _not_better(read, _judged(sheet | {"readings": [more]}))


def _figure(spec: Json, rail: str) -> Figure | None:
    reading = Reading(line=0, copy=0, connector=None, number=0, rail=rail, volts=None, amps=1.0)
    return figure_of(read_spec(spec), reading)


@given(sheet=changes.sheets(), data=st.data())
def test_a_stronger_supply_is_never_worse(sheet: Json, data: st.DataObject) -> None:
    sheet = sheet | {"aspects": WITHOUT_MAINS}
    before, after = _judged(sheet), _judged(changes.stronger(data.draw, sheet))
    assert badness(after) <= badness(before), (before["findings"], after["findings"])


def _judged(sheet: Json) -> Json:
    try:
        answer = ask(sheet)
    except Faults:
        assume(False)
        raise
    # Of a plan that is not proven nothing is promised but that it says so.
    assume(answer["plan"] is None or answer["plan"]["proven"])
    return answer


def _not_better(before: Json, after: Json) -> None:
    what = [
        [(one["rule"], one["weight"], one["where"]) for one in answer["findings"] + answer["unknowns"]]
        for answer in (before, after)
    ]
    assert badness(after) >= badness(before), what
    assert after["score"] <= before["score"], what


def _is_covered(before: Json, after: Json, answer: Json) -> bool:
    """Say whether what was left out lay within what is assumed in its place."""
    left = {way for way, _ in walk(after)}
    gone = {way: value for way, value in walk(before) if way not in left}
    names = {step for way in gone for step in way}
    if names & set(OUTSIDE_OF_THE_PROMISE):
        return False
    if any(name in names and max(gone.values()) > most for name, most in SUPPOSED_WITHOUT_RANGE.items()):
        return False
    if any(_is_of_a_processor(before, way) for way in gone):
        return _plug_watts(before, next(iter(gone))) <= _plug_watts(after, next(iter(gone)))
    assumed = {_short(one["where"]): one for one in answer["assumptions"]}
    for way, value in gone.items():
        place = assumed.get(_short("/" + "/".join(map(str, _outer(way)))))
        if place is not None and not isinstance(value, str) and not place["low"] <= value <= place["high"]:
            return False
    return True


def _outer(way: tuple[Any, ...]) -> tuple[Any, ...]:
    return way[:-1] if way[-1] in changes.ENDS else way


def _short(pointer: str) -> str:
    """Return a pointer below the part: the sheet says ``spec`` where the answer points into the part."""
    return pointer.replace("/spec/", "/")


def _is_of_a_processor(sheet: Json, way: tuple[Any, ...]) -> bool:
    return way[0] == "parts" and bool(sheet["parts"][way[1]]["spec"]["category"] == "processor")


def _plug_watts(sheet: Json, way: tuple[Any, ...]) -> float:
    """Return the most that a processor may draw at its plug, by the figure that counts of those given."""
    spec = sheet["parts"][way[1]]["spec"]
    loss = facts.REGULATOR_EFFICIENCY.low
    if "plug_watts" in spec:
        return _most(spec["plug_watts"])
    if "turbo_watts" in spec:
        return _most(spec["turbo_watts"]) / loss
    if spec.get("class_watts") in facts.CLASS_AMPS:
        return facts.CLASS_AMPS[spec["class_watts"]][0] * 12
    if "base_watts" in spec:
        return facts.most_amps(_most(spec["base_watts"])) * 12
    return facts.ANY_PLUG_WATTS.high


def _most(figure: Any) -> float:
    return float(figure["high"] if isinstance(figure, dict) else figure)
