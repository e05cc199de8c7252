FROM python:3.11-slim AS build
WORKDIR /build
ENV PIP_NO_CACHE_DIR=1 PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_ROOT_USER_ACTION=ignore
# hadolint ignore=DL3008
RUN apt-get update \
    && apt-get install --yes --no-install-recommends gcc libc6-dev \
    && rm -rf /var/lib/apt/lists/*
COPY deploy/requirements.txt deploy/requirements-compiled.txt deploy/
RUN python -m venv /opt/matewell \
    && /opt/matewell/bin/pip install --require-hashes -r deploy/requirements.txt \
    && python -m venv /opt/compiler \
    && /opt/compiler/bin/pip install --require-hashes -r deploy/requirements-compiled.txt
COPY pyproject.toml README.md ./
COPY deploy/compiled.py deploy/
COPY service service
RUN /opt/matewell/bin/pip install --no-deps --no-build-isolation . \
    && /opt/matewell/bin/pip uninstall --yes setuptools pip \
    && /opt/compiler/bin/python deploy/compiled.py /opt/compiled

FROM python:3.11-slim
ENV PATH=/opt/matewell/bin:$PATH \
    PYTHONPATH=/opt/compiled \
    PYTHONDONTWRITEBYTECODE=1 \
    PYTHONUNBUFFERED=1 \
    MATEWELL_BIND=0.0.0.0:8000 \
    MATEWELL_OPENAPI_DIR=/srv/matewell/openapi
WORKDIR /srv/matewell
COPY --from=build /opt/matewell /opt/matewell
COPY --from=build /opt/compiled /opt/compiled
COPY openapi openapi
COPY deploy/gunicorn.conf.py ./
USER 10001
EXPOSE 8000
HEALTHCHECK --interval=30s --timeout=3s --start-period=10s --retries=3 \
    CMD ["python", "-c", "import urllib.request; urllib.request.urlopen('http://127.0.0.1:8000/livez', timeout=2)"]
CMD ["gunicorn", "--config", "gunicorn.conf.py"]
