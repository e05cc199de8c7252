"""From a build to its demand.

Draws of devices, what hangs on what, feeds for the plugs, sums by rail, short moments.
"""

from service.demand import draws
from service.demand.cards import card, is_required, slot_current, with_way
from service.demand.current import VOLTS_12, milliamps_at, minus, plus, watts_of
from service.demand.demand import NONE, Demand, Feed, FeedPort, Triple
from service.demand.draws import Draw
from service.demand.ends import Ends
from service.demand.hosts import Hung, hang, state
from service.demand.moments import CardAtPeak, moments
from service.demand.needs import needs_of
from service.demand.placing import Problem
from service.demand.processors import ProcessorDraw, processor
from service.demand.slots import extra_plugs, past_main
from service.demand.wants import Host, host
from service.facts import rest
from service.parts.build import Build
from service.parts.records import (
    Backplane,
    Controller,
    Cooler,
    Drive,
    ExpansionCard,
    Fan,
    GraphicsCard,
    Lighting,
    Memory,
    Motherboard,
    Need,
    OpticalDrive,
    Processor,
    Pump,
    Riser,
)
from service.parts.words import MAIN, PROCESSOR, SIGNAL_CONNECTORS

_CONTACT_WEIGHT = {"cpu-8": 4, "cpu-4": 2}
_FULL_LIMIT_PERCENT = 100.0


class _Ledger:
    """What has been found out about a build so far."""

    def __init__(self, build: Build, ends: Ends) -> None:
        self.build = build
        self.ends = ends
        self.draws: list[Draw] = []
        self.hosts: list[Host] = []
        self.cards: list[CardAtPeak] = []
        self.processors: list[ProcessorDraw] = []
        self.boards: list[tuple[int, Motherboard, Triple]] = []
        self.risers: list[tuple[int, Riser]] = []
        self.memory: list[Draw] = []
        self.standby = 0


def demand(build: Build, ends: Ends, hung: Hung | None = None) -> Demand:
    """Return what a build asks of its supply at the end that ``ends`` chooses, its headers filled as in ``hung``."""
    ledger = _ledger(build, ends)
    started = _starting_together(ledger)
    if hung is None:
        hung = hang(_headers(ledger, started))
    feeds, slots_on_risers = _riser_feeds(ledger)
    feeds += [c.draw.feed for c in ledger.cards if c.draw.feed is not None]
    feeds += _board_feeds(ledger, hung, slots_on_risers)
    feeds += [_feed(draw, hung) for draw in started if draw.unit not in hung.fed and _power_needs(draw)]
    sustained, starting = _sums(ledger, started)
    watts = watts_of(sustained) + ledger.standby * 5.0 / 1000
    return Demand(
        feeds=tuple(feed for feed in feeds if feed.ports),
        sustained=(*sustained, ledger.standby),
        starting=(*starting, ledger.standby),
        sustained_watts=watts,
        moments=moments(watts, ledger.cards, ledger.processors),
        slots=tuple((at.draw.unit, at.draw.slot_watts) for at in ledger.cards),
        headers=tuple(hung.headers),
        headless=tuple(hung.headless),
        over=hung.worth.over,
        hung_proven=hung.proven,
        hung_choice=hung.choice,
    )


def headers(build: Build, ends: Ends) -> Problem:
    """Return what is to be filled: what hosts of a build offer, and what its devices want of them."""
    ledger = _ledger(build, ends)
    return _headers(ledger, _starting_together(ledger))


def _headers(ledger: _Ledger, started: list[Draw]) -> Problem:
    build = ledger.build
    return state([*started, *_signals_of_cards(build)], ledger.hosts, _plugged(build))


def _ledger(build: Build, ends: Ends) -> _Ledger:
    ledger = _Ledger(build, ends)
    for unit, entry in enumerate(build.units):
        _enter(ledger, unit, entry.part)
    return ledger


def _enter(ledger: _Ledger, unit: int, part: object) -> None:
    """Enter one unit into the ledger; parts that draw nothing leave no trace."""
    ends = ledger.ends
    match part:
        case GraphicsCard():
            percent = ledger.build.use.graphics_limit_percent or _FULL_LIMIT_PERCENT
            ledger.cards.append(CardAtPeak(card(unit, part, percent, ends), part.peaks, percent / _FULL_LIMIT_PERCENT))
        case ExpansionCard():
            ledger.cards.append(CardAtPeak(card(unit, part, _FULL_LIMIT_PERCENT, ends), part.peaks, 1.0))
        case Processor():
            ledger.processors.append(processor(unit, part, ends))
        case Motherboard():
            own, standby = draws.board(unit, part, ends)
            ledger.boards.append((unit, part, own))
            ledger.hosts.append(host(unit, part))
            ledger.standby += standby
        case Drive():
            ledger.draws.append(draws.drive(unit, part, ends))
        case OpticalDrive():
            ledger.draws.append(draws.optical(unit, part, ends))
        case Cooler() | Pump() | Fan():
            ledger.draws.append(draws.turning(unit, part, ends))
        case Controller():
            ledger.draws.append(draws.controller(unit, part, ends))
            ledger.hosts.append(host(unit, part))
        case Lighting():
            ledger.draws.append(draws.lighting(unit, part, ends))
        case Memory():
            ledger.memory.append(draws.memory(unit, part, ends))
        case Backplane():
            ledger.draws.append(draws.backplane(unit, part))
            ledger.hosts.append(host(unit, part))
        case Riser():
            ledger.risers.append((unit, part))
        case _:
            pass


