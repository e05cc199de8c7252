"""Whole random build sheets as JSON, realistic by category, and changes to them that the service promises about.

``sheets()`` draws a sheet. Each change is called with ``draw`` (of a composite strategy or ``st.data()``) and a sheet,
leaves that sheet as it is and returns a changed copy; ``None``: the sheet holds nothing that the change could touch.
"""

import copy
import json
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

Json = dict[str, Any]
Draw = Callable[[st.SearchStrategy[Any]], Any]
Spot = tuple[Any, Any]
Way = tuple[str | int, ...]

DEMO = Path(__file__).parents[1] / "service" / "catalogue" / "demo"
LOADS = frozenset({
    "board_watts", "slot_watts", "turbo_watts", "base_watts", "plug_watts", "amps", "starting_amps", "leds",
})
RUN_LOADS = frozenset({"amps", "watts", "amps_per_metre"})
RUN_FIGURES = frozenset({"awg", "parallel_pairs", "ohms_per_contact", "ohms_per_metre", "lowest_volts", "max_amps"})
RAIL_LOADS = frozenset({"own_amps", "running_amps", "starting_amps"})
ENDS = frozenset({"low", "high"})
# Without one of these a spec is refused, so it is no figure that somebody could leave out.
REQUIRED = frozenset({"rated_watts", "board_watts", "feeds_slot_watts", "volts"})
FIGURES = LOADS | RAIL_LOADS | {
    "class_watts", "watts", "length_mm", "depth_mm", "at_mm", "awg", "power_factor", "efficiency_level",
    "efficiency_points", "rated_at_celsius", "card_length_mm", "routes_mm", "size", "carries_3v3", "inlet",
    "supply_wires_12v",
} | RUN_FIGURES
PAST_ANY_RATING = 1.5
SOCKET = "lug-1152"
MOSTLY = [True] * 9 + [False]


@cache
def demo() -> dict[str, Json]:
    """Return the specs of the demo catalogue by id."""
    entries = (entry for file in sorted(DEMO.glob("*.json")) for entry in json.loads(file.read_text("utf-8")))
    return {entry["id"]: entry["spec"] for entry in entries}


def ids_of(category: str) -> list[str]:
    """Return the demo parts of a category."""
    return [id_ for id_, spec in demo().items() if spec["category"] == category]


def whole(low: int, high: int) -> st.SearchStrategy[int]:
    """Draw a whole number."""
    return st.integers(low, high)


@st.composite
def figures(draw: Draw, low: int, high: int, scale: int = 1) -> float | Json:
    """Draw a load: one number, or its two ends; ``scale`` divides whole numbers, so that 0.35 A can be drawn."""
    least: float = draw(whole(low, high)) / scale
    if draw(st.booleans()):
        return least
    return {"low": least, "high": least + draw(whole(0, high - low)) / scale}


def _some(draw: Draw, spec: Json, **fields: st.SearchStrategy[Any]) -> Json:
    """Give a spec each of the fields, or leave the field out: nobody knows all figures."""
    for name, values in fields.items():
        if draw(whole(0, 3)):
            spec[name] = draw(values)
    return spec


# --- inline specs, by category ---


def _plugs(draw: Draw, connectors: list[str], first_mm: int) -> list[Json]:
    step = draw(st.sampled_from([80, 115, 150]))
    known = draw(whole(0, 4)) > 0
    return [{"connector": c} | ({"at_mm": first_mm + step * n} if known else {}) for n, c in enumerate(connectors)]


def _cable(draw: Draw, connectors: list[str], most: int, **fixed: Any) -> Json:
    cable = {"plugs": _plugs(draw, connectors, draw(whole(25, 75)) * 10), "quantity": draw(whole(1, most)), **fixed}
    return _some(draw, cable, awg=st.sampled_from([16, 18, 20]))


