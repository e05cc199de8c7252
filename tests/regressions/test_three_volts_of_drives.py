"""Drive cables and 3.3 V: who asks for it, and what is held of a cable that does not say whether it carries it."""

import copy
from typing import Any

import pytest

from tests.journeys.asked import ask, said, with_wiring
from tests.journeys.bench import CABLES, DRIVE, SUPPLY, bench, plugged

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


@pytest.mark.parametrize(("carries", "verdict"), [(True, "fits"), (None, "undecided"), (False, "does_not_fit")])
@pytest.mark.parametrize("is_sent", [False, True])
def test_a_cable_of_which_3v3_is_not_told_is_no_better_than_one_without(
    carries: bool | None, verdict: str, is_sent: bool
) -> None:
    sheet = bench()
    sheet["parts"][DRIVE]["spec"]["running_amps"]["3v3"] = 0.1
    cable = sheet["parts"][SUPPLY]["spec"]["cables"][CABLES.index("drives")]
    cable.pop("carries_3v3")
    if carries is not None:
        cable["carries_3v3"] = carries
    answer = ask(with_wiring(sheet, plugged()) if is_sent else sheet)
    assert answer["verdict"] == verdict
    if verdict == "does_not_fit" and not is_sent:
        assert [port["reason"] for port in answer["plan"]["not_fed"]] == ["without_3v3"]


@pytest.mark.parametrize("amps_3v3", [0, 0.1])
def test_a_box_that_is_not_listed_may_hold_what_a_drive_asks(amps_3v3: float) -> None:
    sheet = bench()
    for field in ("cables", "sockets"):
        del sheet["parts"][SUPPLY]["spec"][field]
    sheet["parts"][DRIVE]["spec"]["running_amps"]["3v3"] = amps_3v3
    answer = ask(sheet)
    assert answer["verdict"] == "undecided"
    assert {port["reason"] for port in answer["plan"]["not_fed"]} == {"not_listed"}
