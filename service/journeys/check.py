"""One build sheet checked: bytes in, answer out."""

from typing import Any

from service.advice.size import sizes
from service.answers.answer import answer
from service.catalogue.resolve import resolve
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.journeys.shelf import Shelf
from service.verdict.check import check


def check_sheet(raw: bytes, shelf: Shelf) -> dict[str, Any]:
    """Return the answer to a build sheet.

    Raises
    ------
    Unreadable
        When the bytes are no JSON.
    Faults
        When the sheet is at fault, with every fault in it.
    """
    build = resolve(read_sheet(read_json(raw)), shelf.edition)
    return answer(check(build), sizes(build) if build.size else None)
