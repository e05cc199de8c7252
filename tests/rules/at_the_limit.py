"""Builds of each rule that has a limit, by what is measured; why a rule has none, or no figure that can be missing."""

from collections.abc import Callable

from service.case.case import Case, Strain
from service.demand.ends import Ends
from service.parts.build import Build as BuildOf
from service.parts.build import Unit
from service.parts.figures import Range
from service.parts.records import CaseBox, GraphicsCard, Plug
from service.wiring.reach import Routes
from tests.rules.cases import case, header, joint, moment, plug, slotted, strain, wall
from tests.rules.test_connectors import (
    CARD,
    HALF_6,
    PERIPHERAL_TO_CARD,
    RISER,
    SATA,
    adapted,
    behind,
    heated,
    plugged,
    share,
    shared_equally,
)
from tests.rules.test_fitting_signals_mating import box, fit
from tests.rules.test_power import group, least, rail, shared, standby, ups, warm
from tests.rules.test_readings import PORT as READ_PORT
from tests.rules.test_readings import read
from tests.rules.test_runs import light, run

Build = Callable[[float], Case]


def _strained(cause: str, level: str, limit: float, *, sixteen_pin: bool = False) -> Build:
    """Return a build by milliamps or amps at a place of the wiring, which names a strain only past its limit."""
    def build(amps: float) -> Case:
        found: tuple[Strain, ...] = (strain(cause, level, amps, limit, sixteen_pin=sixteen_pin, contacts=1),)
        return case(CARD, joints=(joint(*(found if amps > limit else ())),))

    return build


def _reaching(way_mm: float, lead_mm: float | None) -> Case:
    """Return a connection of a card by the way that the case states and by how far the plug is along its cable."""
    tower = BuildOf(units=(Unit(CaseBox(routes_mm=(("card", way_mm),)), "", 0, 0),))
    along = Plug(connector="pcie-8", at_mm=lead_mm)
    reach = Routes(tower, Ends("unfavourable")).reach(along, 0, "cables/0/plugs/0", "pcie-8")
    return plugged(plug(short_by_mm=reach.short_by_mm, assumed_short_by_mm=reach.assumed_short_by_mm))