@st.composite
def boxes(draw: Draw, *, twelve_only: bool = False) -> list[Json]:
    """Draw the cables in a supply's box: always a main one, of the others what the size of the box brings."""
    cables = [_cable(draw, ["atx12vo-10" if twelve_only else "atx-20+4"], 1)]
    cables.append(_cable(draw, [draw(st.sampled_from(["cpu-4+4", "cpu-8"]))], 2))
    if draw(st.sampled_from(MOSTLY)):
        cables.append(_cable(draw, ["pcie-6+2"], 3, supply_wires_12v=3))
    if draw(st.booleans()):
        cables.append(_cable(draw, ["pcie-6+2", "pcie-6+2"], 2, supply_wires_12v=draw(st.sampled_from([3, 3, 4]))))
    if draw(st.booleans()):
        sixteen = draw(st.sampled_from(["12vhpwr", "12v-2x6"]))
        cables.append(_cable(draw, [sixteen], 1, rated_watts=draw(st.sampled_from([300, 450, 600]))))
    if not twelve_only:
        cables.append(_cable(draw, ["sata-power"] * draw(whole(2, 4)), 2, carries_3v3=draw(st.booleans())))
        if draw(st.booleans()):
            cables.append(_cable(draw, ["peripheral-4"] * draw(whole(1, 3)), 1))
        if draw(whole(0, 3)) == 0:
            cables.append(_cable(draw, ["sata-power", "peripheral-4"], 1))
    return cables


@st.composite
def supplies(draw: Draw) -> Json:
    """Draw a supply: rails and box go with its size, now and then there are groups."""
    watts = draw(st.sampled_from([400, 450, 550, 650, 750, 850, 1000, 1200, 1500]))
    design = draw(st.sampled_from(["atx-2", "atx-2", "atx-3.0", "atx-3.1", "atx-3.1", "atx12vo"]))
    spec: Json = {"category": "power_supply", "rated_watts": watts, "design": design}
    only_12 = design == "atx12vo"
    spec["cables"] = draw(boxes(twelve_only=only_12))
    twelve = round(watts * draw(whole(92, 100)) / 1200, 1)
    small = {} if only_12 else {"5v": draw(whole(15, 25)), "3v3": draw(whole(15, 25)), "5vsb": 3}
    rails = {"12v": twelve, **small}
    if draw(st.booleans()):
        spec["rails"] = {rail: {"max_amps": amps} for rail, amps in rails.items()}
    if not only_12 and draw(st.booleans()):
        spec["combined_limits"] = [{"rails": ["5v", "3v3"], "watts": draw(whole(90, 150))}]
    if draw(whole(0, 3)) == 0:
        spec["groups"] = [
            {"name": "A", "max_amps": draw(whole(20, 60)), "feeds": ["main", "processor", "drive"]},
            {"name": "B", "max_amps": draw(whole(20, 60)), "feeds": ["card"]},
        ]
    return _some(
        draw, spec, efficiency_level=st.sampled_from(["bronze", "gold", "titanium"]),
        inlet=st.sampled_from(["c14", "c20"]), depth_mm=whole(120, 220), form_factor=st.just("atx"),
        rated_at_celsius=st.sampled_from([25, 40, 50]),
        modularity=st.sampled_from(["full", "semi", "none"]), cable_family=st.just("own-family"),
    )


@st.composite
def boards(draw: Draw, *, twelve_only: bool = False) -> Json:
    """Draw a board: a main port, one or two for the processor, headers."""
    needs: list[Json] = [{"connector": "atx12vo-10" if twelve_only else "atx-24"}, {"connector": "cpu-8"}]
    needs += draw(st.sampled_from([
        [], [{"connector": "cpu-4", "optional": True}],
        [{"connector": "cpu-8", "optional": True, "required_above_watts": 235}], [{"connector": "cpu-8"}],
    ]))
    offers: list[Json] = [
        {"connector": "fan-4", "count": draw(whole(2, 8)), "max_amps": 2},
        {"connector": "sata-data", "count": draw(whole(4, 10))},
        {"connector": "m2-m", "count": draw(whole(1, 4))},
    ]
    if twelve_only:
        offers.append({"connector": "sata-power", "count": 3, "max_amps": 3})
    amps = figures(5, 30, 10)
    own = st.fixed_dictionaries({"12v": amps}, optional={"5v": amps, "3v3": amps})
    spec = {"category": "motherboard", "needs": needs}
    if draw(st.sampled_from(MOSTLY)):
        spec |= {"processor_socket": SOCKET, "memory_type": draw(st.sampled_from(["ddr4", "ddr5", "ddr5"]))}
    return _some(draw, spec, offers=st.just(offers), own_amps=own)


