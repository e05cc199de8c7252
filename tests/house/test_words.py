"""Words that no file may hold: places of one machine, and talk about how the project came to be."""

import re

import pytest

from tests.house.tree import ROOT, tracked

NO_TEXT = (".png", ".ico", ".woff2")
# Written in halves, so that this file does not hold them.
HALVES = {
    "a folder of one machine": [
        ("/wo", r"rk/"), ("/tm", r"p/(?!\*)"), ("/ro", r"ot/"), ("/ho", r"me/\w"), ("/op", r"t/(?:pypi|wheels)"),
    ],
    "a registry's address": [("files.python", r"hosted\.org"), ("pypi", r"\.org"), ("registry", r"\.npmjs")],
    "talk about its making": [
        (r"\btrans", r"cripts?\b"), (r"\bthe se", r"ed\b(?! of| number)"), (r"\bhel", r"per agents?\b"),
        (r"\bsub", r"agents?\b"), (r"\blanguage mo", r"dels?\b"), (r"\bAs an A", r"I\b"), (r"\bfar", r"m-\w"),
    ],
    "an unfinished place": [(r"\bTO", r"DO\b"), (r"\bFIX", r"ME\b"), (r"\bXX", r"X\b")],
}


def _patterns(kind: str) -> list[re.Pattern[str]]:
    flags = re.IGNORECASE if kind == "talk about its making" else 0
    return [re.compile(first + second, flags) for first, second in HALVES[kind]]


def _found(patterns: list[re.Pattern[str]], line: str) -> bool:
    return any(pattern.search(line) for pattern in patterns)


@pytest.mark.parametrize("kind", HALVES)
def test_no_file_holds(kind: str) -> None:
    patterns = _patterns(kind)
    found = []
    for name in tracked():
        if name.endswith(NO_TEXT):
            continue
        lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
        found += [f"{name}:{number}: {line.strip()}" for number, line in enumerate(lines, 1) if _found(patterns, line)]
    assert found == []


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("a folder of one machine", "see /wo" + "rk/main"),
        ("a registry's address", "https://pypi" + ".org/simple"),
        ("talk about its making", "from the Trans" + "cript"),
        ("an unfinished place", "# TO" + "DO later"),
    ],
)
def test_patterns_find_what_they_are_for(kind: str, line: str) -> None:
    assert _found(_patterns(kind), line)
