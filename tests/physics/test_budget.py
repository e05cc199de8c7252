"""The 12 V sum of the design guides: more of anything is more."""

from hypothesis import given
from hypothesis import strategies as st

from service.physics.budget import twelve_volt_amps

amps = st.floats(0.1, 60)


@given(processor=amps, watts=st.floats(0, 600), rest=amps, more=st.floats(0.1, 100))
def test_more_of_anything_is_more_on_12_volts(processor: float, watts: float, rest: float, more: float) -> None:
    base = twelve_volt_amps(processor, watts, rest)
    assert twelve_volt_amps(processor + more, watts, rest) > base
    assert twelve_volt_amps(processor, watts + more, rest) > base
    assert twelve_volt_amps(processor, watts, rest + more) > base
