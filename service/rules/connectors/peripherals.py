"""Adapters from peripheral 4-pin plugs to card plugs."""

from service.case.case import FeedAdapter
from service.parts.words import CARD


def feeds_card(adapter: FeedAdapter) -> bool:
    """Say whether an adapter makes a card plug of peripheral plugs."""
    return adapter.takes == "peripheral-4" and adapter.gives in CARD