def _starting_together(ledger: _Ledger) -> list[Draw]:
    """Return the draws with start-up current kept only by the drives that start together.

    Those of the greatest start.
    """
    together = ledger.build.use.drives_starting_together
    if together is None:
        return ledger.draws
    extra = [(sum(d.starting) - sum(d.sustained), -at) for at, d in enumerate(ledger.draws) if d.role == "drive"]
    keep = {-at for _, at in sorted(extra, reverse=True)[:together]}
    return [
        d if d.role != "drive" or at in keep else d._replace(starting=d.sustained) for at, d in enumerate(ledger.draws)
    ]


def _power_needs(draw: Draw) -> tuple[Need, ...]:
    return tuple(need for need in draw.needs if need.connector not in SIGNAL_CONNECTORS)


def _feed(draw: Draw, hung: Hung) -> Feed:
    """Return the feed of a small device.

    Its own draw and all that hangs on it, divided equally over its power plugs.
    """
    sustained = plus(draw.sustained, hung.sustained.get(draw.unit, NONE))
    starting = plus(draw.starting, hung.starting.get(draw.unit, NONE))
    ports = with_way(_ports(_power_needs(draw), watts_of(sustained)), due=draw.unit in hung.sustained)
    return Feed(draw.unit, draw.role, ports, sustained, starting)


def _ports(needs: tuple[Need, ...], watts: float) -> tuple[FeedPort, ...]:
    numbers: dict[str, int] = {}
    ports = []
    for need in needs:
        for _ in range(need.count):
            number = numbers.get(need.connector, 0)
            numbers[need.connector] = number + 1
            weight = _CONTACT_WEIGHT.get(need.connector, 1)
            ports.append(FeedPort(need.connector, number, is_required(need, watts), weight))
    return tuple(ports)


def _signals_of_cards(build: Build) -> list[Draw]:
    """Return the headers that cards want, without a load: what a card draws comes by slot and plugs."""
    found = []
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, GraphicsCard | ExpansionCard):
            needs = tuple(need for need in entry.part.needs if need.connector in SIGNAL_CONNECTORS)
            found.append(Draw(unit, "rest", needs, NONE, NONE))
    return found


def _plugged(build: Build) -> frozenset[tuple[int, str]]:
    """Return the ports, as (unit, connector), that a wiring as plugged names."""
    units = {(entry.line, entry.copy): unit for unit, entry in enumerate(build.units)}
    return frozenset((units[p.line, p.copy], p.connector) for p in build.wiring or ())


def _riser_feeds(ledger: _Ledger) -> tuple[list[Feed], dict[int, float]]:
    """Return the feeds of powered risers, each under the card with the greatest slot share left, and the watts taken.

    A riser without a power port takes nothing off the board.
    """
    waiting = sorted(ledger.cards, key=lambda c: (-c.draw.slot_watts, c.draw.unit))
    feeds = []
    taken: dict[int, float] = {}
    for unit, riser in ledger.risers:
        needs = tuple(need for need in riser.needs if need.connector not in SIGNAL_CONNECTORS)
        watts = 0.0
        if needs and waiting:
            at = waiting.pop(0)
            watts = taken[at.draw.unit] = min(at.draw.slot_watts, riser.feeds_slot_watts)
        current = (milliamps_at(watts, VOLTS_12), 0, 0)
        feeds.append(Feed(unit, "rest", with_way(_ports(needs, watts), due=watts > 0), current, current))
    return feeds, taken


