"""Changing any figure that a comparison rests on by a tenth, up or down, makes some other test fail.

The change is made in the running code; where a figure is copied on import, in code imported anew. A test module that
names the fact itself is no witness: it would compare the figure with its own copy. Ask for ``-m slow`` to see, too,
that what stands in ``NOT_COMPARED`` and ``SAME`` is not stale.
"""

import pytest

from service.facts.fact import Fact
from tests.mutation.changed import all_facts, changed, changed_from_import
from tests.mutation.probes import Probe, held, probes

UP, DOWN = 1.1, 0.9
_KEPT = "kept beside the figure in use, because the sources disagree"
_SAID = "all or nothing, said on a card as the reason; there is no number to compare with"
_PARENT = "works through the figure derived from it, and the tests of facts hold that one to it"
_COUNT = "a count of contacts on the card; the tests of facts hold it to the table that is reckoned with"
_POINTS = "a whole number of points, no limit; the tests of rules and facts hold card, plan and figure together"
NOT_COMPARED = {
    "card.plug_16.levels": "the choice of printed levels, which the tests of facts hold to what a sheet may state",
    "card.ratio.to": "above 600 W the ratio goes on, by decision; the figure is on the card of PWR406",
    "comfort.contact": "the search counts from its own whole number, and the tests of facts hold the two together",
    "contact.16_pin.maker": _KEPT,
    "contact.4_2_mm.change": _PARENT,
    "contact.cpu_4.count": _COUNT,
    "contact.cpu_8.count": _COUNT,
    "contact.main.count": _COUNT,
    "contact.moulded": _SAID,
    "contact.sata.count": _PARENT,
    "contact.sata.power_disable": "the number of a pin",
    "header.needs": _SAID,
    "hold_up.after_power_good": _PARENT,
    "hold_up.atx12vo.power_good": _PARENT,
    "hold_up.atx_3_0.power_good": _PARENT,
    "hold_up.atx_3_1.power_good": _PARENT,
    "hold_up.atx_3_1.power_good.eighty": _PARENT,
    "mates.cables_interchanged": _SAID,
    "mates.memory_types": _SAID,
    "mates.plugs_interchanged": _SAID,
    "mates.ports_fed": _SAID,
    "mates.socket_processors": _SAID,
    "mates.sockets": _SAID,
    "points.assumed_short": _POINTS,
    "points.band": _POINTS,
    "points.header": _POINTS,
    "points.moulded": _POINTS,
    "points.peripheral_card": _POINTS,
    "points.share": _POINTS,
    "points.start_wire": _POINTS,
    "points.three_volt": _POINTS,
    "processor.peak.longest_ms": _PARENT,
    "room.atx_width": "forms are compared by name; the width is the reason",
    "room.fan": "sides are compared by name; the clear room is the reason",
    "route.slack": "compared by CBL102 and CBL103; a tenth of nothing is nothing",
    "slot.12v.amps": _PARENT,
    "slot.3v3.amps": _PARENT,
    "supply.ambient.design": "on the card of PWR501; the range that is assumed has its own ends",
    "supply.atx_2.slow_peak": "seconds; on the card of PWR404, which says that nothing is promised for less",
    "supply.cards_at_peak": _SAID,
    "supply.standby": "the guide's example, on the card of PWR205; the range that is assumed has its own ends",
    "wire.guide_gauge": "the name of a gauge: there is none between 16 and 18, nor between 18 and 20",
}
SAME = {
    ("card.ratio.short_until", DOWN): "the formula is held to 3 and gives more than 3 below 100 us",
    ("contact.drive_cable", UP): "a wire of a drive cable starts no more than the stop of a wire, which is 8 A too",
    ("processor.peak.longest", UP): "moments are 10 and 100 ms; 11 ms parts them at the same place",
    ("slot.3v3.watts", UP): "75 W less 66 W are 9 W, which stay below 9.9 W and below a tenth more",
    ("wire.16_pin_gauge", UP): "there is no gauge between 16 and 18",
}
COPIED = {
    "efficiency.power_factor", "efficiency.power_factor.good", "mains.plug_fuse", "processor.class.peak", "rest.led",
    "supply.sizes",
}
"""Figures that other constants are made of when their module is imported."""
USED = [
    pytest.param(fact, factor, id=f"{fact.key} {factor}") for fact in all_facts() for factor in (UP, DOWN)
    if fact.key not in NOT_COMPARED and (fact.key, factor) not in SAME
]
UNUSED = [
    pytest.param(fact, factor, id=f"{fact.key} {factor}") for fact in all_facts() for factor in (UP, DOWN)
    if fact.key in NOT_COMPARED or (fact.key, factor) in SAME
]


@pytest.fixture(scope="module")
def witnesses() -> list[Probe]:
    """Return all rows that may bear witness, every one passing, and the plain ones first."""
    found = probes()
    assert [probe.name for probe in found if probe.fails()] == []
    return sorted(found, key=lambda probe: "rules" not in probe.name)


def _witness(key: str, asked: list[Probe]) -> str | None:
    """Return the first test that fails and does not name the fact itself."""
    blind = {probe.module.__name__ for probe in asked if key in held(probe.module)}
    return next((probe.name for probe in asked if probe.module.__name__ not in blind and probe.fails()), None)


def _noticed(fact: Fact, factor: float, asked: list[Probe]) -> str | None:
    if fact.key not in COPIED:
        with changed(fact, factor):
            return _witness(fact.key, asked)
    with changed_from_import(fact.key, factor):
        try:
            from tests.mutation.probes import probes as anew

            return _witness(fact.key, anew())
        except ValueError as refused:
            return f"the service refuses to start: {refused}"


@pytest.mark.parametrize(("fact", "factor"), USED)
def test_a_tenth_more_or_less_is_noticed(fact: Fact, factor: float, witnesses: list[Probe]) -> None:
    assert _noticed(fact, factor, witnesses), f"no test fails with {fact.key} times {factor}"


def test_what_is_left_out_is_a_fact() -> None:
    keys = {fact.key for fact in all_facts()}
    assert set(NOT_COMPARED) | {key for key, _ in SAME} | COPIED <= keys
    assert all((*NOT_COMPARED.values(), *SAME.values()))


@pytest.mark.slow
@pytest.mark.parametrize(("fact", "factor"), UNUSED)
def test_what_is_left_out_is_not_noticed(fact: Fact, factor: float, witnesses: list[Probe]) -> None:
    assert _noticed(fact, factor, witnesses) is None
