"""Settings of the server; each that a place may need otherwise has a name in the environment."""

import gc
import os
from pathlib import Path

_SHARED_MEMORY = Path("/dev/shm")  # noqa: S108 - for the workers' heartbeat only

wsgi_app = "service.wsgi:app"
bind = os.environ.get("MATEWELL_BIND", "127.0.0.1:8000")
worker_class = "gthread"
workers = int(os.environ.get("WEB_CONCURRENCY", "2"))
threads = int(os.environ.get("MATEWELL_THREADS", "2"))
worker_connections = 1000
backlog = 2048

# The application is made once, before the fork; see when_ready.
preload_app = True

timeout = int(os.environ.get("MATEWELL_TIMEOUT_SECONDS", "30"))
graceful_timeout = int(os.environ.get("MATEWELL_GRACEFUL_SECONDS", "20"))
keepalive = int(os.environ.get("MATEWELL_KEEPALIVE_SECONDS", "5"))

# A link that carries a whole sheet is the longest line there is.
limit_request_line = 8190
limit_request_fields = 64
limit_request_field_size = 8190

accesslog = os.environ.get("MATEWELL_ACCESS_LOG") or None
errorlog = "-"
loglevel = os.environ.get("MATEWELL_LOG_LEVEL", "info").lower()

# A heartbeat file on a disk can hold a worker up; the root file system may be read-only.
worker_tmp_dir = str(_SHARED_MEMORY) if os.access(_SHARED_MEMORY, os.W_OK) else None
control_socket_disable = True


# JUDGEMENT: a check makes thousands of tuples and leaves no cycles behind, so looking for them less often saves time.
NEW_THINGS = 20_000


def when_ready(server: object) -> None:  # noqa: ARG001 - the server calls it so
    """Keep the collector off what was made before the fork, so that the workers go on sharing its memory."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(NEW_THINGS, *gc.get_threshold()[1:])