LIMITS: dict[str, list[tuple[float, Build]]] = {
    "PWR101": [(850, lambda watts: case(sustained_watts=watts))],
    "PWR102": [(765, lambda watts: case(sustained_watts=watts))],
    "PWR201": [(70, lambda amps: rail(amps, 0))],
    "PWR202": [(70, lambda amps: rail(0, amps))],
    "PWR103": [(850, lambda watts: case(starting_watts=watts))],
    "PWR203": [(120, shared)],
    "PWR204": [(120, lambda watts: shared(0, watts))],
    "PWR205": [(2.5, standby), (2.5, lambda amps: standby(0, amps))],
    "PWR301": [(25, group)],
    "PWR303": [(25, lambda amps: group(0, amps))],
    "PWR302": [(75, slotted)],
    "PWR401": [(1700, lambda watts: case(moments=(moment(watts),)))],
    "PWR402": [(1275, lambda watts: case(moments=(moment(watts),)))],
    "PWR403": [(1275, lambda watts: case(moments=(moment(watts, stated=True),)))],
    "PWR404": [(1275, lambda watts: case(moments=(moment(watts, stated=True, promised_watts=None),)))],
    "PWR405": [(1275, lambda watts: case(moments=(moment(900, all_cards_watts=watts),)))],
    "PWR406": [(1275, lambda watts: case(moments=(moment(watts, beyond_formula=True),)))],
    "PWR501": [(40, lambda celsius: case(room_celsius=celsius))],
    "PWR502": [(750, warm)],
    "PWR601": [
        (12, lambda amps: case(wall=wall(amps=amps))),
        (16, lambda amps: case(wall=wall(amps=amps, continuous_rule=False, circuit_amps=16.0))),
    ],
    "PWR602": [
        (15, lambda amps: case(wall=wall(amps=amps))),
        (10, lambda amps: case(wall=wall(amps=amps, mains_volts=230.0, inlet_amps=10.0))),
    ],
    "PWR603": [(540, lambda watts: case(wall=wall(watts=watts, ups_watts=540.0)))],
    "PWR604": [(900, lambda amperes: case(wall=wall(volt_amperes=amperes, ups_volt_amperes=900.0)))],
    "PWR605": [(5, lambda amps: case(wall=wall(amps=amps, plug_fuse_amps=5.0)))],
    "PWR606": [(17, ups), (12, lambda ms: ups(ms, hold_up_milliseconds=12.0))],
    "PWR702": [(1, least)],
    "PWR701": [(170, lambda watts: case(sustained_watts=watts))],
    "CON102": [(12.5, _strained("plug", "stop", 12.5))],
    "CON103": [(37.5, _strained("print", "stop", 37.5))],
    "CON104": [(8, _strained("contact", "stop", 8))],
    "CON105": [(6, _strained("contact", "band", 6))],
    "CON106": [(9.2, _strained("contact", "stop", 9.2, sixteen_pin=True))],
    "CON107": [(4.5, _strained("drive_rail", "stop", 4.5))],
    "CON108": [(8, _strained("start_wire", "start_band", 8))],
    "CON109": [(225, share)],
    "CON112": [(75, lambda watts: plugged(HALF_6, watts=watts))],
    "CON117": [(75, lambda watts: adapted(PERIPHERAL_TO_CARD, watts=watts))],
    "CON118": [(25, _strained("adapter", "stop", 25))],
    "CON121": [(54, lambda watts: plugged(plug("sata-power"), at=SATA, watts=watts, part=RISER))],
    "CON124": [(75, shared_equally)],
    "CBL102": [(500, lambda way: _reaching(way, 500))],
    "CBL103": [(400, lambda way: _reaching(way, None))],
    "CON125": [(8, heated), (9.2, lambda amps: heated(amps, 9.2))],
    "CON127": [(11.04, behind)],
    "CON128": [(11.52, lambda volts: behind(max(volts, 11.04)))],
    "FIT101": [(200, lambda depth: fit(box(200), depth_mm=depth))],
    "FIT102": [(150, lambda depth: fit(box(200), depth_mm=depth))],
    "FIT104": [(300, lambda mm: case(GraphicsCard(board_watts=Range(300, 300), length_mm=mm),
                                     CaseBox(card_length_mm=300.0)))],
    "AUX102": [(1, lambda amps: case(headers=(header(amps, 1.0),)))],
    "RDG101": [(11.4, lambda volts: read(volts=volts, highest_volts=99.0))],
    "RDG102": [(11.4, lambda volts: read(READ_PORT, volts=volts, highest_volts=99.0))],
    "RDG103": [(10.2, lambda amps: read(READ_PORT, amps=amps, most_amps=10.0))],
    "RDG104": [(9.8, lambda amps: read(READ_PORT, amps=amps, least_amps=10.0))],
    "RUN102": [(11, lambda volts: run(end_volts=volts))],
    "RUN103": [(0.5, lambda lost: run(end_volts=12 - lost))],
    "RUN104": [(8, lambda amps: run(pair_amps=amps))],
    "RUN105": [(6, lambda amps: run(pair_amps=amps))],
    "RUN106": [(10.8, light)],
}
TOLD: dict[str, tuple[tuple[float, ...], str]] = {
    "PWR101": ((850,), "W"), "PWR102": ((765,), "W"), "PWR103": ((850,), "W"), "PWR201": ((70,), "A"),
    "PWR202": ((70,), "A"), "PWR203": ((120,), "W"), "PWR204": ((120,), "W"), "PWR301": ((25,), "A"),
    "PWR302": ((75,), "W"), "PWR303": ((25,), "A"), "PWR401": ((1700,), "W"), "PWR402": ((1275,), "W"),
    "PWR403": ((1275,), "W"), "PWR404": ((1275,), "W"), "PWR405": ((1275,), "W"), "PWR406": ((1275,), "W"),
    "PWR501": ((40,), "°C"), "PWR601": ((12, 16), "A"), "PWR602": ((15, 10), "A"), "PWR603": ((540,), "W"),
    "PWR604": ((900,), "VA"), "PWR701": ((170,), "W"),
    "PWR205": ((2.5, 2.5), "A"), "PWR502": ((750,), "W"), "PWR605": ((5,), "A"), "PWR606": ((17, 12), "ms"),
    "PWR702": ((1,), "A"),
    "CON102": ((150,), "W"), "CON103": ((450,), "W"), "CON104": ((8,), "A"), "CON105": ((6,), "A"),
    "CON106": ((9.2,), "A"), "CON107": ((4.5,), "A"), "CON108": ((8,), "A"), "CON109": ((225,), "W"),
    "CON112": ((75,), "W"), "CON117": ((75,), "W"), "CON118": ((300,), "W"), "CON121": ((54,), "W"),
    "CON124": ((75,), "W"), "CON125": ((8, 9.2), "A"), "CON127": ((11.04,), "V"), "CON128": ((11.52,), "V"),
    "CBL102": ((0,), "mm"), "CBL103": ((0,), "mm"),
    "FIT101": ((200,), "mm"), "FIT102": ((50,), "mm"), "FIT104": ((300,), "mm"), "AUX102": ((1,), "A"),
    "RUN102": ((11,), "V"), "RUN103": ((0.5,), "V"), "RUN104": ((8,), "A"), "RUN105": ((6,), "A"),
    "RUN106": ((10.8,), "V"), "RDG101": ((11.4,), "V"), "RDG102": ((11.4,), "V"), "RDG103": ((10,), "A"),
    "RDG104": ((10,), "A"),
}
"""Limits as they are told, row by row of ``LIMITS``, and their unit."""
LEFT_OVER = {"CBL102": 5.0, "CBL103": 4.0, "FIT102": 48.5, "RDG103": 10.302, "RDG104": 9.702}
"""Rules that tell what is missing or left, or leave a part to the meter: that much just past the limit."""
BREAKS_BELOW = {"CON127", "CON128", "PWR701", "PWR702", "RUN102", "RUN106", "RDG101", "RDG102", "RDG104"}
"""Rules that break below their limit, all others above."""

