"""Set the project up in its own folder and run it or its tests. Needs Python 3.11 and nothing else.

    python3 deploy/dev.py run [--port N] [--compiled]
    python3 deploy/dev.py test [arguments of pytest]
"""

import argparse
import hashlib
import importlib.util
import os
import shutil
import signal
import socket
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PYTHON = VENV / "bin" / "python"
STAMP = VENV / "matewell-stamp"
COMPILED = VENV / "compiled"
RUN_LOCK = ROOT / "deploy" / "requirements.txt"
TEST_LOCK = ROOT / "deploy" / "requirements-test.txt"
HOST = "127.0.0.1"
PORT = 8000
LAST_PORT = 65_535
APT = ["apt-get", "install", "-y", "--no-install-recommends", "python3-venv"]
# Settings of the caller's shell that would send packages elsewhere, or bring in others.
STRANGE = ("PIP_PREFIX", "PIP_TARGET", "PIP_USER", "PYTHONHOME", "PYTHONPATH", "VIRTUAL_ENV")


class Stop(Exception):
    """The reason to stop, as one plain sentence."""


def main(words):
    # type: (list[str]) -> None
    """Do what the words ask; the server or pytest takes the place of this process, and so its signals and exit code."""
    signal.signal(signal.SIGTERM, lambda number, _: sys.exit(128 + number))
    if sys.version_info < (3, 11):
        raise Stop("Matewell needs Python 3.11 or newer; this is {}.{}.".format(*sys.version_info[:2]))
    # Everything below takes paths from here, wherever the caller stands.
    os.chdir(ROOT)
    for name in STRANGE:
        os.environ.pop(name, None)
    if words[:1] == ["test"]:
        set_up("test")
        replace(["-m", "pytest", *words[1:]])
    serve(*asked_of_run(words))


def asked_of_run(words: list[str]) -> tuple[int, bool]:
    """Return what the words of ``run`` ask for: the port, and whether the solver is to be compiled."""
    parser = argparse.ArgumentParser(prog="dev.py", description="Set Matewell up, then serve it or test it.")
    commands = parser.add_subparsers(dest="command", required=True)
    run = commands.add_parser("run", help="serve on this machine")
    run.add_argument("--port", type=int, default=PORT, metavar="N", help=f"the port to listen on (default {PORT})")
    run.add_argument("--compiled", action="store_true", help="compile the wiring solver first; needs a C compiler")
    commands.add_parser("test", help="run the tests; what follows is handed to pytest")
    given = parser.parse_args(words)
    port: int = given.port
    if not 0 < port <= LAST_PORT:
        raise Stop(f"A port is a number from 1 to {LAST_PORT}, not {port}.")
    return port, given.compiled


def serve(port: int, compiled: bool) -> None:
    """Serve on a port; that it is free is asked before the long work, and again when it is taken."""
    listen(port).close()
    set_up("test" if compiled else "run")
    home = ROOT
    if compiled:
        home = COMPILED
        do([str(PYTHON), "deploy/compiled.py", str(home)], "The solver could not be compiled")
        os.environ.setdefault("MATEWELL_OPENAPI_DIR", str(ROOT / "openapi"))
    listener = listen(port)
    listener.set_inheritable(True)
    print(f"Matewell: http://{HOST}:{port}/ (Ctrl-C ends it)", flush=True)
    bind = f"fd://{listener.fileno()}"
    words = ["--config", str(ROOT / "deploy" / "gunicorn.conf.py"), "--chdir", str(home), "--bind", bind]
    replace(["-P", "-m", "gunicorn", *words, "service.wsgi:app"])


def listen(port: int) -> socket.socket:
    """Return a socket that listens on the port."""
    try:
        return socket.create_server((HOST, port), backlog=2048)
    except PermissionError:
        raise Stop(f"Port {port} needs more rights than you have; choose one above 1023 with --port.") from None
    except OSError:
        other = port + 1 if port < LAST_PORT else PORT
        raise Stop(f"Port {port} is in use; choose another with --port, for example --port {other}.") from None


