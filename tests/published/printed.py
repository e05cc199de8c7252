"""A number as a document prints it, and the questions that bring ours to it: the whole check, as a client asks it."""

from dataclasses import dataclass
from typing import Any, Literal

import pytest

from tests.journeys.asked import ask

Json = dict[str, Any]
How = Literal["primary", "mirror", "secondary", "memory", "arithmetic"]


@dataclass(frozen=True)
class Printed:
    """Digits as printed, and the table, section or page of the document of the file.

    ``how``: read on the issuer's own page (primary), in the issuer's document on another site (mirror), as somebody
    else quotes it (secondary); from memory; or arithmetic on printed figures, which ``where`` then names.
    """

    digits: str
    where: str
    how: How

    def __str__(self) -> str:
        """Return the digits, as the name of a row."""
        return self.digits

    @property
    def exact(self) -> float:
        """Return the number: for a figure that is taken as it stands."""
        return float(self.digits)

    @property
    def rounded(self) -> Any:
        """Return what is equal to every number that would be printed so: within half of the last digit."""
        return pytest.approx(self.exact, abs=0.5 * 10 ** -len(self.digits.partition(".")[2]) + 1e-9, rel=0)



def supply(*plugs: str, **given: Any) -> Json:
    """Return a supply of a thousand watts, with one cable of 16 AWG for each plug; one prints what it carries."""
    cables = [{"plugs": [{"connector": plug}], "awg": 16} for plug in plugs]
    return {
        "category": "power_supply", "rated_watts": 1000, "design": "atx-3.1", "power_factor": 1, "cables": cables,
        "rails": {"12v": {"max_amps": 500}, "5v": {"max_amps": 100}, "3v3": {"max_amps": 100}}, **given,
    }


def printed_for(watts: float, box: Json) -> Json:
    """Return a supply whose 16-pin cables are printed for so many watts."""
    cables = [cable | {"rated_watts": watts} for cable in box["cables"]]
    return box | {"cables": cables}


def card(watts: float, connector: str | None = None, **given: Any) -> Json:
    """Return a card that takes all its watts through a plug, or through its slot if it has none."""
    needs = {"slot_watts": 0, "needs": [{"connector": connector}]} if connector else {}
    return {"category": "graphics_card", "board_watts": watts, **needs, **given}


def board(amps: float = 0.0) -> Json:
    """Return a board that takes so many amps from 12 V and nothing else."""
    own = {"12v": amps, "5v": 0, "3v3": 0, "5vsb": 0}
    return {"category": "motherboard", "own_amps": own, "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}]}


def disk(amps: float, plug: str = "sata-power", moment: str = "running_amps", rail: str = "12v") -> Json:
    """Return a drive that takes so many amps from one rail in one moment, and nothing in the other."""
    nothing = {"12v": 0, "5v": 0, "3v3": 0}
    taken = {"running_amps": nothing, "starting_amps": nothing} | {moment: nothing | {rail: amps}}
    return {"category": "drive", "size": "3.5", "needs": [{"connector": plug}], **taken}


def asked(*specs: Json, **given: Any) -> Json:
    """Return the answer to a sheet of these parts."""
    return ask({"parts": [{"spec": spec} for spec in specs], **given})


def limits(answer: Json, rule: str) -> set[tuple[float, str]]:
    """Return the limits that a rule tells, with their units."""
    return {(found["limit"], found["unit"]) for found in answer["findings"] if found["rule"] == rule}


def measured(answer: Json, rule: str) -> set[float]:
    """Return what a rule has measured."""
    return {found["measured"] for found in answer["findings"] if found["rule"] == rule}


def moments(answer: Json, field: str) -> dict[float, float]:
    """Return the greatest figure of each short moment by its microseconds."""
    found: dict[float, float] = {}
    for one in answer["power"]["moments"]:
        found[one["microseconds"]] = max(one[field], found.get(one["microseconds"], 0.0))
    return found
