"""Programs that are asked for a second opinion: the tests that need one are skipped where it is not installed.

CI sets ``MATEWELL_REFERENCES=required``, and then nothing is skipped.
"""

import os
import shutil
from functools import cache

import pytest

NEEDED = "required"


@cache
def program(name: str) -> str:
    """Return the path of a program; where it is not installed, skip the test that asks, or fail it if required."""
    path = shutil.which(name)
    if path:
        return path
    said = f"{name} IS NOT INSTALLED, so the physics is not held against it: apt-get install {name}"
    if os.environ.get("MATEWELL_REFERENCES") == NEEDED:
        pytest.fail(said)
    pytest.skip(said)