@st.composite
def processors(draw: Draw) -> Json:
    """Draw a processor that states its draw in one way, in several, or not at all."""
    spec: Json = {"category": "processor"}
    if draw(st.sampled_from(MOSTLY)):
        spec["socket"] = SOCKET
    return _some(draw, spec, **draw(st.sampled_from([
        {"class_watts": st.sampled_from([35, 65, 125, 165])},
        {"turbo_watts": figures(45, 250), "base_watts": figures(35, 45)},
        {"plug_watts": figures(40, 280)},
        {"base_watts": figures(35, 170)},
    ])))


@st.composite
def cards(draw: Draw) -> Json:
    """Draw a graphics card whose plugs go with its watts, or are one too few."""
    connector, count, low, high = draw(st.sampled_from([
        ("pcie-6", 0, 20, 75), ("pcie-6", 1, 75, 150), ("pcie-8", 1, 120, 225), ("pcie-8", 2, 180, 375),
        ("pcie-8", 3, 300, 450), ("12vhpwr", 1, 200, 450), ("12v-2x6", 1, 250, 600),
    ]))
    spec: Json = {"category": "graphics_card", "board_watts": draw(figures(low, high))}
    if count:
        spec["needs"] = [{"connector": connector, "count": count}]
    if connector == "12vhpwr" and draw(st.booleans()):
        spec["adapters"] = [{
            "takes": [{"connector": "pcie-8", "count": 3}], "gives": [{"connector": connector}],
            "rated_watts_by_inputs": {"2": 300, "3": 450},
        }]
        lengths = whole(1, 60).map(lambda steps: steps * 50)
        _some(draw, spec["adapters"][0], length_mm=lengths, awg=st.sampled_from([16, 18, 20]))
    return _some(draw, spec, slot_watts=whole(10, 66), length_mm=whole(150, 360))


@st.composite
def drives(draw: Draw) -> Json:
    """Draw a 3.5 inch disk, a flat drive or one in the board."""
    size = draw(st.sampled_from(["3.5", "3.5", "2.5", "m2"]))
    spec: Json = {"category": "drive", "interface": "nvme" if size == "m2" else "sata", "size": size}
    if size == "m2":
        return spec | {"needs": [{"connector": "m2-m"}]}
    spec["needs"] = [{"connector": "sata-power"}]
    spec["power_disable"] = draw(whole(0, 7)) == 0
    if size == "2.5":
        return _some(draw, spec, running_amps=st.fixed_dictionaries({"5v": figures(2, 12, 10)}))
    return _some(
        draw, spec, running_amps=st.fixed_dictionaries({"12v": figures(3, 9, 10), "5v": figures(3, 9, 10)}),
        starting_amps=st.fixed_dictionaries({"12v": figures(12, 28, 10)}, optional={"5v": figures(5, 12, 10)}),
    )


@st.composite
def movers(draw: Draw) -> Json:
    """Draw a cooler, fan or pump."""
    category = draw(st.sampled_from(["cooler", "fan", "pump"]))
    spec = {"category": category, "needs": [{"connector": "sata-power" if category == "pump" else "fan-4"}]}
    return _some(draw, spec, amps=figures(5, 90, 100), starting_amps=figures(10, 150, 100))


@st.composite
def lights(draw: Draw) -> Json:
    """Draw a light strip."""
    volts, connector = draw(st.sampled_from([(5, "argb-3"), (12, "rgb-4")]))
    needs = [{"connector": connector, "optional": draw(st.booleans())}]
    spec = {"category": "lighting", "volts": volts, "needs": needs}
    if draw(st.booleans()):
        spec["lead"] = draw(leads())
        spec["strip"] = _some(draw, {}, length_mm=whole(0, 2000), ohms_per_metre=figures_of_ohms())
    return _some(draw, spec, leds=whole(5, 60))


