"""Where the time of a check goes, in process: the stages in their order, and the dearest rules."""

import time
from collections.abc import Callable
from statistics import median
from typing import Any

import orjson

from service.answers.answer import answer
from service.case.assemble import assemble
from service.catalogue import bundled
from service.catalogue.resolve import resolve
from service.demand.ask import demand
from service.demand.ends import Ends
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.parts.records import PowerSupply
from service.rules.book import RULES
from service.verdict.aspects import aspects_of
from service.verdict.check import check
from service.verdict.speak import speak
from service.wiring import components
from service.wiring.objective import judge
from service.wiring.pose import pose

_MICRO = 1e6


def table(bodies: list[bytes], repeats: int = 5) -> dict[str, float]:
    """Return the median microseconds of each stage over the bodies, warm."""
    edition = bundled.load()
    found: dict[str, list[float]] = {}
    for _ in range(repeats):
        for body in bodies:
            _once(body, edition, found)
    return {name: median(times) * _MICRO for name, times in found.items()}


def _once(body: bytes, edition: Any, found: dict[str, list[float]]) -> None:
    def timed(name: str, work: Callable[[], Any]) -> Any:
        begun = time.perf_counter()
        made = work()
        found.setdefault(name, []).append(time.perf_counter() - begun)
        return made

    sheet = timed("parse and ids", lambda: read_sheet(read_json(body)))
    build = timed("resolve", lambda: resolve(sheet, edition))
    ends = Ends("unfavourable")
    asked = timed("demand", lambda: demand(build, ends))
    supply = next(at for at, unit in enumerate(build.units) if isinstance(unit.part, PowerSupply))
    frame = timed("pose the wiring", lambda: pose(build, supply, asked, ends))
    solution = timed("memo key and plan", lambda: components.solve(frame.problem))
    timed("judge", lambda: judge(frame.problem, solution.wiring))
    case = timed("whole case", lambda: assemble(build, "unfavourable", purchase=True)).case
    aspects = aspects_of(build)[0]
    timed("rules", lambda: speak(case, aspects))
    checked = timed("whole check", lambda: check(build))
    made = timed("answer dict", lambda: answer(checked))
    timed("dump", lambda: orjson.dumps(made))


def dearest_rules(bodies: list[bytes], most: int = 10, repeats: int = 20) -> list[tuple[str, float]]:
    """Return the dearest rules and their mean microseconds a check."""
    edition = bundled.load()
    cases = [assemble(resolve(read_sheet(read_json(body)), edition), "unfavourable").case for body in bodies]
    spent = {}
    for rule in RULES:
        begun = time.perf_counter()
        for _ in range(repeats):
            for case in cases:
                list(rule.check(case))
        spent[rule.id] = (time.perf_counter() - begun) / repeats / len(cases) * _MICRO
    return sorted(spent.items(), key=lambda pair: -pair[1])[:most]


def cold(sheets: dict[str, Callable[[], dict[str, Any]]]) -> dict[str, float]:
    """Return the seconds of a whole check of each sheet, with nothing remembered of the wiring."""
    edition = bundled.load()
    found = {}
    for name, sheet in sheets.items():
        body = orjson.dumps(sheet())
        components.clear()
        begun = time.perf_counter()
        answer(check(resolve(read_sheet(read_json(body)), edition)))
        found[name] = time.perf_counter() - begun
    return found
