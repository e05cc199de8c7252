"""Points of the cautions that a plan decides: what a plan weighs, and what the rules count, are the same figures."""

from typing import Final

from service.facts.fact import judgement

_UNIT: Final = "points"

BAND_POINTS: Final = judgement(
    "points.band", 4, _UNIT,
    "A contact without reserve works for years if it sits well; nobody can see whether it does.",
)
START_WIRE_POINTS: Final = judgement("points.start_wire", 3, _UNIT, "Seconds at start-up warm a wire little.")
SHARE_POINTS: Final = judgement(
    "points.share", 5, _UNIT,
    "One cable for a heavy card is within its ratings and has no reserve, like a contact in the band.",
)
MOULDED_POINTS: Final = judgement(
    "points.moulded", 4, _UNIT, "A fault inside a moulded plug is not seen before it burns.",
)
PERIPHERAL_CARD_ADAPTER_POINTS: Final = judgement(
    "points.peripheral_card", 6, _UNIT, "Plugs for drives at a card's load are worse than a moulded plug at a drive's.",
)
ASSUMED_SHORT_POINTS: Final = judgement(
    "points.assumed_short", 2, _UNIT, "The way is only assumed; a tape measure settles it before anything is bought.",
)
THREE_VOLT_POINTS: Final = judgement(
    "points.three_volt", 3, _UNIT,
    "The drive does not appear at all, though nothing is damaged and another lead cures it.",
)
HEADER_POINTS: Final = judgement(
    "points.header", 6, _UNIT, "Another header or a hub cures it, but a header that burns out takes the board with it.",
)
