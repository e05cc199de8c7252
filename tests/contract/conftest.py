"""One application for all contract tests."""

import pytest
from flask import Flask

from service.app import create_app
from service.config import Config
from tests.contract.held_client import HeldClient


@pytest.fixture(scope="session")
def app() -> Flask:
    """Return the service with default settings; whatever a test asks of it is held to the document."""
    made = create_app(Config())
    made.test_client_class = HeldClient
    return made