def figures_of_ohms() -> st.SearchStrategy[float]:
    """Draw ohms, of a contact or a metre of strip, within what is assumed of both and beside it."""
    return st.sampled_from([0, 0.006, 0.01, 0.03, 0.1, 0.3, 0.5])


@st.composite
def leads(draw: Draw) -> Json:
    """Draw equal pairs of wires, as far as they are known."""
    wire: Json = {"length_mm": draw(whole(0, 60)) * 50}
    return _some(
        draw, wire, awg=st.sampled_from([16, 18, 20, 22, 24]), parallel_pairs=whole(1, 3),
        ohms_per_contact=figures_of_ohms(),
    )


@st.composite
def runs(draw: Draw) -> Json:
    """Draw a run with a load that it carries, or just about, or not."""
    volts = draw(st.sampled_from([5, 12, 24]))
    load = draw(st.sampled_from(["amps", "watts", "strip"]))
    loads: Json = {"amps": figures(1, 90, 10), "watts": figures(1, 120), "strip": st.just({})}
    run: Json = draw(leads()) | {"source_volts": volts, load: draw(loads[load])}
    if load == "strip":
        strip = {"length_mm": draw(whole(1, 30)) * 100, "amps_per_metre": draw(figures(1, 30, 10))}
        run["strip"] = _some(draw, strip, ohms_per_metre=figures_of_ohms())
    return _some(draw, run, lowest_volts=whole(volts * 6, volts * 10 - 1).map(lambda tenths: tenths / 10),
                 max_amps=whole(1, 12))


@st.composite
def boxes_of_steel(draw: Draw) -> Json:
    """Draw a case that states some of its ways."""
    bay = {"form_factors": ["atx"], "depth_mm": draw(whole(14, 26)) * 10}
    ways = st.fixed_dictionaries({}, optional={
        "main": whole(250, 550), "processor": whole(300, 700), "card": whole(300, 600), "drive": whole(200, 600),
    })
    return _some(draw, {"category": "case"}, bays=st.just([bay]), routes_mm=ways, card_length_mm=whole(170, 400))


@st.composite
def memories(draw: Draw) -> Json:
    """Draw a kit of memory."""
    spec = {"category": "memory", "modules": draw(whole(1, 4)), "type": draw(st.sampled_from(["ddr4", "ddr5", "ddr5"]))}
    return _some(draw, spec, watts=figures(4, 20))


# --- sheets ---


@st.composite
def lines(draw: Draw, category: str, specs: st.SearchStrategy[Json], most: int = 1) -> Json:
    """Draw a line of a category: a demo part as often as a spec."""
    known = ids_of(category)
    line: Json = {"part": draw(st.sampled_from(known))} if known and draw(st.booleans()) else {"spec": draw(specs)}
    if most > 1:
        line["quantity"] = draw(whole(1, most))
    return line


def _is_12v_only(line: Json) -> bool:
    return str(_spec(line)["design"]) == "atx12vo"


def _spec(line: Json) -> Json:
    """Return what a line is, whether it names a part or states it."""
    return demo()[line["part"]] if "part" in line else line["spec"]


def _is_mate(board: Json, line: Json) -> bool:
    """Say whether a processor or memory goes into a board, as far as both say."""
    spec, on = _spec(line), _spec(board)
    socket, kind = on.get("processor_socket"), on.get("memory_type")
    return spec.get("socket", socket) == socket if spec["category"] == "processor" else spec.get("type", kind) == kind


def _matched(draw: Draw, board: Json, wanted: st.SearchStrategy[Json]) -> Json:
    """Draw a processor or memory, mostly one that goes into the board."""
    if _spec(board).get("processor_socket") and draw(st.sampled_from(MOSTLY)):
        wanted = wanted.filter(lambda line: _is_mate(board, line))
    line: Json = draw(wanted)
    return line


def _board(draw: Draw, supply: Json) -> Json:
    """Draw a board, mostly of the supply's kind: 12 V only or not."""
    wanted = _is_12v_only(supply) == (draw(whole(0, 9)) > 0)
    if draw(st.booleans()):
        return {"spec": draw(boards(twelve_only=wanted))}
    fitting = [id_ for id_ in ids_of("motherboard") if (demo()[id_]["needs"][0]["connector"] == "atx12vo-10") == wanted]
    return {"part": draw(st.sampled_from(fitting))}


