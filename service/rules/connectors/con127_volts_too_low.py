"""Volts behind extensions and adapters against the least that a device may have.

Reckoned from 12.00, 5.00 and 3.30 V at the end of the supply's own cable. What is added after it takes the rest: its
wire at 20 C, there and back, and the joint of each plug that goes into it, its contacts as bad as new ones may be.
Where length or gauge is not given a range is assumed. Each is looked at by itself where it ends, and all of them at
the port. Exactly the limit passes; from half of the way on CON128 cautions. Worn contacts, warm wire and the supply's
own regulation are not in it, nor is what other rails lift the way back by.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.rails import LOWEST_3_3, LOWEST_5, LOWEST_12, LOWEST_12_AT_CARD
from service.facts.resistance import FRESH_MOST, SIXTEEN_PIN_WORN_MOST
from service.facts.volts import DRIVE_CONTACT_MOHM
from service.rules.connectors.falls import fallen, nearest
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection that leaves its device too few volts."""
    for joint in case.joints:
        drop = nearest(joint)
        if drop is not None and drop.volts < drop.lowest:
            yield fallen(joint, drop, drop.lowest)


RULE = Rule(
    id="CON127", title="Too few volts are left behind an extension or adapter", weight="stop", points=0,
    aspect="connections", since="0.1",
    rests_on=(
        LOWEST_12, LOWEST_5, LOWEST_3_3, LOWEST_12_AT_CARD, FRESH_MOST, SIXTEEN_PIN_WORN_MOST,
        DRIVE_CONTACT_MOHM,
    ),
    check=check, planned=True,
    message="Of {nominal} V where the supply's own cable ends {measured} {unit} reach this {connector} port; {limit} "
    "{unit} is the least that is allowed there.",
    why="With too few volts a machine restarts under load, and what is missing at the device warms the lead.",
    remedy="Use a cable of the supply that reaches by itself, or a shorter lead of thicker wire.",
)
