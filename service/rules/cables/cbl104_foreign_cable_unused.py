"""A cable of another pinout family that lies with the parts and is not used.

Nothing is wrong as long as it stays there. In use it is CBL101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import CABLES_INTERCHANGED
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each unused cable that was made for another family of supplies."""
    for cable in case.foreign_spare:
        yield Finding(cable)


RULE = Rule(
    id="CBL104", title="A cable made for another supply lies with the parts", weight="advice", points=0,
    aspect="connections", since="0.1", rests_on=(CABLES_INTERCHANGED,), check=check, planned=True,
    message="This cable is not known to be made for this supply. It may fit the sockets; do not use it.",
    why="Its pins can be wired differently: 12 V on the wrong pin destroys parts at once and can start a fire.",
    remedy="Put it away, with the supply that it belongs to.",
)
