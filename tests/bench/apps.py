"""What the bench serves beside the service itself.

A bare echo, and the service with its memos emptied before each check.
"""

import orjson
from flask import Flask, Response, request

from service.app import create_app
from service.wiring import components


def echo() -> Flask:
    """Return a bare application that parses a body and gives it back."""
    app = Flask("echo")

    @app.post("/v1/checks")
    def back() -> Response:
        return Response(orjson.dumps(orjson.loads(request.get_data())), mimetype="application/json")

    return app


def emptied() -> Flask:
    """Return the service with its wiring memo emptied before each request."""
    app = create_app()
    app.before_request(components.clear)
    return app


def plain() -> Flask:
    """Return the service as it is."""
    return create_app()
