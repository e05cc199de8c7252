"""POST /v1/checks: one build sheet in, its verdict out."""

from flask import Flask, Response

from service.api import requests
from service.api.problem import BAD_SHEET, UNREADABLE_BODY, Place, Refusal
from service.intake.faults import Faults, Unreadable
from service.journeys.check import check_sheet
from service.journeys.shelf import Shelf


def routes(app: Flask, shelf: Shelf, limits: requests.BodyLimits) -> None:
    """Add the call."""

    def check() -> Response:
        """Judge the sheet in the body."""
        requests.query()
        requests.agree(requests.JSON)
        raw = requests.json_body(limits)
        try:
            return requests.json_answer(check_sheet(raw, shelf))
        except Unreadable as unreadable:
            raise Refusal(UNREADABLE_BODY, str(unreadable)) from None
        except Faults as faults:
            places = [Place(fault.pointer, fault.sentence) for fault in faults.faults]
            raise Refusal(BAD_SHEET, _counted(len(places)), places) from None

    app.add_url_rule("/v1/checks", view_func=check, methods=["POST"])


def _counted(faults: int) -> str:
    return "The sheet has 1 fault." if faults == 1 else f"The sheet has {faults} faults."
