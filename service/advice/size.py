"""The smallest standard size of supply that carries a build, found by search and never by a factor.

The supply of the sheet is replaced by one of each size and the rules on power speak over that case, everything else as
it was: the same demand, the same room, all figures at their unfavourable end. What is sought is the smallest size with

* ``carries``: no stop,
* ``with_reserve``: no stop and no caution,
* ``with_peaks``: nor a short peak past the column of the published table that is the supply's own (PWR402).

A stronger supply with the same box is never worse (the promise of the verdict), so the sizes are halved, not walked.
What is said in the same words at every size (a room that is too warm, a small rail) is kept apart: no size mends it.

Of the sheet's supply the box, the rating's warmth and the small rails are kept, 12 V and limits that hold it go with
the size, and overcurrent groups are left out, for they belong to one supply and not to a size. Without groups no rule
on power hangs on the wiring, so none is planned. The mains side, plugs and room in the case are not looked at.
"""

from bisect import bisect_left
from collections.abc import Callable
from dataclasses import replace
from functools import cache, partial
from typing import Final, Literal, NamedTuple

from service.case.assemble import assemble
from service.facts.sizes import STANDARD_SIZES
from service.parts.build import Build, Unit
from service.parts.records import Cable, CombinedLimit, Motherboard, Plug, PowerSupply, RailLimit
from service.parts.words import SIXTEEN_PIN, Aspect
from service.verdict.speak import Spoken, speak

Goal = Literal["carries", "with_reserve", "with_peaks"]
ASPECT: Final[Aspect] = "power"
SIZES_WATTS: Final = tuple(watts for _, watts in STANDARD_SIZES.rows)
OLD_DESIGN, NEW_DESIGN, TWELVE_VOLT_ONLY = "atx-2", "atx-3.1", "atx12vo"
_OWN_COLUMN: Final = "PWR402"
COUNTS: Final[dict[Goal, Callable[[Spoken], bool]]] = {
    "carries": lambda spoken: spoken.rule.weight == "stop",
    "with_reserve": lambda spoken: spoken.rule.weight in ("stop", "caution"),
    "with_peaks": lambda spoken: spoken.rule.weight in ("stop", "caution") or spoken.rule.id == _OWN_COLUMN,
}
_SIXTEEN_PIN_CABLE: Final = Cable(plugs=(Plug(connector="12v-2x6"),))
_WANTED: Final = ("motherboard", "processor")


class Reached(NamedTuple):
    """The smallest size that reaches a goal (None: none does), the next smaller one, and what bounds that.

    Where no size does, ``smaller_watts`` is the largest there is; it is None where the smallest one does.
    """

    watts: float | None
    smaller_watts: float | None
    bounds: tuple[Spoken, ...]


class Sized(NamedTuple):
    """A kind of supply, what each goal takes of it, and what no size of it mends."""

    design: str
    sixteen_pin: bool
    reached: tuple[tuple[Goal, Reached], ...]
    unmended: tuple[Spoken, ...]


class Sizes(NamedTuple):
    """All kinds of supply that were looked at; ``missing``: categories not on the sheet, whose load is not counted."""

    kinds: tuple[Sized, ...]
    missing: tuple[str, ...]


def sizes(build: Build) -> Sizes:
    """Return the smallest sizes of supply that carry a build, with the supply of its sheet or without one."""
    listed = {unit.part.category for unit in build.units}
    missing = tuple(category for category in _WANTED if category not in listed)
    return Sizes(tuple(_sized(build, kind) for kind in kinds(build)), missing)


def kinds(build: Build) -> list[PowerSupply]:
    """Return a supply of each kind to be looked at, of the size of the sheet's own or of any."""
    own = next((unit.part for unit in build.units if isinstance(unit.part, PowerSupply)), None)
    base = PowerSupply(rated_watts=SIZES_WATTS[0], design="") if own is None else _without_groups(own)
    designs = (TWELVE_VOLT_ONLY,) if _is_12v_only(build, own) else (OLD_DESIGN, NEW_DESIGN)
    found = [replace(base, design=design) for design in designs]
    if base.cables is None:
        found.append(replace(base, design=designs[-1], cables=(_SIXTEEN_PIN_CABLE,)))
    return found


