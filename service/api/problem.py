"""Every error answer: made here and nowhere else, as application/problem+json (RFC 9457)."""

import logging
from collections.abc import Iterable
from typing import NamedTuple

import orjson
from flask import Flask, Response
from werkzeug.exceptions import HTTPException, MethodNotAllowed

from service.api.headers import request_id

MEDIA_TYPE = "application/problem+json"
log = logging.getLogger(__name__)


class Kind(NamedTuple):
    """A kind of problem: its name in ``/problems/{name}``, its status, its title and what to do about it."""

    name: str
    status: int
    title: str
    remedy: str


class Place(NamedTuple):
    """One fault in a request: a JSON pointer into the body, and a sentence."""

    pointer: str
    detail: str


UNREADABLE_BODY = Kind(
    "unreadable-body", 400, "The body cannot be read as JSON",
    "Send one JSON object, in UTF-8 without a byte order mark, with no key twice and no number out of range.",
)
BAD_QUERY = Kind(
    "bad-query", 400, "A query parameter is not understood",
    "Send only the query parameters that the reference lists for this call, each once and within its bounds.",
)
BAD_REQUEST = Kind(
    "bad-request", 400, "The request is broken",
    "Check that the whole request was sent and follows HTTP.",
)
NOT_FOUND = Kind(
    "not-found", 404, "There is nothing at this address",
    "Compare the path, with no slash at its end, and the id with the reference and the lists of the service.",
)
WRONG_METHOD = Kind(
    "wrong-method", 405, "This address does not take this method",
    "Use one of the methods in the Allow header.",
)
NOT_ACCEPTABLE = Kind(
    "not-acceptable", 406, "No representation that the client accepts",
    "Leave out the Accept header, or name one of the media types that the reference lists for this call.",
)
SLOW_BODY = Kind(
    "slow-body", 408, "The body did not arrive in time",
    "Send the whole body without a pause and try again.",
)
BODY_TOO_LARGE = Kind(
    "body-too-large", 413, "The body is too large",
    "Send a smaller body; the reference states the limit.",
)
WRONG_MEDIA_TYPE = Kind(
    "wrong-media-type", 415, "The body is of a media type that this call does not take",
    "Send Content-Type: application/json in UTF-8, with no content coding.",
)
BAD_SHEET = Kind(
    "bad-sheet", 422, "The build sheet has faults",
    "Mend each fault listed under errors; all of them are listed at once.",
)
OUR_FAULT = Kind(
    "our-fault", 500, "Something broke inside the service",
    "Nothing in the request explains this. Report the X-Request-Id header of the answer.",
)
KINDS = (
    UNREADABLE_BODY, BAD_QUERY, BAD_REQUEST, NOT_FOUND, WRONG_METHOD, NOT_ACCEPTABLE, SLOW_BODY, BODY_TOO_LARGE,
    WRONG_MEDIA_TYPE, BAD_SHEET, OUR_FAULT,
)
_BY_STATUS = {400: BAD_REQUEST, 404: NOT_FOUND, 405: WRONG_METHOD, 413: BODY_TOO_LARGE}


class Refusal(Exception):
    """A request that is refused: becomes a problem in one place."""

    def __init__(self, kind: Kind, detail: str, errors: Iterable[Place] = ()) -> None:
        super().__init__(detail)
        self.kind = kind
        self.detail = detail
        self.errors = tuple(errors)


def respond(kind: Kind, detail: str, errors: Iterable[Place] = ()) -> Response:
    """Return the answer for a problem."""
    body = {
        "type": f"/problems/{kind.name}", "title": kind.title, "status": kind.status, "detail": detail,
        "errors": [place._asdict() for place in errors],
    }
    return Response(orjson.dumps(body), status=kind.status, content_type=MEDIA_TYPE)


def handle_all(app: Flask) -> None:
    """Turn everything that is raised during a request into a problem."""
    app.register_error_handler(Refusal, _refused)
    app.register_error_handler(HTTPException, _by_http)
    app.register_error_handler(Exception, _broken)


def _refused(refusal: Refusal) -> Response:
    return respond(refusal.kind, refusal.detail, refusal.errors)


def _by_http(error: HTTPException) -> Response:
    kind = _BY_STATUS.get(error.code or 0, BAD_REQUEST)
    response = respond(kind, kind.remedy)
    if isinstance(error, MethodNotAllowed):
        response.headers["Allow"] = ", ".join(sorted(error.valid_methods or ()))
    return response


def _broken(error: Exception) -> Response:
    log.error("request %s failed", request_id(), exc_info=error)
    return respond(OUR_FAULT, OUR_FAULT.remedy)
