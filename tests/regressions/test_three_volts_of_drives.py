"""Splitters of drive plugs on cables that do not carry 3.3 V: only a drive that draws it keeps them from use."""

import copy
from typing import Any

from tests.journeys.asked import ask, said
from tests.journeys.bench import DRIVE, bench

Json = dict[str, Any]
_SPLITTER: Json = {
    "category": "adapter", "takes": [{"connector": "sata-power"}], "gives": [{"connector": "sata-power", "count": 2}],
    "rated_watts": 54,
}


def _three_disks(amps_3v3: float) -> Json:
    """Return the bench with three disks, one of which draws 3.3 V or not, and two plugs for them on one cable."""
    sheet = bench()
    two = copy.deepcopy(sheet["parts"][DRIVE]["spec"])
    sheet["parts"][DRIVE]["spec"]["running_amps"]["3v3"] = amps_3v3
    sheet["parts"] += [{"spec": two, "quantity": 2}, {"spec": _SPLITTER}]
    return sheet


def test_a_board_that_draws_3v3_does_not_keep_a_splitter_from_use() -> None:
    """The board's 3.3 V comes by the main plug; it was taken for that of a drive."""
    answer = ask(_three_disks(0))
    assert not answer["plan"]["not_fed"]
    assert answer["verdict"] == "fits"


def test_a_disk_that_draws_3v3_is_fed_by_no_cable_without_it() -> None:
    assert (f"/parts/{DRIVE}", "sata-power", "1") in said(ask(_three_disks(0.1)), "CON101")
