"""Intel, ATX Version 3.0 Design Guide, 336521, rev. 2.0, section 2.1, Table 2-1, p. 17: 12 V amps of processors."""

import pytest

from service.demand.ends import Ends
from service.demand.processors import processor
from service.facts.processor import BUDGET_VOLTS, CLASS_AMPS
from service.parts.figures import End, exactly
from service.parts.records import Processor
from service.physics.contacts import watts_of_contacts

# class [W], continuous [A], peak of up to 10 ms [A]
PRINTED = [(165, 37.5, 40), (125, 26, 39), (65, 23, 34), (35, 11, 19)]
by_class = pytest.mark.parametrize(("class_watts", "continuous", "peak"), PRINTED)


@by_class
@pytest.mark.parametrize("end", ["favourable", "unfavourable"])
def test_amps_of_a_class(class_watts: int, continuous: float, peak: float, end: End) -> None:
    draw = processor(0, Processor(class_watts=class_watts), Ends(end))
    assert (draw.sustained, draw.peak) == (continuous * 1000, peak * 1000)


def test_no_class_beside_the_printed_ones() -> None:
    assert set(CLASS_AMPS) == {class_watts for class_watts, _, _ in PRINTED}


@by_class
def test_leaving_the_class_out_does_not_make_a_processor_lighter(
    class_watts: int, continuous: float, peak: float,
) -> None:
    draw = processor(0, Processor(base_watts=exactly(class_watts)), Ends("unfavourable"))
    assert draw.sustained >= continuous * 1000
    assert draw.peak >= peak * 1000


# Between two classes the next one counts; above 165 W its ratio, 170 / 165 of 37.5 A.
@pytest.mark.parametrize(("base_watts", "amps"), [(36, 23), (65, 23), (66, 26), (126, 37.5), (170, 38.636)])
def test_most_of_base_watts_alone(base_watts: float, amps: float) -> None:
    draw = processor(0, Processor(base_watts=exactly(base_watts)), Ends("unfavourable"))
    assert draw.sustained == amps * 1000


def test_least_of_base_watts_alone_is_the_base_through_a_good_regulator() -> None:
    ends = Ends("favourable")
    draw = processor(0, Processor(base_watts=exactly(92)), ends)
    assert draw.sustained == 8333
    assert [(each.field, each.low, each.key) for each in ends.assumed] == [
        ("plug_watts", 100, "assumed.processor.plug"), ("peaks", 1.0, "assumed.processor.peak"),
    ]


def test_unlisted_class_is_taken_as_base_watts() -> None:
    by_class, by_base = Processor(class_watts=95), Processor(base_watts=exactly(95))
    assert processor(0, by_class, Ends("unfavourable")) == processor(0, by_base, Ends("unfavourable"))


# 336521, section 3.1.1, p. 23: 26 A at 11.2 V are 291.2 W; the guide itself goes on with 300 W.
def test_watts_at_the_budget_volts() -> None:
    continuous, _ = CLASS_AMPS[125]
    assert watts_of_contacts(continuous, BUDGET_VOLTS.value, 1) == pytest.approx(291.2, abs=0.05)