_WORDS = "compares words, kinds or places, not amounts"
NO_LIMIT = {
    "AUX101": "a header is there or is not",
    "AUX103": "two voltages are equal or not; both rows of each header stand in BREAKS and SILENT",
    "CBL101": _WORDS,
    "CBL104": _WORDS,
    "CON101": "a port is fed or is not",
    "CON110": _WORDS,
    "CON111": _WORDS,
    "CON113": _WORDS,
    "CON114": _WORDS,
    "CON115": "never, at any load",
    "CON116": "at any load; the limit is that of CON117",
    "CON119": "a port is fed or is not; how crowded its neighbours are is told by the wiring",
    "CON120": _WORDS,
    "CON122": _WORDS,
    "CON123": _WORDS,
    "CON126": "any contact that is stated open; what the others carry is judged by CON104 to CON106",
    "FIT103": _WORDS,
    "FIT105": _WORDS,
    "MATE101": _WORDS,
    "MATE102": _WORDS,
    "RUN101": "there is a solution or there is none",
    "MATE103": "whole processors: one passes and two break, and there is nothing between",
}
_RANGE = "a figure that is not given stands in the case as one end of a range, with its assumption in the answer"
_PRINT = "what a supply does not print is no limit of it; nothing can be compared"
_PLUGGED = "rests on what is plugged in where, which a sheet always says"
_WAY = "a way or lead that is not given is assumed by the wiring, and then it is CBL103 that speaks"
NEVER_MISSING = {
    "AUX101": "a board that lists no headers is taken to have what is needed",
    "AUX103": "the schema asks for the volts of a light",
    "CBL101": _PLUGGED, "CBL102": _WAY, "CBL103": _WAY, "CBL104": _PLUGGED,
    "CON101": _PLUGGED,
    **dict.fromkeys(("CON102", "CON103", "CON104", "CON105", "CON106", "CON107", "CON108", "CON109"), _RANGE),
    "CON110": _PLUGGED, "CON111": _PLUGGED, "CON112": _RANGE, "CON113": _PLUGGED,
    "CON114": _PLUGGED, "CON115": _PLUGGED, "CON116": _PLUGGED, "CON117": _RANGE, "CON118": _RANGE,
    "CON119": _PLUGGED, "CON125": "a wire that is not given is supposed to be short and thick, and the message says so",
    "CON126": "states what a sheet states", "CON127": _RANGE, "CON128": _RANGE,
    "CON121": _RANGE, "CON122": _PLUGGED, "CON123": _PLUGGED,
    "CON124": "a share that is not stated is assumed; that it may be another one is what this rule tells",
    "FIT102": "advice; the missing depth is the unknown of FIT101",
    "MATE103": "a board that says nothing takes one",
    "PWR101": "the schema asks for the rating, and the load is a range", "PWR102": "as PWR101", "PWR103": "as PWR101",
    "PWR205": _RANGE, "PWR502": _RANGE, "PWR606": _RANGE,
    "PWR605": "a sheet without a fuse says that there is none, but by its code, and then it is a range",
    "PWR702": "newer designs ask for no load; a load that is not given is a range",
    "PWR201": _RANGE, "PWR202": _RANGE, "PWR203": _RANGE, "PWR204": _RANGE, "PWR301": _PRINT, "PWR302": _RANGE,
    "PWR303": _PRINT,
    **dict.fromkeys(("PWR401", "PWR402", "PWR403", "PWR404", "PWR405", "PWR406"), _RANGE),
    "PWR501": _RANGE, "PWR701": _RANGE,
    **dict.fromkeys(("RDG101", "RDG102", "RDG103", "RDG104"), "what was not measured is not compared"),
    "RUN101": _RANGE, "RUN103": "without lowest volts RUN102 is the unknown", "RUN105": _RANGE,
}