def sites() -> st.SearchStrategy[Json]:
    """Draw where the machine stands, as far as it is known."""
    ups = st.fixed_dictionaries({"watts": whole(200, 1500), "volt_amperes": whole(300, 2200)},
                                optional={"transfer_milliseconds": whole(0, 20)})
    found = st.fixed_dictionaries({}, optional={
        "mains_volts": st.sampled_from([100, 120, 230]), "circuit_amps": st.sampled_from([10, 13, 15, 16, 20]),
        "code": st.sampled_from(["nec", "iec", "bs"]), "room_celsius": whole(10, 45), "ups": ups,
        "plug_fuse_amps": st.sampled_from([3, 5, 10, 13]),
    })
    # Only a code with fused plugs assumes one that is left out: a sheet without that code says that there is none.
    return found.map(lambda site: site | {"code": "bs"} if "plug_fuse_amps" in site else site)


@st.composite
def sheets(draw: Draw, most_lines: int = 14) -> Json:
    """Draw a whole build sheet: supply, board and processor always, the rest as it comes, lines in any order."""
    supply = draw(lines("power_supply", supplies()))
    board = _board(draw, supply)
    parts = [supply, board, _matched(draw, board, lines("processor", processors()))]
    if draw(st.booleans()):
        parts.append(_matched(draw, board, lines("memory", memories())))
    rest = (
        (lines("graphics_card", cards()), 1), (lines("drive", drives(), 3), 2),
        (lines("fan", movers(), 2), 2), (lines("cooler", movers()), 1), (lines("lighting", lights()), 1),
        (lines("case", boxes_of_steel()), 1), (lines("optical_drive", drives()), 1), (_odd_lines(), 1),
    )
    for wanted, most in rest:
        parts += draw(st.lists(wanted, max_size=most))
    sheet: Json = {"parts": draw(st.permutations(parts[:most_lines])), "site": draw(sites())}
    if draw(whole(0, 2)) == 0:
        sheet["runs"] = draw(st.lists(runs(), min_size=1, max_size=2))
    use = st.fixed_dictionaries({}, optional={
        "drives_starting_together": whole(1, 8), "graphics_limit_percent": whole(60, 110), "hours_a_day": whole(0, 24),
    })
    return sheet | {"use": draw(use)} if draw(st.booleans()) else sheet


def _odd_lines() -> st.SearchStrategy[Json]:
    """Draw what few machines have: a hub, a cage, a riser, a loose cable or adapter, another card."""
    odd = ("controller", "backplane", "riser", "cable", "adapter", "expansion_card", "bracket", "pump")
    return st.sampled_from([{"part": id_} for category in odd for id_ in ids_of(category)])


# --- changes ---


def written_out(sheet: Json) -> Json:
    """Return the same sheet with every demo part written out as its spec, so that its figures can be changed."""
    changed = copy.deepcopy(sheet)
    for line in changed["parts"]:
        if "part" in line:
            line["spec"] = copy.deepcopy(demo()[line.pop("part")])
    return changed


def _walk(node: Any, way: Way = ()) -> Iterator[tuple[Way, Spot]]:
    """Yield the way to every value below a node, with its holder and key."""
    entries = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ()
    for key, value in list(entries):
        yield (*way, key), (node, key)
        yield from _walk(value, (*way, key))


def _loads_of(spec: Json) -> Iterator[Spot]:
    """Yield each figure of a spec that says what it draws."""
    for way, spot in _walk(spec):
        of_a_rail = len(way) == 2 and way[0] in RAIL_LOADS and way[1] not in ENDS
        of_a_port = len(way) == 3 and way[0] == "needs" and way[2] == "watts"
        of_memory = way == ("watts",) and spec["category"] == "memory"
        of_a_part = len(way) == 1 and way[0] in LOADS and not _is_by_rail(spot)
        if of_a_part or of_a_rail or of_a_port or of_memory:
            yield spot


def _is_by_rail(spot: Spot) -> bool:
    value = spot[0][spot[1]]
    return isinstance(value, dict) and "low" not in value


