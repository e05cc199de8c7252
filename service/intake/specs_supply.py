"""Schemas of the supply, its sockets, groups and cables, and what holds between them."""

from typing import Any, NamedTuple

from marshmallow import ValidationError

from service.intake import bounds
from service.intake.faults import Key
from service.intake.fields import Connector, Flag, Number, Own, Printed, Text, Whole, Word
from service.intake.shapes import Many, Messages, One, Pairs, RecordSchema, Unlike, repeated, schema
from service.intake.specs_common import PLUG_CONNECTORS, category, code, limit_amps, named, size_mm
from service.parts.records import Cable, CombinedLimit, Group, Plug, PowerSupply, RailLimit, Socket
from service.parts.words import (
    CARD,
    DESIGNS,
    DRIVE,
    FUNCTIONS,
    MAIN,
    PROCESSOR,
    RAILS,
    SIGNAL_CONNECTORS,
    SIXTEEN_PIN,
)

MODULARITIES = ("full", "semi", "none")
EFFICIENCY_LEVELS = ("white", "bronze", "silver", "gold", "platinum", "titanium")
INLETS = ("c14", "c20")
GROUP_RAILS = tuple(rail for rail in RAILS if rail != "5vsb")  # standby comes by no cable but the main one
FAN_SIDES = ("top", "bottom")
_FUNCTION_OF: dict[str, str] = (
    dict.fromkeys(MAIN | {"atx-20+4"}, "main")
    | dict.fromkeys(PROCESSOR | {"cpu-4+4"}, "processor")
    | dict.fromkeys(CARD | {"pcie-6+2"}, "card")
    | dict.fromkeys(DRIVE, "drive")
)


class EfficiencyPoint(NamedTuple):
    """Efficiency [%] at a share [%] of the rated watts; equal to the plain pair that the record names."""

    load_percent: float
    percent: float


class MaxAmps(NamedTuple):
    """What stands under the name of a rail."""

    max_amps: float


class Fed(Word):
    """What a group feeds; slots, which guides name too, hang on the main connector."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if value == "slot":
            raise ValidationError(f"must be one of {', '.join(self.words)}; slots are fed through main")
        return super()._deserialize(value, attr, data)


class Rails(Pairs):
    """Limits by rail, kept as a tuple of ``RailLimit``."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        pairs = super()._deserialize(value, attr, data)
        return tuple(RailLimit(rail=rail, max_amps=limit.max_amps) for rail, limit in pairs)

    def outside(self, value: Any) -> Any:
        """Return the limits by name of the rail."""
        return super().outside([(limit.rail, limit) for limit in value])


def cable_faults(cable: Cable) -> Messages:
    """Find what does not hold together within one cable."""
    found: Messages = {}
    if cable.rated_watts is not None and not any(plug.connector in SIXTEEN_PIN for plug in cable.plugs):
        found["rated_watts"] = ["is printed only on a cable that has a 16-pin plug"]
    if cable.captive and cable.occupies:
        found["occupies"] = ["must be left out: a captive cable takes no socket"]
    back = _nearer_than_before(cable)
    if back:
        found["plugs"] = {index: {"at_mm": ["must not be nearer than the plug listed before it"]} for index in back}
    return found


def supply_faults(supply: PowerSupply) -> Messages:
    """Find what does not hold together within one supply."""
    found: Messages = {}
    groups = [group.name for group in supply.groups]
    labels = [socket.label for socket in supply.sockets]
    _name_twice(found, "groups", "name", groups)
    _name_twice(found, "sockets", "label", labels)
    loads = [load for load, _ in supply.efficiency_points]
    percents = [percent for _, percent in supply.efficiency_points]
    for index in range(1, len(loads)):
        if loads[index] <= loads[index - 1]:
            _put(found, ("efficiency_points", index, "load_percent"), "must be above that of the point before it")
        elif loads[index] * percents[index - 1] < loads[index - 1] * percents[index]:
            said = "is so far above the point before it that more load would take less from the wall"
            _put(found, ("efficiency_points", index, "percent"), said)
    for index, socket in enumerate(supply.sockets):
        if socket.group is not None and socket.group not in groups:
            _put(found, ("sockets", index, "group"), "names a group that the supply does not list")
    for index, cable in enumerate(supply.cables or ()):
        _boxed_cable_faults(found, supply, index, cable)
    return found


def _boxed_cable_faults(found: Messages, supply: PowerSupply, index: int, cable: Cable) -> None:
    """Find what ties a boxed cable to sockets and groups that are not there, or to none."""
    sockets = {socket.label: socket for socket in supply.sockets}
    for label, number in cable.occupies:
        if label not in sockets:
            _put(found, ("cables", index, "occupies", Key(label)), "names a socket that the supply does not list")
        elif number > sockets[label].count:
            said = f"is more sockets than the {sockets[label].count} that the supply has"
            _put(found, ("cables", index, "occupies", Key(label)), said)
    if cable.group is not None and cable.group not in {group.name for group in supply.groups}:
        _put(found, ("cables", index, "group"), "names a group that the supply does not list")
    elif supply.groups and not _in_a_group(supply, cable):
        said = "is in none of the supply's groups: name its group, the group of its sockets, or what a group feeds"
        _put(found, ("cables", index), said)


