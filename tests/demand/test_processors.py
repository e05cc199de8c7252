"""Processors of which only base watts are said, or a class that the guide does not list."""

import pytest

from service.demand.ends import Ends
from service.demand.processors import processor
from service.facts.processor import CLASS_AMPS
from service.parts.figures import exactly
from service.parts.records import Processor


@pytest.mark.parametrize("class_watts", [165, 125, 65, 35])
def test_leaving_the_class_out_does_not_make_a_processor_lighter(class_watts: int) -> None:
    named = processor(0, Processor(class_watts=class_watts), Ends("unfavourable"))
    guessed = processor(0, Processor(base_watts=exactly(class_watts)), Ends("unfavourable"))
    assert guessed.sustained >= named.sustained
    assert guessed.peak >= named.peak


def test_no_other_class_is_listed() -> None:
    assert set(CLASS_AMPS) == {165, 125, 65, 35}


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
