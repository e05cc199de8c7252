"""The lists: parts by page and by id, rules, kinds of problems."""

import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from service.parts.records import CATEGORIES
from service.rules import book
from tests.api.asking import CHECKS, post, problem
from tests.contract.document import document, validate_answer


def _page(client: FlaskClient, query: str) -> dict[str, Any]:
    answer = client.get(f"/v1/parts{query}")
    assert answer.status_code == 200, answer.get_data(as_text=True)
    page: dict[str, Any] = answer.get_json()
    validate_answer("/v1/parts", "GET", 200, page)
    return page


def _ids(page: dict[str, Any]) -> list[str]:
    return [part["id"] for part in page["parts"]]


def _all_ids(client: FlaskClient, query: str = "?limit=200") -> list[str]:
    found, page = [], _page(client, query)
    while page["next"] is not None:
        found += _ids(page)
        page = _page(client, f"{query}&after={page['next']}")
    return found + _ids(page)


@pytest.mark.parametrize("limit", [1, 7, 200])
def test_pages_make_up_the_whole(client: FlaskClient, limit: int) -> None:
    found, after = [], ""
    while after is not None:
        page = _page(client, f"?limit={limit}" + (f"&after={after}" if after else ""))
        found += _ids(page)
        assert len(page["parts"]) <= limit
        after = page["next"]
    assert found == sorted(found) == _all_ids(client)


@pytest.mark.parametrize("category", [kind.category for kind in CATEGORIES])
def test_category_alone(client: FlaskClient, category: str) -> None:
    page = _page(client, f"?category={category}&limit=200")
    assert {part["category"] for part in page["parts"]} <= {category}


def test_categories_make_up_the_whole(client: FlaskClient) -> None:
    by_category = [_all_ids(client, f"?category={kind.category}&limit=200") for kind in CATEGORIES]
    assert sorted(one for ids in by_category for one in ids) == _all_ids(client)


def test_a_page_that_ends_exactly_has_no_next(client: FlaskClient) -> None:
    supplies = _all_ids(client, "?category=power_supply&limit=200")
    page = _page(client, f"?category=power_supply&limit={len(supplies)}")
    assert (_ids(page), page["next"]) == (supplies, None)


def test_sample_page_is_what_is_answered(client: FlaskClient) -> None:
    content = document()["paths"]["/v1/parts"]["get"]["responses"]["200"]["content"]["application/json"]
    assert content["examples"]["first_page"]["value"] == _page(client, "?category=power_supply&limit=2")


def test_after_need_not_exist(client: FlaskClient) -> None:
    first, second, *_ = _all_ids(client)
    assert _ids(_page(client, f"?limit=1&after={first}!")) == [second]


def test_after_the_last_is_an_empty_page(client: FlaskClient) -> None:
    assert _page(client, f"?after={_all_ids(client)[-1]}")["parts"] == []


@pytest.mark.parametrize("query", [
    "?limit=0", "?limit=201", "?limit=-1", "?limit=1.0", "?limit=", "?limit=%D9%A1", "?limit=1&limit=2",
    "?limit=9999999999999999999999", "?limit[]=1", "?Limit=5", "?=1", "?category=", "?category=toaster",
    "?after=", "?after=" + "a" * 81, "?after=%0A",
], ids=str)
def test_bad_query(client: FlaskClient, query: str) -> None:
    problem(client.get(f"/v1/parts{query}"), "/v1/parts", "GET", 400, "bad-query")


def test_every_part_is_documented_and_can_be_sent_back(client: FlaskClient) -> None:
    for part_id in _all_ids(client):
        answer = client.get(f"/v1/parts/{part_id}")
        assert answer.status_code == 200
        validate_answer(f"/v1/parts/{part_id}", "GET", 200, answer.get_json())
        sheet = {"parts": [{"spec": answer.get_json()["spec"]}]}
        assert post(client, json.dumps(sheet).encode()).status_code == 200, part_id


def test_a_part_and_its_spec_get_the_same_verdict(client: FlaskClient) -> None:
    ids = ["demo-supply-850", "demo-board-4c", "demo-processor-125"]
    by_id = post(client, json.dumps({"parts": [{"part": one} for one in ids]}).encode()).get_json()
    specs = [client.get(f"/v1/parts/{one}").get_json()["spec"] for one in ids]
    assert post(client, json.dumps({"parts": [{"spec": one} for one in specs]}).encode()).get_json() == by_id


def test_unknown_part(client: FlaskClient) -> None:
    problem(client.get("/v1/parts/no-such-part"), "/v1/parts/no-such-part", "GET", 404, "not-found")


def test_every_rule_is_listed_and_documented(client: FlaskClient) -> None:
    listed = client.get("/v1/rules").get_json()
    validate_answer("/v1/rules", "GET", 200, listed)
    assert [rule["id"] for rule in listed["rules"]] == [rule.id for rule in book.rules()]
    for short in listed["rules"]:
        card = client.get(f"/v1/rules/{short['id']}").get_json()
        validate_answer(f"/v1/rules/{short['id']}", "GET", 200, card)
        assert short.items() <= card.items()
        assert card["rests_on"], short["id"]


def test_every_kind_of_problem_is_explained(client: FlaskClient) -> None:
    (name,) = document()["paths"]["/problems/{name}"]["get"]["parameters"]
    for kind in name["schema"]["enum"]:
        answer = client.get(f"/problems/{kind}")
        assert answer.get_json()["type"] == f"/problems/{kind}"
        validate_answer(f"/problems/{kind}", "GET", 200, answer.get_json())


def test_the_type_of_a_problem_leads_to_its_explanation(client: FlaskClient) -> None:
    refused = post(client, b"{}").get_json(force=True)
    assert client.get(refused["type"]).get_json()["title"] == refused["title"]
    assert refused["type"] == "/problems/bad-sheet"
    assert client.get(CHECKS).get_json(force=True)["type"] == "/problems/wrong-method"
