"""Write the lock files of this folder from pyproject.toml; ``--check``: say whether they follow from it."""

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BUILD_TOOL = "setuptools>=77"
LOCKS = {
    "requirements.txt": (),
    "requirements-test.txt": ("--extra", "test", "-c", "deploy/requirements.txt"),
    "requirements-compiled.txt": ("--extra", "compiled", "-c", "deploy/requirements-test.txt"),
}


def compile_lock(name: str, out: Path) -> None:
    """Write one lock to ``out``; versions that stand in it already are kept where they can be."""
    command = [
        sys.executable, "-m", "uv", "pip", "compile", "--quiet", "--universal", "--python-version", "3.11",
        "--generate-hashes", "--no-header", "--no-annotate", *LOCKS[name], "pyproject.toml", "-", "-o", str(out),
    ]
    subprocess.run(command, cwd=ROOT, input=BUILD_TOOL, text=True, check=True, stdout=subprocess.DEVNULL)


def main() -> int:
    """Return 1 if a lock was asked to be checked and is stale."""
    stale = []
    with tempfile.TemporaryDirectory() as scratch:
        for name in LOCKS:
            lock = ROOT / "deploy" / name
            if "--check" not in sys.argv[1:]:
                compile_lock(name, lock)
                continue
            copy = Path(shutil.copy(lock, scratch))
            compile_lock(name, copy)
            if copy.read_bytes() != lock.read_bytes():
                stale.append(name)
    for name in stale:
        print(f"deploy/{name} does not follow from pyproject.toml: run python deploy/lock.py", file=sys.stderr)
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
