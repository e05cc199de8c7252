"""The one place where settings, the catalogue, the calls and the error answers are joined."""

import logging
import os

from flask import Flask

from service import config as settings
from service.api import checks, docs, document, headers, health, parts, problem, problems, rules
from service.api.requests import BodyLimits
from service.catalogue import bundled
from service.config import Config
from service.journeys.shelf import Shelf


def create_app(config: Config | None = None) -> Flask:
    """Return the service, ready to answer; without ``config`` the environment is read."""
    if config is None:
        config = settings.read(os.environ)
    logging.getLogger("service").setLevel(config.log_level)
    app = Flask("service", static_folder=None, template_folder=None)
    app.url_map.merge_slashes = False
    shelf = Shelf(edition=bundled.load())
    problem.handle_all(app)
    headers.add_to_all(app)
    checks.routes(app, shelf, BodyLimits(config.max_body_bytes, config.body_stall_seconds))
    parts.routes(app, shelf)
    rules.routes(app)
    health.routes(app, shelf)
    problems.routes(app)
    document.routes(app, document.read(config.openapi_dir))
    docs.routes(app, docs.read_files())
    return app
