"""What drives draw where it is not given: amps by rail, running and starting."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, usual
from service.facts.sources import DISK_MANUALS, LAPTOP_DISK_MANUAL

ByRail = MappingProxyType[str, Assumption]

HEAVIEST_SIZE: Final = "3.5"
M2: Final = "m2"


def _by_rail(name: str, v12: Assumption, v5: Assumption, v3_3: tuple[float, float] = (0, 0)) -> ByRail:
    none = v3_3 == (0, 0)
    why = "Only drives on the board itself are fed from 3.3 V." if none else "The socket is made for 2.5 A or more."
    return MappingProxyType({"12v": v12, "5v": v5, "3v3": usual(f"assumed.drive.{name}.3v3", *v3_3, "A", why)})


def _none(name: str, rail: str) -> Assumption:
    return usual(f"assumed.drive.{name}.{rail}", 0, 0, "A", "Drives of this kind take nothing from this rail.")


RUNNING_AMPS: Final = MappingProxyType({
    "3.5": _by_rail(
        "3_5.running",
        Assumption(
            "assumed.drive.3_5.running.12v", 0.35, 0.9, "A",
            "3.5 inch disks take 0.39 to 0.52 A idle on 12 V by two manuals, and more while they seek.", "published",
            DISK_MANUALS,
        ),
        Assumption(
            "assumed.drive.3_5.running.5v", 0.4, 0.8, "A",
            "3.5 inch disks take 0.46 to 0.61 A idle on 5 V by two manuals, and more while they read.", "published",
            DISK_MANUALS,
        ),
    ),
    "2.5": _by_rail(
        "2_5.running", _none("2_5.running", "12v"),
        usual("assumed.drive.2_5.running.5v", 0.3, 1.2, "A", "2.5 inch disks and solid-state drives run on 5 V alone."),
    ),
    "m2": _by_rail(
        "m2.running", _none("m2.running", "12v"), _none("m2.running", "5v"), (1.0, 3.0),
    ),
})
STARTING_AMPS: Final = MappingProxyType({
    "3.5": _by_rail(
        "3_5.starting",
        Assumption(
            "assumed.drive.3_5.starting.12v", 1.7, 2.8, "A",
            "3.5 inch disks take 1.72 to 2.80 A on 12 V while they spin up, by two manuals.", "published", DISK_MANUALS,
        ),
        Assumption(
            "assumed.drive.3_5.starting.5v", 0.6, 0.8, "A",
            "3.5 inch disks take 0.60 to 0.80 A on 5 V while they spin up, by a manual.", "published", DISK_MANUALS,
        ),
    ),
    "2.5": _by_rail(
        "2_5.starting", _none("2_5.starting", "12v"),
        Assumption(
            "assumed.drive.2_5.starting.5v", 0.3, 1.2, "A",
            "A 2.5 inch disk takes 1.0 A on 5 V at start by its manual; solid-state drives less or a little more.",
            "published",
            LAPTOP_DISK_MANUAL,
        ),
    ),
    "m2": _by_rail(
        "m2.starting", _none("m2.starting", "12v"), _none("m2.starting", "5v"), (1.0, 3.0),
    ),
})
OPTICAL_AMPS: Final = _by_rail(
    "optical",
    usual("assumed.drive.optical.12v", 0.5, 1.5, "A", "Drives for discs take up to 1.5 A on 12 V at work."),
    usual("assumed.drive.optical.5v", 0.5, 1.5, "A", "Drives for discs take up to 1.5 A on 5 V at work."),
)
