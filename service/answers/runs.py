"""Runs of wire as JSON: those of the sheet in its order, then the leads of lights."""

from typing import Any

from service.answers.pointers import where
from service.case.case import Case, RunLoad

Json = dict[str, Any]


def runs(case: Case) -> list[Json]:
    """Return each run that could be reckoned; without a solution only what it asks for is told."""
    return [_run(case, run) for run in case.runs if run.missing is None]


def _run(case: Case, run: RunLoad) -> Json:
    build, at = case.build, run.at
    found: Json = {"where": where(build, at)[0]}
    if at.unit >= 0:
        found["copy"] = build.units[at.unit].copy + 1
    elif build.runs[int(at.detail[0])].name:
        found["name"] = build.runs[int(at.detail[0])].name
    solved = run.end_volts is not None
    reserve = None if run.end_volts is None or run.lowest_volts is None else run.end_volts - run.lowest_volts
    return found | {
        "solved": solved, "source_volts": round(run.source_volts, 3), "end_volts": _rounded(run.end_volts),
        "lowest_volts": _rounded(run.lowest_volts), "reserve_volts": _rounded(reserve),
        "amps": round(run.amps, 3) if solved else None, "pair_amps": round(run.pair_amps, 3) if solved else None,
        "lost_watts": _rounded(run.lost_watts), "max_pair_amps": _rounded(run.stop_amps),
    }


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 3)
