"""What a WSGI server imports: ``service.wsgi:app``."""

import logging

from service.app import create_app

logging.basicConfig(format="%(asctime)s %(levelname)s %(name)s %(message)s")
app = create_app()
