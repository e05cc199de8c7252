"""Raw bytes against a real server: chunked bodies, too large ones, broken, cut-off and silent ones."""

import json
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from service.config import Config
from tests.api.asking import CHECKS
from tests.contract.document import validate_answer

ROOT = Path(__file__).resolve().parents[2]
STALL_SECONDS = 1
START_SECONDS = 20
WAIT_SECONDS = 10
TOO_MUCH = Config().max_body_bytes + 1_000_000


class Answer(NamedTuple):
    """What came back."""

    status: int
    headers: str
    body: Any


class Server(NamedTuple):
    """A running server."""

    port: int

    def connect(self) -> socket.socket:
        """Return a new connection."""
        return socket.create_connection(("127.0.0.1", self.port), timeout=WAIT_SECONDS)

    def alive(self) -> bool:
        """Say whether it still answers."""
        with self.connect() as connection:
            connection.sendall(b"GET /livez HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n")
            return bool(receive(connection).body == {"alive": True})


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    """Start one worker with two threads on a free port; end it afterwards."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
        command = [
            sys.executable, "-m", "gunicorn", "service.wsgi:app", "--bind", f"fd://{listener.fileno()}",
            "--worker-class", "gthread", "--threads", "2", "--no-control-socket", "--log-level", "warning",
        ]
        environ = os.environ | {"MATEWELL_BODY_STALL_SECONDS": str(STALL_SECONDS)}
        process = subprocess.Popen(command, cwd=ROOT, env=environ, pass_fds=[listener.fileno()])
        try:
            _wait(Server(port), process)
            yield Server(port)
        finally:
            process.terminate()
            process.wait(WAIT_SECONDS)


def _wait(server: Server, process: subprocess.Popen[bytes]) -> None:
    until = time.monotonic() + START_SECONDS
    while time.monotonic() < until and process.poll() is None:
        try:
            if server.alive():
                return
        except OSError:
            time.sleep(0.1)
    raise AssertionError("the server did not start")


def receive(connection: socket.socket) -> Answer:
    """Read one answer."""
    raw = b""
    while b"\r\n\r\n" not in raw:
        raw += connection.recv(65_536) or _gone()
    head, _, body = raw.partition(b"\r\n\r\n")
    length = int(re.search(rb"(?i)content-length: (\d+)", head)[1])  # type: ignore[index]
    while len(body) < length:
        body += connection.recv(65_536) or _gone()
    return Answer(int(head.split()[1]), head.decode(), json.loads(body))


def _gone() -> bytes:
    raise ConnectionError("the server closed the connection without an answer")


def _head(framing: str) -> bytes:
    return (
        f"POST {CHECKS} HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n{framing}\r\n\r\n"
    ).encode()


def _chunks(raw: bytes, size: int) -> bytes:
    pieces = [raw[start:start + size] for start in range(0, len(raw), size)]
    return b"".join(b"%x\r\n%s\r\n" % (len(piece), piece) for piece in pieces) + b"0\r\n\r\n"


def _refused(answer: Answer, status: int, kind: str) -> None:
    assert answer.status == status, answer
    assert answer.body["type"] == f"/problems/{kind}"
    validate_answer(CHECKS, "POST", status, answer.body)


@pytest.mark.parametrize("size", [1, 7, 4_096])
def test_chunked_sheet_is_judged(server: Server, sheet: dict[str, Any], size: int) -> None:
    with server.connect() as connection:
        connection.sendall(_head("Transfer-Encoding: chunked") + _chunks(json.dumps(sheet).encode(), size))
        answer = receive(connection)
    assert answer.status == 200
    validate_answer(CHECKS, "POST", 200, answer.body)


def test_two_sheets_on_one_connection(server: Server, sheet: dict[str, Any]) -> None:
    raw = json.dumps(sheet).encode()
    with server.connect() as connection:
        answers = []
        for _ in range(2):
            connection.sendall(_head(f"Content-Length: {len(raw)}") + raw)
            answers.append(receive(connection))
    assert [answer.status for answer in answers] == [200, 200]
    assert answers[0].body == answers[1].body


def test_announced_too_large_is_refused_before_it_is_sent(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(_head(f"Content-Length: {TOO_MUCH}"))
        _refused(receive(connection), 413, "body-too-large")
    assert server.alive()


def test_chunked_too_large(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(_head("Transfer-Encoding: chunked"))
        with suppress(BrokenPipeError, ConnectionResetError):
            connection.sendall(_chunks(b" " * TOO_MUCH, 65_536))
        _refused(receive(connection), 413, "body-too-large")
    assert server.alive()


def test_chunked_without_end_is_cut(server: Server) -> None:
    pieces = (b"10000\r\n" + b" " * 65_536 + b"\r\n") * 4_000
    with server.connect() as connection:
        connection.sendall(_head("Transfer-Encoding: chunked"))
        with pytest.raises((BrokenPipeError, ConnectionResetError)):
            connection.sendall(pieces)
    assert server.alive()


@pytest.mark.parametrize("broken", [
    pytest.param(b"zz\r\n{}\r\n0\r\n\r\n", id="letters"),
    pytest.param(b"-1\r\n{}\r\n0\r\n\r\n", id="negative"),
    pytest.param(b"2\r\n{}XX0\r\n\r\n", id="no end"),
])
def test_broken_chunk(server: Server, broken: bytes) -> None:
    with server.connect() as connection:
        connection.sendall(_head("Transfer-Encoding: chunked") + broken)
        assert receive(connection).status == 400
    assert server.alive()


@pytest.mark.parametrize("framing", ["Content-Length: 1000", "Transfer-Encoding: chunked"])
def test_silent_body(server: Server, framing: str) -> None:
    with server.connect() as connection:
        connection.sendall(_head(framing) + (b'{"parts"' if "Length" in framing else b'8\r\n{"parts"\r\n'))
        started = time.monotonic()
        _refused(receive(connection), 408, "slow-body")
    assert time.monotonic() - started < STALL_SECONDS * 3
    assert server.alive()


def test_half_closed_body(server: Server) -> None:
    with server.connect() as connection:
        connection.sendall(_head("Content-Length: 1000") + b'{"parts"')
        connection.shutdown(socket.SHUT_WR)
        _refused(receive(connection), 400, "bad-request")
    assert server.alive()


def test_many_aborted_bodies_leave_it_well(server: Server, sheet: dict[str, Any]) -> None:
    for _ in range(30):
        with server.connect() as connection:
            connection.sendall(_head("Content-Length: 1000") + b'{"parts"')
    raw = json.dumps(sheet).encode()
    with server.connect() as connection:
        connection.sendall(_head(f"Content-Length: {len(raw)}") + raw)
        assert receive(connection).status == 200
