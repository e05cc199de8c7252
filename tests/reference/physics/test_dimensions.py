"""Dimensions of every formula, with pint: all figures are given anew in a strange system of units.

What is right in any units is right in these: metre, kilogram, second, ampere and kelvin are each replaced by a unit
that is longer or shorter by a factor of its own. Each argument is converted as its docstring says, and so must the
answer be. A formula that adds volts to amps or forgets a square gives another answer. Where a formula holds a figure
that has units itself (copper, a joule, a day), pint reckons the same answer from quantities.
"""

import inspect
import re
from collections.abc import Callable
from math import log, pi, prod
from typing import Any, NamedTuple

import pint
import pytest

from service.physics import chain, contacts, conversion, copper, derating, loads, mains, runs, strip, tree, warmth

UNITS: Any = pint.UnitRegistry()
Q = UNITS.Quantity
# Logarithms have no ratio among them, so no two dimensions can be mistaken for each other.
STRANGE = {"[length]": 1.7, "[mass]": 0.31, "[time]": 2.3, "[current]": 0.59, "[temperature]": 1.13}
AS_WRITTEN = {
    "1": "dimensionless", "%": "percent", "C": "degC", "K": "kelvin", "mm2": "mm**2", "VA": "V*A", "kWh": "kW*hour",
    "BTU/h": "Btu_it/hour", "%/K": "percent/kelvin",
}
SUFFIXES = {
    "volts": "V", "amps": "A", "watts": "W", "ohms": "ohm", "mm": "mm", "celsius": "C", "percent": "%", "factor": "1",
    "metre": "A/m or ohm/m", "hour": "BTU/h", "day": "h",
}
ENTRY = re.compile(r"^    (\w+)(?:, \w+)* : [^\n]*\n((?:        [^\n]*\n|\n)+)", re.MULTILINE)
UNIT = re.compile(r"\[([^\]]+)\]")
MODULES = (chain, contacts, conversion, copper, derating, loads, mains, runs, strip, tree, warmth)


class Example(NamedTuple):
    """A call of a formula: what it is called with, and how to read the units of its answer where it is a record."""

    function: Callable[..., Any]
    given: dict[str, Any]


def _of(function: Callable[..., Any], **given: Any) -> Any:
    return pytest.param(Example(function, given), id=function.__name__)


