"""The service in process, and a sheet that is good."""

from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from service.app import create_app
from service.config import Config
from tests.contract.held_client import HeldClient


@pytest.fixture(scope="session")
def app() -> Flask:
    """Return the service with default settings; whatever a test asks of it is held to the document."""
    made = create_app(Config())
    made.test_client_class = HeldClient
    return made


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """Return a client of it."""
    return app.test_client()


@pytest.fixture
def sheet() -> dict[str, Any]:
    """Return a sheet that is good: a supply with cables, and a card of which one port is wired."""
    return {
        "parts": [
            {"spec": {
                "category": "power_supply", "name": "Loan supply", "rated_watts": 650, "design": "atx-2",
                "rails": {"12v": {"max_amps": 54}},
                "cables": [
                    {"quantity": 1, "plugs": [{"connector": "atx-20+4"}]},
                    {"quantity": 2, "plugs": [{"connector": "pcie-6+2"}, {"connector": "pcie-6+2"}]},
                ],
            }},
            {"spec": {"category": "graphics_card", "board_watts": 220, "needs": [{"connector": "pcie-8", "count": 2}]}},
        ],
        "wiring": [{
            "part": "/parts/1", "port": {"connector": "pcie-8", "number": 1},
            "plugs": [{"cable": "/parts/0/cables/1", "plug": 1}],
        }],
        "wiring_rest": "plan",
    }
