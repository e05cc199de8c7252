"""How long a supply holds its outputs up: T5, mains gone to power good low, and T6, from there to outputs gone."""

import pytest

from tests.published.printed import Printed, asked, card, supply

DOCUMENT = "Intel, 336521 rev. 2.0 and 2.1a, and 613768, timing tables"
T_3_0, T_3_1, T_12VO = "rev. 2.0, Table 4-9, p. 37, T5 + T6", "rev. 2.1a, Table 4-10, T5 + T6", "Table 4-9, T5 + T6"


# T5 and T6 as printed: 16 and 1 ms; 11 and 1 ms; 11 and 1 ms.
@pytest.mark.parametrize(("design", "printed"), [
    ("atx-3.0", Printed("17", T_3_0, "arithmetic")), ("atx-3.1", Printed("12", T_3_1, "arithmetic")),
    ("atx12vo", Printed("12", T_12VO, "arithmetic")),
])
def test_hold_up_at_full_load(design: str, printed: Printed) -> None:
    answer = asked(supply(design=design), card(300))
    assert answer["power"]["promises"]["hold_up"]["milliseconds"] == printed.exact


@pytest.mark.parametrize(("field", "printed"), [
    ("recommended_milliseconds", Printed("17", f"{T_3_1}, 16 and 1 ms recommended", "arithmetic")),
    ("recommended_at_percent", Printed("80", "rev. 2.1a, Table 4-10", "primary")),
])
def test_hold_up_that_is_recommended(field: str, printed: Printed) -> None:
    answer = asked(supply(design="atx-3.1"), card(300))
    assert answer["power"]["promises"]["hold_up"][field] == printed.exact
