"""Trees and chains: amps add up, volts fall from the source on, and no solution is said where there is none."""

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.chain import Chain, chain, rails_chain
from service.physics.loads import amps_of_watts, most_watts
from service.physics.tree import RESIDUAL, ROOT, flow

VOLTS = 12.0
NOISE = 1e-11
ohms = st.floats(0, 0.3)
loads = st.one_of(st.floats(0, 4), st.floats(4, 12))


@st.composite
def chains(draw: st.DrawFn) -> tuple[list[float], list[float], list[float], list[float]]:
    count = draw(st.integers(1, 8))
    stretches, amps, watts, plugs = (
        draw(st.lists(each, min_size=count, max_size=count)) for each in (ohms, loads, st.floats(0, 12), ohms)
    )
    return stretches, amps, watts, plugs


Drawn = tuple[list[float], list[float], list[float], list[float]]


def _solved(drawn: Drawn) -> Chain | None:
    stretches, amps, watts, plugs = drawn
    return chain(VOLTS, stretches, amps, watts, plugs)


@given(drawn=chains())
def test_amps_add_up_and_watts_are_kept(drawn: Drawn) -> None:
    found = _solved(drawn)
    if found is None:
        return
    _, amps, watts, _ = drawn
    taken = [i + p / v for i, p, v in zip(amps, watts, found.device_volts, strict=True)]
    assert found.plug_amps == pytest.approx(taken)
    tails = [sum(taken[at:]) for at in range(len(taken))]
    assert found.stretch_amps == pytest.approx(tails)
    used = sum(v * i for v, i in zip(found.device_volts, found.plug_amps, strict=True))
    assert VOLTS * found.stretch_amps[0] == pytest.approx(used + found.lost_watts)


@given(drawn=chains())
def test_volts_fall_along_the_chain_and_amps_too(drawn: Drawn) -> None:
    found = _solved(drawn)
    if found is None:
        return
    along = [VOLTS, *found.plug_volts]
    assert along == sorted(along, reverse=True)
    assert list(found.stretch_amps) == sorted(found.stretch_amps, reverse=True)
    assert all(0 < device <= plug for device, plug in zip(found.device_volts, found.plug_volts, strict=True))


@given(drawn=chains())
def test_ohms_law_holds_on_every_stretch(drawn: Drawn) -> None:
    found = _solved(drawn)
    if found is None:
        return
    above = VOLTS
    for stretch, plug, at, device, through, taken in zip(
        drawn[0], drawn[3], found.plug_volts, found.device_volts, found.stretch_amps, found.plug_amps, strict=True,
    ):
        assert above - at == pytest.approx(stretch * through, abs=VOLTS * RESIDUAL)
        assert at - device == pytest.approx(plug * taken, abs=VOLTS * RESIDUAL)
        above = at


@given(drawn=chains(), data=st.data(), more=st.floats(0.001, 0.2))
def test_more_resistance_never_raises_any_volts(drawn: Drawn, data: st.DataObject, more: float) -> None:
    stretches, amps, watts, plugs = drawn
    at = data.draw(st.integers(0, len(stretches) - 1))
    longer = [*stretches[:at], stretches[at] + more, *stretches[at + 1:]]
    before, after = _solved(drawn), chain(VOLTS, longer, amps, watts, plugs)
    assert after is None or before is not None
    if before and after:
        assert all(new <= old + NOISE for old, new in zip(before.device_volts, after.device_volts, strict=True))


@given(drawn=chains(), data=st.data(), more=st.floats(0.01, 5))
def test_more_load_never_raises_any_volts(drawn: Drawn, data: st.DataObject, more: float) -> None:
    stretches, amps, watts, plugs = drawn
    at = data.draw(st.integers(0, len(stretches) - 1))
    heavier = [*watts[:at], watts[at] + more, *watts[at + 1:]]
    before, after = _solved(drawn), chain(VOLTS, stretches, amps, heavier, plugs)
    assert after is None or before is not None
    if before and after:
        assert all(new <= old + NOISE for old, new in zip(before.device_volts, after.device_volts, strict=True))


@given(volts=st.floats(1, 20), way=st.floats(0.001, 1), share=st.one_of(st.floats(0, 0.999), st.floats(1.001, 5)))
def test_a_single_load_agrees_with_the_quadratic(volts: float, way: float, share: float) -> None:
    watts = most_watts(volts, way) * share
    found, expected = flow(volts, [ROOT], [way], [0.0], [watts]), amps_of_watts(volts, way, watts)
    assert (found is None) == (expected is None)
    if found and expected is not None:
        assert found.element_amps[0] == pytest.approx(expected, rel=1e-12)


@given(drawn=chains(), more=st.floats(1.0001, 100))
def test_where_there_is_no_solution_more_has_none_either(drawn: Drawn, more: float) -> None:
    stretches, amps, watts, plugs = drawn
    if _solved(drawn) is None:
        assert chain(VOLTS, stretches, amps, [each * more for each in watts], plugs) is None


# Another way to the same answer: currents at the volts of the step before end at the solution, or at no volts.
def test_a_fixed_point_from_above_says_the_same() -> None:
    for watts in (60.0, 80.0, 100.0, 140.0, 180.0):
        first = second = VOLTS
        for _ in range(20_000):
            tail, trunk = watts / second, watts / first + watts / second
            first, second = VOLTS - 0.1 * trunk, VOLTS - 0.1 * trunk - 0.1 * tail
            if min(first, second) <= 0:
                break
        found = chain(VOLTS, [0.1, 0.1], [0, 0], [watts, watts])
        assert (found is None) == (min(first, second) <= 0) == (watts > 130), watts
        if found:
            assert found.device_volts == pytest.approx((first, second), rel=1e-12)


