"""Amps of the hottest contact of a plug, if its contacts shared the current as unequally as is credible.

One more contact open, one as good as new, the others worn to their limit, the wire behind each as it is; where that is
not given, a short and thick one. Equal shares are CON104 and CON106. It is an estimate and advice: how a plug sits
cannot be known from a sheet. Exactly the rating passes. Looked at for 8-pin card and 16-pin plugs, plugs at adapters,
and those with contacts stated open; for the plug of an adapter itself where its length is given. Wear at the supply's
end is not in it, nor a plug that is not pushed home.
"""

from collections.abc import Iterator

from service.case.case import Case, Heat
from service.facts.contacts import SIXTEEN_PIN_AMPS, STOP_AMPS
from service.facts.resistance import (
    BRONZE_AMPS,
    BRONZE_RISE,
    FRESH_MEAN,
    RISE_EXPONENT,
    SIXTEEN_PIN_HEALTHY,
    SIXTEEN_PIN_RISE,
    SIXTEEN_PIN_WORN_MOST,
    WORN_MOST,
)
from service.rules.rule import Finding, Rule, Said

_SUPPOSED = "supposed"
_GIVEN = "as given"


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a contact that would be past its rating if the others did badly."""
    for joint in case.joints:
        worst = max(joint.heats, key=_part, default=None) if joint.heats else None
        if worst is not None and worst.hottest_amps is not None and worst.hottest_amps > worst.rated_amps:
            yield Finding(
                joint.at, worst.hottest_amps, worst.rated_amps, "A",
                (("connector", worst.connector), ("contacts", worst.contacts),
                 ("rise", round(worst.hottest_rise_celsius or 0.0)), ("length_mm", round(worst.length_mm)),
                 ("awg", worst.awg), ("how", _SUPPOSED if worst.assumed else _GIVEN)),
            )


def _part(heat: Heat) -> float:
    """Return what part of its rating the hottest contact would carry."""
    return 0.0 if heat.hottest_amps is None else heat.hottest_amps / heat.rated_amps


RULE = Rule(
    id="CON125", title="A worn or open contact would leave too much for another", weight="advice", points=0,
    aspect="connections", since="0.1",
    rests_on=(
        SIXTEEN_PIN_AMPS, STOP_AMPS, FRESH_MEAN, WORN_MOST, SIXTEEN_PIN_HEALTHY, SIXTEEN_PIN_WORN_MOST, BRONZE_AMPS,
        BRONZE_RISE, SIXTEEN_PIN_RISE, RISE_EXPONENT,
    ),
    check=check, planned=True,
    message="If one of the {contacts} contacts for 12 V of the {connector} plug stood open and others were worn, one "
    "could carry {measured} {unit} and get about {rise} °C warmer than the air in the case (an estimate, with "
    "{length_mm} mm of {awg} AWG wire, {how}); its rating is {limit} {unit}.",
    why="Contacts side by side share by their resistance: the best one takes the most, and nothing limits it.",
    remedy="Push the plug in until it clicks, do not bend the wires close to it, and replace a cable that was plugged "
    "often.",
)
