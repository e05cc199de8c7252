"""GET /livez and GET /readyz: for the machinery that runs the service."""

from flask import Flask, Response

from service import __version__
from service.api import requests
from service.journeys.shelf import Shelf


def routes(app: Flask, shelf: Shelf) -> None:
    """Add both probes."""

    def live() -> Response:
        """Say that the process answers; touches nothing."""
        requests.query()
        requests.agree(requests.JSON)
        return requests.json_answer({"alive": True})

    def ready() -> Response:
        """Say that checks can be answered, and with which edition of the catalogue."""
        requests.query()
        requests.agree(requests.JSON)
        return requests.json_answer({"ready": True, "edition": shelf.edition.name, "service_version": __version__})

    app.add_url_rule("/livez", view_func=live, methods=["GET"])
    app.add_url_rule("/readyz", view_func=ready, methods=["GET"])
