"""The cards of the rules: whole, consistent, found by their files, and shown on a fresh page."""

import string
from pathlib import Path

import pytest

from service.facts import points
from service.rules import book, page
from service.rules.rule import Rule
from tests.rules import test_connectors, test_fitting_signals_mating, test_power, test_readings, test_runs

HOME = Path(book.__file__).parent
FILES = {path.stem.split("_")[0]: path for path in HOME.glob("*/*.py") if path.stem[:1].isalpha() and path.stem[-1] and
         path.stem.split("_")[0][-3:].isdigit()}
FAMILIES = {"PWR": "power", "CON": "connectors", "CBL": "cables", "FIT": "fitting", "AUX": "signals", "MATE": "mating",
            "RUN": "runs", "RDG": "readings"}
ASPECTS = {"CON": {"connections"}, "CBL": {"connections"}, "FIT": {"fit"}, "AUX": {"signals"}, "MATE": {"mating"},
           "PWR": {"power", "mains"}, "RUN": {"runs"}, "RDG": {"power"}}
MOST_POINTS = 15
each_rule = pytest.mark.parametrize("rule", book.RULES, ids=lambda rule: rule.id)


def test_every_file_is_a_rule_and_every_rule_a_file() -> None:
    assert sorted(FILES) == [rule.id.lower() for rule in book.RULES]


def test_rules_are_sorted_and_found_by_id() -> None:
    assert [rule.id for rule in book.RULES] == sorted(book.by_id())
    assert all(book.by_id()[rule.id] is rule for rule in book.rules())


@each_rule
def test_card_is_whole(rule: Rule) -> None:
    assert all((rule.title, rule.message, rule.why, rule.remedy, rule.since, rule.rests_on))
    assert not rule.title.endswith(".")
    assert all(text.endswith(".") for text in (rule.message, rule.why, rule.remedy))


@each_rule
def test_points_suit_the_weight(rule: Rule) -> None:
    most = MOST_POINTS if rule.weight == "caution" else 0
    least = 1 if rule.weight == "caution" else 0
    assert least <= rule.points <= most


@each_rule
def test_rule_stands_with_its_family(rule: Rule) -> None:
    family = rule.id.rstrip(string.digits)
    assert FILES[rule.id.lower()].parent.name == FAMILIES[family]
    assert rule.aspect in ASPECTS[family]


@each_rule
def test_what_hangs_on_the_wiring_says_so(rule: Rule) -> None:
    assert rule.planned == (rule.id.startswith(("CON", "CBL")) or rule.id in {"PWR301", "PWR303"})


@each_rule
def test_every_rule_is_seen_to_break_and_to_keep_silent(rule: Rule) -> None:
    tables = (test_power, test_connectors, test_fitting_signals_mating, test_readings, test_runs)
    assert rule.id in {row[0] for table in tables for row in table.BREAKS}
    silent = {str(row.values[0]) for table in tables for row in table.SILENT}
    assert rule.id in silent


def test_points_are_those_of_the_plan() -> None:
    shared = {
        "CON105": points.BAND_POINTS, "CON108": points.START_WIRE_POINTS, "CON109": points.SHARE_POINTS,
        "CON114": points.MOULDED_POINTS, "CON116": points.PERIPHERAL_CARD_ADAPTER_POINTS,
        "CBL103": points.ASSUMED_SHORT_POINTS, "CON120": points.THREE_VOLT_POINTS, "AUX102": points.HEADER_POINTS,
        "RUN105": points.BAND_POINTS,
    }
    for rule_id, fact in shared.items():
        assert book.by_id()[rule_id].points == fact.value, rule_id


def test_page_is_fresh() -> None:
    assert page.PAGE.read_text(encoding="utf-8") == page.page()


def test_stale_page_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(page, "PAGE", tmp_path / "README.md")
    assert page.main(["--check"]) == 1
    assert page.main([]) == 0
    assert page.main(["--check"]) == 0
    (tmp_path / "README.md").write_text("old", encoding="utf-8")
    assert page.main(["--check"]) == 1