def with_supply(build: Build, supply: PowerSupply) -> Build:
    """Return a build with this supply instead of its own, looked at for its power alone and without a wiring."""
    at = next((at for at, unit in enumerate(build.units) if isinstance(unit.part, PowerSupply)), None)
    if at is None:
        line = 1 + max((unit.line for unit in build.units), default=-1)
        units = (*build.units, Unit(supply, "", line, 0))
    else:
        units = (*build.units[:at], build.units[at]._replace(part=supply), *build.units[at + 1 :])
    return Build(units=units, use=build.use, site=build.site, wiring=(), aspects=(ASPECT,), edition=build.edition)


def of_size(kind: PowerSupply, watts: float) -> PowerSupply:
    """Return a supply of this kind and size: 12 V and limits that hold it go with the size, the small rails stay."""
    factor = watts / kind.rated_watts
    return replace(
        kind,
        rated_watts=watts,
        rails=tuple(
            RailLimit(rail=each.rail, max_amps=each.max_amps * (factor if each.rail == "12v" else 1.0))
            for each in kind.rails
        ),
        combined_limits=tuple(
            CombinedLimit(rails=each.rails, watts=each.watts * (factor if "12v" in each.rails else 1.0))
            for each in kind.combined_limits
        ),
    )


def _without_groups(supply: PowerSupply) -> PowerSupply:
    return replace(
        supply,
        groups=(),
        sockets=tuple(replace(socket, group=None) for socket in supply.sockets),
        cables=None if supply.cables is None else tuple(replace(cable, group=None) for cable in supply.cables),
    )


def _is_12v_only(build: Build, own: PowerSupply | None) -> bool:
    if own is not None:
        return own.design == TWELVE_VOLT_ONLY
    boards = [unit.part for unit in build.units if isinstance(unit.part, Motherboard)]
    return any(need.connector == "atx12vo-10" for board in boards for need in board.needs)


def _sized(build: Build, kind: PowerSupply) -> Sized:
    """Return what each goal takes of a kind of supply; each size is looked at once at most."""

    @cache
    def said(watts: float) -> tuple[Spoken, ...]:
        case = assemble(with_supply(build, of_size(kind, watts)), "unfavourable").case
        return tuple(speak(case, frozenset({ASPECT})))

    stays = _unmended(said(SIZES_WATTS[-1]), said(SIZES_WATTS[-2]))
    kept = {spoken.key for spoken in stays}

    def against(goal: Goal, watts: float) -> tuple[Spoken, ...]:
        return tuple(each for each in said(watts) if each.key not in kept and COUNTS[goal](each))

    reached = tuple((goal, _reach(partial(against, goal))) for goal in COUNTS)
    has_plug = any(plug.connector in SIXTEEN_PIN for cable in kind.cables or () for plug in cable.plugs)
    return Sized(kind.design, has_plug, reached, tuple(each for each in stays if COUNTS["with_peaks"](each)))


def _unmended(largest: tuple[Spoken, ...], smaller: tuple[Spoken, ...]) -> tuple[Spoken, ...]:
    """Return what is said at both of the largest sizes in the very same figures: no size changes it."""
    return tuple(spoken for spoken in largest if spoken in smaller)


def _reach(against: Callable[[float], tuple[Spoken, ...]]) -> Reached:
    """Return the smallest size that nothing speaks against, by halving: what is enough stays enough above."""
    at = bisect_left(SIZES_WATTS, 1, key=lambda watts: 0 if against(watts) else 1)
    smaller = SIZES_WATTS[at - 1] if at else None
    return Reached(
        SIZES_WATTS[at] if at < len(SIZES_WATTS) else None, smaller, () if smaller is None else against(smaller)
    )
