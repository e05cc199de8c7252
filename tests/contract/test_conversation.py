"""Guard: schemathesis talks to the running service over the whole document, with good and bad requests, all checks on.

Ids and numbers of parts are drawn from the catalogue, as a client draws them from its lists. What no schema can say (a
low end not above its high end, a label that another field names, a pointer to what is there) may still refuse a sheet
that fits its schema: then the answer says nothing but the sentences that the document lists, see
``test_beyond_a_schema``; else the document promises too much.
"""

import copy
import os
from collections import Counter
from typing import Any

import schemathesis
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from schemathesis.config import SchemathesisConfig
from schemathesis.generation import GenerationMode

from service.app import create_app
from service.catalogue import bundled
from service.config import Config
from tests.contract.document import document, of_sentence, sentences_beyond

EXAMPLES = int(os.environ.get("CONTRACT_EXAMPLES", "60"))
CHECKS = "/v1/checks"
GOOD, REFUSED = 200, 422
LEAST_SHARE = 3
CONFIG = SchemathesisConfig.from_dict({
    "generation": {"deterministic": True, "mode": "all", "max-examples": EXAMPLES},
    "operations": [
        # The one call with a body. Its fields hang on each other in ways that no schema can state; each reason is
        # listed in the document, and ``test_call`` takes a 422 to a sheet that fits its schema for no other.
        {"include-path": CHECKS, "checks": {"positive_data_acceptance": {"expected-statuses": [GOOD, REFUSED]}}},
    ],
})
EDITION = bundled.load()
for name, known in {
    "part-id": EDITION.by_id, "gtin": EDITION.by_gtin,
    "mpn": {entry.mpn: entry for same in EDITION.by_mpn.values() if len(same) == 1 for entry in same if entry.mpn},
}.items():
    schemathesis.openapi.format(name, st.sampled_from(sorted(known)))

schema = schemathesis.openapi.from_dict(copy.deepcopy(document()), config=CONFIG)
schema.app = create_app(Config())
BEYOND = [of_sentence(listed) for listed in sentences_beyond()]


@schema.parametrize()
@settings(
    max_examples=EXAMPLES, derandomize=True, database=None, deadline=None, suppress_health_check=list(HealthCheck)
)
def test_call(case: schemathesis.Case[Any]) -> None:
    answer = case.call_and_validate()
    as_documented = case.meta is not None and case.meta.generation.mode == GenerationMode.POSITIVE
    if case.path == CHECKS and as_documented and answer.status_code == REFUSED:
        said = {fault["detail"] for fault in answer.json()["errors"]}
        assert said
        assert [fault for fault in said if not any(listed.fullmatch(fault) for listed in BEYOND)] == []


def test_many_sheets_as_documented_are_judged() -> None:
    """Of sheets that fit their schema a good part gets a verdict, so the checks above see more than refusals."""
    answered: Counter[int] = Counter()

    @given(schema[CHECKS]["POST"].as_strategy(generation_mode=GenerationMode.POSITIVE))
    @settings(
        max_examples=EXAMPLES, derandomize=True, database=None, deadline=None, suppress_health_check=list(HealthCheck)
    )
    def ask(case: schemathesis.Case[Any]) -> None:
        answered[case.call().status_code] += 1

    ask()
    assert set(answered) == {GOOD, REFUSED}
    assert answered[GOOD] * LEAST_SHARE > sum(answered.values())


def test_lists_lead_to_their_entries() -> None:
    """Walk from each list to its parts and rules by the links of the document, with good and bad ids."""
    schema.as_state_machine().run(settings=settings(
        max_examples=max(1, EXAMPLES // 6), stateful_step_count=4, derandomize=True, database=None, deadline=None,
        suppress_health_check=list(HealthCheck),
    ))
