"""Sentences of answers say what a person calls things: rails by their volts, a socket's contact by what it is."""

import pytest

from service.answers.english import message
from service.rules.book import by_id
from service.rules.connectors.strains import in_amps
from service.rules.rule import Finding
from tests.journeys.asked import NAMES, ask, example
from tests.rules.cases import PORT, joint, strain

INSIDE = ("12v ", "5v ", "3v3", "5vsb", "_")


@pytest.mark.parametrize("name", NAMES)
def test_no_sentence_has_a_word_of_the_inside(name: str) -> None:
    answer = ask(example(name))
    sentences = [one["message"] for one in answer["findings"]]
    assert [(said, word) for said in sentences for word in INSIDE if word in said] == []


@pytest.mark.parametrize(("rails", "named"), [("5v + 3v3", "5 V + 3.3 V"), ("12v", "12 V"), ("5vsb", "5 V standby")])
def test_rails_are_named_by_their_volts(rails: str, named: str) -> None:
    said = Finding(PORT, 130.0, 120.0, "W", (("rails", rails),))
    assert message(by_id()["PWR203"], said).startswith(f"The rails {named} together carry 130 W")


def test_contact_at_the_supply_is_told_from_the_one_at_the_device() -> None:
    of = strain("socket", "stop", 9.0, 8.0, contacts=3)._replace(spot="of_cable")
    said = message(by_id()["CON104"], in_amps(joint(of), of))
    assert "one contact at the supply's end of the cable carries 9 A" in said