def _in_a_group(supply: PowerSupply, cable: Cable) -> bool:
    """Say whether a cable, its sockets or the functions of its plugs are in a group; signal cables need none."""
    labels = {label for label, _ in cable.occupies}
    functions = {_FUNCTION_OF.get(plug.connector) for plug in cable.plugs}
    return (
        cable.group is not None
        or any(socket.group is not None for socket in supply.sockets if socket.label in labels)
        or any(feed in functions for group in supply.groups for feed in group.feeds)
        or all(plug.connector in SIGNAL_CONNECTORS for plug in cable.plugs)
    )


def _nearer_than_before(cable: Cable) -> list[int]:
    """Return the plugs that are said to be nearer to the supply than one before them."""
    furthest, found = 0.0, []
    for index, plug in enumerate(cable.plugs):
        if plug.at_mm is not None:
            if plug.at_mm < furthest:
                found.append(index)
            furthest = max(furthest, plug.at_mm)
    return found


def _name_twice(found: Messages, field: str, named_by: str, names: list[str]) -> None:
    for index in repeated(tuple(names)):
        _put(found, (field, index, named_by), "is the name of an earlier one already")


def _put(found: Messages, steps: tuple[str | int, ...], sentence: str) -> None:
    """Put a sentence at a place in a tree of messages."""
    node = found
    for step in steps[:-1]:
        node = node.setdefault(step, {})
    node.setdefault(steps[-1], []).append(sentence)


PLUG = schema("Plug", Plug, {"connector": Connector(PLUG_CONNECTORS, required=True), "at_mm": size_mm()})


def _cable(**further: Own) -> dict[str, Own]:
    return named() | further | {
        "quantity": Whole(),
        "occupies": Pairs(Text(bounds.LONGEST_LABEL), Whole(), bounds.MOST_SOCKETS),
        "group": Text(bounds.LONGEST_LABEL),
        "plugs": Many(One(PLUG), bounds.MOST_PLUGS, least=1, required=True),
        "awg": Whole(bounds.LEAST_AWG, bounds.MOST_AWG),
        "supply_wires_12v": Whole(1, bounds.MOST_WIRES),
        "rated_watts": Printed(bounds.CABLE_PRINTS_WATTS),
        "carries_3v3": Flag(),
        "open_contacts": Whole(0, bounds.MOST_CONTACTS),
    }


BOXED_CABLE = schema("BoxedCable", Cable, _cable(captive=Flag()), cable_faults)
CABLE: RecordSchema = schema("Cable", Cable, category(Cable.category) | _cable(family=code()), cable_faults)
SOCKET = schema("Socket", Socket, {
    "label": Text(bounds.LONGEST_LABEL, required=True),
    "count": Whole(required=True),
    "group": Text(bounds.LONGEST_LABEL),
    "contacts_12v": Whole(1, bounds.MOST_CONTACTS),
})
GROUP = schema("Group", Group, {
    "name": Text(bounds.LONGEST_LABEL, required=True),
    "rail": Word(GROUP_RAILS),
    "max_amps": limit_amps(required=True),
    "feeds": Unlike(Fed(FUNCTIONS), len(FUNCTIONS)),
})
COMBINED_LIMIT = schema("CombinedLimit", CombinedLimit, {
    "rails": Unlike(Word(RAILS), len(RAILS), least=1, required=True),
    "watts": Number(bounds.LEAST_RATED_WATTS, bounds.MOST_RATED_WATTS, required=True),
})
EFFICIENCY_POINT = schema("EfficiencyPoint", EfficiencyPoint, {
    "load_percent": Number(bounds.LEAST_PERCENT, bounds.MOST_PERCENT, required=True),
    "percent": Number(bounds.LEAST_PERCENT, bounds.MOST_EFFICIENCY_PERCENT, required=True),
})
RAIL_LIMIT = schema("RailLimit", MaxAmps, {"max_amps": limit_amps(required=True)})
POWER_SUPPLY = schema("PowerSupply", PowerSupply, category(PowerSupply.category) | named() | {
    "rated_watts": Number(bounds.LEAST_RATED_WATTS, bounds.MOST_RATED_WATTS, required=True),
    "design": Word(DESIGNS, required=True),
    "form_factor": code(),
    "depth_mm": size_mm(),
    "modularity": Word(MODULARITIES),
    "efficiency_level": Word(EFFICIENCY_LEVELS),
    "efficiency_points": Many(One(EFFICIENCY_POINT), bounds.MOST_EFFICIENCY_POINTS),
    "power_factor": Number(bounds.LEAST_POWER_FACTOR, bounds.MOST_POWER_FACTOR),
    "rails": Rails(Word(RAILS), One(RAIL_LIMIT), len(RAILS)),
    "groups": Many(One(GROUP), bounds.MOST_GROUPS),
    "combined_limits": Many(One(COMBINED_LIMIT), bounds.MOST_COMBINED_LIMITS),
    "sockets": Many(One(SOCKET), bounds.MOST_SOCKETS),
    "cables": Many(One(BOXED_CABLE), bounds.MOST_BOXED_CABLES),
    "cable_family": code(),
    "rated_at_celsius": Number(bounds.LEAST_CELSIUS, bounds.MOST_CELSIUS),
    "inlet": Word(INLETS),
    "fan_side": Word(FAN_SIDES),
}, supply_faults)
