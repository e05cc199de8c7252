"""The page of all rules, made of their cards: ``python -m service.rules.page`` writes it, ``--check`` tells its age."""

import argparse
import sys
from pathlib import Path

from service.facts.fact import Fact
from service.rules.book import RULES
from service.rules.rule import Rule

PAGE = Path(__file__).with_name("README.md")
MEASURES = {"stop": "stop", "advice": "advice, no points"}
HEAD = """# What is checked

One rule, one limit, one weight, one file. A stop means that the build must not be used as it is, a caution that it
works with less reserve than it should have, an advice that something could be better. Made from the rules' own files by
`python -m service.rules.page`; do not edit it here.

Heat, mains and wrongly wired plugs can hurt people and start fires. The makers' manuals, local electrical codes and a
licensed electrician have the last word.
"""


def page() -> str:
    """Return the whole page."""
    rows = [f"| [{one.id}](#{one.id.lower()}) | {one.title} | {_weight(one)} | {one.aspect} |" for one in RULES]
    table = "\n".join(["| rule | says | weight | aspect |", "|---|---|---|---|", *rows])
    return "\n".join([HEAD, table, "", *(_card(rule) for rule in RULES)])


def _card(rule: Rule) -> str:
    lines = [
        f"## {rule.id}", "", f"**{rule.title}.** {_standing(rule)}", "", _notes(rule), "",
        f"Says: {rule.message}", "", f"Why: {rule.why}", "", f"Remedy: {rule.remedy}", "",
        "Rests on:", *(_source(fact) for fact in rule.rests_on), "",
    ]
    return "\n".join(lines)


def _standing(rule: Rule) -> str:
    hangs = " Hangs on the wiring." if rule.planned else ""
    return f"{_weight(rule).capitalize()}; aspect: {rule.aspect}; since {rule.since}.{hangs}"


def _notes(rule: Rule) -> str:
    """Return what the rule's module says of its formula."""
    return (sys.modules[rule.check.__module__].__doc__ or "").strip()


def _weight(rule: Rule) -> str:
    return MEASURES.get(rule.weight, f"{rule.weight}, {rule.points} points")


def _source(fact: Fact) -> str:
    basis = "" if fact.basis in fact.source else f"{fact.basis} {fact.evidence}".strip()
    parts = "; ".join(part for part in (fact.source, fact.where, basis) if part)
    return f"- `{fact.key}`, {fact.value:g} {fact.unit}: {parts}. {fact.reason}".rstrip()


def main(arguments: list[str] | None = None) -> int:
    """Write the page, or with ``--check`` return 1 when it is stale."""
    parser = argparse.ArgumentParser(prog="python -m service.rules.page", description=page.__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing; exit 1 when the page is stale")
    checking = parser.parse_args(arguments).check
    text = page()
    if not checking:
        PAGE.write_text(text, encoding="utf-8")
        return 0
    fresh = PAGE.is_file() and PAGE.read_text(encoding="utf-8") == text
    if not fresh:
        sys.stderr.write(f"{PAGE.name} of the rules is stale: run python -m service.rules.page\n")
    return 0 if fresh else 1


if __name__ == "__main__":
    raise SystemExit(main())
