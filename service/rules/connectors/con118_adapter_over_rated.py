"""Watts through an adapter against the watts that its maker rates it for.

The rating at the number of inputs that are fed, where the maker tells it. Exactly the rating passes. An adapter's
make is CON114, its kind CON115 to CON117.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.connectors.strains import in_watts, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection through an adapter that carries more than it is rated for."""
    for joint in case.joints:
        strain = worst(joint, ("adapter",))
        if strain is not None:
            yield in_watts(joint, strain)


RULE = Rule(
    id="CON118", title="An adapter carries more than it is rated for", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(PRINTED_PERCENT,), check=check, planned=True,
    message="An adapter on the way to this {connector} port carries {measured} {unit} on {rail}; as fed it is rated "
    "for "
    "{limit} {unit}.",
    why="An adapter past its rating heats at its contacts, where heat does most harm.",
    remedy="Feed all inputs of the adapter from separate cables, or use a cable of the supply that needs none.",
)
