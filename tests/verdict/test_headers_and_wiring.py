"""Headers and cables weighed together, from the sheet to the verdict: hubs, cages, boards that feed drives."""

import copy
from collections.abc import Callable
from typing import Any

import orjson
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from service.case.wired import Asker
from service.case.wired import asked as asked_of
from service.case.wired import said as amounts_to
from service.catalogue.resolve import resolve
from service.demand.ask import headers as headers_of
from service.demand.ends import Ends
from service.demand.hosts import others
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.parts.figures import End
from service.parts.records import PowerSupply
from tests.journeys.asked import ask, badness, shelf, spoken

Json = dict[str, Any]
Draw = Callable[[st.SearchStrategy[Any]], Any]
MAIN = {"plugs": [{"connector": "atx-20+4"}], "awg": 18}
PROCESSOR_CABLE = {"plugs": [{"connector": "cpu-4+4"}], "awg": 18}
SATA = {"plugs": [{"connector": "sata-power"}] * 3, "awg": 18}
PERIPHERAL = {"plugs": [{"connector": "peripheral-4"}], "awg": 18}
CAGE = {"category": "backplane", "needs": [{"connector": "peripheral-4"}],
        "offers": [{"connector": "sata-power", "count": 2}]}
PROCESSOR = {"category": "processor", "socket": "lug-1", "plug_watts": 60}
SIGNALS = ["power", "connections", "signals"]
MOST_FANS_AND_DISKS = 6


def supply(*cables: Json) -> Json:
    """Return a supply that is never short of watts."""
    return {"category": "power_supply", "rated_watts": 1000, "design": "atx-3.1",
            "cables": [MAIN, PROCESSOR_CABLE, *cables]}


