"""Named builds on which a plausible search goes wrong; each expected objective is worked out by hand in its comment."""

from service.wiring.components import solve
from service.wiring.objective import judge
from service.wiring.problem import (
    FREE,
    UNLIMITED,
    AdapterFit,
    AdapterKind,
    CableKind,
    Device,
    Fit,
    GroupLimit,
    Limits,
    Load,
    Points,
    Port,
    PortType,
    Problem,
    RailLimits,
    Role,
)
from service.wiring.split import split

POINTS = Points(band=5, start=3, share=8, share_limit=18_000)
PORT = Port(0, True, 1)


def _twelve(current_ma: int) -> Load:
    return (current_ma, 0, 0, current_ma, 0, 0)


def _upto(current_ma: int) -> RailLimits:
    return Limits(stop=current_ma, comfort=current_ma), FREE, FREE


def _problem(
    devices: list[Device],
    types: list[PortType],
    cables: list[CableKind],
    sockets: tuple[int, ...] = (),
    adapters: tuple[AdapterKind, ...] = (),
    groups: tuple[GroupLimit, ...] = (),
) -> Problem:
    cables = [kind if kind.takes else kind._replace(takes=(0,) * len(sockets)) for kind in cables]
    return Problem(tuple(devices), tuple(types), tuple(cables), sockets, adapters, groups, POINTS)


def _device(role: Role, load: Load, *ports: Port) -> Device:
    return Device(role, ports, load)


def test_a_place_loaded_anyhow_does_not_make_a_light_card_share_beside_a_spare_cable() -> None:
    """One port is at 93 % whatever is done: 330 above comfort. Two cards at 8 A: alone 8/16 = 500, together 1000."""
    single, double = CableKind(2, (), (1,), (_upto(16_000),)), CableKind(1, (), (1, 1), (_upto(16_000),) * 2)
    hot = CableKind(1, (), (1,), (_upto(10_000),))
    posed = _problem(
        [
            _device("processor", _twelve(9_300), Port(1, True, 1)),
            _device("card", _twelve(8_000), PORT),
            _device("card", _twelve(8_000), PORT),
        ],
        [
            PortType(tuple(Fit(k, p, 1, UNLIMITED) for k, p in ((0, 0), (1, 0), (1, 1)))),
            PortType((Fit(2, 0, 1, UNLIMITED),)),
        ],
        [single, double, hot],
    )
    found = solve(posed)
    assert found.objective[12] == 330
    assert found.objective[14] == 3
    cables = {(source.fit, source.copy) for sources in found.wiring.sources[1:] for source in sources if source}
    assert cables == {(0, 0), (0, 1)}


def test_an_optional_plug_halves_its_neighbour() -> None:
    """18 A over one plug of 20 A is 900, over two it is 450 each: the optional plug is worth a cable."""
    posed = _problem(
        [_device("processor", _twelve(18_000), PORT, Port(0, False, 1))],
        [PortType((Fit(0, 0, 1, UNLIMITED),))],
        [CableKind(2, (), (1,), (_upto(20_000),))],
    )
    assert solve(posed).objective == (*(0,) * 14, 2, 0)


def test_an_optional_plug_left_out_is_counted_only_beside_a_hot_neighbour() -> None:
    """One cable only. At 900 the plug left out is counted; at 400 it is not."""
    for current, comfort, left_out in ((18_000, 300, 1), (8_000, 0, 0)):
        posed = _problem(
            [_device("processor", _twelve(current), PORT, Port(0, False, 1))],
            [PortType((Fit(0, 0, 1, UNLIMITED),))],
            [CableKind(1, (), (1,), (_upto(20_000),))],
        )
        assert solve(posed).objective == (*(0,) * 12, comfort, left_out, 1, 0)


