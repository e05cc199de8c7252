"""Contacts for 12 V that are stated open: what each of those that are left carries, and how warm that may make it.

Any of them is told. What the others carry is judged by CON104 to CON106 like any other current; this rule tells the
warmth, an estimate from a published point. None is published for contacts of drives' plugs: they are left to CON107.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.resistance import BRONZE_AMPS, BRONZE_RISE, RISE_EXPONENT, SIXTEEN_PIN_RISE
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each plug that has contacts stated open and others left."""
    for joint in case.joints:
        for number, heat in enumerate(heat for heat in joint.heats if heat.open_contacts):
            yield Finding(
                joint.at.nth(number), heat.even_amps, None, "A",
                (("connector", heat.connector), ("open_contacts", heat.open_contacts), ("contacts", heat.contacts),
                 ("rise", round(heat.even_rise_celsius))),
            )


RULE = Rule(
    id="CON126", title="Contacts that do not touch leave their current to others", weight="advice", points=0,
    aspect="connections", since="0.1",
    rests_on=(BRONZE_AMPS, BRONZE_RISE, SIXTEEN_PIN_RISE, RISE_EXPONENT), check=check, planned=True,
    message="With {open_contacts} of its contacts open, each of the other {contacts} for 12 V of the {connector} plug "
    "carries {measured} {unit} and gets about {rise} °C warmer than the air in the case (an estimate).",
    why="Heat goes with the square of the current: a few contacts that carry for all warm up fast, and warmth loosens "
    "them.",
    remedy="Replace a cable with an open contact; do not use it until then for a part that draws much.",
)
