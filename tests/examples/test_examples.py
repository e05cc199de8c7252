"""The examples of the document say what a builder expects of them, written down before the service was asked."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.journeys.asked import EXAMPLES, NAMES, ask, example, said, spoken

EXPECTED: dict[str, Any] = tomllib.loads((Path(__file__).parent / "expected.toml").read_text("utf-8"))
LEAST_EXAMPLES = 20


def test_every_example_is_expected() -> None:
    assert sorted(EXPECTED) == NAMES
    assert len(NAMES) >= LEAST_EXAMPLES


@pytest.mark.parametrize("name", NAMES)
def test_example(name: str) -> None:
    expected, answer = EXPECTED[name], ask(example(name))
    assert answer["verdict"] == expected["verdict"]
    assert set(expected["speaks"]) <= spoken(answer)
    assert not set(expected["silent"]) & spoken(answer)
    assert ("better_plan" in answer) == expected.get("better", False)


@pytest.mark.parametrize("name", [name for name in NAMES if "size" in EXPECTED[name]])
def test_example_says_which_size(name: str) -> None:
    found = ask(example(name))["size"]["supplies"]
    goals = ("carries", "with_reserve", "with_peaks")
    sizes = [[one["design"], one["sixteen_pin"], *(one[goal]["watts"] for goal in goals)] for one in found]
    bounds = [sorted({bound["rule"] for bound in one[goal]["bounded_by"]}) for one in found for goal in goals]
    assert (sizes, bounds) == (EXPECTED[name]["size"], EXPECTED[name]["bounds"])


@pytest.mark.parametrize("name", [name for name in NAMES if "at" in EXPECTED[name]])
def test_example_says_where(name: str) -> None:
    answer = ask(json.loads((EXAMPLES / f"{name}.json").read_text("utf-8")))
    places = {rule: [list(place) for place in sorted(said(answer, rule))] for rule in EXPECTED[name]["at"]}
    assert places == EXPECTED[name]["at"]