EXAMPLES = [
    _of(contacts.amps_per_contact, watts=75.0, volts=12.0, contacts=3),
    _of(contacts.watts_of_contacts, amps=8.0, volts=12.0, contacts=3),
    _of(contacts.parallel_ohms, branch_ohms=(0.01, 0.02, 0.05)),
    _of(contacts.divide_amps, total_amps=25.0, branch_ohms=(0.01, 0.02, 0.05)),
    _of(loads.most_watts, source_volts=12.0, ohms=0.04),
    _of(loads.amps_of_watts, source_volts=12.0, ohms=0.04, watts=300.0),
    _of(loads.collapse_amps, source_volts=12.0, watts=300.0),
    _of(loads.volts_behind, source_volts=12.0, ohms=0.04, watts=300.0),
    _of(loads.watts_above, source_volts=12.0, lowest_volts=11.04, ohms=0.04),
    _of(contacts.feed_watts, source_volts=12.0, branch_ohms=(0.1, 0.2, 0.5), watts=200.0, other_ohms=0.03),
    _of(contacts.worst_sharing, total_amps=50.0, wire_ohms=(0.009, 0.008, 0.01), fresh_ohms=0.001, worn_ohms=0.02,
        open_contacts=1),
    _of(warmth.estimated_rise_celsius, amps=11.0, rated_amps=9.2, rated_rise_celsius=30.0),
    _of(loads.heat_watts, amps=9.0, ohms=0.006),
    _of(tree.flow, source_volts=12.0, parents=(-1, 0, 0), element_ohms=(0.1, 0.3, 0.2), node_amps=(1.0, 0.0, 2.0),
        node_watts=(3.0, 20.0, 0.0)),
    _of(chain.chain, source_volts=12.0, stretch_ohms=(0.1, 0.2), device_amps=(1.0, 2.0), device_watts=(9.0, 5.0),
        plug_ohms=(0.02, 0.03)),
    _of(chain.rails_chain, source_volts=(12.0, 5.0), supply_ohms=(0.01, 0.02), return_ohms=(0.005, 0.01),
        device_amps=((1.0, 2.0), (0.5, 0.7)), plug_ohms=(0.003, 0.004), plug_return_ohms=(0.002, 0.001)),
    _of(strip.even_strip, source_volts=12.0, lead_ohms=0.05, strip_ohms_per_metre=0.08, amps_per_metre=1.5,
        length_mm=2000.0),
    _of(strip.tapped_strip, source_volts=5.0, lead_ohms=0.05, pitch_ohms=0.002, lights=20, light_amps=0.02,
        light_watts=0.05),
    _of(conversion.efficiency_at, load_percent=35.0, points=((20.0, 87.0), (50.0, 90.0))),
    _of(conversion.wall_watts, output_watts=400.0, efficiency_percent=90.0),
    _of(conversion.wall_amps, watts=450.0, mains_volts=230.0, power_factor=0.95),
    _of(derating.derated_watts, rated_watts=850.0, air_celsius=47.0, rated_at_celsius=40.0, loss_percent_a_kelvin=2.5),
    _of(mains.continuous_amps, circuit_amps=15.0),
    _of(mains.circuit_amps, continuous_load_amps=12.0, other_load_amps=1.0),
    _of(mains.volt_amperes, watts=450.0, power_factor=0.9),
]
"""Formulas that are right in any units."""
BY_PINT: dict[Callable[..., Any], tuple[dict[str, Any], Callable[[], Any], str]] = {
    copper.diameter_mm: (
        {"awg": 20}, lambda: Q(0.005, "inch") * 92 ** (16 / 39), "mm"),
    copper.area_square_mm: (
        {"awg": 20}, lambda: pi * (Q(0.005, "inch") * 92 ** (16 / 39) / 2) ** 2, "mm**2"),
    copper.temperature_factor: (
        {"celsius": 65.0}, lambda: 1 + Q(0.00393, "1/delta_degC") * Q(45, "delta_degC"), "dimensionless"),
    copper.ohms_per_metre: (
        {"awg": 17, "celsius": 65.0},
        lambda: Q(1.724e-6, "ohm*cm") / (pi / 4 * (Q(0.005, "inch") * 92 ** (19 / 39)) ** 2) * 1.17685, "ohm/m"),
    copper.wire_ohms: (
        {"awg": 18, "length_mm": 600.0, "parallel": 3},
        lambda: Q(0.6385, "ohm") / Q(100, "foot") * Q(0.6, "m") / 3, "ohm"),
    copper.pair_ohms: (
        {"awg": 18, "length_mm": 600.0, "parallel_pairs": 3, "ohms_per_contact": 0.006, "contacts_in_series": 4},
        lambda: (Q(0.6385, "ohm") / Q(100, "foot") * Q(120, "cm") + 4 * Q(6, "mohm")) / 3, "ohm"),
    mains.heat_btu_per_hour: ({"watts": 750.0}, lambda: Q(0.75, "kW"), "Btu_it/hour"),
    mains.kilowatt_hours_a_year: (
        {"watts": 100.0, "hours_a_day": 8.0}, lambda: Q(100, "W") * Q(8, "hour") * 365, "kW*hour"),
}
"""Formulas that hold a figure with units of its own: arguments, the same by quantities, and the unit of the answer."""
ELSEWHERE = {
    contacts.credible_ohms: "hands out facts",
    warmth.rated_point: "hands out facts",
    mains.share_percent: "takes any unit, the same twice",
    runs.run: "its parts are pair_ohms and amps_of_watts; the printed run of a 16-pin cable holds the whole",
}


