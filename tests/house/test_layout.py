"""What lies where: the top level is fixed, every room says what it knows, every module says what it is for."""

import ast
from pathlib import Path

import pytest

from tests.house.tree import ROOT, tracked

TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "service", "openapi", "tests", "deploy", "Dockerfile"}
ROOMS = sorted(file for file in tracked() if file.startswith("service/") and file.endswith("/__init__.py"))
MODULES = sorted(file for file in tracked() if file.startswith("service/") and file.endswith(".py"))


def test_top_level_is_what_was_agreed() -> None:
    seen = {file.split("/")[0] for file in tracked()}
    assert {name for name in seen if not name.startswith(".")} == TOP_LEVEL


def test_every_folder_with_modules_is_a_room() -> None:
    folders = {Path(module).parent.as_posix() for module in MODULES}
    assert folders - {"service"} == {Path(room).parent.as_posix() for room in ROOMS} - {"service"}


@pytest.mark.parametrize("room", [room for room in ROOMS if room != "service/__init__.py"])
def test_room_holds_only_what_it_knows(room: str) -> None:
    tree = ast.parse((ROOT / room).read_text(encoding="utf-8"))
    assert ast.get_docstring(tree), f"{room} does not say what it knows"
    assert len(tree.body) == 1, f"{room} holds more than its docstring"


def test_every_module_says_what_it_is_for() -> None:
    silent = [name for name in MODULES if not ast.get_docstring(ast.parse((ROOT / name).read_text(encoding="utf-8")))]
    assert silent == []