def heavier(draw: Draw, sheet: Json) -> Json | None:
    """Raise one load of one part; both ends of a range, for a higher end alone would only make it less certain."""
    changed = written_out(sheet)
    spots = [spot for line in changed["parts"] for spot in _loads_of(line["spec"])]
    spots += [spot for run in changed.get("runs", ()) for way, spot in _walk(run) if way[-1] in RUN_LOADS]
    spots = [(holder, key) for holder, key in spots if _is_free(holder, key)]
    if not spots:
        return None
    holder, key = draw(st.sampled_from(spots))
    holder[key] = _raised(holder[key], draw(whole(1, 60)), key == "leds")
    return changed


def _is_free(holder: Json, key: str) -> bool:
    """Say whether a load stands for the device's draw: not the slot's share, which only moves watts to other plugs.

    A processor that states several figures is judged by one of them, and base watts may not pass it.
    """
    return key not in ("slot_watts", "base_watts") or (key == "base_watts" and "turbo_watts" not in holder)


def _raised(figure: Any, percent: int, is_whole: bool) -> Any:
    if isinstance(figure, dict):
        return {end: _raised(value, percent, is_whole) for end, value in figure.items()}
    more = figure * (100 + percent) / 100 if figure else percent / 100
    return int(more) + 1 if is_whole else round(more, 3)


def fewer_cables(draw: Draw, sheet: Json) -> Json | None:
    """Take one cable out of the supply's box, or one loose cable off the sheet; the box is never left without any."""
    changed = written_out(sheet)
    supply = next(line["spec"] for line in changed["parts"] if line["spec"]["category"] == "power_supply")
    loose = [line for line in changed["parts"] if line["spec"]["category"] == "cable"]
    box = supply.get("cables", [])
    choices: list[Spot] = [(changed["parts"], line) for line in loose]
    choices += [(box, cable) for cable in box if len(box) > 1 or cable.get("quantity", 1) > 1]
    if not choices:
        return None
    holder, taken = draw(st.sampled_from(choices))
    if taken.get("quantity", 1) > 1:
        taken["quantity"] -= 1
    else:
        holder[:] = [each for each in holder if each is not taken]
    return changed


def delete_figure(draw: Draw, sheet: Json) -> Json | None:
    """Leave out one figure of a part, of ``use`` or of ``site``, as somebody would who does not know it."""
    changed = written_out(sheet)
    places = [line["spec"] for line in changed["parts"]] + [changed[k] for k in ("use", "site") if k in changed]
    spots = [spot for place in places for way, spot in _walk(place) if _may_go(place, way)]
    spots += [spot for run in changed.get("runs", ()) for way, spot in _walk(run) if way[-1] in RUN_FIGURES]
    if not spots:
        return None
    holder, key = draw(st.sampled_from(spots))
    del holder[key]
    return changed


def _may_go(place: Json, way: Way) -> bool:
    """Say whether a field is a figure that may be missing."""
    if "category" not in place:
        return len(way) == 1 and way[0] not in ("ups", "code")
    if way[0] in ("peaks", "adapters", "rails", "groups", "combined_limits", "sockets", "bays"):
        return False
    if len(way) == 1:
        return way[0] in FIGURES - REQUIRED
    if way[0] in RAIL_LOADS | {"routes_mm"}:
        return len(way) == 2 and way[1] not in ENDS
    return way[0] in ("cables", "plugs", "lead") and way[-1] in FIGURES


def hotter(draw: Draw, sheet: Json) -> Json | None:
    """Make the room warmer, where its temperature is given."""
    if "room_celsius" not in sheet.get("site", {}):
        return None
    changed = copy.deepcopy(sheet)
    changed["site"]["room_celsius"] += draw(whole(1, 25))
    return changed


def longer_run(draw: Draw, sheet: Json) -> Json | None:
    """Make a run, a lead or a strip longer, one way only."""
    changed = written_out(sheet)
    ways = [run for run in changed.get("runs", ()) if "strip" not in run]
    ways += [line["spec"]["lead"] for line in changed["parts"] if "lead" in line["spec"]]
    ways += [run["strip"] for run in changed.get("runs", ()) if "strip" in run]
    if not ways:
        return None
    draw(st.sampled_from(ways))["length_mm"] += draw(whole(1, 60)) * 50
    return changed


