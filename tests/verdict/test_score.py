"""The score by the formula, and the lines that add up to it."""

from itertools import product

import pytest

from service.verdict.score import score
from service.verdict.speak import Tally
from tests.journeys.asked import NAMES, ask, example


@pytest.mark.parametrize(
    ("stops", "points", "fixed", "expected"),
    [
        pytest.param(0, 0, 0, 100, id="nothing"),
        pytest.param(0, 1, 1, 79, id="one-point"),
        pytest.param(0, 49, 0, 31, id="most-of-cautions"),
        pytest.param(0, 400, 0, 31, id="cautions-end-there"),
        pytest.param(1, 0, 0, 30, id="one-stop"),
        pytest.param(1, 40, 0, 30, id="cautions-of-the-wiring-fall-away-beside-a-stop"),
        pytest.param(1, 4, 4, 30, id="four-points-beside-a-stop"),
        pytest.param(1, 5, 5, 29, id="five-points-beside-a-stop"),
        pytest.param(1, 400, 400, 21, id="most-beside-a-stop"),
        pytest.param(3, 12, 12, 8, id="three-stops"),
        pytest.param(4, 0, 0, 0, id="four-stops"),
        pytest.param(9, 99, 99, 0, id="never-below-nothing"),
    ],
)
def test_formula(stops: int, points: int, fixed: int, expected: int) -> None:
    assert score(Tally(stops, points, fixed, stops_planned_only=False)) == expected


def test_falls_in_the_order_in_which_a_plan_is_chosen() -> None:
    """No repair that trades a stop for cautions looks worse."""
    tallies = [Tally(stops, points, 0, False) for stops, points in product(range(6), range(80))]
    scores = [score(tally) for tally in tallies]
    assert scores == sorted(scores, reverse=True)


@pytest.mark.parametrize("name", NAMES)
def test_lines_add_up(name: str) -> None:
    answer = ask(example(name))
    assert sum(line["points"] for line in answer["score_lines"]) == answer["score"]
    assert answer["score_lines"][0]["what"] == "base"
    spoken = {one["rule"] for one in answer["findings"] + answer["unknowns"]}
    assert {line["rule"] for line in answer["score_lines"] if "rule" in line} <= spoken
