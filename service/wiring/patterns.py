"""All ways to fill one cable or one adapter with open needs, each once up to what is equal."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from service.wiring.clusters import CLEAN, INPUT, LAST_INPUT, PORT, Cluster, Need, Tag, joined
from service.wiring.objective import judged
from service.wiring.plugs import Plugs
from service.wiring.problem import Load, Problem

Counted = tuple[tuple[int, int], ...]
"""Things by number, each so many times."""
Plugged = tuple[int, int, Tag]
Key = tuple[tuple[int, int, int], ...]
EMPTY: Key = ((1 << 60, 0, 0),)


class Filling(NamedTuple):
    """Needs hung on one cable or adapter: the clusters touched, in order, and what of them is taken."""

    touched: tuple[int, ...]
    taken: tuple[Plugged, ...]


class Choice(NamedTuple):
    """One open need that may still be taken: the clusters then touched, where the need is, and how it sorts."""

    touched: tuple[int, ...]
    tag: Tag
    need: Need
    order: tuple[int, int]


class Patterns:
    """The fillings of one problem; clusters go by number in a sequence that may grow."""

    def __init__(self, problem: Problem, clusters: list[Cluster], plugs: Plugs) -> None:
        self.problem = problem
        self.clusters = clusters
        self.twins: list[tuple[int, ...]] = []
        self.fits = plugs.fits
        self.plugs = plugs
        self.heaviest: list[Load] = []
        self.alike: dict[tuple[int, Load], tuple[int, ...]] = {}

    def cables(self, counts: Counted, cluster: int, place: int, kind: int) -> Iterator[Filling]:
        """Yield each way to put this need on a fresh cable of this kind, with whatever else hangs on the cable."""
        need = self.clusters[cluster].needs[place]
        alike = self._alike(kind, self._heaviest(counts))
        for plug in sorted(self.fits[need.type].get(kind, {})):
            if alike[plug] == plug:
                for fit, halves in self.fits[need.type][kind][plug]:
                    first = Filling((cluster,), ((plug, fit, (0, place)),))
                    yield from self._fill(counts, kind, alike, first, 0, plug, halves, {})

    def _heaviest(self, counts: Counted) -> Load:
        """Return the largest current of an open need, rail by rail."""
        while len(self.heaviest) < len(self.clusters):
            loads = [need.load for need in self.clusters[len(self.heaviest)].needs]
            self.heaviest.append(_largest(loads))
        return _largest([self.heaviest[cluster] for cluster, _ in counts])

    def _alike(self, kind: int, heaviest: Load) -> tuple[int, ...]:
        """Return for each plug the first one that it may be exchanged with, when no need open is heavier.

        Where a whole cable of the heaviest leaves all of its stretches as good as new, only what the plugs fit counts.
        """
        found = self.alike.get((kind, heaviest))
        if found is None:
            cable = self.problem.cables[kind]
            a, b, c, d, e, f = (current * sum(cable.halves) for current in heaviest)
            light = all(joined(CLEAN, judged((a, b, c, d, e, f), limits)) == CLEAN for limits in set(cable.segments))
            found = self.alike[kind, heaviest] = (self.plugs.of_same_fits if light else self.plugs.alike)[kind]
        return found

    def _fill(
        self,
        counts: Counted,
        kind: int,
        alike: tuple[int, ...],
        filling: Filling,
        plug: int,
        first: int,
        taken: int,
        last: dict[int, Key],
    ) -> Iterator[Filling]:
        """Fill this plug and those beyond it; equal plugs are filled in order, the first need's own apart."""
        halves = self.problem.cables[kind].halves
        if plug == len(halves):
            yield filling
            return
        if plug == first:
            for fuller, _ in self._contents(counts, kind, filling, plug, halves[plug] - taken):
                yield from self._fill(counts, kind, alike, fuller, plug + 1, first, taken, last)
            return
        for fuller, key in self._contents(counts, kind, filling, plug, halves[plug]):
            if key >= last.get(alike[plug], ()):
                yield from self._fill(counts, kind, alike, fuller, plug + 1, first, taken, {**last, alike[plug]: key})

    def _contents(
        self, counts: Counted, kind: int, filling: Filling, plug: int, halves: int
    ) -> Iterator[tuple[Filling, Key]]:
        """Yield the filling with each content of one plug: one need, two on its halves, or nothing."""
        for fuller, key, taken in self._one_more(counts, kind, filling, plug, halves):
            for both, second, _ in self._one_more(counts, kind, fuller, plug, halves - taken):
                if second >= key:
                    yield both, (key, second)
            yield fuller, (key,)
        yield filling, EMPTY

    def _one_more(
        self, counts: Counted, kind: int, filling: Filling, plug: int, halves: int
    ) -> Iterator[tuple[Filling, tuple[int, int, int], int]]:
        if halves == 0:
            return
        for choice in self.choices(counts, filling):
            for rank, (fit, taken) in enumerate(self.fits[choice.need.type].get(kind, {}).get(plug, ())):
                if taken <= halves:
                    fuller = Filling(choice.touched, (*filling.taken, (plug, fit, choice.tag)))
                    yield fuller, (*choice.order, rank), taken

    def additions(self, counts: Counted, kind: int, filling: Filling) -> Iterator[Filling]:
        """Yield the filling with one more need, on each plug that has room."""
        for plug, halves in enumerate(self.problem.cables[kind].halves):
            used = sum(self._halves(filling, entry) for entry in filling.taken if entry[0] == plug)
            for fuller, _, _ in self._one_more(counts, kind, filling, plug, halves - used):
                yield fuller

    def _halves(self, filling: Filling, entry: Plugged) -> int:
        _, fit, (number, place) = entry
        need = self.clusters[filling.touched[number]].needs[place]
        return self.problem.port_types[need.type].fits[fit].halves

    def adapters(self, counts: Counted, kind: int, depth: int, first: int | None) -> Iterator[Filling]:
        """Yield each way to use the outputs of one adapter whose inputs will be of this depth; plug numbers are 0.

        Only such as feed a need of the ``first`` cluster, if one is given, which then is the first that it can feed.
        """
        for filling in self._outputs(counts, kind, depth, Filling((), ()), ()):
            if first is not None and filling.touched[0] != first:
                return
            if depth == INPUT or any(self._need(filling, entry).depth == INPUT for entry in filling.taken):
                yield filling

    def _outputs(
        self, counts: Counted, kind: int, depth: int, filling: Filling, last: tuple[int, ...]
    ) -> Iterator[Filling]:
        if len(filling.taken) == self.problem.adapters[kind].outputs:
            return
        for choice in self.choices(counts, filling):
            if choice.need.depth != PORT and (choice.need.depth, depth) != (INPUT, LAST_INPUT):
                continue
            for fit, found in enumerate(self.problem.port_types[choice.need.type].adapter_fits):
                key = (*choice.order, fit)
                if found.adapter == kind and key >= last:
                    fuller = Filling(choice.touched, (*filling.taken, (0, fit, choice.tag)))
                    yield fuller
                    yield from self._outputs(counts, kind, depth, fuller, key)

    def _need(self, filling: Filling, entry: Plugged) -> Need:
        number, place = entry[2]
        return self.clusters[filling.touched[number]].needs[place]

    def choices(self, counts: Counted, filling: Filling) -> Iterator[Choice]:
        """Yield each need still open beside a filling, of equal ones the first."""
        taken = {tag for _, _, tag in filling.taken}
        for number, cluster in enumerate(filling.touched):
            yield from self._of_cluster(filling.touched, number, cluster, taken)
        for cluster, times in counts:
            if filling.touched.count(cluster) < times:
                yield from self._of_cluster((*filling.touched, cluster), len(filling.touched), cluster, set())

    def _of_cluster(self, touched: tuple[int, ...], number: int, cluster: int, taken: set[Tag]) -> Iterator[Choice]:
        seen = set()
        twins = self._twins(cluster)
        for place, need in enumerate(self.clusters[cluster].needs):
            if twins[place] not in seen and (number, place) not in taken:
                seen.add(twins[place])
                yield Choice(touched, (number, place), need, (cluster, twins[place]))

    def _twins(self, cluster: int) -> tuple[int, ...]:
        while len(self.twins) <= cluster:
            self.twins.append(_twins_of(self.clusters[len(self.twins)]))
        return self.twins[cluster]


def _largest(loads: Sequence[Load]) -> Load:
    a, b, c, d, e, f = (max(each) for each in zip(*loads, strict=True))
    return (a, b, c, d, e, f)


def _twins_of(cluster: Cluster) -> tuple[int, ...]:
    """Return for each need the first one that it may be exchanged with."""
    found: list[int] = []
    for place, need in enumerate(cluster.needs):
        found.append(next(other for other in range(place + 1) if _twin(cluster, cluster.needs[other], need)))
    return tuple(found)


def _twin(cluster: Cluster, one: Need, other: Need) -> bool:
    if one == other:
        return True
    if one._replace(lines=()) != other._replace(lines=()) or len(one.lines) != 1 or len(other.lines) != 1:
        return False
    if cluster.lines[one.lines[0]] != cluster.lines[other.lines[0]]:
        return False
    carried = [line for need in cluster.needs for line in need.lines]
    return carried.count(one.lines[0]) == carried.count(other.lines[0]) == 1
