"""Design guide of ATX 3.x: processors, peaks of cards, plugs and contacts."""

import pytest

from service.physics.contacts import amps_per_contact, watts_of_contacts
from service.physics.excursion import card_ratio
from service.physics.warmth import rated_point
from service.wiring.allowances import joint
from tests.published.printed import Printed, asked, board, card, limits, moments, printed_for, supply

DOCUMENT = (
    "Intel, ATX Version 3.x Multi Rail Desktop Platform Power Supply Design Guide, 336521, rev. 2.0 to 2.1a"
)
CLASSES, AMPS = "rev. 2.0, section 2.1, Table 2-1, p. 17", "rev. 2.0, Table 3-5"
RATIO = "rev. 2.1, section 3.1, Table 3-1, after the CEM 5.x change notice on power excursion of 300 to 600 W cards"
SENSE = "rev. 2.1a, SENSE0 and SENSE1"
FOUR = "Table 3-1: 4 - 0.2171 ln(T in us), to four digits"


@pytest.mark.parametrize(("class_watts", "printed"), [
    (165, Printed("37.5", CLASSES, "primary")), (125, Printed("26", CLASSES, "primary")),
    (65, Printed("23", CLASSES, "primary")), (35, Printed("11", CLASSES, "primary")),
])
def test_continuous_amps_of_a_class(class_watts: int, printed: Printed) -> None:
    answer = asked(supply(), {"category": "processor", "class_watts": class_watts})
    assert answer["power"]["rails"]["12v"]["sustained_amps"] == printed.exact


@pytest.mark.parametrize(("class_watts", "printed"), [
    (165, Printed("40", CLASSES, "primary")), (125, Printed("39", CLASSES, "primary")),
    (65, Printed("34", CLASSES, "primary")), (35, Printed("19", CLASSES, "primary")),
])
def test_peak_amps_of_a_class_to_10_milliseconds(class_watts: int, printed: Printed) -> None:
    found = moments(asked(supply(), {"category": "processor", "class_watts": class_watts}), "watts")
    assert [found[at] for at in (100, 1_000, 10_000)] == [printed.exact * 12] * 3
    assert found[100_000] < printed.exact * 12


@pytest.mark.parametrize(("class_watts", "printed"), [
    (165, Printed("420.0", "p. 23: amps of Table 2-1 at 11.2 V", "arithmetic")),
    (125, Printed("291.2", "p. 23: amps of Table 2-1 at 11.2 V", "arithmetic")),
    (65, Printed("257.6", "p. 23: amps of Table 2-1 at 11.2 V", "arithmetic")),
    (35, Printed("123.2", "p. 23: amps of Table 2-1 at 11.2 V", "arithmetic")),
])
def test_watts_of_a_class_at_the_budget_volts(class_watts: int, printed: Printed) -> None:
    answer = asked(supply(), {"category": "processor", "class_watts": class_watts})
    amps = answer["power"]["rails"]["12v"]["sustained_amps"]
    assert watts_of_contacts(amps, 11.2, 1) == printed.rounded


@pytest.mark.parametrize(("microseconds", "printed"), [
    (1, Printed("3", RATIO, "secondary")), (100, Printed("3", RATIO, "secondary")),
    (1_000_000, Printed("1", RATIO, "secondary")), (60_000_000, Printed("1", RATIO, "secondary")),
])
def test_ends_of_the_ratio_are_taken_as_printed(microseconds: float, printed: Printed) -> None:
    assert card_ratio(microseconds) == printed.exact


@pytest.mark.parametrize(("microseconds", "printed"), [
    (200, Printed("2.8497", FOUR, "arithmetic")), (500, Printed("2.6508", FOUR, "arithmetic")),
    (1_000, Printed("2.5003", FOUR, "arithmetic")), (2_000, Printed("2.3498", FOUR, "arithmetic")),
    (5_000, Printed("2.1509", FOUR, "arithmetic")), (10_000, Printed("2.0004", FOUR, "arithmetic")),
    (20_000, Printed("1.8500", FOUR, "arithmetic")), (50_000, Printed("1.6510", FOUR, "arithmetic")),
    (100_000, Printed("1.5005", FOUR, "arithmetic")), (200_000, Printed("1.3501", FOUR, "arithmetic")),
    (500_000, Printed("1.1511", FOUR, "arithmetic")),
])
def test_ratio_by_the_formula(microseconds: float, printed: Printed) -> None:
    assert card_ratio(microseconds) == printed.rounded


@pytest.mark.parametrize(("watts", "printed"), [
    (600, Printed("1800", "Table 3-1, and the technical press", "secondary")),
    (450, Printed("1350", "Table 3-1, and the technical press", "secondary")),
])
def test_card_for_100_microseconds(watts: float, printed: Printed) -> None:
    assert moments(asked(supply("12v-2x6"), card(watts, "12v-2x6")), "watts")[100] == printed.rounded


@pytest.mark.parametrize(("plug", "printed"), [
    ("pcie-6", Printed("75", AMPS, "mirror")), ("pcie-8", Printed("150", AMPS, "mirror")),
    ("12vhpwr", Printed("600", AMPS, "mirror")), ("12v-2x6", Printed("600", AMPS, "mirror")),
])
def test_watts_of_a_plug(plug: str, printed: Printed) -> None:
    answer = asked(supply(plug), card(printed.exact * 1.01, plug))
    assert limits(answer, "CON102") == {(printed.exact, "W")}


