"""English sentences made of a rule's message and the values of a finding."""

from service.rules.rule import Finding, Rule, Unknown
from service.verdict.aspects import TAKES_POWER, NotChecked
from service.verdict.speak import CRASHED

STANDING = (
    "Switch the supply off and pull the mains cord before you plug or unplug anything inside.",
    "Leave the supply's own case closed: its capacitors stay charged.",
    "Never use a modular cable of another supply: the plug may fit and the wires may not match.",
    "Seat every plug until its latch clicks, and look at it once more when the machine has run under load.",
    "The makers' manuals, local electrical codes and a licensed electrician have the last word.",
)

RAILS = {"12v": "12 V", "5v": "5 V", "3v3": "3.3 V", "5vsb": "5 V standby"}
CAUSES = {"socket": "contact at the supply's end"}
SPOTS = {
    "at_port": "at the port",
    "at_input": "at an adapter's input",
    "in_adapter": "in an adapter",
    "of_cable": "of the cable",
}
MAINS = (
    "Circuits, sockets and fuses are work for a licensed electrician; local electrical code says what they may carry.",
    "All watts from the wall end as heat in the room: keep vents clear, and leave the sizing of cooling to the trade.",
)

SIZE_LEFT_OUT = (
    "Only the supply's power is looked at: cables, plugs, the place in the case and the mains are not.",
    "Overcurrent groups belong to one supply and not to a size; a supply that has them is checked by itself.",
    "12 V goes with the size, as it does on the sheet or as is usual; check the supply itself before it is bought.",
)

REASONS = SPOTS | {
    "no_such_plug": "no cable of this build has a plug for it",
    "not_listed": "the sheet does not say which cables the supply has",
    "none_left": "every plug for it is in use",
    "no_socket_left": "a cable for it is left, but no free socket for that cable",
    "left_out": "the plug that is left for it would load a contact, wire or group past its limit",
    "not_plugged": "the wiring that was sent puts nothing in it",
    "no_such_rail": "it asks for 5 V or 3.3 V, which this supply does not have; a socket of the board may give it",
    "too_short": "the cable for it is too short",
    "not_made_for": "it is made for another port, however alike they look",
    "no_3v3": "the device asks for 3.3 V, and this cable or adapter is not known to have a wire for it",
    "without_3v3": "the device asks for 3.3 V, and no cable with such a plug is known to carry it",
    "all_taken": "no socket at all, since other cables are in all of its kind",
    "no_socket": "none, for this cable takes no socket",
}


def message(rule: Rule, finding: Finding) -> str:
    """Return the sentence of a finding."""
    values = {name: _text(value) for name, value in finding.values}
    values.setdefault("measured", _text(finding.measured))
    values.setdefault("limit", _text(finding.limit))
    values.setdefault("unit", finding.unit)
    return rule.message.format(**values)


def unknown(rule: Rule, said: Unknown) -> str:
    """Return the sentence of a limit that could not be judged."""
    if said.missing == CRASHED:
        return f"{rule.title}: this could not be judged, because the service failed at it; report the X-Request-Id."
    return f"{rule.title}: this could not be judged, because {said.missing} is not given."


def not_checked(left_out: NotChecked) -> str:
    """Return why an aspect was not looked at."""
    if left_out.not_asked:
        return "The request asks for other aspects only."
    if left_out.missing == ("motherboard",) and left_out.aspect == "connections":
        return "The sheet lists no motherboard, so its main and processor plugs, and slots, are not looked at."
    if frozenset(left_out.missing) == TAKES_POWER:
        return "The sheet lists nothing that takes power."
    return f"The sheet lists no {' or '.join(name.replace('_', ' ') for name in left_out.missing)}."


def _text(value: object) -> str:
    if isinstance(value, float):
        return f"{value:.2f}".rstrip("0").rstrip(".")
    if value is None:
        return "unknown"
    word = str(value)
    if word in REASONS:
        return REASONS[word]
    return " + ".join(RAILS.get(one) or CAUSES.get(one) or one for one in word.split(" + "))