def board(*offers: Json, own: float = 1) -> Json:
    """Return a board that offers what is given."""
    return {"category": "motherboard", "processor_socket": "lug-1", "offers": list(offers),
            "own_amps": {"12v": own, "5v": 1, "3v3": 1, "5vsb": 0.5},
            "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}]}


def headers(count: int, amps: float | None = 1, connector: str = "fan-4") -> Json:
    """Return headers as an offer."""
    return {"connector": connector, "count": count} | ({} if amps is None else {"max_amps": amps})


def hub(*offers: Json, connector: str = "sata-power") -> Json:
    """Return a hub of 0.05 A."""
    return {"category": "controller", "amps": 0.05, "needs": [{"connector": connector}], "offers": list(offers)}


def fan(amps: float | None = None) -> Json:
    """Return a fan; without its amps, all of it is assumed."""
    return {"category": "fan", "needs": [{"connector": "fan-4"}]} | ({} if amps is None else {"amps": amps})


def disk(running: float, starting: float | None = None) -> Json:
    """Return a disk of so many amps on 12 V."""
    return {"category": "drive", "size": "3.5", "interface": "sas", "needs": [{"connector": "sata-power"}],
            "running_amps": {"12v": running, "5v": 0.5, "3v3": 0},
            "starting_amps": {"12v": starting or running, "5v": 0.5, "3v3": 0}}


def asked(*lines: Json | tuple[Json, int], **other: Any) -> Json:
    """Return the answer to specs, or specs and how many of them."""
    parts = [line if isinstance(line, tuple) else (line, 1) for line in lines]
    written = [{"spec": spec, "quantity": quantity} for spec, quantity in parts]
    return ask({"parts": written, "aspects": SIGNALS} | other)


def measured(answer: Json, rule: str) -> list[float]:
    """Return what a rule measured, place by place."""
    return [found["measured"] for found in answer["findings"] if found["rule"] == rule]


def test_a_hub_does_not_spoil_a_build_that_fits() -> None:
    """All six fans on the hub would be 5.45 A of the 4.5 A of its plug."""
    build = (supply(SATA), board(headers(7)), PROCESSOR, (fan(0.9), 6))
    assert asked(*build)["score"] == 100
    assert asked(*build, hub(headers(6)))["score"] == 100


def test_six_plain_fans_on_a_hub_are_not_in_doubt() -> None:
    """3 A at most as they run; what they take as they start is over within a second."""
    answer = asked(supply(SATA), board(), PROCESSOR, hub(headers(6)), (fan(), 6))
    assert (answer["verdict"], spoken(answer) & {"CON107", "CON101"}) == ("fits", set())


def test_what_fans_take_as_they_start_counts_for_the_supply() -> None:
    slow = asked(supply(), board(headers(4)), PROCESSOR, (fan(0.3) | {"starting_amps": 0.3}, 4))
    quick = asked(supply(), board(headers(4)), PROCESSOR, (fan(0.3) | {"starting_amps": 1.3}, 4))
    rails = [answer["power"]["rails"]["12v"]["starting_amps"] for answer in (slow, quick)]
    assert rails[1] - rails[0] == pytest.approx(4)


def test_fans_leave_the_hub_where_a_disk_loads_its_cable() -> None:
    """A wire of the one drive cable is planned with 6 A: 4 A of the disk, and no more than 2 A of hub and fans."""
    build = (supply(SATA), board(headers(4)), PROCESSOR, hub(headers(4)), disk(4), (fan(0.9), 4))
    answer = asked(*build)
    assert (answer["score"], spoken(answer) & {"CON104", "CON105"}) == (100, set())


def test_fans_leave_the_board_where_its_plug_is_full() -> None:
    """The main connector has two contacts at 12 V: 11 A of the board leave 1 A below 6 A each."""
    build = (supply(SATA), board(headers(6), own=11), PROCESSOR, (fan(0.6), 6))
    assert spoken(asked(*build)) >= {"CON105"}
    assert asked(*build, hub(headers(5)))["score"] == 100


def test_of_unlike_disks_those_stay_on_cables_that_keep_all_plugs_sound() -> None:
    """Two bays on one plug of 11 A, and a cable for two: the two heavy disks may not share a plug, nor a wire."""
    pair = {"plugs": [{"connector": "sata-power"}] * 2, "awg": 18}
    answer = asked(supply(PERIPHERAL, pair), board(), PROCESSOR, CAGE, (disk(4.2), 2), (disk(0.5), 2))
    assert (answer["score"], answer["plan"]["not_fed"]) == (100, [])


def test_what_is_weak_and_does_not_say_is_told_beside_what_is_strong() -> None:
    """1.2 A on a header that does not say what it gives; another of its kind carries 1.9 A of 2 A."""
    answer = asked(supply(), board(headers(1, 2), headers(1, None)), PROCESSOR, fan(1.9), fan(1.2))
    assert [one["rule"] for one in answer["unknowns"]] == ["AUX102"]


@pytest.mark.parametrize("fans", [
    pytest.param([1.5, 0.9], id="strong-first"), pytest.param([0.9, 1.5], id="strong-last"),
])
def test_the_strong_header_goes_to_the_strong_fan(fans: list[float]) -> None:
    answer = asked(supply(), board(headers(1, 1), headers(1, 2)), PROCESSOR, *(fan(amps) for amps in fans))
    assert answer["score"] == 100


def test_a_plan_posted_back_is_judged_the_same() -> None:
    """Disks on cables stay there, the others in their bays."""
    build = (supply(SATA, PERIPHERAL), board(headers(4)), PROCESSOR, CAGE,
             hub(headers(4)), (disk(2.5, 3), 2), (disk(0.5), 2), (fan(0.9), 6))
    first = asked(*build)
    again = asked(*build, wiring=first["plan"]["connections"])
    assert all(again[said] == first[said] for said in ("verdict", "score", "findings", "unknowns"))


def test_a_stop_that_no_placing_mends_is_no_matter_of_proof() -> None:
    """Twelve unlike fans over three hubs are more ways than are weighed; the processor has no cable in any of them."""
    fans = [fan(round(0.9 + 0.04 * number, 2)) for number in range(12)]
    lines = (supply(SATA), board(headers(2, 1)), PROCESSOR, *[hub(headers(4, 1.5))] * 3, *fans)
    short = copy.deepcopy(lines)
    short[0]["cables"].remove(PROCESSOR_CABLE)
    within, without = asked(*lines), asked(*short)
    assert (within["plan"]["proven"], without["plan"]["proven"]) == (False, False)
    assert (within["verdict"], without["verdict"]) == ("undecided", "does_not_fit")


# --- what is promised ---


@st.composite
def hub_builds(draw: Draw) -> list[Json]:
    """Draw builds in which hubs, cages, headers and drive cables are all somewhat short."""
    amps = st.sampled_from([0.2, 0.5, 0.9, 1.3, 2.0])
    sata = draw(st.sampled_from([[SATA], [SATA, SATA], [{"plugs": [{"connector": "sata-power"}] * 5, "awg": 20}]]))
    peripheral = [{"plugs": [{"connector": "peripheral-4"}] * 2, "awg": 18}]
    lines = [supply(*sata, *peripheral), PROCESSOR]
    lines.append(board(headers(draw(st.integers(1, 4)), draw(amps)), headers(1, 3, "argb-3"),
                       own=draw(st.sampled_from([1, 9, 11, 14]))))
    for _ in range(draw(st.integers(0, 2))):
        plug = draw(st.sampled_from(["sata-power", "sata-power", "fan-4", "peripheral-4"]))
        lines.append(hub(headers(draw(st.integers(1, 4)), draw(amps)), connector=plug))
    if draw(st.booleans()):
        lines.append({"category": "backplane", "needs": [{"connector": "peripheral-4"}],
                      "offers": [headers(2, draw(st.sampled_from([None, 2.0])), "sata-power")]})
    models = [fan(draw(amps)), fan(draw(amps)), disk(draw(amps), 2.2)]
    lines += [copy.deepcopy(draw(st.sampled_from(models))) for _ in range(draw(st.integers(1, MOST_FANS_AND_DISKS)))]
    return lines


@given(lines=hub_builds(), data=st.data())
def test_more_load_never_looks_better(lines: list[Json], data: st.DataObject) -> None:
    heavier = copy.deepcopy(lines)
    loaded = [line for line in heavier if line["category"] in ("fan", "drive", "controller")]
    for line in data.draw(st.lists(st.sampled_from(loaded), min_size=1, max_size=3)):
        more = data.draw(st.sampled_from([0.1, 0.4, 1.0, 2.5]))
        if line["category"] == "drive":
            line["running_amps"]["12v"] += more
            line["starting_amps"]["12v"] += more
        else:
            line["amps"] += more
    _not_better(_judged(lines), _judged(heavier))


@given(lines=hub_builds(), data=st.data())
def test_a_figure_left_out_never_looks_better(lines: list[Json], data: st.DataObject) -> None:
    """Amps of a fan within what is assumed, or a limit no less than the usual one."""
    bare = copy.deepcopy(lines)
    figures = [(line, "amps") for line in bare if line["category"] == "fan" and line["amps"] <= 0.5]
    figures += [(offer, "max_amps") for line in bare for offer in line.get("offers", ())
                if offer["connector"] == "fan-4" and offer.get("max_amps", 0) >= 1]
    assume(figures)
    for holder, name in data.draw(st.lists(st.sampled_from(figures), min_size=1, max_size=3, unique_by=id)):
        holder.pop(name, None)
    _not_better(_judged(lines), _judged(bare))


@given(lines=hub_builds(), count=st.integers(1, 6), amps=st.sampled_from([None, 0.3, 1.0, 2.0]))
def test_a_hub_with_a_cable_of_its_own_is_never_worse(lines: list[Json], count: int, amps: float | None) -> None:
    """As long as every fan has a header already, and the hub itself draws nothing."""
    lone = {"plugs": [{"connector": "floppy-4"}], "awg": 18}
    lines[0]["cables"] = [*lines[0]["cables"], lone]
    before = _judged(lines)
    assume("AUX101" not in spoken(before))
    after = _judged([*lines, hub(headers(count, amps), connector="floppy-4") | {"amps": 0}])
    _not_better(after, before)


@pytest.mark.parametrize("end", ["unfavourable", "favourable"])
@given(lines=hub_builds())
def test_no_way_to_fill_the_headers_is_better(lines: list[Json], end: End) -> None:
    """By stops and points, of all ways, each wired for itself; and what is certain to stop does in all."""
    build = resolve(read_sheet(read_json(orjson.dumps({"parts": [{"spec": spec} for spec in lines]}))), shelf().edition)
    supply_at = next(at for at, unit in enumerate(build.units) if isinstance(unit.part, PowerSupply))
    taken = asked_of(build, supply_at, end, frozenset(), ())
    ways = others(headers_of(build, Ends(end)))
    assume(ways.complete and taken.demand.hung_proven)
    asker = Asker(build, supply_at, end, frozenset(), ())
    least = min(amounts_to(asker.ask(hung)) for hung in ways.hung)
    assert amounts_to(taken) == least
    assert least[0] or not taken.stopped


def _judged(lines: list[Json]) -> Json:
    answer = asked(*lines)
    assume(answer["plan"]["proven"])
    return answer


def _not_better(before: Json, after: Json) -> None:
    what = [sorted((one["rule"], tuple(one["where"])) for one in answer["findings"] + answer["unknowns"])
            for answer in (before, after)]
    assert badness(after) >= badness(before), what
    assert after["score"] <= before["score"], what
