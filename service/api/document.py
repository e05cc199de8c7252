"""GET /openapi.json: the hand-written document, read once at start-up and served as it is."""

from hashlib import blake2b
from pathlib import Path

import orjson
import yaml
from flask import Flask, Response, request

from service.api import requests

FILE_NAME = "openapi.yaml"
_TAG_BYTES = 12
# The C parser where the wheel has it: reads the document about eight times faster at start-up.
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def read(folder: Path) -> bytes:
    """Return the document in ``folder`` as JSON."""
    with (folder / FILE_NAME).open("rb") as file:
        return orjson.dumps(yaml.load(file, Loader=_LOADER))  # noqa: S506 - both loaders are safe ones


def cached(content: bytes, content_type: str) -> Response:
    """Return fixed bytes with a strong tag, or 304 where the caller has them."""
    response = Response(content, content_type=content_type)
    response.set_etag(blake2b(content, digest_size=_TAG_BYTES).hexdigest())
    response.headers["Cache-Control"] = "no-cache"
    response.make_conditional(request)
    return response


def routes(app: Flask, document: bytes) -> None:
    """Add the call."""

    def openapi() -> Response:
        """Give the document."""
        requests.query()
        requests.agree(requests.JSON)
        return cached(document, requests.JSON)

    app.add_url_rule("/openapi.json", view_func=openapi, methods=["GET"])
