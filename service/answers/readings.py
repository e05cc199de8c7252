"""Readings as JSON: what each was taken for, in the order of the sheet."""

from typing import Any

from service.case.case import Case
from service.parts.readings import Taken

Json = dict[str, Any]


def readings(case: Case) -> list[Json]:
    """Return each reading with the field that it settles and the amps that the sheet states of it."""
    return [_reading(index, one) for index, one in enumerate(case.build.readings)]


def _reading(index: int, one: Taken) -> Json:
    stated = None if one.stated is None else {end: round(amps, 3) for end, amps in one.stated._asdict().items()}
    return {
        "where": f"/readings/{index}", "stated_amps": stated,
        "settles": None if one.field is None else f"/parts/{one.reading.line}/{one.field}",
    }
