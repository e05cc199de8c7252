"""Guard: schemathesis talks to the running service over the whole document, with good and bad requests, all checks on.

What no schema can say (a part that the catalogue has, a low end below its high end, a label that another field names)
may refuse a sheet that the schema allows. Such a refusal is a 422 whose every sentence is among ``BEYOND_A_SCHEMA``; a 422
for anything else means that the document promises too much.
"""

import os
import re

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig
from schemathesis.core.transport import Response
from schemathesis.generation import GenerationMode

from service.app import create_app
from service.config import Config
from tests.contract.document import document

EXAMPLES = int(os.environ.get("CONTRACT_EXAMPLES", "60"))
CHECKS = "/v1/checks"
CONFIG = SchemathesisConfig.from_dict({
    "generation": {"deterministic": True, "mode": "all", "max-examples": EXAMPLES},
    "operations": [
        {"include-path": CHECKS, "checks": {"positive_data_acceptance": {"expected-statuses": [200, 422]}}},
    ],
})
BEYOND_A_SCHEMA = re.compile("|".join((
    r"is not in edition ", r"has a last digit that does not check the others", r"must not be above high",
    r"is a second power supply", r"names a (group|socket) that the supply does not list", r"is in none of the supply's groups",
    r"is more (sockets|inputs) than ", r"must be above that of the point before it", r"is the name of an earlier one",
    r"is printed only on a cable that has a 16-pin plug", r"must be left out: a captive cable",
    r"must not be nearer than the plug", r"a build may have", r"has more faults than are listed",
)))

schema = schemathesis.openapi.from_dict(document(), config=CONFIG)
schema.app = create_app(Config())


@schema.parametrize()
@settings(max_examples=EXAMPLES, derandomize=True, database=None, deadline=None, suppress_health_check=list(HealthCheck))
def test_call(case: schemathesis.Case) -> None:
    answer = case.call_and_validate()
    if case.path == CHECKS and _is_good(case):
        assert _promised_too_much(answer) == []


def _is_good(case: schemathesis.Case) -> bool:
    return case.meta is not None and case.meta.generation.mode == GenerationMode.POSITIVE


def _promised_too_much(answer: Response) -> list[str]:
    """Return the faults of a refused sheet that the document should have stated."""
    if answer.status_code != 422:
        return []
    faults = [f"{error['pointer']} {error['detail']}" for error in answer.json()["errors"]]
    return [fault for fault in faults if BEYOND_A_SCHEMA.search(fault) is None]