def _board_feeds(ledger: _Ledger, hung: Hung, on_risers: dict[int, float]) -> list[Feed]:
    """Return the feeds of boards: main with all that passes through the board, processor plugs, other plugs.

    All cards, memory and processors are taken to stand on the first board; a build has one. A board without a main port
    takes its own load, all from 12 V, by its processor plugs or else by its other plugs.
    """
    feeds = []
    for place, (unit, part, own) in enumerate(ledger.boards):
        needs = needs_of(part)
        sustained = plus(own, hung.sustained.get(unit, NONE))
        starting = plus(own, hung.starting.get(unit, NONE))
        processors, plug_weights = _at_processor_plugs(ledger, place)
        slots, idle_slots = _slots(ledger, on_risers) if place == 0 else (NONE, NONE)
        sustained, starting = plus(sustained, slots), plus(starting, idle_slots)
        for memory in ledger.memory if place == 0 else ():
            sustained, starting = plus(sustained, memory.sustained), plus(starting, memory.starting)
        main = tuple(n for n in needs if n.connector in MAIN)
        plugs = tuple(n for n in needs if n.connector in PROCESSOR)
        others = tuple(n for n in needs if n not in main and n not in plugs and n.connector not in SIGNAL_CONNECTORS)
        at_plugs = (processors, 0, 0)
        if not plugs:
            sustained, starting = plus(sustained, at_plugs), plus(starting, at_plugs)
        main_ports = with_way(_ports(main, watts_of(sustained)), due=True)
        plug_ports = with_way(_ports(plugs, watts_of(at_plugs)), due=processors > 0 or not main)
        plug_ports = tuple(p._replace(weight=w) for p, w in zip(plug_ports, plug_weights, strict=True))
        own_12v = (NONE, NONE) if main else (_all_on_12(sustained), _all_on_12(starting))
        by_plugs, by_others = (own_12v, (NONE, NONE)) if plugs else ((NONE, NONE), own_12v)
        at_main = _converted(main, sustained, starting)
        past, past_at_start = (
            past_main(main if others else (), *both) for both in zip(at_main, (slots, idle_slots), strict=True)
        )
        extra = extra_plugs(unit, others, past, ledger.ends)
        other_ports = with_way(_ports(others, 0.0), due=past != NONE or by_others != (NONE, NONE))
        feeds.append(Feed(unit, "main", main_ports, minus(at_main[0], past), minus(at_main[1], past_at_start)))
        feeds.append(Feed(unit, "processor", plug_ports, plus(at_plugs, by_plugs[0]), plus(at_plugs, by_plugs[1])))
        feeds.append(Feed(unit, "rest", other_ports, plus(extra, by_others[0]), plus(extra, by_others[1])))
    return feeds


def _at_processor_plugs(ledger: _Ledger, place: int) -> tuple[int, tuple[int, ...]]:
    """Return the milliamps at the processor plugs of a board, and the weight of each plug.

    Each plug carries its part of what the processors draw, by 12 V contacts, or its own stated watts if more.
    """
    unit, part, _ = ledger.boards[place]
    needs = [need for need in needs_of(part) if need.connector in PROCESSOR]
    contacts = [_CONTACT_WEIGHT.get(need.connector, 1) for need in needs for _ in range(need.count)]
    drawn = sum(p.sustained for p in ledger.processors) if place == 0 else 0
    if all(need.watts is None for need in needs):
        return drawn, tuple(contacts)
    carried = []
    for need in needs:
        field = f"needs/{need.connector}/watts"
        watts = 0.0 if need.watts is None else ledger.ends.load(need.watts, unit, field, rest.EXTRA_SLOT_PLUG_WATTS)
        share = -(-drawn * _CONTACT_WEIGHT.get(need.connector, 1) // sum(contacts))
        carried += [max(milliamps_at(watts, VOLTS_12), share)] * need.count
    return sum(carried), tuple(max(1, each) for each in carried)


def _slots(ledger: _Ledger, on_risers: dict[int, float]) -> tuple[Triple, Triple]:
    """Return the milliamps of all slots through the board, sustained and with the cards idle."""
    sustained, idle = NONE, NONE
    for at in ledger.cards:
        through = max(0.0, at.draw.slot_watts - on_risers.get(at.draw.unit, 0.0))
        on_3v3 = min(at.draw.slot_3v3_watts, through)
        sustained = plus(sustained, slot_current(through, on_3v3))
        idle = plus(idle, slot_current(through * at.draw.idle_share, on_3v3 * at.draw.idle_share))
    return sustained, idle


def _converted(main: tuple[Need, ...], sustained: Triple, starting: Triple) -> tuple[Triple, Triple]:
    """Return the main connector's load; a 12 V only board makes its 5 V and 3.3 V itself, from 12 V."""
    if all(need.connector != "atx12vo-10" for need in main):
        return sustained, starting
    return _all_on_12(sustained), _all_on_12(starting)


def _all_on_12(current: Triple) -> Triple:
    small = watts_of((0, current[1], current[2])) / rest.BOARD_CONVERTER_EFFICIENCY.value
    return (current[0] + milliamps_at(small, VOLTS_12), 0, 0)


def _sums(ledger: _Ledger, started: list[Draw]) -> tuple[Triple, Triple]:
    """Return the sums by rail, each device once: sustained, and at start-up with the cards idle."""
    sustained, starting = NONE, NONE
    for draw in (*started, *ledger.memory):
        sustained = plus(sustained, draw.sustained)
        starting = plus(plus(starting, draw.starting), draw.moment)
    for _, _, own in ledger.boards:
        sustained, starting = plus(sustained, own), plus(starting, own)
    at_plugs = sum(_at_processor_plugs(ledger, place)[0] for place in range(len(ledger.boards)))
    processors = (max(at_plugs, sum(p.sustained for p in ledger.processors)), 0, 0)
    sustained, starting = plus(sustained, processors), plus(starting, processors)
    for at in ledger.cards:
        current = slot_current(at.draw.board_watts, at.draw.slot_3v3_watts)
        idle = slot_current(at.draw.board_watts * at.draw.idle_share, at.draw.slot_3v3_watts * at.draw.idle_share)
        sustained, starting = plus(sustained, current), plus(starting, idle)
    if any(n.connector == "atx12vo-10" for _, part, _ in ledger.boards for n in part.needs):
        return _all_on_12(sustained), _all_on_12(starting)
    return sustained, starting
