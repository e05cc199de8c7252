"""Limits at 99, 100 and 101 %, from the sheet to the finding: that a rule compares with the figure, not only holds it.

The figures are written out here as printed and never taken from the room of facts, so a fact that is changed, or that
no rule reads, is seen.
"""

from collections.abc import Callable
from typing import Any

import pytest

from service.facts.supply import is_large
from service.physics.excursion import card_ratio, supply_envelope_watts
from service.wiring.allowances import joint
from tests.journeys.asked import ask, spoken
from tests.practice.test_trade import BOARD, DOUBLE, MAIN, PROCESSOR, card, supply
from tests.rules.at_the_limit import LIMITS
from tests.rules.cases import case, header, outcome, wall
from tests.rules.test_sharing_in_use import RULE as SHARING_RULE
from tests.rules.test_volts_in_use import RULES as VOLTS_RULES

Json = dict[str, Any]
PERCENT = (99, 100, 101)


def told(answer: Json, rule: str) -> bool:
    """Say whether a rule has a finding or an unknown."""
    return rule in spoken(answer) or any(one["rule"] == rule for one in answer["unknowns"])


def judged(power: Json, *others: Json, plug_watts: float = 90, **given: Any) -> Json:
    """Return the answer to a build, all aspects looked at that its parts allow."""
    processor = {"category": "processor", "socket": "q7", "plug_watts": plug_watts}
    return ask({"parts": [{"spec": spec} for spec in (power, BOARD, processor, *others)], **given})


def processor(awg: int = 18) -> Callable[[float], Json]:
    """Return a build by the amps of each of four 12 V wires and contacts of the processor's plug."""
    box = supply(cables=[MAIN, PROCESSOR | {"awg": awg}])
    return lambda amps: judged(box, plug_watts=amps * 4 * 12)


def drive(connector: str, moment: str) -> Callable[[float], Json]:
    """Return a build by the amps on 12 V of a drive on a cable of its own."""
    def build(amps: float) -> Json:
        calm = {"running_amps": {"12v": 0.5, "5v": 0.5}, "starting_amps": {"12v": 0.5, "5v": 0.5}}
        disk = {"category": "drive", "interface": "sata", "size": "3.5", "needs": [{"connector": connector}], **calm}
        return judged(supply({"plugs": [{"connector": connector}], "awg": 16}), disk | {moment: {"12v": amps, "5v": 0}})

    return build


def into(port: str, open_contacts: int = 0) -> list[Json]:
    """Return the wiring of the third cable's first plug into a port of the fourth part."""
    plug = {"cable": "/parts/0/cables/2", "plug": 1, "open_contacts": open_contacts}
    return [{"part": "/parts/3", "port": {"connector": port, "number": 1}, "plugs": [plug]}]


def sixteen_pin(amps: float) -> Json:
    """Return a build by the amps of each of four sound contacts of a 16-pin plug, two others being open."""
    box = supply({"plugs": [{"connector": "12v-2x6"}], "awg": 16, "rated_watts": 600})
    return judged(box, card(25 + amps * 4 * 12, "12v-2x6", 1), wiring=into("12v-2x6", 2), wiring_rest="plan")


def plug(connector: str) -> Callable[[float], Json]:
    """Return a build by the watts through one plug of a card."""
    box = supply({"plugs": [{"connector": connector}], "awg": 16, "rated_watts": 600}
                 if connector == "12v-2x6" else {"plugs": [{"connector": connector}], "awg": 16})
    return lambda watts: judged(box, card(25 + watts, connector, 1))


def printed(rated_watts: float) -> Callable[[float], Json]:
    """Return a build by the watts of a card through a 16-pin cable that is printed for so many."""
    box = supply({"plugs": [{"connector": "12v-2x6"}], "awg": 16, "rated_watts": rated_watts})
    return lambda watts: judged(box, card(25 + watts, "12v-2x6", 1))


def rated(rated_watts: float, **given: Any) -> Callable[[float], Json]:
    """Return a build by the watts of a card through an adapter that is rated for so many, from two 8-pin plugs."""
    ends = {"takes": [{"connector": "pcie-8", "count": 2}], "gives": [{"connector": "12v-2x6"}], "moulded": False}
    box = supply(*[{"plugs": [{"connector": "pcie-6+2"}], "awg": 16}] * 2)
    adapters = [ends | {"rated_watts": rated_watts} | given]
    return lambda watts: judged(box, card(25 + watts, "12v-2x6", 1, adapters=adapters))