def test_a_group_joins_what_shares_no_plug() -> None:
    """Processor and card, 10 A each, have a cable each in group 0 (15 A); the card must take the other, in group 1."""
    posed = _problem(
        [_device("processor", _twelve(10_000), PORT), _device("card", _twelve(10_000), Port(1, True, 1))],
        [PortType((Fit(0, 0, 1, UNLIMITED),)), PortType((Fit(1, 0, 1, UNLIMITED), Fit(2, 0, 1, UNLIMITED)))],
        [
            CableKind(1, (), (1,), (UNLIMITED,), (0,)),
            CableKind(1, (), (1,), (UNLIMITED,), (0,)),
            CableKind(1, (), (1, 1), (UNLIMITED,) * 2, (1,)),
        ],
        groups=(GroupLimit(0, 15_000), GroupLimit(0, 15_000)),
    )
    assert len(split(posed)) == 1
    found = solve(posed)
    assert found.objective == (*(0,) * 14, 2, 1)
    assert judge(posed, found.wiring).groups == (10_000, 10_000)


def test_a_group_that_cannot_pass_its_limit_joins_nothing() -> None:
    posed = _problem(
        [_device("processor", _twelve(10_000), PORT), _device("card", _twelve(10_000), Port(1, True, 1))],
        [PortType((Fit(0, 0, 1, UNLIMITED),)), PortType((Fit(1, 0, 1, UNLIMITED),))],
        [CableKind(1, (), (1,), (UNLIMITED,), (0,)), CableKind(1, (), (1,), (UNLIMITED,), (0,))],
        groups=(GroupLimit(0, 30_000),),
    )
    assert len(split(posed)) == 2


def test_a_drive_chain_is_over_its_limit_only_at_start_up() -> None:
    """Four drives, 0.6 A running and 2.5 A starting; chains of 8 A at start-up: three on one chain are enough."""
    chain = (Limits(stop=8_000, start_stop=8_000), FREE, FREE)
    posed = _problem(
        [_device("drive", (600, 0, 0, 2_500, 0, 0), PORT)] * 4,
        [PortType(tuple(Fit(0, plug, 1, UNLIMITED) for plug in range(4)))],
        [CableKind(2, (), (1,) * 4, (chain,) * 4)],
    )
    assert solve(posed).objective == (*(0,) * 14, 2, 4)
    alone = solve(posed._replace(cables=(posed.cables[0]._replace(count=1),)))
    assert alone.objective[:2] == (1, 1), "one left unfed is one stop, all four starting on one chain are four"


def test_a_plug_that_splits_feeds_two_small_ports() -> None:
    """A 4+4 plug on two 4-pin ports: one cable, no loose plug; an 8-pin port would need both halves."""
    types = [PortType((Fit(0, 0, 1, UNLIMITED),)), PortType((Fit(0, 0, 2, UNLIMITED),))]
    cable = CableKind(1, (), (2,), (UNLIMITED,))
    small = _problem([_device("processor", _twelve(4_000), PORT, PORT)], types, [cable])
    assert solve(small).objective == (*(0,) * 14, 1, 0)
    mixed = _problem([_device("processor", _twelve(4_000), PORT, Port(1, True, 1))], types, [cable])
    assert solve(mixed).objective == (1, 1, 0, 1, *(0,) * 10, 1, 0)


def test_two_singles_beat_a_double_ended_cable_for_a_heavy_card_and_not_for_a_light_one() -> None:
    """Two ports of 10 A (or 3 A) on cables of 24 A: together 834 each and a sharing caution, alone 417."""
    single, double = CableKind(2, (), (1,), (_upto(24_000),)), CableKind(1, (), (1, 1), (_upto(24_000),) * 2)
    types = [PortType(tuple(Fit(k, p, 1, UNLIMITED) for k, p in ((0, 0), (1, 0), (1, 1))))]
    heavy = _problem([_device("card", _twelve(20_000), PORT, PORT)], types, [double, single][::-1])
    assert solve(heavy).objective == (*(0,) * 14, 2, 0)
    light = _problem([_device("card", _twelve(6_000), PORT, PORT)], types, [single, double])
    assert solve(light).objective == (*(0,) * 14, 1, 0)
    only = _problem([_device("card", _twelve(20_000), PORT, PORT)], types, [single._replace(count=0), double])
    assert solve(only).objective == (*(0,) * 8, 8, 0, 0, 0, 468, 0, 1, 0)


