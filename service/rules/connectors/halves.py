"""Plugs that sit in a larger port of their own kind and leave contacts empty."""

from collections.abc import Collection

from service.case.case import FeedPlug, Joint
from service.parts.words import CARD, MAIN, PROCESSOR

PROCESSOR_PLUGS = PROCESSOR | {"cpu-4+4"}
MAIN_PLUGS = MAIN | {"atx-20+4"}
CARD_PLUGS = CARD | {"pcie-6+2"}


def half_mated(joint: Joint, plugs: Collection[str]) -> FeedPlug | None:
    """Return the first plug of these kinds on the way to a port that mates by half."""
    return next((plug for plug in joint.plugs if plug.mate == "half" and plug.connector in plugs), None)