def shared(watts: float) -> Json:
    """Return the answer to a card that takes so many watts through both plugs of the one cable there is."""
    return judged(supply(DOUBLE), card(25 + watts, "pcie-8", 2))


def half_mated(watts: float) -> Json:
    """Return the answer to a 6-pin plug in the 8-pin port of a card that takes so many watts through it."""
    box = supply({"plugs": [{"connector": "pcie-6"}], "awg": 16})
    return judged(box, card(25 + watts, "pcie-8", 1), wiring=into("pcie-8"), wiring_rest="plan")


def from_round_plugs(watts: float) -> Json:
    """Return the answer to a card that takes so many watts through an adapter from two peripheral plugs."""
    ends = {"takes": [{"connector": "peripheral-4", "count": 2}], "gives": [{"connector": "pcie-6"}]}
    box = supply({"plugs": [{"connector": "peripheral-4"}] * 2, "awg": 16})
    return judged(box, card(25 + watts, "pcie-6", 1, adapters=[ends | {"moulded": False, "rated_watts": 150}]))


def riser(watts: float) -> Json:
    """Return the answer to a riser on a SATA plug, with a card on it that takes so many watts through its slot."""
    slotted = {"category": "graphics_card", "board_watts": watts, "slot_watts": watts}
    holder = {"category": "riser", "feeds_slot_watts": 75, "needs": [{"connector": "sata-power"}]}
    box = supply({"plugs": [{"connector": "sata-power"}], "awg": 16, "carries_3v3": True})
    return judged(box, holder, slotted, wiring=into("sata-power"), wiring_rest="plan")


def way(lead: float | None) -> Callable[[float], Json]:
    """Return a build by the way to a card that the case states; its plug is so far along, or where it may be."""
    along = {"connector": "pcie-8"} | ({} if lead is None else {"at_mm": lead})
    far = [{"plugs": [{"connector": plug, "at_mm": 900}], "awg": 16} for plug in ("atx-24", "cpu-4+4")]
    box = supply() | {"cables": [*far, {"plugs": [along], "awg": 16}]}

    def build(mm: float) -> Json:
        tower = {"category": "case", "routes_mm": {"card": mm}}
        return judged(box, card(100, "pcie-8", 1), tower, wiring=into("pcie-8"), wiring_rest="plan")

    return build


def lead_to(function: str) -> Callable[[float], Json]:
    """Return a build by how far a plug is along its cable, in a case that states no way to its port."""
    def build(mm: float) -> Json:
        along = {
            "main": {"connector": "atx-24"}, "processor": {"connector": "cpu-4+4"}, "card": {"connector": "pcie-8"},
            "drive": {"connector": "sata-power"},
        }
        long = {one: plug | {"at_mm": mm if one == function else 900} for one, plug in along.items()}
        box = supply() | {"cables": [{"plugs": [plug], "awg": 16} for plug in long.values()]}
        disk = {"category": "drive", "interface": "sata", "running_amps": {"12v": 0.5}, "starting_amps": {"12v": 0.5}}
        return judged(box, card(100, "pcie-8", 1), disk, {"category": "case"})

    return build


def shared_equally(watts: float) -> Json:
    """Return a build by the watts of each of a card's two plugs, a 6-pin and an 8-pin one, if it shared equally."""
    box = supply({"plugs": [{"connector": "pcie-6"}], "awg": 16}, {"plugs": [{"connector": "pcie-8"}], "awg": 16})
    needs = [{"connector": "pcie-6"}, {"connector": "pcie-8"}]
    return judged(box, card(25 + 2 * watts, "pcie-6", 1) | {"needs": needs})


