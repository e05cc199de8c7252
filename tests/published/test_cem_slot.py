"""PCI-SIG, CEM 1.1, pp. 35-36, as cited by an encyclopedia: a x16 graphics slot, 5.5 A on 12 V, 3 A on 3.3 V, 75 W."""

import pytest

from service.demand.cards import card, slot_current
from service.demand.ends import Ends
from service.facts.slot import SLOT_3V3_AMPS, SLOT_3V3_WATTS, SLOT_12V_AMPS, SLOT_12V_WATTS, SLOT_WATTS
from service.parts.figures import exactly
from service.parts.records import GraphicsCard, Need
from service.physics.contacts import watts_of_contacts


# 66 W from 12 V and 9.9 W from 3.3 V are 75.9 W, of which 75 W may be taken.
def test_watts_of_the_rails() -> None:
    on_12v, on_3v3 = watts_of_contacts(SLOT_12V_AMPS.value, 12, 1), watts_of_contacts(SLOT_3V3_AMPS.value, 3.3, 1)
    assert (on_12v, on_3v3) == pytest.approx((66, 9.9), abs=0.05)
    assert (SLOT_12V_WATTS.value, SLOT_3V3_WATTS.value) == pytest.approx((66, 9.9), abs=0.05)
    assert on_12v + on_3v3 == pytest.approx(75.9, abs=0.05)
    assert SLOT_WATTS.value == 75


def test_a_card_takes_no_more_than_75_watts_from_its_slot_by_assumption() -> None:
    part = GraphicsCard(board_watts=exactly(150), needs=(Need(connector="pcie-8"),))
    assert card(0, part, 100, Ends("unfavourable")).slot_watts == 75


def test_a_card_without_plugs_takes_66_watts_of_75_from_12_volts() -> None:
    draw = card(0, GraphicsCard(board_watts=exactly(75)), 100, Ends("unfavourable"))
    assert draw.slot_3v3_watts == pytest.approx(9)
    assert slot_current(draw.slot_watts, draw.slot_3v3_watts) == (5500, 0, 2727)
