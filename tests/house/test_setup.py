"""The two commands of the set-up, run as a person runs them; the ones that install are marked slow."""

import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
import tomllib
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from tests.house.tree import ROOT, tracked

START_SECONDS = 240
END_SECONDS = 30
SERVER_PROCESSES = 3  # a master and two workers
DEV = "deploy/dev.py"
PIN = re.compile(r"^([a-z0-9.-]+)==([^ ;]+)", re.MULTILINE)


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


def _dev(root: Path, *words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(root / DEV), *words]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, timeout=START_SECONDS, check=False)


def _alive(port: int) -> bool:
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/livez", timeout=5) as answer:
            return bool(answer.status == 200)
    except OSError:
        return False


def _processes(root: Path) -> list[str]:
    """Return the command lines of the processes that run from the ``.venv`` of a copy."""
    lines = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            line = (folder / "cmdline").read_bytes().replace(b"\0", b" ").decode(errors="replace")
        except OSError:
            continue
        if str(root / ".venv") in line:
            lines.append(line)
    return lines


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a copy of the tracked files under a path with a space."""
    root = tmp_path_factory.mktemp("a b") / "the project"
    for name in tracked():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, root / name)
    return root


@pytest.fixture
def taken_port() -> Iterator[int]:
    """Return a port that somebody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        yield listener.getsockname()[1]


def test_busy_port_is_one_sentence_before_anything_is_installed(copy: Path, tmp_path: Path, taken_port: int) -> None:
    result = _dev(copy, "run", "--port", str(taken_port), cwd=tmp_path)
    assert result.returncode == 1
    assert result.stdout == ""
    assert re.fullmatch(rf"Port {taken_port} is in use; choose another with --port, .*\.\n", result.stderr)
    assert not (copy / ".venv").exists()


@pytest.mark.parametrize("port", ["0", "65536", "-1"])
def test_impossible_port(copy: Path, tmp_path: Path, port: str) -> None:
    result = _dev(copy, "run", f"--port={port}", cwd=tmp_path)
    assert (result.returncode, result.stderr) == (1, f"A port is a number from 1 to 65535, not {port}.\n")


@pytest.mark.parametrize(
    ("lock", "extras"), [("requirements.txt", []), ("requirements-test.txt", ["test"])], ids=["run", "test"]
)
def test_lock_pins_what_the_project_asks_for(lock: str, extras: list[str]) -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = project["dependencies"] + [line for extra in extras for line in project["optional-dependencies"][extra]]
    pins = dict(PIN.findall((ROOT / "deploy" / lock).read_text(encoding="utf-8")))
    wanted = [Requirement(line) for line in asked]
    assert [str(one) for one in wanted if not one.specifier.contains(pins.get(one.name, "0"))] == []


def test_both_locks_pin_the_same_versions() -> None:
    run, test = (dict(PIN.findall((ROOT / "deploy" / name).read_text(encoding="utf-8")))
                 for name in ("requirements.txt", "requirements-test.txt"))
    assert run.items() <= test.items()


@pytest.mark.slow
def test_first_run_serves_and_sigterm_leaves_nothing(copy: Path, tmp_path: Path) -> None:
    port = _free_port()
    environ = os.environ | {"WEB_CONCURRENCY": "2"}
    starter = subprocess.Popen([sys.executable, str(copy / DEV), "run", "--port", str(port)], cwd=tmp_path, env=environ)
    try:
        until = time.monotonic() + START_SECONDS
        # The first worker may answer before the second one is there.
        while not (_alive(port) and len(_processes(copy)) == SERVER_PROCESSES):
            assert starter.poll() is None, "the starter ended by itself"
            assert time.monotonic() < until, f"not up: {_processes(copy)}"
            time.sleep(0.2)
        starter.send_signal(signal.SIGTERM)
        assert starter.wait(END_SECONDS) == 0
        assert _processes(copy) == []
        assert not _alive(port)
    finally:
        starter.terminate()
        starter.wait(END_SECONDS)


@pytest.mark.slow
def test_set_up_cut_short_is_made_anew(copy: Path, tmp_path: Path) -> None:
    shutil.rmtree(copy / ".venv", ignore_errors=True)
    starter = subprocess.Popen([sys.executable, str(copy / DEV), "test", "--version"], cwd=tmp_path)
    until = time.monotonic() + END_SECONDS
    while not (copy / ".venv" / "bin" / "python").exists() and time.monotonic() < until:
        time.sleep(0.05)
    starter.send_signal(signal.SIGTERM)
    assert starter.wait(END_SECONDS) == 128 + signal.SIGTERM
    assert not (copy / ".venv" / "matewell-stamp").exists()
    assert _processes(copy) == []
    second = _dev(copy, "test", "--version", cwd=tmp_path)
    assert (second.returncode, second.stdout.splitlines()[-1].split()[0]) == (0, "pytest"), second.stderr
    third = _dev(copy, "test", "tests/there_is_none.py", cwd=tmp_path)
    assert "Setting up" not in third.stdout
    assert third.returncode == 4, "pytest's own exit code for a file that is not there"


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
def test_folder_that_cannot_be_written(copy: Path, tmp_path: Path) -> None:
    copy.chmod(0o500)
    try:
        result = _dev(copy, "run", "--port", str(_free_port()), cwd=tmp_path)
    finally:
        copy.chmod(0o700)
    assert result.returncode == 1
    assert result.stderr.endswith("copy the project to a folder of your own.\n")
