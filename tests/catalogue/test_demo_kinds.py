"""The demo edition by kinds: whatever people ask about has a part that it can be asked with."""

from collections import Counter
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest

from service.catalogue import bundled
from service.intake.specs import spec_of
from service.parts.records import Cable, PowerSupply
from service.parts.words import DESIGNS, PROCESSOR, SIGNAL_CONNECTORS, SIXTEEN_PIN

Json = dict[str, Any]

ENTRIES = bundled.load().entries
SPECS = [spec_of(entry.part) for entry in ENTRIES]
BOUGHT = [(entry.maker, entry.part) for entry in ENTRIES if isinstance(entry.part, Cable)]


def _of(category: str) -> list[Json]:
    return [spec for spec in SPECS if spec["category"] == category]


def _connectors(spec: Json) -> Counter[str]:
    """Return the ports that a spec needs, by connector."""
    found: Counter[str] = Counter()
    for need in spec.get("needs", []):
        found[need["connector"]] += need.get("count", 1)
    return found


def _boxed() -> list[tuple[PowerSupply, Cable]]:
    return [(e.part, c) for e in ENTRIES if isinstance(e.part, PowerSupply) for c in e.part.cables or ()]


def _kinds(cable: Cable) -> tuple[str, ...]:
    return tuple(plug.connector for plug in cable.plugs)


def _with(field: str, value: str) -> Callable[[Json], bool]:
    return lambda spec: spec.get(field) == value


WIDEST_GAP_WATTS = 200

SUPPLIES: dict[str, Callable[[Json], bool]] = {
    **{design: _with("design", design) for design in DESIGNS},
    **{kind: _with("modularity", kind) for kind in ("full", "semi", "none")},
    "400 W": lambda spec: spec["rated_watts"] == 400,
    "1600 W": lambda spec: spec["rated_watts"] == 1600,
    "one group": lambda spec: not spec.get("groups"),
    "two groups": lambda spec: len(spec.get("groups", [])) == 2,
    "four groups": lambda spec: len(spec.get("groups", [])) == 4,
    "a group on 5 V": lambda spec: any(group.get("rail") == "5v" for group in spec.get("groups", [])),
    "small size": lambda spec: spec.get("form_factor") == "sfx",
    "fully modular 12 V only": lambda spec: (spec["design"], spec.get("modularity")) == ("atx12vo", "full"),
    "without a list of its rails": lambda spec: "rails" not in spec,
    "the large inlet": lambda spec: spec.get("inlet") == "c20",
}


@pytest.mark.parametrize("kind", SUPPLIES)
def test_kind_of_supply(kind: str) -> None:
    assert any(map(SUPPLIES[kind], _of("power_supply")))


def test_ratings_leave_no_gap() -> None:
    watts = sorted({spec["rated_watts"] for spec in _of("power_supply")})
    assert max(b - a for a, b in pairwise(watts)) <= WIDEST_GAP_WATTS


def _sixteen(printed: float, sockets: int) -> Callable[[Cable], bool]:
    def is_it(cable: Cable) -> bool:
        on_sockets = sum(number for _, number in cable.occupies) == sockets
        return cable.rated_watts == printed and on_sockets and set(_kinds(cable)) <= SIXTEEN_PIN

    return is_it


def _drives(number: int) -> Callable[[Cable], bool]:
    return lambda cable: _kinds(cable) == ("sata-power",) * number


BOXED: dict[str, Callable[[Cable], bool]] = {
    "main": lambda c: "atx-20+4" in _kinds(c),
    "double-ended card cable": lambda c: _kinds(c) == ("pcie-6+2", "pcie-6+2"),
    "single card cable": lambda c: _kinds(c) == ("pcie-6+2",),
    **{f"{printed} W on a socket of its own": _sixteen(printed, 1) for printed in (300, 450, 600)},
    **{f"{printed} W on two card sockets": _sixteen(printed, 2) for printed in (300, 450, 600)},
    **{f"{number} drive plugs": _drives(number) for number in (2, 3, 4)},
    "peripheral": lambda c: set(_kinds(c)) == {"peripheral-4"},
    "drives and peripherals": lambda c: set(_kinds(c)) == {"sata-power", "peripheral-4"},
    "split processor plug": lambda c: _kinds(c) == ("cpu-4+4",),
    "captive 16-pin": lambda c: bool(c.captive) and SIXTEEN_PIN & set(_kinds(c)) != set(),
    "carries 3.3 V": lambda c: c.carries_3v3 is True,
    "in a group by itself": lambda c: c.group is not None,
}


@pytest.mark.parametrize("kind", BOXED)
def test_kind_of_boxed_cable(kind: str) -> None:
    assert any(BOXED[kind](cable) for _, cable in _boxed())


def test_what_is_not_modular_has_captive_cables_only() -> None:
    for supply, cable in _boxed():
        captive = bool(cable.captive)
        assert captive or supply.modularity != "none", supply.name
        assert not captive or supply.modularity != "full", supply.name


