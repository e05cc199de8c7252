"""The document as it is served, the page that shows it, and the probes."""

import re

import pytest
from flask.testing import FlaskClient

from service import __version__
from tests.contract.document import document, validate_answer


def test_the_served_document_is_the_written_one(client: FlaskClient) -> None:
    assert client.get("/openapi.json").get_json() == document()


@pytest.mark.parametrize("path", ["/openapi.json", "/docs", "/docs/swagger-ui-bundle.js"])
def test_a_copy_at_hand_is_not_sent_again(client: FlaskClient, path: str) -> None:
    tag = client.get(path).headers["ETag"]
    again = client.get(path, headers={"If-None-Match": tag})
    assert (again.status_code, again.data, again.headers["ETag"]) == (304, b"", tag)
    assert client.get(path, headers={"If-None-Match": '"other"'}).status_code == 200


def test_the_page_names_only_files_of_its_own_host(client: FlaskClient) -> None:
    page = client.get("/docs")
    assert page.headers["Content-Type"] == "text/html; charset=utf-8"
    named = re.findall(r'(?:src|href)="([^"]+)"', page.get_data(as_text=True))
    assert named
    for address in named:
        assert client.get(f"/{address}").status_code == 200, address


def test_the_page_has_no_script_or_style_inside(client: FlaskClient) -> None:
    page = client.get("/docs")
    text = page.get_data(as_text=True)
    assert re.findall(r"<script(?![^>]*\bsrc=)|<style|\son\w+=|\sstyle=", text) == []
    policy = page.headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "//" not in policy


@pytest.mark.parametrize(("name", "content_type"), [
    ("swagger-ui.css", "text/css; charset=utf-8"), ("swagger-ui-bundle.js", "text/javascript; charset=utf-8"),
    ("start.js", "text/javascript; charset=utf-8"), ("favicon-32x32.png", "image/png"),
])
def test_files_of_the_page(client: FlaskClient, name: str, content_type: str) -> None:
    answer = client.get(f"/docs/{name}")
    assert (answer.status_code, answer.headers["Content-Type"]) == (200, content_type)


def test_start_script_asks_this_host_only(client: FlaskClient) -> None:
    script = client.get("/docs/start.js").get_data(as_text=True)
    assert 'url: "openapi.json"' in script
    assert "validatorUrl: null" in script
    assert "//" not in script


@pytest.mark.parametrize(("path", "body"), [
    ("/livez", {"alive": True}), ("/readyz", {"ready": True, "edition": "demo-1", "service_version": __version__}),
])
def test_probes(client: FlaskClient, path: str, body: dict[str, object]) -> None:
    answer = client.get(path)
    validate_answer(path, "GET", 200, answer.get_json())
    assert answer.get_json() == body
