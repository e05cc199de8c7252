"""A real gunicorn worker, and a client that keeps one connection open."""

import http.client
import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_START_SECONDS = 30.0


@contextmanager
def served(app: str) -> Iterator[int]:
    """Serve one of ``tests.bench.apps`` on one gthread worker, on the first core where there are two.

    Yield its port.
    """
    with socket.create_server(("127.0.0.1", 0)) as probe:
        port = probe.getsockname()[1]
    words = [
        sys.executable,
        "-m",
        "gunicorn",
        "--config",
        "deploy/gunicorn.conf.py",
        "--worker-class",
        "gthread",
        "--workers",
        "1",
        "--threads",
        "2",
        "--no-control-socket",
        "--log-level",
        "warning",
        "--keep-alive",
        "60",
        "--bind",
        f"127.0.0.1:{port}",
        f"tests.bench.apps:{app}()",
    ]
    process = subprocess.Popen(words)
    try:
        _wait(port, process)
        cores = sorted(os.sched_getaffinity(0))
        if len(cores) > 1:
            for thread in _threads(process.pid):
                os.sched_setaffinity(thread, {cores[0]})
            os.sched_setaffinity(0, {cores[1]})
        yield port
    finally:
        process.terminate()
        process.wait(_START_SECONDS)


def _threads(parent: int) -> list[int]:
    """Return all threads of a process and of its children."""
    children = Path(f"/proc/{parent}/task/{parent}/children").read_text().split()
    return [int(task.name) for pid in (str(parent), *children) for task in Path(f"/proc/{pid}/task").iterdir()]


def _wait(port: int, process: subprocess.Popen[bytes]) -> None:
    until = time.monotonic() + _START_SECONDS
    while time.monotonic() < until and process.poll() is None:
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
        except OSError:
            time.sleep(0.05)
        else:
            return
    raise RuntimeError("the server did not start")


def seconds(port: int, bodies: list[bytes]) -> list[float]:
    """Return how long each body took [s], one after another on one connection."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    taken = []
    for body in bodies:
        begun = time.perf_counter()
        connection.request("POST", "/v1/checks", body, {"Content-Type": "application/json"})
        answer = connection.getresponse()
        answer.read()
        taken.append(time.perf_counter() - begun)
        if answer.status != 200:
            raise RuntimeError(f"the server answered {answer.status}")
    connection.close()
    return taken