def test_constant_current_that_leaves_no_volts_has_no_solution() -> None:
    assert chain(12, [0.5, 0.5], [8, 8]) is None
    assert chain(12, [1], [12]) is None
    assert chain(12, [1], [11.9]) is not None


# 9 A behind one ohm need 9 V before it; constant power there pulls the volts below that, and has some itself.
def test_constant_power_that_leaves_none_to_constant_current_has_no_solution() -> None:
    assert chain(12, [0.1, 1], [0, 9], [150, 0]) is not None
    assert chain(12, [0.1, 1], [0, 9], [250, 0]) is None
    assert chain(12, [0.1, 0], [9, 0], [250, 0]) is not None


def test_trunk_and_tail_by_hand() -> None:
    found = chain(12, [0.01, 0.02, 0.01], [1, 2, 3])
    assert found
    assert found.stretch_amps == (6, 5, 3)
    assert found.plug_volts == pytest.approx((11.94, 11.84, 11.81))
    assert found.lost_watts == pytest.approx(0.36 + 0.5 + 0.09)


def test_branches_of_a_tree_by_hand() -> None:
    found = flow(12, [ROOT, 0, 0, 2], [0.1, 0.2, 0.3, 0.4], [0, 1, 2, 3], [0, 0, 0, 0])
    assert found
    assert found.element_amps == (6, 1, 5, 3)
    assert found.node_volts == pytest.approx((11.4, 11.2, 9.9, 8.7))


def test_nothing_hangs_on_nothing() -> None:
    assert flow(12, [], [], [], []) == ((), ())


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ((0, [ROOT], [0.1], [1], [0]), "above 0"),
        ((nan, [ROOT], [0.1], [1], [0]), "above 0"),
        ((12, [ROOT], [0.1], [1, 2], [0]), "an element and a load"),
        ((12, [0], [0.1], [1], [0]), "after its parent"),
        ((12, [-2], [0.1], [1], [0]), "after its parent"),
        ((12, [ROOT], [-0.1], [1], [0]), "not negative"),
        ((12, [ROOT], [0.1], [nan], [0]), "not negative"),
        ((12, [ROOT], [0.1], [1], [-1]), "not negative"),
    ],
    ids=str,
)
def test_what_is_no_tree_is_refused(wrong: tuple[float, list[int], list[float], list[float], list[float]],
                                    said: str) -> None:
    with pytest.raises(ValueError, match=said):
        flow(*wrong)


def test_a_chain_of_unequal_shapes_is_refused() -> None:
    with pytest.raises(ValueError, match="a stretch before it"):
        chain(12, [0.1, 0.1], [1])


@given(drawn=chains())
def test_one_rail_with_a_way_back_like_its_way_there_is_a_chain(drawn: Drawn) -> None:
    stretches, amps, _, plugs = drawn
    halves, plug_halves = [each / 2 for each in stretches], [each / 2 for each in plugs]
    found, alone = (
        rails_chain([VOLTS], halves, halves, [amps], plug_halves, plug_halves),
        chain(VOLTS, stretches, amps, plug_ohms=plugs),
    )
    assert (found is None) == (alone is None)
    if found and alone:
        assert found[0] == pytest.approx(alone.device_volts, rel=1e-12, abs=1e-11)


# 12 V and 5 V to one drive, 0.02 ohm a wire, two wires back: 2 A and 1 A drop 40 and 20 mV there, 30 mV both back.
def test_rails_share_their_way_back() -> None:
    found = rails_chain([12, 5], [0.02], [0.01], [[2], [1]], [0], [0])
    assert found
    assert [rail[0] for rail in found] == pytest.approx([11.93, 4.95])


@given(drawn=chains(), other=st.lists(st.floats(0.01, 2), min_size=8, max_size=8))
def test_what_one_rail_takes_lowers_the_other(drawn: Drawn, other: list[float]) -> None:
    stretches, amps, _, plugs = drawn
    taken, back = other[:len(amps)], [each + 0.001 for each in stretches]
    light = rails_chain([VOLTS, 5], stretches, back, [amps, [0.0] * len(amps)], plugs, plugs)
    heavy = rails_chain([VOLTS, 5], stretches, back, [amps, taken], plugs, plugs)
    assert heavy is None or light is not None
    if light and heavy:
        assert all(new < old for new, old in zip(heavy[0], light[0], strict=True))


def test_a_rail_without_volts_has_no_solution() -> None:
    assert rails_chain([12, 5], [0.5], [0.5], [[1], [4]], [0.1], [0.1]) is None
    assert rails_chain([12, 5], [0.5], [0.5], [[1], [3]], [0.1], [0.1]) is not None


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (([0], [0.1], [0.1], [[1]], [0], [0]), "above 0"),
        (([12], [0.1], [0.1, 0.1], [[1]], [0], [0]), "every rail has a source"),
        (([12, 5], [0.1], [0.1], [[1]], [0], [0]), "every rail has a source"),
        (([12], [0.1], [0.1], [[1, 2]], [0], [0]), "every rail has a source"),
        (([12], [0.1], [0.1], [[-1]], [0], [0]), "not negative"),
        (([12], [0.1], [nan], [[1]], [0], [0]), "not negative"),
    ],
    ids=str,
)
def test_no_chain_of_rails_is_refused(
    wrong: tuple[list[float], list[float], list[float], list[list[float]], list[float], list[float]], said: str,
) -> None:
    with pytest.raises(ValueError, match=said):
        rails_chain(*wrong)