def test_a_cable_that_takes_two_sockets_is_left_for_two_that_take_one() -> None:
    """Two sockets: the two-socket cable feeds one port, the two small ones feed both."""
    posed = _problem(
        [_device("card", _twelve(5_000), PORT)] * 2,
        [PortType((Fit(0, 0, 1, UNLIMITED), Fit(1, 0, 1, UNLIMITED)))],
        [CableKind(1, (2,), (1,), (UNLIMITED,)), CableKind(2, (1,), (1,), (UNLIMITED,))],
        (2,),
    )
    assert solve(posed).objective == (*(0,) * 14, 2, 0)


def test_a_chain_of_two_adapters_is_found_and_a_third_is_not() -> None:
    """Type 0 takes only adapter 0, whose input takes only adapter 1, whose input takes a plug, or only adapter 2."""
    free = (UNLIMITED,)
    adapters = tuple(AdapterKind(1, 2, 1, of + 1, (1,), free) for of in range(3))
    types = [PortType((), (AdapterFit(of, UNLIMITED),)) for of in range(3)]
    plug = PortType((Fit(0, 0, 1, UNLIMITED),))
    cable = CableKind(1, (), (1,), (UNLIMITED,))
    device = _device("card", _twelve(1_000), PORT)
    two = _problem([device], [*types[:2], plug], [cable], adapters=adapters[:2])
    assert solve(two).objective == (*(0,) * 11, 2, 0, 0, 1, 0)
    three = _problem([device], [*types, plug], [cable], adapters=adapters)
    assert solve(three).objective[:2] == (1, 1)


def test_an_adapter_takes_as_many_inputs_as_pay() -> None:
    """30 A through two inputs is 15 A each (1000 of 15 A), through three it is 10 A (667): the third cable pays."""
    adapter = AdapterKind(1, 2, 1, 1, (2, 3), (UNLIMITED, UNLIMITED))
    posed = _problem(
        [_device("card", _twelve(30_000), PORT)],
        [PortType((), (AdapterFit(0, UNLIMITED),)), PortType((Fit(0, 0, 1, UNLIMITED),))],
        [CableKind(3, (), (1,), (_upto(15_000),))],
        adapters=(adapter,),
    )
    assert solve(posed).objective == (*(0,) * 11, 1, 67, 0, 3, 0)
    assert len(solve(posed).wiring.adapter_inputs[0][2]) == 3


def test_a_cable_to_be_bought_is_used_only_when_a_port_would_go_without() -> None:
    own, bought = CableKind(1, (), (1,), (_upto(5_000),)), CableKind(2, (), (1, 1), (_upto(50_000),) * 2, bought=True)
    types = [PortType((Fit(0, 0, 1, UNLIMITED), Fit(1, 0, 1, UNLIMITED), Fit(1, 1, 1, UNLIMITED)))]
    device = _device("card", _twelve(4_000), PORT)
    assert solve(_problem([device], types, [own, bought])).objective[7] == 0
    assert solve(_problem([device] * 2, types, [own, bought])).objective[7] == 1


def test_of_equal_ports_the_last_go_without() -> None:
    """Three equal ports and one cable: which is fed is the same to the objective, so it is the first that is named."""
    single = CableKind(1, (), (1,), (UNLIMITED,))
    processor = _device("processor", _twelve(9_000), PORT, PORT, PORT)
    posed = _problem([processor], [PortType((Fit(0, 0, 1, UNLIMITED),))], [single])
    assert [source is None for source in solve(posed).wiring.sources[0]] == [False, True, True]
