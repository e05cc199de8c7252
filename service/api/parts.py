"""GET /v1/parts and GET /v1/parts/{id}: the parts of the edition in force."""

import re

from flask import Flask, Response

from service.api import requests
from service.api.problem import BAD_QUERY, NOT_FOUND, Refusal
from service.intake.bounds import LONGEST_ID
from service.journeys.parts import get_part, list_parts
from service.journeys.shelf import Shelf
from service.parts.records import CATEGORIES

DEFAULT_LIMIT = 50
MOST_PARTS = 200
_WHOLE = re.compile(r"[1-9][0-9]{0,2}")
_ID = re.compile(rf"[^\x00-\x1f\x7f-\x9f]{{1,{LONGEST_ID}}}")
_WORDS = frozenset(kind.category for kind in CATEGORIES)


def routes(app: Flask, shelf: Shelf) -> None:
    """Add both calls."""

    def parts() -> Response:
        """List a page of parts."""
        sent = requests.query(("category", "limit", "after"))
        requests.agree(requests.JSON)
        page = list_parts(
            shelf.edition, _limit(sent.get("limit")), _category(sent.get("category")), _after(sent.get("after"))
        )
        return requests.json_answer(page)

    def part(part_id: str) -> Response:
        """Give one part with its spec."""
        requests.query()
        requests.agree(requests.JSON)
        found = get_part(shelf.edition, part_id)
        if found is None:
            raise Refusal(NOT_FOUND, "This edition of the catalogue has no part of this id.")
        return requests.json_answer(found)

    app.add_url_rule("/v1/parts", view_func=parts, methods=["GET"])
    app.add_url_rule("/v1/parts/<part_id>", view_func=part, methods=["GET"])


def _limit(text: str | None) -> int:
    if text is None:
        return DEFAULT_LIMIT
    if _WHOLE.fullmatch(text) and int(text) <= MOST_PARTS:
        return int(text)
    raise Refusal(BAD_QUERY, f"The query parameter limit must be a whole number from 1 to {MOST_PARTS}.")


def _category(text: str | None) -> str | None:
    if text is None or text in _WORDS:
        return text
    raise Refusal(BAD_QUERY, f"The query parameter category must be one of {', '.join(sorted(_WORDS))}.")


def _after(text: str | None) -> str | None:
    if text is None or _ID.fullmatch(text):
        return text
    raise Refusal(BAD_QUERY, f"The query parameter after must have from 1 to {LONGEST_ID} characters of one line.")
