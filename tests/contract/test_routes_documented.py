"""Guard: the paths and methods of the document are those of the running service, both ways."""

import re

from flask import Flask

from tests.contract.document import document

AUTOMATIC = {"HEAD", "OPTIONS"}


def _served(app: Flask) -> set[tuple[str, str]]:
    return {
        (re.sub(r"<[^>]+>", "{}", rule.rule), method)
        for rule in app.url_map.iter_rules()
        for method in (rule.methods or set()) - AUTOMATIC
    }


def _documented() -> set[tuple[str, str]]:
    return {
        (re.sub(r"\{[^}]+\}", "{}", path), method.upper())
        for path, item in document()["paths"].items()
        for method in item
        if method != "parameters"
    }


def test_every_served_call_is_documented(app: Flask) -> None:
    assert _served(app) - _documented() == set()


def test_every_documented_call_is_served(app: Flask) -> None:
    assert _documented() - _served(app) == set()
