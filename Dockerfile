FROM python:3.11-slim AS build
WORKDIR /build
ENV PIP_NO_CACHE_DIR=1 PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_ROOT_USER_ACTION=ignore
COPY deploy/requirements.txt deploy/
RUN python -m venv /opt/matewell \
    && /opt/matewell/bin/pip install --require-hashes -r deploy/requirements.txt
COPY pyproject.toml README.md ./
COPY service service
RUN /opt/matewell/bin/pip install --no-deps --no-build-isolation . \
    && /opt/matewell/bin/pip uninstall --yes setuptools pip

FROM python:3.11-slim
ENV PATH=/opt/matewell/bin:$PATH \
    PYTHONDONTWRITEBYTECODE=1 \
    PYTHONUNBUFFERED=1 \
    MATEWELL_BIND=0.0.0.0:8000 \
    MATEWELL_OPENAPI_DIR=/srv/matewell/openapi
WORKDIR /srv/matewell
COPY --from=build /opt/matewell /opt/matewell
COPY openapi openapi
COPY deploy/gunicorn.conf.py ./
USER 10001
EXPOSE 8000
HEALTHCHECK --interval=30s --timeout=3s --start-period=10s --retries=3 \
    CMD ["python", "-c", "import urllib.request; urllib.request.urlopen('http://127.0.0.1:8000/livez', timeout=2)"]
CMD ["gunicorn", "--config", "gunicorn.conf.py"]