ROWS: list[tuple[str, float, Callable[[float], Json]]] = [
    ("CON102", 75, plug("pcie-6")),
    ("CON102", 150, plug("pcie-8")),
    ("CON102", 600, plug("12v-2x6")),
    ("CON103", 150, printed(150)),
    ("CON103", 300, printed(300)),
    ("CON103", 450, printed(450)),
    ("CON104", 8, processor()),
    ("CON105", 6, processor()),
    ("CON106", 9.2, sixteen_pin),
    ("CON107", 4.5, drive("sata-power", "running_amps")),
    ("CON107", 11, drive("peripheral-4", "running_amps")),
    ("CON107", 2, drive("floppy-4", "running_amps")),
    ("CON108", 8, drive("peripheral-4", "starting_amps")),
    ("CON109", 225, shared),
    ("CON112", 75, half_mated),
    ("CON117", 75, from_round_plugs),
    ("CON118", 240, rated(240)),
    ("CON118", 180, rated(300, rated_watts_by_inputs={"2": 180})),
    ("CON121", 54, riser),
    ("CBL102", 500, way(500)),
    ("CBL103", 400, way(None)),
    ("CON124", 75, shared_equally),
]
USUAL_WAYS = {"main": 500, "processor": 650, "card": 550, "drive": 450}
"""Millimetres of the longest usual way, where the case states none; our own figures, common practice, no source."""


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("rule", "limit", "build"), ROWS, ids=[f"{row[0]} {row[1]}" for row in ROWS])
def test_only_past_the_limit(rule: str, limit: float, build: Callable[[float], Json], percent: int) -> None:
    assert told(build(limit * percent / 100), rule) == (percent > 100)


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("function", "mm"), USUAL_WAYS.items())
def test_plug_reaches_by_the_longest_usual_way(function: str, mm: float, percent: int) -> None:
    assert told(lead_to(function)(mm * percent / 100), "CBL103") == (percent < 100)


def test_every_rule_of_plugs_and_cables_with_a_limit_has_a_row() -> None:
    assert {rule for rule in LIMITS if rule.startswith(("CON", "CBL"))} == {
        *(rule for rule, _, _ in ROWS), *(rule for rule, _ in VOLTS_RULES), SHARING_RULE,
    }


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("awg", "amps"), [(20, 5), (22, 4), (24, 2.5), (26, 1.5), (28, 0.9)])
def test_thin_wire(awg: int, amps: float, percent: int) -> None:
    assert told(processor(awg)(amps * percent / 100), "CON104") == (percent > 100)


@pytest.mark.parametrize(("connector", "amps"), [("fan-4", 1), ("argb-3", 3), ("rgb-4", 3), ("m2-m", 3),
                                                 ("sata-power", 4.5)])
@pytest.mark.parametrize("percent", PERCENT)
def test_header_that_does_not_say_is_good_for_the_usual(connector: str, amps: float, percent: int) -> None:
    given = case(headers=(header(amps * percent / 100, None, connector),))
    assert [missing for missing, _ in outcome("AUX102", given)] == ["offers"] * (percent > 100)


@pytest.mark.parametrize(("watts", "loose"), [(297, True), (300, False), (303, False)])
def test_ratio_is_published_from_300_watts(watts: float, loose: bool) -> None:
    small = supply({"plugs": [{"connector": "pcie-8"}, {"connector": "pcie-8"}], "awg": 16}, rated_watts=500)
    assert told(judged(small, card(watts, "pcie-8", 2)), "PWR406") == loose


@pytest.mark.parametrize(("microseconds", "ratio"), [
    (99, 3.0), (100, 3.0), (101, 2.9981), (990_000, 1.0028), (1_000_000, 1.0), (1_010_000, 1.0),
])
def test_ratio_ends_where_the_table_does(microseconds: float, ratio: float) -> None:
    assert card_ratio(microseconds) == pytest.approx(ratio, abs=0.00005)


@pytest.mark.parametrize(("microseconds", "large", "watts"), [
    (100, False, 1500), (1000, False, 1450), (10_000, False, 1350), (100_000, False, 1100), (100_001, False, 1000),
    (100, True, 2000), (1000, True, 1800), (10_000, True, 1600), (100_000, True, 1200), (100_001, True, 1000),
])
def test_columns_as_printed(microseconds: float, large: bool, watts: float) -> None:
    assert supply_envelope_watts(1000, microseconds, large=large) == pytest.approx(watts)


