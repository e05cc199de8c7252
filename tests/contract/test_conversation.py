"""Guard: schemathesis talks to the running service over the whole document, with good and bad requests, all checks on.

What no schema can say (a part that the catalogue has, a low end below its high end, a label that another field names)
may refuse a sheet that the schema allows. So a 422 may come where everything is as documented, but then intake, which
stands before the catalogue, must have said nothing beyond ``BEYOND_A_SCHEMA``, and the answer nothing beyond
``BEYOND_A_SHEET``; else the document promises too much.
"""

import os
import re
from typing import Any

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig
from schemathesis.generation import GenerationMode

from service.app import create_app
from service.config import Config
from service.intake.faults import Faults
from service.intake.sheet import read_sheet
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
    r"has a last digit that does not check the others", r"must not be above high",
    r"names a (group|socket) that the supply does not list", r"is in none of the supply's groups",
    r"is more (sockets|inputs) than ", r"must be above that of the point before it", r"is the name of an earlier one",
    r"is printed only on a cable that has a 16-pin plug", r"must be left out( at a main port)?: ",
    r"must not be nearer than the plug", r"must not be below (board|plug|turbo|base)_watts",
    r"has more faults than are listed",
)))

BEYOND_A_SHEET = re.compile("|".join((
    BEYOND_A_SCHEMA.pattern, r"^is above the (quantity|number) of", r"^is no power port", r"^is not a port of this",
    r"^has more adapters behind", r"^must list \d+", r"^points at (no|a line that)",
    r"^names a (socket|group) that the supply", r"^is not in edition", r"^is a second ", r"^makes \d+ ",
    r"^is fed by an earlier connection", r"^is (a plug that is )?in use already",
    r"^differ from the sockets named", r"^is the number of \d+ parts", r"^must be 1 for a ",
)))
"""What the parts of the catalogue and of the sheet decide, each fault from its beginning."""
REFUSED = 422

schema = schemathesis.openapi.from_dict(document(), config=CONFIG)
schema.app = create_app(Config())


@schema.parametrize()
@settings(
    max_examples=EXAMPLES, derandomize=True, database=None, deadline=None, suppress_health_check=list(HealthCheck)
)
def test_call(case: schemathesis.Case[Any]) -> None:
    answer = case.call_and_validate()
    if case.path == CHECKS and case.meta is not None and case.meta.generation.mode == GenerationMode.POSITIVE:
        assert _promised_too_much(case.body) == []
        if answer.status_code == REFUSED:
            said = {fault["detail"] for fault in answer.json()["errors"]}
            assert said
            assert {fault for fault in said if BEYOND_A_SHEET.search(fault) is None} == set()


def _promised_too_much(sheet: object) -> list[str]:
    """Return the faults of a sheet as documented that the document should have stated."""
    try:
        read_sheet(sheet)
    except Faults as faults:
        said = [f"{fault.pointer} {fault.sentence}" for fault in faults.faults]
        return [fault for fault in said if BEYOND_A_SCHEMA.search(fault) is None]
    return []


def test_lists_lead_to_their_entries() -> None:
    """Walk from each list to its parts and rules by the links of the document, with good and bad ids."""
    schema.as_state_machine().run(settings=settings(
        max_examples=max(1, EXAMPLES // 6), stateful_step_count=4, derandomize=True, database=None, deadline=None,
        suppress_health_check=list(HealthCheck),
    ))