def _documented(function: Callable[..., Any]) -> dict[str, str]:
    """Return the unit that the docstring gives each argument, and the first of the answer as ``return``."""
    text = inspect.getdoc(function) or ""
    # getdoc takes the indent away; the pattern wants one step of it.
    text = "\n".join(f"    {line}" if line else "" for line in text.splitlines()) + "\n"
    head, _, tail = text.partition("    Returns\n")
    units = {name: found[-1] for name, body in ENTRY.findall(head) if (found := UNIT.findall(body))}
    answered = UNIT.findall(tail.partition("    Raises\n")[0].partition("    References\n")[0])
    return units | ({"return": answered[0]} if answered else {})


def _strange(unit: str) -> float:
    """Return how many of the strange units of its kind a unit is."""
    dimensions = Q(1, AS_WRITTEN.get(unit, unit)).dimensionality
    return float(prod(STRANGE[kind] ** power for kind, power in dimensions.items()))


def _scaled(value: Any, unit: str) -> Any:
    if isinstance(value, tuple):
        return tuple(_scaled(each, unit) for each in value)
    return value * _strange(unit) if isinstance(value, float) else value


def _answer_units(answer: Any, documented: str) -> dict[str, str]:
    if hasattr(answer, "_fields"):
        return {name: SUFFIXES[name.rsplit("_", 1)[-1]] for name in answer._fields if name != "most_loaded"}
    return {"": documented}


def _flat(value: Any) -> list[float]:
    return [each for one in value for each in _flat(one)] if isinstance(value, tuple | list) else [value]


def _formulas() -> dict[str, Callable[..., Any]]:
    return {
        f"{module.__name__}.{name}": value for module in MODULES for name, value in vars(module).items()
        if inspect.isfunction(value) and value.__module__ == module.__name__ and not name.startswith("_")
    }


def test_no_two_strange_units_can_be_mistaken() -> None:
    factors = list(STRANGE.values())
    assert all(abs(a * log(x) + b * log(y)) > 1e-3
               for x in factors for y in factors if x < y for a in range(-3, 4) for b in range(-3, 4) if a or b)


def test_every_formula_is_looked_at() -> None:
    asked = {example.values[0].function for example in EXAMPLES}
    assert set(_formulas().values()) == asked | set(BY_PINT) | set(ELSEWHERE)


@pytest.mark.parametrize("example", EXAMPLES)
def test_formula_holds_in_any_units(example: Example) -> None:
    units = _documented(example.function)
    plain = example.function(**example.given)
    anew = example.function(**{name: _scaled(value, units.get(name, "1")) for name, value in example.given.items()})
    for name, unit in _answer_units(plain, units.get("return", "")).items():
        one, other = (getattr(answer, name) if name else answer for answer in (plain, anew))
        assert _flat(other) == pytest.approx([each * _strange(unit) for each in _flat(one)], rel=1e-9)


@pytest.mark.parametrize("function", BY_PINT, ids=lambda function: function.__name__)
def test_formula_is_what_quantities_give(function: Callable[..., Any]) -> None:
    given, by_pint, unit = BY_PINT[function]
    documented = _documented(function)["return"]
    assert Q(1, AS_WRITTEN.get(documented, documented)).to(unit).magnitude == pytest.approx(1)
    assert function(**given) == pytest.approx(by_pint().to(unit).magnitude, rel=1e-4)


@pytest.mark.parametrize("name", _formulas())
def test_docstring_gives_every_figure_the_unit_of_its_name(name: str) -> None:
    function = _formulas()[name]
    if function in (contacts.credible_ohms, warmth.rated_point, mains.share_percent):
        return
    units = _documented(function)
    for each in inspect.signature(function).parameters.values():
        suffix = each.name.rsplit("_", 1)[-1]
        if each.annotation is bool:
            assert each.name not in units
            continue
        assert each.name in units, f"{each.name} has no unit"
        if suffix in SUFFIXES and not each.name.startswith("ohms_per"):
            wanted = "K" if "rise" in each.name else SUFFIXES[suffix]
            assert units[each.name] in wanted.split(" or ")
    assert "return" in units or inspect.signature(function).return_annotation not in (float, int)