@pytest.mark.parametrize(("volts", "amps", "missing"), [
    (127.0, 14.9, []), (128.3, 10.1, ["inlet"]), (127.0, 15.1, ["inlet"]), (128.3, 9.9, []),
])
def test_low_range_of_mains_ends_at_127_volts(volts: float, amps: float, missing: list[str]) -> None:
    given = case(wall=wall(amps=amps, mains_volts=volts, inlet_amps=None))
    assert [field for field, _ in outcome("PWR602", given)] == missing


@pytest.mark.parametrize(("watts", "large"), [(445.5, False), (450, False), (454.5, True)])
def test_large_column_is_for_more_than_450_watts(watts: float, large: bool) -> None:
    assert is_large(watts, has_16_pin=True) == large
    assert not is_large(watts, has_16_pin=False)


@pytest.mark.parametrize(("design", "watts"), [("atx-2", 1500), ("atx-3.0", 2000), ("atx-3.1", 2000)])
def test_16_pin_plug_of_an_old_design_brings_no_large_column(design: str, watts: float) -> None:
    """A card of 505 W leaps by 1010 W: 1500 W and more, or not, of what the board is given to draw."""
    box = supply({"plugs": [{"connector": "12v-2x6"}], "awg": 16}, design=design)
    board = BOARD | {"own_amps": {"12v": 0, "5v": 0, "3v3": 0, "5vsb": 0}}
    steady = {"category": "processor", "plug_watts": 1}
    for more in (-1, 1):
        parts = [box, board, steady, card((watts - 1 + more) / 3, "12v-2x6", 1)]
        assert told(ask({"parts": [{"spec": spec} for spec in parts]}), "PWR402") == (more > 0 and design == "atx-2")


def test_600_watts_through_sound_16_pin_wires_are_within_all_limits() -> None:
    assert not spoken(plug("12v-2x6")(600)) & {"CON102", "CON104", "CON105", "CON106"}


def test_peripheral_plug_is_planned_with_8_amps() -> None:
    on_12v = joint("peripheral-4", "peripheral-4", 0)[0]
    assert (on_12v.limits.stop, on_12v.limits.comfort) == (11_000, 8_000)


@pytest.mark.parametrize(("leds", "over"), [(49, False), (50, False), (51, True)])
def test_lights_take_60_milliamps_each_at_the_worst(leds: int, over: bool) -> None:
    board = BOARD | {"offers": [{"connector": "argb-3", "count": 1, "max_amps": 3}]}
    light = {"category": "lighting", "volts": 5, "leds": leds, "needs": [{"connector": "argb-3"}]}
    answer = ask({"parts": [{"spec": supply()}, {"spec": board}, {"spec": light}]})
    assert told(answer, "AUX102") == over


def test_power_factor_that_is_not_given_may_be_as_low_as_the_levels_ask() -> None:
    site = {"mains_volts": 230, "ups": {"watts": 900, "volt_amperes": 1000}}
    wall_side = judged(supply(), site=site)["power"]["wall"]
    assert wall_side["volt_amperes"] == pytest.approx(wall_side["watts"] / 0.90, rel=0.002)


@pytest.mark.parametrize("percent", PERCENT)
def test_drive_plug_at_a_card_counts_as_a_6_pin_plug(percent: int) -> None:
    box = supply({"plugs": [{"connector": "peripheral-4"}], "awg": 16}, {"plugs": [{"connector": "pcie-8"}], "awg": 16})
    needs = [{"connector": "peripheral-4"}, {"connector": "pcie-8"}]
    watts = 25 + (75 + 150) * percent / 100
    answer = judged(box, {"category": "graphics_card", "board_watts": watts, "slot_watts": 25, "needs": needs})
    assert told(answer, "CON102") == (percent > 100)


STATED: Json = {"room_celsius": 20, "mains_volts": 230}
POINTS = [{"load_percent": 1, "percent": 80}]


def at_wall(amps: float, **site: Any) -> Json:
    """Return a build that takes so many amps from 230 V, at 80 % and a power factor of 1."""
    watts = amps * 230 * 0.8
    rest = 12 * 1.2 + 5 * 1.5 + 3.3 * 2.0 + 5 * 0.8 + 90
    power = supply(rated_watts=5000, rails={"12v": {"max_amps": 400}}, efficiency_points=POINTS, power_factor=1,
                   inlet="c20")
    return judged(power, card(watts - rest, "pcie-8", 2), site=STATED | site)


