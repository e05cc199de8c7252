"""The bound of stops that needs no search: never more than the best plan has, and no less where it is plain."""

import pytest

from service.wiring.components import least_stops, solve
from service.wiring.search import NoWiring
from tests.wiring.random_problems import problem, starved
from tests.wiring.realistic_problems import cards_on_adapters, realistic


@pytest.mark.parametrize("seed", range(60))
def test_no_plan_has_fewer_stops(seed: int) -> None:
    posed = starved(problem(seed), seed)
    try:
        stops = solve(posed).objective[0]
    except NoWiring:
        return
    assert least_stops(posed) <= stops


def test_where_plugs_are_plainly_too_few_it_says_how_many() -> None:
    posed = realistic("storage", 0)
    bare = posed._replace(cables=(), port_types=tuple(of._replace(fits=(), adapter_fits=()) for of in posed.port_types))
    required = sum(port.required for device in posed.devices for port in device.ports)
    assert least_stops(bare) == required == solve(bare).objective[0]


def test_where_all_can_be_fed_it_says_nothing() -> None:
    assert least_stops(cards_on_adapters(4, different=True)) == 0
