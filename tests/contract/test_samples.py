"""Guard: the sample answers of the document are what the service answers to its sample requests."""

from typing import Any

import orjson
import pytest
from flask import Flask

from tests.contract.document import document

CHECK: Any = document()["paths"]["/v1/checks"]["post"]
REQUESTS = CHECK["requestBody"]["content"]["application/json"]["examples"]
ANSWERS = CHECK["responses"]["200"]["content"]["application/json"]["examples"]


@pytest.mark.parametrize("name", sorted(ANSWERS))
def test_sample_answer_is_what_some_sample_request_gets(name: str, app: Flask) -> None:
    client = app.test_client()
    got = [
        orjson.loads(client.post("/v1/checks", data=orjson.dumps(one["value"]), content_type="application/json").data)
        for one in REQUESTS.values()
    ]
    assert ANSWERS[name]["value"] in got
