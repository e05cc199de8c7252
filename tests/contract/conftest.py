"""One application for all contract tests."""

import pytest
from flask import Flask

from service.app import create_app
from service.config import Config


@pytest.fixture(scope="session")
def app() -> Flask:
    """Return the service with default settings."""
    return create_app(Config())
