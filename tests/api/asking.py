"""Asking the service in process and holding each answer against the document."""

from typing import Any

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from tests.contract.document import validate_answer

CHECKS = "/v1/checks"
JSON = "application/json"
PROBLEM = "application/problem+json"


def post(client: FlaskClient, body: bytes, **headers: str) -> TestResponse:
    """Post bytes to the checks; header names are written with underscores."""
    sent = {"Content-Type": JSON} | {name.replace("_", "-"): text for name, text in headers.items()}
    return client.post(CHECKS, data=body, headers=sent)


def problem(answer: TestResponse, path: str, method: str, status: int, kind: str) -> dict[str, Any]:
    """Return the body of a problem after checking status, type and document."""
    assert answer.status_code == status, answer.get_data(as_text=True)
    assert answer.headers["Content-Type"] == PROBLEM
    body: dict[str, Any] = answer.get_json(force=True)
    validate_answer(path, method, status, body)
    assert body["status"] == status
    assert body["type"] == f"/problems/{kind}"
    return body