@pytest.mark.parametrize("percent", PERCENT)
def test_standby_is_that_of_the_supply(percent: int) -> None:
    board = BOARD | {"own_amps": {"12v": 1.2, "5v": 1.5, "3v3": 2.0, "5vsb": 3 * percent / 100}}
    assert told(ask({"parts": [{"spec": supply()}, {"spec": board}]}), "PWR205") == (percent > 100)


@pytest.mark.parametrize(("degrees", "left"), [(-5, 1000), (0, 1000), (4, 900), (8, 800), (40, 0), (50, 0)])
def test_each_degree_above_the_rating_costs_a_fortieth(degrees: int, left: float) -> None:
    answer = judged(supply(rated_at_celsius=30), site={"room_celsius": 30 + degrees})
    assert answer["power"]["promises"]["room_watts"] == pytest.approx(left)
    assert told(answer, "PWR502") == (left < answer["power"]["sustained_watts"])


@pytest.mark.parametrize("percent", [99.9, 100.1])
def test_what_the_warmth_leaves_is_compared_with_the_load(percent: float) -> None:
    watts = 900 * percent / 100 - (12 * 1.2 + 5 * 1.5 + 3.3 * 2.0 + 5 * 0.8 + 90)
    hot = judged(supply(rated_at_celsius=30), card(watts, "pcie-8", 3), site={"room_celsius": 34})
    assert told(hot, "PWR502") == (percent > 100)


@pytest.mark.parametrize("percent", [99.9, 100.1])
@pytest.mark.parametrize("fuse", [3, 5, 13])
def test_fuse_of_the_plug(fuse: float, percent: float) -> None:
    answer = at_wall(fuse * percent / 100, plug_fuse_amps=fuse)
    assert answer["power"]["wall"]["amps"] == pytest.approx(fuse * percent / 100, abs=0.01)
    assert told(answer, "PWR605") == (percent > 100)


@pytest.mark.parametrize(("code", "amps", "over"), [("bs", 4.9, False), ("bs", 5.1, True), ("iec", 5.1, False)])
def test_fuse_that_is_not_given_is_of_5_amps_at_the_worst(code: str, amps: float, over: bool) -> None:
    answer = at_wall(amps, code=code)
    assert told(answer, "PWR605") == over
    fuses = [one for one in answer["assumptions"] if one["where"] == "/site/plug_fuse_amps"]
    assert [(one["low"], one["high"]) for one in fuses] == ([(5, 13)] if code == "bs" else [])


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("design", "milliseconds"), [("atx-2", 17), ("atx-3.0", 17), ("atx-3.1", 12), ("atx12vo", 12)])
def test_ups_changes_over_within_the_hold_up_of_the_design(design: str, milliseconds: float, percent: int) -> None:
    backed = {"watts": 5000, "volt_amperes": 5000, "transfer_milliseconds": milliseconds * percent / 100}
    answer = judged(supply(design=design), site={"ups": backed})
    assert answer["power"]["promises"]["hold_up"]["milliseconds"] == milliseconds
    assert told(answer, "PWR606") == (percent > 100)


def test_longer_hold_up_is_recommended_at_four_fifths_of_the_load() -> None:
    shown = judged(supply())["power"]["promises"]["hold_up"]
    assert (shown["recommended_milliseconds"], shown["recommended_at_percent"]) == (17, 80)


@pytest.mark.parametrize(("rail", "amps"), [("12v", 1.0), ("5v", 0.3), ("3v3", 0.5)])
@pytest.mark.parametrize("percent", PERCENT)
def test_least_load_of_an_old_design(rail: str, amps: float, percent: int) -> None:
    board = BOARD | {"own_amps": {"12v": 5, "5v": 5, "3v3": 5, "5vsb": 0.5} | {rail: amps * percent / 100}}
    asked = [ask({"parts": [{"spec": supply(design=design)}, {"spec": board}]}) for design in ("atx-2", "atx-3.0")]
    assert [told(answer, "PWR702") for answer in asked] == [percent < 100, False]


@pytest.mark.parametrize(("level", "factor"), [("gold", 0.90), ("platinum", 0.95), ("titanium", 0.95)])
def test_power_factor_goes_with_the_level(level: str, factor: float) -> None:
    wall_side = judged(supply(efficiency_level=level))["power"]["wall"]
    assert wall_side["power_factor"] == factor


