"""The compiled solver: it holds just what the solver is made of, and passes the same tests."""

import importlib.util
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

from tests.house.tree import ROOT

SECONDS = 900
SAME_TESTS = ("tests/wiring", "tests/reference/wiring", "tests/regressions")
WHITE_BOX = "tests/wiring/test_bounds.py"
"""Puts a part of its own into the search, which only the source lets it do."""


def _program() -> ModuleType:
    spec = importlib.util.spec_from_file_location("compiled", ROOT / "deploy" / "compiled.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def _python(*words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, *words]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=SECONDS, check=False)


def test_what_is_compiled_is_the_solver_and_all_of_it() -> None:
    asked = "import sys, service.wiring.components; print(*sorted(m for m in sys.modules if m.startswith('service.')))"
    needed = {name.removeprefix("service.wiring.") for name in _python("-c", asked).stdout.split()}
    assert needed - {"service.wiring"} == set(_program().SOLVER)


def test_a_change_of_the_source_asks_for_a_new_copy(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    program = _program()
    room = tmp_path / "service" / "wiring"
    room.mkdir(parents=True)
    (room / "search.py").write_text("BUDGET = 1\n")
    monkeypatch.setattr(program, "ROOT", tmp_path)
    monkeypatch.setattr(program, "__file__", str(tmp_path / "compiled.py"))
    (tmp_path / "compiled.py").write_text("")
    before = program.digest()
    assert program.digest() == before
    (room / "search.py").write_text("BUDGET = 2\n")
    assert program.digest() != before


@pytest.mark.slow
def test_the_compiled_solver_passes_the_tests_of_the_solver(tmp_path: Path) -> None:
    program = _program()
    try:
        program.need_compiler()
    except program.Stop as reason:
        pytest.skip(str(reason))
    program.compiled(tmp_path)
    path = ["-o", f"pythonpath={tmp_path} ."]
    witness = tmp_path / "test_witness.py"
    witness.write_text(
        "from service.wiring import search\n\n\n"
        "def test_it_is_compiled():\n    assert not search.__file__.endswith('.py')\n"
    )
    done = _python("-m", "pytest", "-q", *path, f"--ignore={WHITE_BOX}", *SAME_TESTS, str(witness))
    assert done.returncode == 0, done.stdout[-3000:]
