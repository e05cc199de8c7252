"""The bench itself runs: every stage is timed and the served bodies are answered."""

import pytest

from service.app import create_app
from tests.bench.pins import FORMULAS, microseconds
from tests.bench.server import seconds, served
from tests.bench.sheets import bodies
from tests.bench.stages import dearest_rules, table
from tests.bench.worst import WORST


def test_a_round_runs() -> None:
    few = bodies(inline=False)[:3]
    assert all(us > 0 for us in table(few, 1).values())
    assert len(dearest_rules(few, most=10, repeats=1)) == 10
    with served("plain") as port:
        assert len(seconds(port, few)) == len(few)


def test_formulas_of_the_pin_bench_have_an_answer() -> None:
    assert all(us > 0 for us in microseconds(calls=3, repeats=1).values())
    assert [name for name, formula in FORMULAS.items() if formula() is None] == []


@pytest.mark.parametrize("name", sorted(WORST))
def test_the_worst_sheets_are_answered_with_a_proven_plan(name: str) -> None:
    answer = create_app().test_client().post("/v1/checks", json=WORST[name]())
    assert answer.status_code == 200
    assert answer.json is not None
    assert answer.json["plan"]["proven"]
