"""The bodies of the benchmark.

Whole builds of about 12 lines, by ids and written out, a thousand different ones each. As at a checkout, parts were
chosen to go together, and most builds fit: about one in five has a stop.
"""

import json
from random import Random
from typing import Any

from service.catalogue import bundled
from service.catalogue.edition import Edition
from service.intake.specs import spec_of

COUNT = 1000
_SUPPLIES = (
    "demo-supply-750",
    "demo-supply-850",
    "demo-supply-1000",
    "demo-supply-1300-groups",
    "demo-supply-850-groups",
)
_CARDS = ("demo-card-120", "demo-card-200", "demo-card-285-sixteen", "demo-card-320", "demo-card-390-three")
_REST = (
    "demo-cooler-tower",
    "demo-case-tower",
    "demo-ssd-m2",
    "demo-ssd-flat",
    "demo-fan-140-strong",
)
_PROCESSORS = ("demo-processor-65", "demo-processor-125", "demo-processor-plug-160")
_BOARDS = (
    ("demo-board-4c", "demo-memory-2x16"),
    ("demo-board-eight-four", "demo-memory-2x8-plain"),
    ("demo-board-lights", "demo-memory-4x8-old"),
    ("demo-board-plain", "demo-memory-1x8-older"),
)
_DISKS = ("demo-disk-archive", "demo-disk-quiet")


def by_ids(number: int) -> dict[str, Any]:
    """Return sheet ``number``: different from all others in what it lists, its room and its reference."""
    random = Random(number)
    board = random.choice(_BOARDS)
    ids = [random.choice(_SUPPLIES), *board, random.choice(_PROCESSORS), random.choice(_CARDS), *_REST]
    lines: list[dict[str, Any]] = [{"part": each} for each in ids]
    lines.append({"part": random.choice(_DISKS), "quantity": random.randint(1, 4)})
    lines.append({"part": "demo-fan-120", "quantity": random.randint(1, 2)})
    return {
        "reference": f"bench-{number}",
        "parts": lines,
        "site": {"mains_volts": random.choice((120, 230)), "room_celsius": 18 + number % 13},
    }


def written_out(sheet: dict[str, Any], edition: Edition) -> dict[str, Any]:
    """Return the same sheet with every part as a spec."""
    lines = [
        {"spec": spec_of(edition.by_id[line["part"]].part), "quantity": line.get("quantity", 1)}
        for line in sheet["parts"]
    ]
    return sheet | {"parts": lines}


def bodies(*, inline: bool) -> list[bytes]:
    """Return a thousand different bodies."""
    edition = bundled.load()
    sheets = (by_ids(number) for number in range(COUNT))
    return [json.dumps(written_out(sheet, edition) if inline else sheet).encode() for sheet in sheets]
