"""The headers that every answer carries, and the id of a request."""

import os
import re

from flask import Flask, Response, g, request

_FIXED = (
    ("X-Content-Type-Options", "nosniff"),
    ("X-Frame-Options", "DENY"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'"),
    ("Cache-Control", "no-store"),
)
REQUEST_ID = "X-Request-Id"
_OURS_TO_ECHO = re.compile(r"[A-Za-z0-9._-]{1,64}")
_NEW_ID_BYTES = 8


def add_to_all(app: Flask) -> None:
    """Complete every answer, errors too."""
    app.after_request(_complete)


def request_id() -> str:
    """Return the id of the current request: the caller's own if it is short and plain, else a new one."""
    known: str | None = g.get("request_id")
    if known is None:
        sent = request.headers.get(REQUEST_ID, "")
        known = sent if _OURS_TO_ECHO.fullmatch(sent) else os.urandom(_NEW_ID_BYTES).hex()
        g.request_id = known
    return known


def _complete(response: Response) -> Response:
    headers = response.headers
    for name, text in _FIXED:
        headers.setdefault(name, text)
    headers.setdefault("Vary", "Accept")
    headers[REQUEST_ID] = request_id()
    return response
