"""Every rule shows its four builds: past the limit, passing, exactly on the limit, figure missing; and 99, 100, 101 %.

A rule without a limit, or without a figure that can be missing, says why; and whoever says so is held to it.
"""

import pytest

from service.rules.book import RULES
from service.rules.rule import Finding, Rule
from tests.rules import test_connectors, test_fitting_signals_mating, test_power, test_readings, test_runs
from tests.rules.at_the_limit import BREAKS_BELOW, LEFT_OVER, LIMITS, NEVER_MISSING, NO_LIMIT, TOLD, Build
from tests.rules.cases import heard, outcome

TABLES = (test_power, test_connectors, test_fitting_signals_mating, test_readings, test_runs)
BREAKS = [row for table in TABLES for row in table.BREAKS]
SILENT = {str(row.values[0]) for table in TABLES for row in table.SILENT}
WITH_UNKNOWN = (test_power, test_fitting_signals_mating, test_runs)
MISSING = {rule for table in WITH_UNKNOWN for rule, *_ in table.UNKNOWN} | {"CON120"}
EQUAL_OR_NOT = {"AUX103", "MATE103"}
"""Rules that tell a limit which is not a bound on a continuous amount."""
ROWS = [
    pytest.param(rule, limit, build, id=f"{rule} {limit}") for rule, rows in LIMITS.items() for limit, build in rows
]
each_rule = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)


@pytest.mark.parametrize("percent", [99, 100, 101])
@pytest.mark.parametrize(("rule", "limit", "build"), ROWS)
def test_breaks_only_past_its_limit(rule: str, limit: float, build: Build, percent: int) -> None:
    said = [what for what, _ in outcome(rule, build(limit * percent / 100))]
    assert said == ["breaks"] * (percent < 100 if rule in BREAKS_BELOW else percent > 100)


@pytest.mark.parametrize(("rule", "limit", "build", "told"), [
    pytest.param(rule, limit, build, told, id=f"{rule} {limit}") for rule, rows in LIMITS.items()
    for (limit, build), told in zip(rows, TOLD[rule][0], strict=True)
])
def test_tells_what_it_has_measured_its_limit_and_the_unit(rule: str, limit: float, build: Build, told: float) -> None:
    past = 0.99 if rule in BREAKS_BELOW else 1.01
    (found,) = heard(rule, build(limit * past))
    assert isinstance(found, Finding)
    assert found.unit == TOLD[rule][1]
    assert found.limit == pytest.approx(told)
    assert found.measured == pytest.approx(LEFT_OVER.get(rule, told * past))


@each_rule
def test_a_build_breaks_it_and_one_passes(rule: Rule) -> None:
    assert rule.id in {row[0] for row in BREAKS}
    assert rule.id in SILENT | set(LIMITS)


@each_rule
def test_limit_is_tried_or_there_is_none(rule: Rule) -> None:
    told = [one.limit for name, given, _ in BREAKS if name == rule.id for one in heard(name, given)
            if isinstance(one, Finding)]
    assert (rule.id in LIMITS) != (rule.id in NO_LIMIT)
    assert (rule.id in NO_LIMIT) == all(limit is None for limit in told) or rule.id in EQUAL_OR_NOT


@each_rule
def test_missing_figure_is_tried_or_cannot_be(rule: Rule) -> None:
    assert (rule.id in MISSING) != (rule.id in NEVER_MISSING)


def test_no_row_is_without_a_rule() -> None:
    ids = {rule.id for rule in RULES}
    assert set(LIMITS) | set(NO_LIMIT) | set(NEVER_MISSING) | MISSING <= ids
    assert all((*NO_LIMIT.values(), *NEVER_MISSING.values()))
