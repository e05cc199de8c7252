"""GET /v1/rules and GET /v1/rules/{id}: what is checked."""

from flask import Flask, Response

from service.api import requests
from service.api.problem import NOT_FOUND, Refusal
from service.journeys.rules import get_rule, list_rules


def routes(app: Flask) -> None:
    """Add both calls; the list never changes while the service runs, so it is made once."""
    listed = list_rules()

    def rules() -> Response:
        """List all rules in short."""
        requests.query()
        requests.agree(requests.JSON)
        return requests.json_answer(listed)

    def rule(rule_id: str) -> Response:
        """Give one rule with its reasons and sources."""
        requests.query()
        requests.agree(requests.JSON)
        found = get_rule(rule_id)
        if found is None:
            raise Refusal(NOT_FOUND, "There is no rule of this id.")
        return requests.json_answer(found)

    app.add_url_rule("/v1/rules", view_func=rules, methods=["GET"])
    app.add_url_rule("/v1/rules/<rule_id>", view_func=rule, methods=["GET"])
