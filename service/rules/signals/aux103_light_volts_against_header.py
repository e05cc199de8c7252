"""Volts of a light against the volts of the header that its plug is made for.

Addressable lights on the three-pin header run on 5 V, plain ones on the four-pin header on 12 V. Other plugs are not
looked at.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.fact import Fact
from service.facts.headers import ADDRESSABLE_VOLTS, PLAIN_LIGHT_VOLTS
from service.parts.records import Lighting
from service.rules.rule import Finding, Rule, Said

HEADER_VOLTS: dict[str, Fact] = {"argb-3": ADDRESSABLE_VOLTS, "rgb-4": PLAIN_LIGHT_VOLTS}


def check(case: Case) -> Iterator[Said]:
    """Yield each light whose volts are not those of its header."""
    for at, unit in enumerate(case.build.units):
        if isinstance(unit.part, Lighting):
            yield from _light(at, unit.part)


def _light(at: int, light: Lighting) -> Iterator[Said]:
    for need in light.needs:
        fact = HEADER_VOLTS.get(need.connector)
        if fact is not None and light.volts != fact.value:
            yield Finding(Place("unit", at), light.volts, fact.value, "V", (("connector", need.connector),))
            return


RULE = Rule(
    id="AUX103", title="A light and its header have different volts", weight="stop", points=0, aspect="signals",
    since="0.1", rests_on=(ADDRESSABLE_VOLTS, PLAIN_LIGHT_VOLTS), check=check,
    message="The light runs on {measured} {unit}, and a {connector} header gives {limit} {unit}.",
    why="12 V on a 5 V light burns it out at once, and can take the header with it.",
    remedy="Use a header of the light's own volts, or a light for this header. Never force the plug round.",
)