CARDS: dict[str, tuple[str, ...]] = {
    "no plug": (), "6": ("pcie-6",), "8": ("pcie-8",), "6 and 8": ("pcie-6", "pcie-8"), "8 and 8": ("pcie-8",) * 2,
    "three of 8": ("pcie-8",) * 3, "16-pin": ("12v-2x6",), "older 16-pin": ("12vhpwr",),
}


@pytest.mark.parametrize("kind", CARDS)
def test_kind_of_card(kind: str) -> None:
    assert any(sorted(_connectors(spec).elements()) == sorted(CARDS[kind]) for spec in _of("graphics_card"))


def test_cards_from_30_to_600_watts() -> None:
    watts = [spec["board_watts"] for spec in _of("graphics_card") if not isinstance(spec["board_watts"], dict)]
    assert (min(watts), max(watts)) == (30, 600)


@pytest.mark.parametrize("inputs", [2, 3, 4])
def test_bundled_adapters_of_so_many_inputs_to_16_pin(inputs: int) -> None:
    bundled_adapters = [one for spec in _of("graphics_card") for one in spec.get("adapters", [])]
    assert any(
        one["takes"] == [{"connector": "pcie-8", "count": inputs}] and one["gives"][0]["connector"] in SIXTEEN_PIN
        for one in bundled_adapters
    )


def _processor_ports(spec: Json) -> list[tuple[str, bool]]:
    return sorted(
        (need["connector"], need.get("optional", False)) for need in spec["needs"] if need["connector"] in PROCESSOR
        for _ in range(need.get("count", 1))
    )


BOARDS: dict[str, list[tuple[str, bool]]] = {
    "4": [("cpu-4", False)], "8": [("cpu-8", False)], "8 and 4": [("cpu-4", False), ("cpu-8", False)],
    "8 and an optional 4": [("cpu-4", True), ("cpu-8", False)],
    "8 and an optional 8": [("cpu-8", False), ("cpu-8", True)], "8 and 8": [("cpu-8", False)] * 2,
}


@pytest.mark.parametrize("kind", BOARDS)
def test_kind_of_board(kind: str) -> None:
    assert any(_processor_ports(spec) == BOARDS[kind] for spec in _of("motherboard"))


def test_boards_of_other_main_connectors() -> None:
    boards = _of("motherboard")
    assert any("atx-20" in _connectors(spec) for spec in boards)
    feeding = [spec for spec in boards if "sata-power" in {offer["connector"] for offer in spec.get("offers", [])}]
    assert any("atx12vo-10" in _connectors(spec) for spec in feeding)
    assert any(spec.get("processors") == 2 for spec in boards)


REST: dict[str, tuple[str, Callable[[Json], bool]]] = {
    "addressable light": ("lighting", lambda spec: spec["volts"] == 5 and "argb-3" in _connectors(spec)),
    "plain light": ("lighting", lambda spec: spec["volts"] == 12 and "rgb-4" in _connectors(spec)),
    "riser from the slot": ("riser", lambda spec: not spec.get("needs")),
    "riser on a drive plug": ("riser", lambda spec: "sata-power" in _connectors(spec)),
    "riser on a card plug": ("riser", lambda spec: "pcie-6" in _connectors(spec)),
    "card that is no graphics card and has a plug": ("expansion_card", lambda spec: "pcie-8" in _connectors(spec)),
    "case with ways": ("case", lambda spec: len(spec.get("routes_mm", {})) == 4),
    "case with some ways": ("case", lambda spec: 0 < len(spec.get("routes_mm", {})) < 4),
    "case with two bays": ("case", lambda spec: len(spec["bays"]) == 2),
    "disk that stays off on 3.3 V": ("drive", lambda spec: spec.get("power_disable", False)),
    "disk on a peripheral plug": ("drive", lambda spec: "peripheral-4" in _connectors(spec)),
    "module in the board": ("drive", lambda spec: spec.get("size") == "m2"),
    "disk without its start": ("drive", lambda spec: spec.get("size") == "3.5" and "starting_amps" not in spec),
    "pump on a header": ("pump", lambda spec: set(_connectors(spec)) == {"fan-4"}),
    "pump on a plug": ("pump", lambda spec: bool(set(_connectors(spec)) - set(SIGNAL_CONNECTORS))),
    "hub of fans and lights": ("controller", lambda spec: len(spec["offers"]) == 3),
    "cage on drive plugs": ("backplane", lambda spec: set(_connectors(spec)) == {"sata-power"}),
    "cage on peripheral plugs": ("backplane", lambda spec: set(_connectors(spec)) == {"peripheral-4"}),
    "adapter that splits": ("adapter", lambda spec: spec["gives"][0].get("count", 1) == 2),
    "cable with a worn contact": ("cable", lambda spec: spec.get("open_contacts") == 1),
}


@pytest.mark.parametrize("kind", REST)
def test_kind_of_other_part(kind: str) -> None:
    category, is_it = REST[kind]
    assert any(map(is_it, _of(category)))


def test_bought_cables_are_of_several_families_and_makers() -> None:
    assert len({part.family for _, part in BOUGHT}) >= 8
    assert len({maker for maker, _ in BOUGHT}) >= 2
    assert len(_of("adapter")) >= 10
    assert {spec["feeds_slot_watts"] for spec in _of("riser")} >= {0, 60, 75}
