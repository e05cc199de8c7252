"""Amps and watts of a SATA power plug: 1.5 A a pin, three pins a rail."""

import pytest

from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint
from tests.published.printed import Printed, asked, card, disk, limits, supply

DOCUMENT = "SATA specification, power segment, as reported by an implementer"
PINS = "1.5 A a pin, three pins a rail"


@pytest.mark.parametrize(("rail", "printed"), [
    ("12v", Printed("4.5", f"{PINS}, 12 V", "secondary")), ("5v", Printed("4.5", f"{PINS}, 5 V", "secondary")),
])
@pytest.mark.parametrize("moment", ["running_amps", "starting_amps"])
def test_amps_of_a_rail(rail: str, printed: Printed, moment: str) -> None:
    answer = asked(supply("sata-power"), disk(printed.exact * 1.01, moment=moment, rail=rail))
    assert limits(answer, "CON107") == {(printed.exact, "A")}


@pytest.mark.parametrize(("rail", "volts", "printed"), [
    (0, 12, Printed("54.0", f"{PINS}, at 12 V", "arithmetic")),
    (1, 5, Printed("22.5", f"{PINS}, at 5 V", "arithmetic")),
    (2, 3.3, Printed("14.85", f"{PINS}, at 3.3 V", "arithmetic")),
])
def test_most_watts_of_a_plug_by_rail(rail: int, volts: float, printed: Printed) -> None:
    (stop,) = [each.limits.stop for each in joint("sata-power", "sata-power", 0) if each.rail == rail]
    assert watts_of_contacts(stop / 1000, volts, 1) == printed.rounded


@pytest.mark.parametrize("printed", [Printed("54", f"{PINS}, at 12 V: what a riser may take", "arithmetic")], ids=str)
def test_watts_of_a_riser(printed: Printed) -> None:
    riser = {"category": "riser", "feeds_slot_watts": 75, "needs": [{"connector": "sata-power"}]}
    wiring = [{
        "part": "/parts/1", "port": {"connector": "sata-power"}, "plugs": [{"cable": "/parts/0/cables/0", "plug": 1}],
    }]
    answer = asked(supply("sata-power"), riser, card(60, slot_watts=60), wiring=wiring)
    assert limits(answer, "CON121") == {(printed.exact, "W")}
