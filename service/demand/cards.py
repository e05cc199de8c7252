"""What cards draw through the slot and through their plugs.

Slot share: given, else what the plugs cannot give, clamp(board_watts - sum of plug ratings, usual share, 75 W), with
the range from there to the most a slot gives. Plugs are judged with the low end of it, the slot with the high end.
"""

from typing import NamedTuple

from service.demand.current import milliamps_at
from service.demand.demand import Feed, FeedPort, Triple
from service.demand.ends import Ends
from service.facts import card as facts
from service.facts import slot
from service.parts.figures import Range
from service.parts.records import ExpansionCard, GraphicsCard, Need
from service.parts.words import CARD, SIGNAL_CONNECTORS, SIXTEEN_PIN

Card = GraphicsCard | ExpansionCard
_HUNDRED = 100.0


class CardDraw(NamedTuple):
    """One card: watts in all, watts through the slot (for the slot, the worse end), and its plugs' feed or None."""

    unit: int
    board_watts: float
    slot_watts: float
    slot_3v3_watts: float
    idle_share: float
    feed: Feed | None


def card(unit: int, part: Card, limit_percent: float, ends: Ends) -> CardDraw:
    """Return the draw of a card whose power limit stands at ``limit_percent``."""
    scale = limit_percent / _HUNDRED
    board = _end(part.board_watts, unit, "board_watts", ends) * scale
    idle = ends.load(None, unit, "idle", facts.IDLE_SHARE)
    ports = tuple((at, need) for at, need in enumerate(part.needs) if need.connector not in SIGNAL_CONNECTORS)
    if not ports:
        return CardDraw(unit, board, board, _on_3v3(board), idle, None)
    needs = tuple(need for _, need in ports)
    low, high = _slot_share(unit, part, board, scale, needs, ends)
    for_slot, for_plugs = (high, low) if ends.unfavourable else (low, high)
    total, weights = _plug_watts(unit, ports, board - high, board - for_plugs, scale, ends)
    board = max(board, low + total)
    feed = _feed(unit, needs, total, weights, idle)
    feed = feed._replace(ports=with_way(feed.ports, due=board > high))
    return CardDraw(unit, board, for_slot, _on_3v3(for_slot), idle, feed)


def _on_3v3(slot_watts: float) -> float:
    """Return the part of a slot's watts that comes from 3.3 V: above 66 W, and no more than 3.3 V gives."""
    return min(max(0.0, slot_watts - slot.SLOT_12V_WATTS.value), slot.SLOT_3V3_WATTS.value)


def slot_current(watts: float, watts_3v3: float) -> Triple:
    """Return the milliamps of a slot's share: up to 66 W from 12 V, the rest from 3.3 V."""
    return (milliamps_at(watts - watts_3v3, 12.0), 0, milliamps_at(watts_3v3, 3.3))


def _slot_share(
    unit: int, part: Card, board: float, scale: float, ports: tuple[Need, ...], ends: Ends
) -> tuple[float, float]:
    most = min(slot.SLOT_WATTS.value, board)
    if part.slot_watts is not None:
        low, high = (min(share * scale, board) for share in part.slot_watts)
        fixed = low == high or ends.worst(unit, "slot_watts") or not ends.unfavourable
        return (low, high) if fixed else (high, high)
    rated = sum(facts.PLUG_WATTS[need.connector].value * need.count for need in ports if need.connector in CARD)
    usual = slot.USUAL_16_PIN if any(need.connector in SIXTEEN_PIN for need in ports) else slot.USUAL_AUXILIARY
    low = min(max(board - rated, usual.low), most)
    worst = ends.worst(unit, "slot_watts")
    ends.note(unit, "slot_watts", low, most, low if worst else most, usual)
    return (low, most) if worst or not ends.unfavourable else (most, most)


def _plug_watts(
    unit: int, ports: tuple[tuple[int, Need], ...], least: float, through_plugs: float, scale: float, ends: Ends
) -> tuple[float, tuple[int, ...]]:
    """Return the watts through all plugs, and each port's weight.

    Stated watts stand as far as they add up with ``least``, what the slot cannot give; ports without share the rest by
    their ratings.
    """
    stated = {
        at: _end(need.watts, unit, f"needs/{at}/watts", ends) * scale for at, need in ports if need.watts is not None
    }
    if not stated:
        return max(0.0, through_plugs), tuple(_weight(need.connector) for _, need in ports)
    known = sum(stated[at] * need.count for at, need in ports if at in stated)
    rated = sum(_weight(need.connector) * need.count for at, need in ports if at not in stated)
    total = max(known, through_plugs if rated else least)
    each = [stated[at] if at in stated else (total - known) * _weight(need.connector) / rated for at, need in ports]
    return total, tuple(max(1, round(watts * 1000)) for watts in each)


def with_way(ports: tuple[FeedPort, ...], *, due: bool) -> tuple[FeedPort, ...]:
    """Return the ports, the first one required where all are optional and current is ``due`` through one of them."""
    if not due or not ports or any(port.required for port in ports):
        return ports
    return (ports[0]._replace(required=True), *ports[1:])


def _weight(connector: str) -> int:
    fact = facts.PLUG_WATTS.get(connector)
    return int(fact.value) if fact else int(facts.OTHER_PLUG_WATTS.value)


def _feed(unit: int, ports: tuple[Need, ...], watts: float, weights: tuple[int, ...], idle: float) -> Feed:
    numbers: dict[str, int] = {}
    fed: list[FeedPort] = []
    for need, weight in zip(ports, weights, strict=True):
        for _ in range(need.count):
            number = numbers.get(need.connector, 0)
            numbers[need.connector] = number + 1
            fed.append(FeedPort(need.connector, number, is_required(need, watts), weight))
    return Feed(unit, "card", tuple(fed), (milliamps_at(watts, 12.0), 0, 0), (milliamps_at(watts * idle, 12.0), 0, 0))


def is_required(need: Need, watts: float) -> bool:
    """Say whether a port must be fed when its device draws ``watts`` through its plugs."""
    if not need.optional:
        return True
    return need.required_above_watts is not None and watts > need.required_above_watts


def _end(given: Range | None, unit: int, field: str, ends: Ends) -> float:
    assert given is not None
    if given.low == given.high:
        return given.low
    return given.high if ends.worst(unit, field) else given.low
