"""Who may import whom, and that the core stays light."""

import subprocess
import sys
import tomllib
from typing import Any

import pytest

from tests.house.tree import ROOT, tracked

HEAVY = ("flask", "marshmallow", "numpy", "ortools", "redis", "scipy", "werkzeug")
# Who may import what a contract forbids to all others.
ALLOWED = {
    "flask": {"api", "app", "wsgi", "cli"},
    "marshmallow": {"intake", "cli"},
}


def _contracts() -> list[dict[str, Any]]:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    contracts: list[dict[str, Any]] = settings["tool"]["importlinter"]["contracts"]
    return contracts


def _rooms() -> set[str]:
    tails = {name.split("/")[1] for name in tracked() if name.startswith("service/") and name.endswith(".py")}
    return {tail.removesuffix(".py") for tail in tails} - {"__init__"}


def test_every_contract_is_kept() -> None:
    command = [sys.executable, "-c", "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports())"]
    result = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stdout + result.stderr
    assert f"Contracts: {len(_contracts())} kept, 0 broken" in result.stdout


@pytest.mark.parametrize("library", ALLOWED)
def test_contract_names_every_other_room(library: str) -> None:
    contract = next(one for one in _contracts() if library in one.get("forbidden_modules", ()))
    named = {name.removeprefix("service.") for name in contract["source_modules"]}
    assert _rooms() - named <= ALLOWED[library], f"a room is missing in the contract {contract['name']!r}"
    assert not named & ALLOWED[library]


def test_core_imports_nothing_heavy() -> None:
    code = f"import sys, service.verdict.check; print(*sorted(set({HEAVY!r}) & set(sys.modules)))"
    result = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stderr
    assert result.stdout.split() == []
