"""The examples of the document say what a builder expects of them, written down before the service was asked."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.journeys.asked import NAMES, ask, example, spoken

EXPECTED: dict[str, Any] = tomllib.loads((Path(__file__).parent / "expected.toml").read_text("utf-8"))


def test_every_example_is_expected() -> None:
    assert sorted(EXPECTED) == NAMES


@pytest.mark.parametrize("name", NAMES)
def test_example(name: str) -> None:
    expected, answer = EXPECTED[name], ask(example(name))
    assert answer["verdict"] == expected["verdict"]
    assert set(expected["speaks"]) <= spoken(answer)
    assert not set(expected["silent"]) & spoken(answer)