@pytest.mark.parametrize(("plug", "printed"), [
    ("pcie-6", Printed("6.75", f"{AMPS}, RMS over a second", "mirror")),
    ("pcie-8", Printed("13.5", f"{AMPS}, RMS over a second", "mirror")),
    ("12v-2x6", Printed("55", f"{AMPS}, RMS over a second", "mirror")),
])
def test_amps_of_a_plug_at_its_watts_keep_within_the_printed_ones(plug: str, printed: Printed) -> None:
    """The wiring allows watts at nominal volts; the amps that follow are never above those of the table."""
    stops = {each.cause: each.limits.stop for each in joint(plug, plug, 0)}
    assert 0.9 * printed.exact < stops["plug"] / 1000 < printed.exact


@pytest.mark.parametrize(("plug", "printed"), [
    ("pcie-6", Printed("3", "rev. 2.1a, Table 5-4", "primary")),
    ("pcie-8", Printed("3", "rev. 2.0, Table 5-5, p. 52", "mirror")),
    ("12v-2x6", Printed("6", "rev. 2.0, section 5.2.2.4.3, p. 52", "mirror")),
    ("cpu-4", Printed("2", "rev. 2.0, section 5.2.2.5, Table 5-8, p. 55", "mirror")),
])
def test_12_volt_contacts_of_a_plug(plug: str, printed: Printed) -> None:
    assert {each.contacts for each in joint(plug, plug, 0) if each.cause == "contact"} == {printed.exact}


@pytest.mark.parametrize(("rule", "printed"), [
    ("CON105", Printed("6", "rev. 2.0, section 2.2.1, p. 18, low end of the load of a pin", "mirror")),
    ("CON104", Printed("8", "rev. 2.0, section 2.2.1, p. 18, high end of the load of a pin", "mirror")),
])
def test_amps_of_a_processor_contact(rule: str, printed: Printed) -> None:
    box = supply("atx-24", "cpu-8")
    processor = {"category": "processor", "plug_watts": printed.exact * 1.01 * 4 * 12}
    assert limits(asked(box, board(), processor), rule) == {(printed.exact, "A")}


@pytest.mark.parametrize("printed", [Printed("9.2", "rev. 2.0, section 5.2.2.4.3, pp. 52 and 55", "mirror")], ids=str)
def test_amps_of_a_16_pin_contact(printed: Printed) -> None:
    box = printed_for(600, supply("12v-2x6"))
    assert limits(asked(box, card(9.3 * 6 * 12, "12v-2x6")), "CON106") == {(printed.exact, "A")}
    assert rated_point("16-pin", 12) == (printed.exact, 30)


@pytest.mark.parametrize("printed", [
    Printed("450", SENSE, "primary"), Printed("300", SENSE, "primary"), Printed("150", SENSE, "primary"),
], ids=str)
def test_level_of_a_16_pin_cable(printed: Printed) -> None:
    answer = asked(printed_for(printed.exact, supply("12v-2x6")), card(printed.exact * 1.01, "12v-2x6"))
    assert limits(answer, "CON103") == {(printed.exact, "W")}


@pytest.mark.parametrize("printed", [Printed("75", "rev. 2.0, Table 5-6, p. 52, SENSE1 open", "mirror")], ids=str)
def test_6_pin_plug_in_an_8_pin_port(printed: Printed) -> None:
    wiring = [{
        "part": "/parts/1", "port": {"connector": "pcie-8"}, "plugs": [{"cable": "/parts/0/cables/0", "plug": 1}],
    }]
    answer = asked(supply("pcie-6"), card(printed.exact * 1.01, "pcie-8"), wiring=wiring)
    assert limits(answer, "CON112") == {(printed.exact, "W")}


@pytest.mark.parametrize(("plug", "volts", "printed"), [
    ("12v-2x6", 12.0, Printed("8.333", "600 W of Table 3-5 over six contacts", "arithmetic")),
    ("12v-2x6", 11.04, Printed("9.058", "the same at 12 V less 8 %, section 3.2", "arithmetic")),
    ("pcie-8", 12.0, Printed("4.167", "150 W of Table 3-5 over three contacts", "arithmetic")),
])
def test_amps_of_a_contact_at_the_watts_of_its_plug(plug: str, volts: float, printed: Printed) -> None:
    stops = {each.cause: each for each in joint(plug, plug, 0)}
    watts = stops["plug"].limits.stop / 1000 * 12
    assert amps_per_contact(watts, volts, stops["contact"].contacts) == printed.rounded


@pytest.mark.parametrize(("plug", "printed"), [
    ("12v-2x6", Printed("54.35", "600 W at 11.04 V, under the 55 A of Table 3-5", "arithmetic")),
    ("pcie-8", Printed("13.587", "150 W at 11.04 V: watts pass, the 13.5 A of Table 3-5 fail", "arithmetic")),
])
def test_amps_of_a_plug_at_the_lowest_volts(plug: str, printed: Printed) -> None:
    stops = {each.cause: each.limits.stop for each in joint(plug, plug, 0)}
    assert amps_per_contact(stops["plug"] / 1000 * 12, 11.04, 1) == printed.rounded


@pytest.mark.parametrize("printed", [Printed("662.4", "six contacts of 9.2 A at 12 V", "arithmetic")], ids=str)
def test_watts_of_six_contacts(printed: Printed) -> None:
    """A connector maker's 9.5 A would make 684 W (specification GS-12-1706, as quoted); the guide's figure is used."""
    stops = {each.cause: each.limits.stop for each in joint("12v-2x6", "12v-2x6", 0)}
    assert watts_of_contacts(stops["contact"] / 1000, 12, 1) == printed.rounded
