"""GET /docs: the reference as a page, with files of its own host only and no script inside the page."""

from importlib.resources import files

from flask import Flask, Response

from service.api import requests
from service.api.document import cached
from service.api.problem import NOT_FOUND, Refusal

_PAGE = b"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Matewell: reference</title>
<link rel="icon" type="image/png" href="docs/favicon-32x32.png">
<link rel="stylesheet" href="docs/swagger-ui.css">
<script src="docs/swagger-ui-bundle.js" defer></script>
<script src="docs/start.js" defer></script>
</head>
<body>
<main id="reference"><p>This page needs scripts. Without: <a href="openapi.json">openapi.json</a>.</p></main>
</body>
</html>
"""
_START = b"""document.addEventListener("DOMContentLoaded", function () {
  SwaggerUIBundle({ url: "openapi.json", dom_id: "#reference", validatorUrl: null, deepLinking: true });
});
"""
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_TYPES = {"css": "text/css; charset=utf-8", "js": "text/javascript; charset=utf-8", "png": "image/png"}
_TAKEN_OVER = ("swagger-ui.css", "swagger-ui-bundle.js", "favicon-32x32.png")


def read_files() -> dict[str, bytes]:
    """Return the files of the page by name."""
    folder = files("flask_swagger_ui") / "dist"
    return {name: (folder / name).read_bytes() for name in _TAKEN_OVER} | {"start.js": _START}


def routes(app: Flask, page_files: dict[str, bytes]) -> None:
    """Add the page and its files."""

    def docs() -> Response:
        """Give the page."""
        requests.query()
        requests.agree(requests.HTML)
        response = cached(_PAGE, "text/html; charset=utf-8")
        response.headers["Content-Security-Policy"] = _POLICY
        return response

    def docs_file(name: str) -> Response:
        """Give a file of the page."""
        requests.query()
        content = page_files.get(name)
        if content is None:
            raise Refusal(NOT_FOUND, "The page has no file of this name.")
        return cached(content, _TYPES[name.rpartition(".")[2]])

    app.add_url_rule("/docs", view_func=docs, methods=["GET"])
    app.add_url_rule("/docs/<name>", view_func=docs_file, methods=["GET"])
