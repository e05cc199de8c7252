"""Make a copy of the service in which the wiring solver is compiled: same source, same answers, less time.

    .venv/bin/python deploy/compiled.py FOLDER

Whoever finds ``FOLDER`` before the project on the path of Python uses the copy. It is made again when the source has
changed. Needs mypy, a C compiler and the headers of this Python.
"""

import hashlib
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SOLVER = (
    "asks", "bounds", "canonical", "clusters", "components", "crowding", "decisions", "families", "markets", "memo",
    "menus", "objective", "overcurrent", "patterns", "plugs", "problem", "search", "split", "transport", "ways",
)
STAMP = "compiled-from"


class Stop(Exception):
    """The reason to stop, as one plain sentence."""


def compiled(into: Path) -> None:
    """Make the copy, unless one of this source is there."""
    made_from = digest()
    stamp = into / STAMP
    if stamp.exists() and stamp.read_text() == made_from:
        return
    need_compiler()
    shutil.rmtree(into, ignore_errors=True)
    shutil.copytree(ROOT / "service", into / "service", ignore=shutil.ignore_patterns("__pycache__"))
    names = [f"service/wiring/{name}.py" for name in SOLVER]
    print("Compiling the solver; this takes about a minute.", flush=True)
    command = [sys.executable, "-m", "mypyc", *names]
    done = subprocess.run(command, cwd=into, capture_output=True, text=True, check=False)
    if done.returncode:
        raise Stop(f"The solver could not be compiled:\n{done.stdout[-2000:]}{done.stderr[-2000:]}")
    shutil.rmtree(into / "build")
    stamp.write_text(made_from)


def digest() -> str:
    """Return what a copy is made from: this Python, this program, and all that the service holds."""
    found = hashlib.sha256(f"{sys.version} {sysconfig.get_platform()}".encode())
    for file in (Path(__file__), *sorted((ROOT / "service").rglob("*.*"))):
        if file.is_file() and file.suffix != ".pyc":
            found.update(f"{file.relative_to(ROOT)} {hashlib.sha256(file.read_bytes()).hexdigest()}\n".encode())
    return found.hexdigest()


def need_compiler() -> None:
    """Stop unless there is a C compiler and the headers of this Python."""
    if not any(shutil.which(name) for name in ("cc", "gcc", "clang")):
        raise Stop("There is no C compiler; on Debian: apt-get install gcc libc6-dev")
    if not Path(sysconfig.get_path("include"), "Python.h").exists():
        raise Stop("The headers of this Python are missing; on Debian: apt-get install python3-dev")


if __name__ == "__main__":
    try:
        compiled(Path(sys.argv[1]).resolve())
    except (Stop, IndexError) as reason:
        sys.exit(str(reason) if isinstance(reason, Stop) else __doc__)