def replace(words: list[str]) -> None:
    """Become the project's Python with these words, so that no process is left in between."""
    sys.stdout.flush()
    os.execv(PYTHON, [str(PYTHON), *words])


def set_up(want: str) -> None:
    """Make ``.venv`` ready for ``run`` or ``test``; two set-ups at once wait for each other."""
    import fcntl

    if ready(want):
        return
    folder = os.open(ROOT, os.O_RDONLY)
    try:
        fcntl.flock(folder, fcntl.LOCK_EX)
        if not ready(want):
            install(want)
    except PermissionError as error:
        place = error.filename
        raise Stop(f"{place} cannot be written, so copy the project to a folder of your own.") from None
    finally:
        os.close(folder)


def ready(want: str) -> bool:
    """Say whether a finished set-up of this very project is there; one for tests serves too."""
    try:
        return PYTHON.exists() and STAMP.read_text() in {stamp(want), stamp("test")}
    except OSError:
        return False


def stamp(want: str) -> str:
    """Return what a finished set-up leaves behind: all that it was made from."""
    made_from = hashlib.sha256(f"{want} {ROOT} {sys.implementation.name} {sys.version_info}".encode())
    for file in (RUN_LOCK, TEST_LOCK, ROOT / "pyproject.toml"):
        made_from.update(file.read_bytes())
    return f"{want} {made_from.hexdigest()}\n"


def install(want: str) -> None:
    """Install the locked packages and the project; the stamp comes last, so what was cut short is made anew."""
    print("Setting up .venv; the first time this takes about half a minute.", flush=True)
    need_write()
    if not ready("run"):
        need_venv()
        if VENV.is_symlink() or VENV.is_file():
            VENV.unlink()
        shutil.rmtree(VENV, ignore_errors=True)
        base = getattr(sys, "_base_executable", None) or sys.executable
        do([base, "-m", "venv", str(VENV)], "The virtual environment could not be made")
    STAMP.unlink(missing_ok=True)
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-input"]
    pip += [] if os.geteuid() else ["--root-user-action=ignore"]
    lock = TEST_LOCK if want == "test" else RUN_LOCK
    do([*pip, "--require-hashes", "-r", str(lock)], "The packages could not be installed")
    do([*pip, "--no-deps", "--no-build-isolation", "-e", "."], "The project could not be installed")
    half = STAMP.with_suffix(".half")
    half.write_text(stamp(want))
    half.replace(STAMP)


def need_write() -> None:
    """Stop unless the folder, and a set-up that is there, can be written."""
    for place in (ROOT, VENV):
        if place.exists() and not os.access(place, os.W_OK):
            raise PermissionError(13, "not writable", str(place))


def need_venv() -> None:
    """Get the module that Debian leaves out of its Python."""
    if importlib.util.find_spec("ensurepip") and importlib.util.find_spec("venv"):
        return
    if not shutil.which("apt-get"):
        raise Stop("This Python has no venv and ensurepip modules; install them, then run this again.")
    if os.geteuid():
        raise Stop(f"This Python has no venv module; run: sudo {' '.join(APT)}")
    do(["apt-get", "update", "-qq"], "The list of Debian packages could not be read")
    os.environ["DEBIAN_FRONTEND"] = "noninteractive"
    do(APT, "python3-venv could not be installed")


def do(command: list[str], failure: str) -> None:
    """Run a command to its end; if this process is ended before, so are the command and its children."""
    child = subprocess.Popen(command, stdin=subprocess.DEVNULL, start_new_session=True)
    try:
        code = child.wait()
    except BaseException:
        os.killpg(child.pid, signal.SIGTERM)
        child.wait()
        raise
    if code:
        raise Stop(f"{failure}; the lines above say why.")


if __name__ == "__main__":
    try:
        main(sys.argv[1:])
    except Stop as reason:
        sys.exit(str(reason))
    except KeyboardInterrupt:
        sys.exit(130)
