"""What may be asked and how: query parameters, Accept, media type, length and the body itself."""

from collections.abc import Mapping
from typing import BinaryIO, NamedTuple, cast

import orjson
from flask import Response, request

from service.api.problem import (
    BAD_QUERY,
    BAD_REQUEST,
    BODY_TOO_LARGE,
    NOT_ACCEPTABLE,
    SLOW_BODY,
    UNREADABLE_BODY,
    WRONG_MEDIA_TYPE,
    Refusal,
)

JSON = "application/json"
HTML = "text/html"
_UTF_8 = frozenset({"utf-8", "utf8"})


class BodyLimits(NamedTuple):
    """The most bytes of a body, and how long [s] a read may wait for its next piece."""

    max_bytes: int
    stall_seconds: int


def agree(offered: str) -> None:
    """Refuse a request that does not accept the one media type that is offered."""
    accept = request.headers.get("Accept")
    if not accept or accept == "*/*" or accept == offered:
        return
    if request.accept_mimetypes.best_match([offered]) is None:
        raise Refusal(NOT_ACCEPTABLE, f"This call answers with {offered} only.")


def query(allowed: tuple[str, ...] = ()) -> Mapping[str, str]:
    """Return the query parameters; refuse any that are not allowed or stand there twice."""
    if not request.query_string:
        return {}
    for name, values in request.args.lists():
        if name not in allowed:
            raise Refusal(BAD_QUERY, f"This call takes {_listed(allowed)}; another one was sent.")
        if len(values) > 1:
            raise Refusal(BAD_QUERY, f"The query parameter {name} stands there more than once.")
    return request.args


def json_body(limits: BodyLimits) -> bytes:
    """Return the bytes of a JSON body; refuse another media type, a coding, and what is too long, cut off or empty."""
    if request.mimetype != JSON:
        raise Refusal(WRONG_MEDIA_TYPE, f"This call takes {JSON} only.")
    if request.mimetype_params.get("charset", "utf-8").lower() not in _UTF_8:
        raise Refusal(WRONG_MEDIA_TYPE, "The body must be in UTF-8; another charset was named.")
    if request.headers.get("Content-Encoding", "identity").lower() != "identity":
        raise Refusal(WRONG_MEDIA_TYPE, "The body must be sent as it is, without a content coding.")
    raw = _read(limits)
    if not raw:
        raise Refusal(UNREADABLE_BODY, "The body is empty; a JSON object is due.")
    return raw


def json_answer(answer: object) -> Response:
    """Return an answer as JSON."""
    return Response(orjson.dumps(answer), content_type=JSON)


def _read(limits: BodyLimits) -> bytes:
    """Read at most one byte more than is allowed, whether or not a length was announced."""
    length = request.content_length
    if length is None and not request.environ.get("wsgi.input_terminated"):
        return b""
    if length is not None and length > limits.max_bytes:
        raise Refusal(BODY_TOO_LARGE, _too_large(limits))
    raw = _pull(limits.max_bytes + 1 if length is None else length, limits.stall_seconds)
    if len(raw) > limits.max_bytes:
        raise Refusal(BODY_TOO_LARGE, _too_large(limits))
    if length is not None and len(raw) < length:
        raise Refusal(BAD_REQUEST, "The body ended before the length that was announced.")
    return raw


def _pull(size: int, stall_seconds: int) -> bytes:
    """Read up to ``size`` bytes from the server's stream; its own faults are the caller's broken framing."""
    connection = request.environ.get("gunicorn.socket")
    if connection is not None:
        connection.settimeout(stall_seconds)
    stream = cast(BinaryIO, request.environ["wsgi.input"])
    pieces: list[bytes] = []
    try:
        while size > 0 and (piece := stream.read(size)):
            pieces.append(piece)
            size -= len(piece)
    except TimeoutError:
        raise Refusal(SLOW_BODY, f"Nothing more of the body came for {stall_seconds} seconds.") from None
    except Exception:  # noqa: BLE001 - each server has errors of its own for broken chunks and lost connections
        raise Refusal(BAD_REQUEST, "The body broke off or was not framed as HTTP asks.") from None
    return b"".join(pieces)


def _too_large(limits: BodyLimits) -> str:
    return f"A body may have {limits.max_bytes} bytes at most."


def _listed(allowed: tuple[str, ...]) -> str:
    return f"the query parameters {', '.join(allowed)} only" if allowed else "no query parameters"
