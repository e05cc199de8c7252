"""Everything a caller may get wrong in a body: each is a 4xx problem that says where, never a 5xx."""

import copy
import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.api.asking import CHECKS, post, problem

UNREADABLE = [
    pytest.param(b"", id="empty"),
    pytest.param(b"   ", id="blank"),
    pytest.param(b'{"parts": [', id="cut off"),
    pytest.param(b"{'parts': []}", id="single quotes"),
    pytest.param(b'{"parts": []} {}', id="two values"),
    pytest.param(b'{"parts": NaN}', id="NaN"),
    pytest.param(b'{"parts": -Infinity}', id="infinity"),
    pytest.param(b'{"parts": [{"spec": {"category": "graphics_card", "board_watts": 1e400}}]}', id="1e400"),
    pytest.param(b"[" * 100_000, id="100,000 brackets"),
    pytest.param(b"[" * 100_000 + b"]" * 100_000, id="100,000 brackets closed again"),
    pytest.param(b'{"a":' * 40_000 + b"1" + b"}" * 40_000, id="40,000 objects deep"),
    pytest.param(b'{"reference": "\xff\xfe", "parts": []}', id="not UTF-8"),
    pytest.param('{"parts": []}'.encode("utf-16"), id="UTF-16"),
    pytest.param(b'\xef\xbb\xbf{"parts": []}', id="byte order mark"),
    pytest.param(b'{"reference": "\\ud800", "parts": []}', id="lone surrogate"),
    pytest.param(b'{"parts": [], "parts": []}', id="same key twice"),
    pytest.param(b'{"parts": [{"part": "a", "part": "b"}]}', id="same key twice, deeper"),
    pytest.param(b'{"parts": [], "p\\u0061rts": []}', id="same key twice, one escaped"),
    pytest.param(b'{"parts": [' + b"9" * 5_000 + b"]}", id="5,000 digits"),
    pytest.param(b'{"parts": 01}', id="leading zero"),
    pytest.param(b"\x00", id="nul"),
]


@pytest.mark.parametrize("body", UNREADABLE)
def test_unreadable(client: FlaskClient, body: bytes) -> None:
    problem(post(client, body), CHECKS, "POST", 400, "unreadable-body")


WRONG = [
    pytest.param("/parts/1/spec/board_watts", True, id="true as watts"),
    pytest.param("/parts/1/spec/board_watts", "350", id="text as watts"),
    pytest.param("/parts/1/spec/board_watts", None, id="null as watts that must be given"),
    pytest.param("/parts/1/spec/board_watts", -1, id="negative watts"),
    pytest.param("/parts/1/spec/board_watts", 1234567890123456789012345, id="25 digits"),
    pytest.param("/parts/1/spec/board_watts", 1e300, id="1e300"),
    pytest.param("/parts/1/spec/board_watts", [350], id="list as watts"),
    pytest.param("/parts/1/spec/board_watts", {"low": 300}, id="range without its high end"),
    pytest.param("/parts/1/spec/board_watts", {"low": 300, "high": 250}, id="range upside down"),
    pytest.param("/parts/1/spec/category", "toaster", id="unknown category"),
    pytest.param("/parts/1/spec/category", 7, id="number as category"),
    pytest.param("/parts/1/spec/needs/0/connector", "pcie-9", id="unknown connector"),
    pytest.param("/parts/1/spec/needs/0/count", 10**9, id="a milliard ports"),
    pytest.param("/parts/1/spec/needs/0/count", 2.5, id="half a port"),
    pytest.param("/parts/1/spec/needs/0/count", True, id="true as count"),
    pytest.param("/parts/1/spec/colour", "red", id="unknown field"),
    pytest.param("/parts/1/quantity", 10**9, id="quantity 1e9"),
    pytest.param("/parts/1/quantity", 0, id="quantity 0"),
    pytest.param("/parts/1/quantity", "3", id="text as quantity"),
    pytest.param("/parts/1/quantity", True, id="true as quantity"),
    pytest.param("/parts/1", {"part": "no-such-part"}, id="unknown part"),
    pytest.param("/parts/1", {"part": "a", "gtin": "12345670"}, id="two ways to name a part"),
    pytest.param("/parts/1", {}, id="no way to name a part"),
    pytest.param("/parts/1", "demo", id="text as line"),
    pytest.param("/parts", [], id="no lines"),
    pytest.param("/parts", {"part": "a"}, id="object as lines"),
    pytest.param("/parts/0/spec/rated_watts", 0, id="a supply of 0 W"),
    pytest.param("/parts/0/spec/design", "atx-9", id="unknown design"),
    pytest.param("/aspects", ["looks"], id="unknown aspect"),
    pytest.param("/use", 5, id="number as use"),
    pytest.param("/site", {"mains_volts": 1e9}, id="a milliard volts"),
    pytest.param("/wiring", [{"part": "/parts/9", "port": {"connector": "pcie-8"}, "plugs": []}], id="no plugs"),
    pytest.param("/wiring/0/part", "/parts/9", id="wiring to nowhere"),
    pytest.param("/wiring/0/plugs/0/plug", 3, id="plug that is not there"),
    pytest.param("/wiring/0/plugs/0/copy", 3, id="cable that is not there"),
    pytest.param("/wiring/0/part", "parts[1]", id="no pointer"),
    pytest.param("/would_settle", "yes", id="text as switch"),
    pytest.param("/reference", "x" * 1_000, id="long reference"),
    pytest.param("/favourite", 1, id="unknown field of the sheet"),
]


def _with(sheet: dict[str, Any], pointer: str, value: Any) -> bytes:
    """Return the sheet with one place changed."""
    changed = copy.deepcopy(sheet)
    *steps, last = pointer.lstrip("/").split("/")
    node: Any = changed
    for step in steps:
        node = node[int(step) if isinstance(node, list) else step]
    node[int(last) if isinstance(node, list) else last] = value
    return json.dumps(changed).encode()


@pytest.mark.parametrize(("pointer", "value"), WRONG)
def test_fault_is_pointed_at(client: FlaskClient, sheet: dict[str, Any], pointer: str, value: Any) -> None:
    body = problem(post(client, _with(sheet, pointer, value)), CHECKS, "POST", 422, "bad-sheet")
    assert [error["pointer"] for error in body["errors"] if error["pointer"].startswith(pointer)], body["errors"]
    assert all(error["detail"] for error in body["errors"])


@pytest.mark.parametrize("body", [b"[]", b"1", b'"text"', b"null", b"true"])
def test_json_that_is_no_object(client: FlaskClient, body: bytes) -> None:
    answer = post(client, body)
    assert answer.status_code in (400, 422)
    problem(answer, CHECKS, "POST", answer.status_code, {400: "unreadable-body", 422: "bad-sheet"}[answer.status_code])


def test_all_faults_are_listed_at_once(client: FlaskClient, sheet: dict[str, Any]) -> None:
    sheet["parts"][0]["spec"]["rated_watts"] = "650"
    sheet["parts"][1]["spec"]["needs"][0]["count"] = 0
    sheet["parts"].append({"part": "no-such-part"})
    sheet["extra"] = 1
    body = problem(post(client, json.dumps(sheet).encode()), CHECKS, "POST", 422, "bad-sheet")
    pointers = {error["pointer"] for error in body["errors"]}
    assert {"/parts/0/spec/rated_watts", "/parts/1/spec/needs/0/count", "/extra"} <= pointers


def test_whole_number_written_with_a_point(client: FlaskClient, sheet: dict[str, Any]) -> None:
    assert post(client, _with(sheet, "/parts/1/spec/needs/0/count", 2.0)).status_code == 200
