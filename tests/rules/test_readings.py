"""Rules on readings: past the limit, within, exactly on it."""

from typing import Any

import pytest

from service.case.case import Case, ReadingLoad
from service.case.place import Place
from tests.rules.cases import case, outcome

RAIL = Place("rail", 0, ("12v",))
PORT = Place("port", 0, ("pcie-8", 0, "12v"))


def read(at: Place = RAIL, **given: Any) -> Case:
    """Return a case of a reading of 12 V that may have 11.4 to 12.6 V, but for what is given."""
    nothing: dict[str, Any] = {
        "at": at, "rail": "12v", "volts": None, "lowest_volts": 11.4, "highest_volts": 12.6, "amps": None,
        "least_amps": None, "most_amps": None,
    }
    return case(readings=(ReadingLoad(**(nothing | given)),))


BREAKS = [
    ("RDG101", read(volts=11.399), RAIL),
    ("RDG101", read(volts=12.601), RAIL),
    ("RDG102", read(PORT, volts=11.399), PORT),
    ("RDG102", read(PORT, volts=12.601), PORT),
    ("RDG103", read(PORT, amps=10.21, most_amps=10.0), PORT),
    ("RDG104", read(PORT, amps=9.79, least_amps=10.0), PORT),
]
SILENT = [
    pytest.param("RDG101", read(volts=11.4), id="RDG101 on the low limit"),
    pytest.param("RDG101", read(volts=12.6), id="RDG101 on the high limit"),
    pytest.param("RDG101", read(PORT, volts=9.0), id="RDG101 leaves ports to RDG102"),
    pytest.param("RDG101", read(amps=9.0), id="RDG101 no volts"),
    pytest.param("RDG102", read(PORT, volts=11.4), id="RDG102 on the low limit"),
    pytest.param("RDG102", read(PORT, volts=12.6), id="RDG102 on the high limit"),
    pytest.param("RDG102", read(volts=9.0), id="RDG102 leaves the supply to RDG101"),
    pytest.param("RDG103", read(PORT, amps=10.19, most_amps=10.0), id="RDG103 within what a meter may be off"),
    pytest.param("RDG103", read(PORT, amps=99.0), id="RDG103 nothing to compare with"),
    pytest.param("RDG103", read(PORT, volts=12.0, most_amps=0.0), id="RDG103 no amps"),
    pytest.param("RDG104", read(PORT, amps=9.81, least_amps=10.0), id="RDG104 within what a meter may be off"),
    pytest.param("RDG104", read(PORT, amps=0.0), id="RDG104 nothing to compare with"),
    pytest.param("RDG104", read(PORT, volts=12.0, least_amps=9.0), id="RDG104 no amps"),
]

def _ids(table: list[tuple[Any, ...]]) -> list[str]:
    return [f"{row[0]}-{number}" for number, row in enumerate(table)]


@pytest.mark.parametrize(("rule", "given", "at"), BREAKS, ids=_ids([*BREAKS]))
def test_past_the_limit(rule: str, given: Case, at: Place) -> None:
    assert outcome(rule, given) == [("breaks", at)]


@pytest.mark.parametrize(("rule", "given"), SILENT)
def test_within_the_limit(rule: str, given: Case) -> None:
    assert outcome(rule, given) == []
