"""Small problems on which the search, or its bound, was once wrong; each optimum is plain to see."""

from service.wiring.clusters import levels_of
from service.wiring.problem import NOTHING, UNLIMITED, CableKind, Device, Fit, Points, Port, PortType, Problem
from service.wiring.search import Search, solve

WORK = 5_000


def test_fits_listed_against_the_order_of_the_plugs_feed_as_many() -> None:
    """Three drives on a cable of three equal plugs."""
    fits = tuple(Fit(0, plug, 1, UNLIMITED) for plug in (2, 1, 0))
    cable = CableKind(1, (), (1, 1, 1), (UNLIMITED, UNLIMITED, UNLIMITED))
    drives = (Device("drive", (Port(0, True, 1),), NOTHING),) * 3
    found = solve(Problem(drives, (PortType(fits),), (cable,), (), (), (), Points(0, 0, 0, 0)), WORK)
    assert (found.proven, found.objective[1]) == (True, 0)


def test_two_cards_with_one_port_each_on_a_cable_do_not_count_as_one() -> None:
    """Each card has a port for the double-ended cable and one that it does not fit: nobody shares a cable."""
    card = Device("card", (Port(0, True, 1), Port(1, True, 1)), (8000, 0, 0, 8000, 0, 0))
    types = (
        PortType((Fit(0, 0, 1, UNLIMITED), Fit(0, 1, 1, UNLIMITED))),
        PortType((Fit(0, 0, 2, UNLIMITED), Fit(1, 0, 1, UNLIMITED))),
    )
    cables = (CableKind(1, (), (1, 1), (UNLIMITED, UNLIMITED)), CableKind(2, (), (1,), (UNLIMITED,)))
    posed = Problem((card, card), types, cables, (), (), (), Points(0, 0, 5, 5000))
    best = solve(posed, WORK).objective
    assert best[8] == 0
    assert levels_of(Search(posed, WORK).floor_of((0, 0))) <= best
