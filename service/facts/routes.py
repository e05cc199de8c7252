"""Ways of cables through a case, and how long leads are, where it is not given."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import judgement, usual

REACH_SLACK_MM: Final = judgement(
    "route.slack", 0, "mm beyond the stated way",
    "A way that a case states is taken to be the length a cable must have, bends and a little slack included.",
)
USUAL_ROUTE_MM: Final = MappingProxyType({
    "main": usual(
        "assumed.route.main", 250, 500, "mm",
        "From the supply to the board's edge: 250 mm in small cases, 500 in large.",
    ),
    "processor": usual(
        "assumed.route.processor", 300, 650, "mm",
        "Behind the board to its upper corner: 300 mm in small cases, 650 in a full tower.",
    ),
    "card": usual(
        "assumed.route.card", 250, 550, "mm",
        "Round the board to the card's edge: 250 mm in small cases, 550 in large.",
    ),
    "drive": usual("assumed.route.drive", 150, 450, "mm", "From the supply to the cage beside it or behind the board."),
})
USUAL_LEAD_MM: Final = MappingProxyType({
    "main": usual(
        "assumed.lead.main", 300, 600, "mm", "Main leads are about 300 mm on small supplies and 600 mm on large ones.",
    ),
    "processor": usual(
        "assumed.lead.processor", 400, 650, "mm",
        "Processor leads are about 400 mm on small supplies and 650 mm on large ones.",
    ),
    "card": usual(
        "assumed.lead.card", 400, 600, "mm", "Card leads are about 400 mm on small supplies and 600 mm on large ones.",
    ),
    "drive": usual("assumed.lead.drive", 300, 450, "mm", "The first plug of a drive lead is usually at 300 to 450 mm."),
})
