"""What a card may take through its slot."""

import pytest

from service.physics.contacts import watts_of_contacts
from tests.published.printed import Printed, asked, board, card, limits, supply

DOCUMENT = "PCI-SIG, PCI Express Card Electromechanical Specification 1.1, as cited by an encyclopedia"
PAGES = "pp. 35-36, x16 graphics"


@pytest.mark.parametrize("printed", [Printed("75", f"{PAGES}, both rails together, once configured", "secondary")],
                         ids=str)
def test_watts_of_a_slot(printed: Printed) -> None:
    answer = asked(supply("atx-24", "cpu-8"), board(), card(printed.exact * 1.01, slot_watts=printed.exact * 1.01))
    assert limits(answer, "PWR302") == {(printed.exact, "W")}


@pytest.mark.parametrize(("field", "printed"), [
    ("amps", Printed("5.5", f"{PAGES}, 12 V", "secondary")), ("watts", Printed("66", "5.5 A at 12 V", "arithmetic")),
])
def test_12_volts_of_a_slot(field: str, printed: Printed) -> None:
    """A card that takes 75 W through its slot takes all that the slot gives on 12 V, and the rest from 3.3 V."""
    amps = asked(supply(), card(75))["power"]["rails"]["12v"]["sustained_amps"]
    assert {"amps": amps, "watts": watts_of_contacts(amps, 12, 1)}[field] == printed.exact


@pytest.mark.parametrize("printed", [Printed("3.0", f"{PAGES}, 3.3 V in any slot", "secondary")], ids=str)
def test_a_slot_is_never_asked_for_more_on_3_3_volts(printed: Printed) -> None:
    """9 W of the 9.9 W: the two rails would make 75.9 W, and the slot gives 75 W in all."""
    amps = asked(supply(), card(75))["power"]["rails"]["3v3"]["sustained_amps"]
    assert 0.9 * printed.exact < amps < printed.exact
