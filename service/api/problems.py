"""GET /problems/{name}: what a problem's type means, for whoever follows the link in an error answer."""

from flask import Flask, Response

from service.api import requests
from service.api.problem import KINDS, NOT_FOUND, Refusal

_BY_NAME = {kind.name: kind for kind in KINDS}


def routes(app: Flask) -> None:
    """Add the call."""

    def problem_kind(name: str) -> Response:
        """Describe one kind of problem."""
        requests.query()
        requests.agree(requests.JSON)
        kind = _BY_NAME.get(name)
        if kind is None:
            raise Refusal(NOT_FOUND, "There is no kind of problem of this name.")
        return requests.json_answer(
            {"type": f"/problems/{name}", "title": kind.title, "status": kind.status, "remedy": kind.remedy}
        )

    app.add_url_rule("/problems/<name>", view_func=problem_kind, methods=["GET"])
