"""The files of the project, as git lists them."""

import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


@cache
def tracked() -> tuple[str, ...]:
    """Return the files that are in the index and on disk, by path from the top."""
    command = ["git", "-c", f"safe.directory={ROOT}", "ls-files", "-z"]
    listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return tuple(name for name in listed.split("\0") if name and (ROOT / name).is_file())
