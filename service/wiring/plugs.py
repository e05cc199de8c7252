"""Which ports the plugs of a cable fit, and which plugs of a cable may be exchanged for one another."""

from service.wiring.problem import CableKind, Problem

FitsByPlug = dict[int, dict[int, list[tuple[int, int]]]]
"""{cable kind: {plug: [(fit, halves)]}} of a port type."""


class Plugs:
    """The plugs of one problem.

    ``fits``: by port type. By cable kind and plug, the first plug that it may be exchanged with: ``alike`` whatever
    hangs on the cable, ``of_same_fits`` as long as no stretch of it minds.
    """

    def __init__(self, problem: Problem) -> None:
        self.fits: list[FitsByPlug] = [{} for _ in problem.port_types]
        marks: list[list[list[tuple[object, ...]]]] = [[[(of,)] for of in kind.halves] for kind in problem.cables]
        for of, found in enumerate(problem.port_types):
            fits = self.fits[of]
            for number, fit in enumerate(found.fits):
                marks[fit.cable][fit.plug].append((of, fit.halves, fit.limits, fit.points))
                if fit.halves <= problem.cables[fit.cable].halves[fit.plug]:
                    fits.setdefault(fit.cable, {}).setdefault(fit.plug, []).append((number, fit.halves))
        self.of_same_fits = [tuple([each.index(mark) for mark in each]) for each in marks]
        self.alike = [
            same if _first_stretch_decides(kind) else tuple(range(len(kind.halves)))
            for kind, same in zip(problem.cables, self.of_same_fits, strict=True)
        ]


def _first_stretch_decides(cable: CableKind) -> bool:
    """Say whether no further stretch allows less than the one before plug 0, which carries the most."""
    first = cable.segments[0]
    return all(
        further >= ours
        for stretch in cable.segments[1:]
        if stretch is not first
        for allowed, mine in zip(stretch, first, strict=True)
        for further, ours in zip(allowed, mine, strict=True)
    )
