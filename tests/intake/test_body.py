"""Bytes that are no JSON, or JSON that says two things at once."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.intake.body import read_json
from service.intake.bounds import MOST_DEPTH
from service.intake.faults import Unreadable
from tests.intake.spec_cases import JSON

NO_JSON = "The body is not JSON that can be read: line 1, column "
BAD = [
    pytest.param(b"", "The body is empty.", None, id="empty"),
    pytest.param(b" \n", "The body is empty.", None, id="blank"),
    pytest.param(b"\xef\xbb\xbf{}", "The body begins with a byte order mark; leave it out.", None, id="bom"),
    pytest.param(b'{"a": "\xff"}', "The body is not UTF-8: byte 8 cannot be read.", None, id="utf-8"),
    pytest.param(b'{"a": NaN}', NO_JSON, None, id="nan"),
    pytest.param(b'{"a": 1e400}', NO_JSON, None, id="1e400"),
    pytest.param(b'{"a": "\\ud800"}', NO_JSON, None, id="lone surrogate"),
    pytest.param(b"[" * 100_000, NO_JSON, None, id="very deep"),
    pytest.param(b"[" * 60 + b"]" * 60, f"The body is nested more than {MOST_DEPTH} deep.", None, id="deep"),
    pytest.param(b"[" + b"9" * 5000 + b"]", NO_JSON, None, id="5,000 digits"),
    pytest.param(b'{"a": 1, "a": 1}', "The key at /a stands there more than once.", "/a", id="double"),
    pytest.param(b'[{"x:y": [{"a/b": 1, "a\\u002fb": 2}]}]', "The key at /0/x:y/0/a~1b", "/0/x:y/0/a~1b", id="escaped"),
    pytest.param(b'{"t": ":::", "o": {"k" : 1, "k":2}}', "The key at /o/k", "/o/k", id="colons in texts"),
    pytest.param(b'{"q": "\\":", "q": 1}', "The key at /q", "/q", id="quote in text"),
]


@pytest.mark.parametrize(("raw", "sentence", "pointer"), BAD)
def test_unreadable(raw: bytes, sentence: str, pointer: str | None) -> None:
    with pytest.raises(Unreadable) as caught:
        read_json(raw)
    assert caught.value.sentence.startswith(sentence)
    assert caught.value.pointer == pointer


def test_long_whole_number_is_read_and_left_to_the_bounds() -> None:
    assert read_json(b'{"a": 1234567890123456789012345}') == {"a": 1234567890123456789012345.0}


@given(JSON)
def test_reads_what_the_standard_library_writes(value: Any) -> None:
    raw = json.dumps(value).encode()
    try:
        read = read_json(raw)
    except Unreadable:
        read = None
    if read is None:
        assert value is None or b"\\ud" in raw
    else:
        assert read == json.loads(raw, parse_int=_short)


def _short(text: str) -> float:
    whole = int(text)
    return whole if -(2**63) <= whole < 2**64 else float(text)


@given(st.binary(max_size=60) | st.text("{}[]\":,\\a1 ").map(str.encode))
def test_bytes_raise_nothing_but_unreadable(raw: bytes) -> None:
    said = "."
    try:
        read_json(raw)
    except Unreadable as refused:
        said = refused.sentence
    assert said.endswith(".")


KEYS = st.text('ab:"\\/ {')


@given(st.dictionaries(KEYS, st.dictionaries(KEYS, KEYS, max_size=3), min_size=1), st.data())
def test_finds_a_double_key_wherever_it_is(value: dict[str, dict[str, str]], data: st.DataObject) -> None:
    twice = data.draw(st.sampled_from(sorted(value)))
    pairs = [*value.items(), (twice, value[twice])]
    inside = ", ".join(f"{json.dumps(key)}: {json.dumps(below)}" for key, below in pairs)
    with pytest.raises(Unreadable) as caught:
        read_json(f"{{{inside}}}".encode())
    assert caught.value.pointer == "/" + twice.replace("~", "~0").replace("/", "~1")
