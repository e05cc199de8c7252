"""Media types, Accept, methods, lengths, query parameters and the headers of every answer."""

import json
from io import BytesIO
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from service.api.requests import BodyLimits, json_body
from service.config import Config
from tests.api.asking import CHECKS, JSON, post, problem
from tests.contract.document import validate_answer

MEGABYTE = 1_000_000
GETS = ("/v1/parts", "/v1/rules", "/problems/bad-sheet", "/openapi.json", "/docs", "/livez", "/readyz")


@pytest.mark.parametrize("content_type", [
    "text/plain", "text/json", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x",
    "application/json; charset=latin-1", "application/problem+json", "", ";", "application/jsonx",
])
def test_wrong_media_type(client: FlaskClient, content_type: str) -> None:
    problem(post(client, b"{}", Content_Type=content_type), CHECKS, "POST", 415, "wrong-media-type")


def test_missing_media_type(client: FlaskClient) -> None:
    problem(client.post(CHECKS, data=b"{}"), CHECKS, "POST", 415, "wrong-media-type")


@pytest.mark.parametrize("content_type", ["application/json", "APPLICATION/JSON", "application/json; charset=UTF-8"])
def test_right_media_type(client: FlaskClient, sheet: dict[str, Any], content_type: str) -> None:
    assert post(client, json.dumps(sheet).encode(), Content_Type=content_type).status_code == 200


def test_compressed_body(client: FlaskClient) -> None:
    problem(post(client, b"\x1f\x8b", Content_Encoding="gzip"), CHECKS, "POST", 415, "wrong-media-type")


@pytest.mark.parametrize("accept", [
    "image/png", "text/html", "application/json;q=0", "application/*;q=0, text/plain", "application/xml, text/*",
])
def test_not_acceptable(client: FlaskClient, accept: str) -> None:
    problem(post(client, b"{}", Accept=accept), CHECKS, "POST", 406, "not-acceptable")


@pytest.mark.parametrize("accept", [
    "application/json", "*/*", "application/*", "", "text/html, application/json;q=0.1", "text/html;q=0.9, */*;q=0.1",
])
def test_acceptable(client: FlaskClient, sheet: dict[str, Any], accept: str) -> None:
    assert post(client, json.dumps(sheet).encode(), Accept=accept).status_code == 200


@pytest.mark.parametrize("path", GETS)
@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "TRACE", "BREW"])
def test_wrong_method(client: FlaskClient, path: str, method: str) -> None:
    answer = client.open(path, method=method)
    problem(answer, path, "GET", 405, "wrong-method")
    assert answer.headers["Allow"] == "GET, HEAD, OPTIONS"


@pytest.mark.parametrize("method", ["GET", "PUT", "PATCH", "DELETE"])
def test_wrong_method_on_checks(client: FlaskClient, method: str) -> None:
    answer = client.open(CHECKS, method=method)
    problem(answer, CHECKS, "POST", 405, "wrong-method")
    assert answer.headers["Allow"] == "OPTIONS, POST"


@pytest.mark.parametrize("path", GETS)
def test_head_is_get_without_its_body(client: FlaskClient, path: str) -> None:
    head, get = client.head(path), client.get(path)
    assert (head.status_code, head.data) == (200, b"")
    assert head.headers["Content-Length"] == get.headers["Content-Length"]


@pytest.mark.parametrize(("path", "allow"), [(CHECKS, {"OPTIONS", "POST"}), ("/v1/parts", {"GET", "HEAD", "OPTIONS"})])
def test_options(client: FlaskClient, path: str, allow: set[str]) -> None:
    answer = client.options(path)
    assert (answer.status_code, answer.data) == (200, b"")
    assert set(answer.headers["Allow"].split(", ")) == allow


@pytest.mark.parametrize("path", [
    "/v1/checks/", "/v1/parts/", "/v1/rules/", "//v1/parts", "/v1//parts", "/v1", "/v2/checks", "/nowhere", "/livez/",
    "/v1/parts/no-such-part", "/v1/parts/%00", "/v1/parts/%ff", "/v1/parts/..%2f..", "/v1/rules/XXX999",
    "/docs/none.js", "/docs/..%2fapp.py", "/problems/none", "/v1/parts/" + "a" * 5_000,
])
def test_nothing_there(client: FlaskClient, path: str) -> None:
    answer = client.get(path)
    assert answer.status_code == 404
    assert answer.get_json(force=True)["type"] == "/problems/not-found"


@pytest.mark.parametrize("path", [*GETS, "/v1/parts/demo-supply-850", "/docs/start.js"])
def test_unknown_query_parameter(client: FlaskClient, path: str) -> None:
    problem(client.get(path + "?debug=1"), path, "GET", 400, "bad-query")


