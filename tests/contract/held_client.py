"""A client of which every answer is held to the document, whoever asks."""

from functools import cache
from typing import Any

import orjson
from flask.testing import FlaskClient
from openapi_schema_validator import OAS31Validator
from werkzeug.test import TestResponse

from tests.contract.document import closed_schema, document, follow, template

DOCUMENT = "/openapi.json"
"""What it answers is an OpenAPI document, of which only the opening is described: more fields may stand there."""


class HeldClient(FlaskClient):
    """Flask's test client; it fails on a status, a media type or a body that the document does not have."""

    def open(self, *given: Any, **named: Any) -> TestResponse:
        """Return the answer, after it has been held to the document."""
        answer = super().open(*given, **named)
        hold(answer)
        return answer


def hold(answer: TestResponse) -> None:
    """Hold an answer to the document."""
    method, path = answer.request.method, answer.request.path
    media = answer.headers.get("Content-Type", "").split(";")[0]
    if method in ("HEAD", "OPTIONS"):
        return
    if not _is_documented(path):
        assert answer.status_code >= 400, f"{path} is not in the document and answers {answer.status_code}"
        validator = _validator_of_problems()
    else:
        validator = _validator(template(path), method.lower(), answer.status_code, media)
    if media.endswith("json") and answer.data:
        faults = [f"{fault.json_path}: {fault.message[:300]}" for fault in validator.iter_errors(_body(answer))]
        assert faults == [], f"{method} {path} {answer.status_code}"


def _body(answer: TestResponse) -> Any:
    return orjson.loads(answer.data)


def _is_documented(path: str) -> bool:
    try:
        template(path)
    except AssertionError:
        return False
    return True


@cache
def _validator_of_problems() -> OAS31Validator:
    return OAS31Validator(closed_schema({"$ref": "#/components/schemas/Problem"}))


@cache
def _validator(path: str, method: str, status: int, media: str) -> OAS31Validator:
    """Return the compiled schema of one answer; a method that is not documented may only be refused."""
    calls = document()["paths"][path]
    if method not in calls:
        assert status in (400, 405, 413), f"{method} {path} is not in the document and answers {status}"
        return _validator_of_problems()
    responses = calls[method]["responses"]
    assert str(status) in responses, f"{method} {path} answered {status}, which the document does not have"
    content = follow(responses[str(status)]).get("content", {})
    assert media in content or not content, f"{method} {path} {status}: {media} is not in the document"
    if path == DOCUMENT and status == 200:
        return OAS31Validator(content.get(media, {}).get("schema", {}))
    return OAS31Validator(closed_schema(content[media].get("schema", {}) if content else {}))
