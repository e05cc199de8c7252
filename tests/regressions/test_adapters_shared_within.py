"""An adapter of several outputs feeds a port with one and another adapter with the next: planned, so it can be sent."""

import copy
from typing import Any

import pytest

from service.intake.faults import Faults
from tests.journeys.asked import ask, with_wiring
from tests.journeys.bench import DRIVE, SUPPLY, bench, plugged

Json = dict[str, Any]
NEAR, FAR = 6, 7
_SPLITTER: Json = {
    "category": "adapter", "takes": [{"connector": "sata-power"}], "gives": [{"connector": "sata-power", "count": 2}],
    "rated_watts": 54,
}


def _four_disks() -> Json:
    """Return the bench with four disks in all, one plug for them, and two splitters that are not alike."""
    sheet = bench() | {"use": {"drives_starting_together": 1}}
    sheet["parts"].append({"spec": copy.deepcopy(sheet["parts"][DRIVE]["spec"]), "quantity": 3})
    sheet["parts"] += [{"spec": _SPLITTER}, {"spec": _SPLITTER | {"rated_watts": 53}}]
    return sheet


def _wiring(*ways: tuple[int, ...]) -> list[Json]:
    """Return the wiring of all but disks, and of disks of the second line, each through the splitters of its way."""
    plugs = [{"cable": f"/parts/{SUPPLY}/cables/4", "copy": 1, "plug": 1}]
    return plugged(drives="") + [
        {
            "part": f"/parts/{DRIVE + 1}", "copy": copy_, "port": {"connector": "sata-power", "number": 1},
            "adapters": [{"adapter": f"/parts/{line}", "copy": 1, "inputs": 1} for line in way], "plugs": plugs,
        }
        for copy_, way in enumerate(ways, start=1)
    ]


def test_one_output_may_feed_a_port_and_the_next_an_adapter() -> None:
    sheet, wiring = _four_disks(), _wiring((FAR, NEAR), (FAR, NEAR), (NEAR,))
    answer = ask(with_wiring(sheet, wiring))
    assert [port["part"] for port in answer["plan"]["not_fed"] if port["required"]] == [f"/parts/{DRIVE}"]
    assert ask(with_wiring(sheet, wiring[::-1])) == answer


def test_no_more_outputs_are_used_than_there_are() -> None:
    with pytest.raises(Faults) as refused:
        ask(with_wiring(_four_disks(), _wiring((FAR, NEAR), (NEAR,), (NEAR,))))
    assert [fault.pointer for fault in refused.value.faults] == ["/wiring/5/adapters/0"]


def test_a_plan_with_such_an_adapter_can_be_sent() -> None:
    """Three disks and one plug for them: they hang on two splitters, of which one feeds the other."""
    sheet = _four_disks()
    sheet["parts"][SUPPLY]["spec"]["cables"][4]["plugs"].pop()
    del sheet["parts"][DRIVE]
    plan = ask(sheet)["plan"]
    assert any(len(each["adapters"]) == 2 for each in plan["connections"])
    assert ask(with_wiring(sheet, plan["connections"]))["plan"]["connections"] == plan["connections"]