def test_unknown_query_parameter_on_checks(client: FlaskClient) -> None:
    problem(client.post(CHECKS + "?debug", data=b"{}"), CHECKS, "POST", 400, "bad-query")


def test_megabyte_too_much(client: FlaskClient) -> None:
    body = problem(post(client, b" " * (Config().max_body_bytes + MEGABYTE)), CHECKS, "POST", 413, "body-too-large")
    assert str(Config().max_body_bytes) in body["detail"]


def test_megabyte_too_much_without_a_length(client: FlaskClient) -> None:
    answer = _without_length(client, b" " * (Config().max_body_bytes + MEGABYTE))
    problem(answer, CHECKS, "POST", 413, "body-too-large")


@pytest.mark.parametrize(("excess", "status"), [(0, 200), (1, 413)], ids=["at the limit", "one byte over"])
def test_limit_to_the_byte(client: FlaskClient, sheet: dict[str, Any], excess: int, status: int) -> None:
    raw = json.dumps(sheet).encode()
    raw += b" " * (Config().max_body_bytes + excess - len(raw))
    assert post(client, raw).status_code == status
    assert _without_length(client, raw).status_code == status


def test_body_shorter_than_announced(client: FlaskClient) -> None:
    environ = {"wsgi.input": BytesIO(b'{"parts"'), "CONTENT_LENGTH": "100"}
    answer = client.open(CHECKS, method="POST", content_type=JSON, environ_overrides=environ)
    problem(answer, CHECKS, "POST", 400, "bad-request")


@pytest.mark.parametrize(("error", "status", "kind"), [
    (TimeoutError(), 408, "slow-body"), (OSError("reset"), 400, "bad-request"), (RuntimeError(), 400, "bad-request"),
], ids=["stalled", "reset", "broken chunk"])
def test_stream_that_fails(client: FlaskClient, error: Exception, status: int, kind: str) -> None:
    class Failing:
        def read(self, _size: int) -> bytes:
            raise error

    environ = {"wsgi.input": Failing(), "wsgi.input_terminated": True}
    answer = client.open(CHECKS, method="POST", content_type=JSON, environ_overrides=environ)
    problem(answer, CHECKS, "POST", status, kind)


def test_no_length_from_a_server_that_does_not_end_bodies_reads_nothing(app: Flask) -> None:
    with app.test_request_context(CHECKS, method="POST", content_type=JSON) as context:
        context.request.environ.pop("CONTENT_LENGTH", None)
        context.request.environ["wsgi.input"] = None
        with pytest.raises(Exception, match="empty"):
            json_body(BodyLimits(100, 1))


@pytest.mark.parametrize("path", [*GETS, CHECKS, "/nowhere"])
def test_headers_of_every_answer(client: FlaskClient, path: str) -> None:
    headers = client.get(path).headers
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Content-Security-Policy"].startswith("default-src 'none'")
    assert "Accept" in headers["Vary"]
    assert headers["Referrer-Policy"] == "no-referrer"
    assert len(headers["X-Request-Id"]) == 16
    assert "Server" not in headers


@pytest.mark.parametrize(("sent", "kept"), [
    ("a-1.B_2", True), ("x" * 64, True), ("x" * 65, False), ("a b", False), ("\u00e9", False),
])
def test_request_id(client: FlaskClient, sent: str, kept: bool) -> None:
    answered = client.get("/livez", headers={"X-Request-Id": sent}).headers["X-Request-Id"]
    assert (answered == sent) is kept


def test_verdict_is_documented(client: FlaskClient, sheet: dict[str, Any]) -> None:
    answer = post(client, json.dumps(sheet).encode())
    assert answer.status_code == 200
    validate_answer(CHECKS, "POST", 200, answer.get_json())


def test_our_own_fault_tells_nothing_and_logs_once(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def explode(*_: object) -> None:
        raise KeyError("secret inside")

    monkeypatch.setattr("service.api.checks.check_sheet", explode)
    answer = post(client, b"{}", X_Request_Id="ask-7")
    problem(answer, CHECKS, "POST", 500, "our-fault")
    assert b"secret" not in answer.data
    assert answer.headers["X-Request-Id"] == "ask-7"
    assert [record.getMessage() for record in caplog.records] == ["request ask-7 failed"]


def _stream(raw: bytes) -> Any:
    return BytesIO(raw)


def _without_length(client: FlaskClient, raw: bytes) -> Any:
    environ = {"wsgi.input": _stream(raw), "wsgi.input_terminated": True, "HTTP_TRANSFER_ENCODING": "chunked"}
    return client.open(CHECKS, method="POST", content_type=JSON, environ_overrides=environ)
