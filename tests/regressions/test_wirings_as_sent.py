"""Wirings as they are sent: a port that nothing is put in is said to be just that."""

import pytest

from tests.journeys.asked import ask, with_wiring
from tests.journeys.bench import bench, plugged, port_of


@pytest.mark.parametrize("port", ["main", "processor", "card", "drives"])
def test_a_port_left_out_of_a_wiring_is_not_said_to_overload_anything(port: str) -> None:
    answer = ask(with_wiring(bench(), plugged(**{port: ""})))
    (open_port,) = answer["plan"]["not_fed"]
    assert (open_port["part"], open_port["port"]["connector"], str(open_port["port"]["number"])) == port_of(port)
    assert open_port["reason"] == "not_plugged"
    (stop,) = [one for one in answer["findings"] if one["rule"] == "CON101"]
    assert "the wiring that was sent puts nothing in it" in stop["message"]