def thinner(draw: Draw, sheet: Json) -> Json | None:
    """Make the wires of one boxed cable, bundled adapter, run or lead thinner, where their gauge is given."""
    changed = written_out(sheet)
    supply = next(line["spec"] for line in changed["parts"] if line["spec"]["category"] == "power_supply")
    known = [made for made in (*supply.get("cables", []), *_bundled(changed)) if "awg" in made]
    known += [run for run in changed.get("runs", ()) if "awg" in run]
    known += [line["spec"]["lead"] for line in changed["parts"] if "awg" in line["spec"].get("lead", ())]
    if not known:
        return None
    draw(st.sampled_from(known))["awg"] += draw(st.sampled_from([2, 4]))
    return changed


def longer(draw: Draw, sheet: Json) -> Json | None:
    """Make the lead of one bundled adapter longer, where its length is given and no way asks for one."""
    changed = written_out(sheet)
    known = [made for made in _bundled(changed) if "length_mm" in made]
    if not known or any(line["spec"]["category"] == "case" for line in changed["parts"]):
        return None
    draw(st.sampled_from(known))["length_mm"] += draw(whole(1, 30)) * 50
    return changed


def _bundled(sheet: Json) -> list[Json]:
    return [made for line in sheet["parts"] for made in line["spec"].get("adapters", [])]


def worn(draw: Draw, sheet: Json) -> Json | None:
    """State that one more contact of a boxed cable has no touch."""
    changed = written_out(sheet)
    supply = next(line["spec"] for line in changed["parts"] if line["spec"]["category"] == "power_supply")
    box = supply.get("cables", [])
    if not box:
        return None
    cable = draw(st.sampled_from(box))
    cable["open_contacts"] = cable.get("open_contacts", 0) + 1
    return changed


def stronger(draw: Draw, sheet: Json) -> Json:
    """Give the supply more watts and, in step, more on every rail, group and shared limit; the box stays the same."""
    changed = written_out(sheet)
    supply = next(line["spec"] for line in changed["parts"] if line["spec"]["category"] == "power_supply")
    factor = draw(st.sampled_from([1.05, 1.2, PAST_ANY_RATING]))
    supply["rated_watts"] = round(supply["rated_watts"] * factor, 1)
    for limit in (*supply.get("rails", {}).values(), *supply.get("groups", [])):
        limit["max_amps"] = round(limit["max_amps"] * factor, 2)
    for limit in supply.get("combined_limits", []):
        limit["watts"] = round(limit["watts"] * factor, 1)
    return changed


def shuffle(draw: Draw, sheet: Json) -> Json:
    """Put the lines into another order. A sheet with a wiring is not shuffled: its pointers name lines."""
    assert not sheet.get("wiring"), "the pointers of a wiring name lines by their place"
    changed = copy.deepcopy(sheet)
    changed["parts"] = draw(st.permutations(changed["parts"]))
    return changed


def split_quantities(draw: Draw, sheet: Json) -> Json | None:
    """Write one line of several pieces as two lines."""
    assert not sheet.get("wiring"), "the pointers of a wiring name lines by their place"
    changed = copy.deepcopy(sheet)
    several = [line for line in changed["parts"] if line.get("quantity", 1) > 1]
    if not several:
        return None
    line = draw(st.sampled_from(several))
    part = draw(whole(1, line["quantity"] - 1))
    changed["parts"].append(copy.deepcopy(line) | {"quantity": line["quantity"] - part})
    line["quantity"] = part
    return changed


def rename(draw: Draw, sheet: Json) -> Json:
    """Give every stated part, cable and adapter another name, and the sheet another reference."""
    changed = written_out(sheet)
    names = st.text(st.characters(categories=["L", "N"], include_characters=" -"), max_size=20)
    changed["reference"] = draw(names)
    for line in changed["parts"]:
        spec = line["spec"]
        for named in (spec, *spec.get("cables", []), *spec.get("adapters", [])):
            named["name"] = draw(names)
    return changed
