"""The bench itself runs: every stage is timed and the served bodies are answered."""

from tests.bench.server import seconds, served
from tests.bench.sheets import bodies
from tests.bench.stages import dearest_rules, table


def test_a_round_runs() -> None:
    few = bodies(inline=False)[:3]
    assert all(us > 0 for us in table(few, 1).values())
    assert len(dearest_rules(few, most=10, repeats=1)) == 10
    with served("plain") as port:
        assert len(seconds(port, few)) == len(few)