def drawing(power: Json, watts: float) -> Json:
    """Return the power side of a build that draws so many watts, all of them from 12 V."""
    board = BOARD | {"own_amps": {"12v": watts / 12, "5v": 0, "3v3": 0, "5vsb": 0}}
    found: Json = ask({"parts": [{"spec": power}, {"spec": board}], "site": {"mains_volts": 115}})["power"]
    return found


@pytest.mark.parametrize(("rated_watts", "watts", "percent"), [
    (400, 10, 60), (480, 10, 60), (500, 9, 60), (500, 10, 60), (520, 10.4, 60), (600, 12, 60),
    (1000, 20, 60), (1000, 110, 73.5), (1000, 200, 87), (1000, 350, 88.5),
])
def test_low_load_has_a_point_of_its_own(rated_watts: float, watts: float, percent: float) -> None:
    """Gold: from 60 % at 10 W or 2 % up to 87 % at a fifth, on a straight line; older designs have no such point."""
    new, old = (drawing(supply(rated_watts=rated_watts, design=design), watts) for design in ("atx-3.0", "atx-2"))
    assert new["wall"]["efficiency_percent"] == pytest.approx(percent, abs=0.01)
    assert old["wall"]["efficiency_percent"] == max(87, percent)
    assert old["promises"]["low_load"] is None
    at = 10 if rated_watts <= 500 else 0.02 * rated_watts
    assert new["promises"]["low_load"] == {"watts": pytest.approx(at), "least_percent": 60, "recommended_percent": 70}


@pytest.mark.parametrize(("watts", "percent"), [(40, 60), (200, 60), (350, 65), (500, 70), (1000, 70)])
def test_efficiency_that_is_not_known_is_at_least_what_the_guide_asks(watts: float, percent: float) -> None:
    plain = {key: value for key, value in supply().items() if key != "efficiency_level"}
    shown = drawing(plain, watts)["wall"]
    assert (shown["efficiency_percent"], shown["efficiency_basis"]) == (pytest.approx(percent, abs=0.01), "assumed")


def test_energy_is_of_an_hour_and_of_a_year_where_the_hours_are_given() -> None:
    answers = [at_wall(2), ask_hours(8), ask_hours(24)]
    walls = [answer["power"]["wall"] for answer in answers]
    assert [one["kilowatt_hours_an_hour"] for one in walls] == [pytest.approx(0.46, abs=0.001)] * 3
    assert [one["kilowatt_hours_a_year"] for one in walls] == [None, 1343, 4030]
    assert walls[0]["heat_btu_per_hour"] == pytest.approx(460 * 3.41214, abs=1)


def ask_hours(hours: float) -> Json:
    """Return the answer to a build of 460 W at the wall that runs so many hours a day."""
    watts = 460 * 0.8 - (12 * 1.2 + 5 * 1.5 + 3.3 * 2.0 + 5 * 0.8 + 90)
    power = supply(efficiency_points=POINTS, power_factor=1)
    return judged(power, card(watts, "pcie-8", 2), site=STATED, use={"hours_a_day": hours})


@pytest.mark.parametrize(("volts", "code", "rule", "least", "most"), [
    (120, None, True, 12.5, 12), (230, None, False, 10, 15), (230, "nec", True, 12.5, 12), (120, "iec", False, 10, 15),
])
def test_four_fifths_of_a_circuit_is_a_rule_of_nec(
    volts: float, code: str | None, rule: bool, least: float, most: float
) -> None:
    watts = 10 * volts * 0.8 - (12 * 1.2 + 5 * 1.5 + 3.3 * 2.0 + 5 * 0.8 + 90)
    power = supply(rated_watts=5000, rails={"12v": {"max_amps": 400}}, efficiency_points=POINTS, power_factor=1)
    site = {"mains_volts": volts, "circuit_amps": 15} | ({"code": code} if code else {})
    shown = judged(power, card(watts, "pcie-8", 2), site=site)["power"]["wall"]
    assert (shown["continuous_rule"], shown["circuit_most_amps"]) == (rule, pytest.approx(most))
    assert shown["least_circuit_amps"] == pytest.approx(least, abs=0.02)
