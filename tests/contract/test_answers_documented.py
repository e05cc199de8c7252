"""Every answer to an example sheet is as the document says, and its plan can be posted back."""

import json
from pathlib import Path

import pytest
from flask import Flask

from tests.contract.document import EXAMPLES, faults_of, validate_answer
from tests.journeys.asked import WITHOUT_A_SUPPLY

CHECKS = "/v1/checks"
WIRING = {"$ref": "#/components/schemas/Connection"}
FILES = sorted(EXAMPLES.glob("*.json"))


def test_there_are_examples() -> None:
    assert FILES


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_answer_is_documented(app: Flask, file: Path) -> None:
    sheet = json.loads(file.read_text(encoding="utf-8")) | {"would_settle": True, "size": True}
    answer = app.test_client().post(CHECKS, json=sheet)
    validate_answer(CHECKS, "POST", answer.status_code, answer.get_json())
    assert answer.status_code == 200
    for connection in (answer.get_json()["plan"] or {"connections": []})["connections"]:
        assert faults_of(WIRING, connection) == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_plan_posted_back_is_judged_the_same(app: Flask, file: Path) -> None:
    sheet = json.loads(file.read_text(encoding="utf-8"))
    planned = app.test_client().post(CHECKS, json=sheet).get_json()
    if planned["plan"] is None:
        assert file.stem in WITHOUT_A_SUPPLY
        return
    sheet |= {"wiring": planned["plan"]["connections"], "wiring_rest": "leave"}
    plugged = app.test_client().post(CHECKS, json=sheet).get_json()
    validate_answer(CHECKS, "POST", 200, plugged)
    assert (plugged["verdict"], plugged["score"]) == (planned["verdict"], planned["score"])
