"""Rules on single runs and leads of lights: past the limit, within, exactly on it, figure missing."""

from typing import Any

import pytest

from service.case.case import Case, RunLoad
from service.case.place import Place
from service.parts.records import Lighting
from tests.rules.cases import case, outcome

AT = Place("run", -1, (0,))
LIGHT = Place("run", 1)


def run(**given: Any) -> Case:
    """Return a case of a 12 V run of 18 AWG that may lose 1 V and loses 0.2 V, but for what is given."""
    sound: dict[str, Any] = {
        "at": AT, "source_volts": 12.0, "lowest_volts": 11.0, "end_volts": 11.8, "amps": 2.0, "pair_amps": 2.0,
        "lost_watts": 0.4, "band_amps": 6.0, "stop_amps": 8.0,
    }
    return case(Lighting(volts=12), runs=(RunLoad(**(sound | given)),))


def light(end_volts: float | None = 11.8, **given: Any) -> Case:
    """Return a case of a 12 V light that is to have 10.8 V at its end."""
    return run(**{"at": LIGHT, "lowest_volts": 10.8, "end_volts": end_volts} | given)


BROKEN_DOWN: dict[str, Any] = {"end_volts": None, "lost_watts": None}
BREAKS = [
    ("RUN101", run(**BROKEN_DOWN), AT),
    ("RUN101", run(**BROKEN_DOWN, lowest_volts=None), AT),
    ("RUN102", run(end_volts=10.999), AT),
    ("RUN103", run(end_volts=11.499), AT),
    ("RUN104", run(pair_amps=8.001), AT),
    ("RUN104", run(**BROKEN_DOWN, pair_amps=8.001), AT),
    ("RUN104", light(pair_amps=8.001), LIGHT),
    ("RUN105", run(pair_amps=6.001), AT),
    ("RUN105", run(pair_amps=8.0, stop_amps=None), AT),
    ("RUN105", light(pair_amps=6.001), LIGHT),
    ("RUN106", light(10.799), LIGHT),
    ("RUN106", light(None), LIGHT),
]
SILENT = [
    pytest.param("RUN101", run(), id="RUN101 solved"),
    pytest.param("RUN101", light(None), id="RUN101 leaves lights to RUN106"),
    pytest.param("RUN102", run(end_volts=11.0), id="RUN102 on the limit"),
    pytest.param("RUN102", run(**BROKEN_DOWN, lowest_volts=None), id="RUN102 leaves what breaks down to RUN101"),
    pytest.param("RUN102", light(5.0), id="RUN102 leaves lights to RUN106"),
    pytest.param("RUN103", run(end_volts=11.5), id="RUN103 on the limit"),
    pytest.param("RUN103", run(end_volts=10.9), id="RUN103 leaves the stop to RUN102"),
    pytest.param("RUN103", run(**BROKEN_DOWN), id="RUN103 leaves what breaks down to RUN101"),
    pytest.param("RUN103", run(lowest_volts=None, end_volts=1.0), id="RUN103 without lowest volts has no band"),
    pytest.param("RUN103", light(5.0), id="RUN103 leaves lights to RUN106"),
    pytest.param("RUN104", run(pair_amps=8.0), id="RUN104 on the limit"),
    pytest.param("RUN104", run(pair_amps=8.0, stop_amps=None), id="RUN104 thick wire at what a contact carries"),
    pytest.param("RUN104", light(pair_amps=9.0, stop_amps=None, missing="lead"), id="RUN104 a light without a lead"),
    pytest.param("RUN105", run(pair_amps=6.0), id="RUN105 on the limit"),
    pytest.param("RUN105", run(pair_amps=8.1), id="RUN105 leaves the stop to RUN104"),
    pytest.param("RUN105", run(pair_amps=8.1, stop_amps=None), id="RUN105 leaves thick wire to RUN104"),
    pytest.param("RUN105", run(pair_amps=9.0, band_amps=None, stop_amps=10.0), id="RUN105 a maker's figure has none"),
    pytest.param("RUN106", light(10.8), id="RUN106 on the limit"),
    pytest.param("RUN106", run(end_volts=1.0), id="RUN106 leaves runs of the sheet alone"),
]
UNKNOWN = [
    ("RUN102", run(lowest_volts=None), "runs/0/lowest_volts", AT),
    ("RUN104", run(pair_amps=8.001, stop_amps=None), "runs/0/max_amps", AT),
    ("RUN106", light(None, missing="lead"), "lead", LIGHT),
    ("RUN106", light(None, missing="strip/length_mm"), "strip/length_mm", LIGHT),
]


def _ids(table: list[tuple[Any, ...]]) -> list[str]:
    return [f"{row[0]}-{number}" for number, row in enumerate(table)]


@pytest.mark.parametrize(("rule", "given", "at"), BREAKS, ids=_ids([*BREAKS]))
def test_past_the_limit(rule: str, given: Case, at: Place) -> None:
    assert outcome(rule, given) == [("breaks", at)]


@pytest.mark.parametrize(("rule", "given"), SILENT)
def test_within_the_limit(rule: str, given: Case) -> None:
    assert outcome(rule, given) == []


@pytest.mark.parametrize(("rule", "given", "missing", "at"), UNKNOWN, ids=_ids([*UNKNOWN]))
def test_figure_missing(rule: str, given: Case, missing: str, at: Place) -> None:
    assert outcome(rule, given) == [(missing, at)]
