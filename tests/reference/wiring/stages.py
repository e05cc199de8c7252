"""A small linear program with whole numbers, solved by HiGHS one level after the other."""

import time
from typing import NamedTuple, Self

import highspy

from service.wiring.problem import Objective, Wiring

EXACT = 1e-9
"""How closely HiGHS holds a row: a per mille of a comfort current is far coarser."""
SLACK = 1e-4
"""Room for rounding where a level is held at its optimum, a whole number."""
GAP = 0.4
"""Levels are whole numbers, so an optimum is proven well before the gap is closed."""


class Infeasible(Exception):
    """There is no solution."""


class Proof(NamedTuple):
    """What an oracle proved: the optimum and a wiring that has it; no objective where it ran out of time."""

    objective: Objective | None
    wiring: Wiring | None
    feasible: bool = True


class Linear:
    """A sum of variables with factors."""

    def __init__(self) -> None:
        self.terms: dict[int, float] = {}

    @classmethod
    def total(cls, variables: list[int]) -> Self:
        """Return the sum of variables."""
        found = cls()
        for each in variables:
            found.add(each)
        return found

    @classmethod
    def sum(cls, parts: list["Linear"]) -> Self:
        """Return the sum of sums."""
        found = cls()
        for each in parts:
            found.plus(each)
        return found

    def add(self, variable: int, factor: float = 1) -> Self:
        """Add a variable so many times."""
        if factor:
            self.terms[variable] = self.terms.get(variable, 0) + factor
        return self

    def plus(self, other: "Linear", factor: float = 1) -> Self:
        """Add another sum so many times."""
        for variable, each in other.terms.items():
            self.add(variable, each * factor)
        return self

    def copy(self) -> "Linear":
        """Return the same sum, to be changed by itself."""
        return Linear().plus(self)

    def times(self, factor: float) -> "Linear":
        """Return a multiple."""
        return Linear().plus(self, factor)

    def value(self, values: list[float]) -> float:
        """Return what it comes to."""
        return sum(values[variable] * factor for variable, factor in self.terms.items())


class Program:
    """Variables from 0 up and rows."""

    def __init__(self, presolve: tuple[str, ...] = ("choose", "off")) -> None:
        """Take the ways of presolve, each tried where the one before calls the problem infeasible."""
        self.presolve = presolve
        self.tops: list[float] = []
        self.whole: list[bool] = []
        self.rows: list[tuple[dict[int, float], float, float]] = []

    def var(self, top: float = 1, *, whole: bool = True) -> int:
        """Return a new variable from 0 to ``top``."""
        self.tops.append(top)
        self.whole.append(whole)
        return len(self.tops) - 1

    def top(self, variable: int | None) -> float:
        """Return the most a variable can be."""
        return 0 if variable is None else self.tops[variable]

    def cap(self, variable: int, top: float) -> None:
        """Lower the most a variable can be."""
        self.tops[variable] = min(self.tops[variable], top)

    def at_most(self, row: Linear, limit: float) -> None:
        """Hold a sum from above."""
        self.rows.append((row.terms, -highspy.kHighsInf, limit))

    def at_least(self, row: Linear, limit: float) -> None:
        """Hold a sum from below."""
        self.rows.append((row.terms, limit, highspy.kHighsInf))

    def equal(self, row: Linear, value: float) -> None:
        """Hold a sum."""
        self.rows.append((row.terms, value, value))

    def by_levels(self, levels: list[Linear], seconds: float) -> tuple[list[float], Objective | None]:
        """Minimise the levels in order, each held while the next is sought; without an objective when time ran out."""
        until = time.monotonic() + seconds
        highs = self._loaded()
        values: list[float] = []
        found: list[int] = []
        for level in levels:
            if not values or level.value(values) > EXACT:
                solved = self._minimise(highs, level, until - time.monotonic(), first=not values)
                if solved is None:
                    return [], None
                values = solved
            found.append(int(level.value(values) + SLACK))
            if level.terms:
                terms = level.terms
                highs.addRow(-highspy.kHighsInf, found[-1] + SLACK, len(terms), list(terms), list(terms.values()))
        return values, tuple(found)

    def _loaded(self) -> highspy.Highs:
        highs: highspy.Highs = highspy.Highs()  # type: ignore[no-untyped-call]  # its own stub lacks the type
        for option, value in (
            ("output_flag", False), ("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", GAP),
            ("mip_feasibility_tolerance", EXACT), ("primal_feasibility_tolerance", EXACT),
        ):
            highs.setOptionValue(option, value)
        program = highspy.HighsLp()
        program.num_col_, program.num_row_ = len(self.tops), len(self.rows)
        program.col_cost_ = [0.0] * len(self.tops)
        program.col_lower_ = [0.0] * len(self.tops)
        program.col_upper_ = self.tops
        kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
        program.integrality_ = [kinds[whole] for whole in self.whole]
        program.row_lower_ = [low for _, low, _ in self.rows]
        program.row_upper_ = [high for _, _, high in self.rows]
        matrix = program.a_matrix_
        matrix.format_ = highspy.MatrixFormat.kRowwise
        starts, index, factors = [0], list[int](), list[float]()
        for terms, _, _ in self.rows:
            index.extend(terms)
            factors.extend(terms.values())
            starts.append(len(index))
        matrix.start_, matrix.index_, matrix.value_ = starts, index, factors
        highs.passModel(program)
        return highs

    def _minimise(self, highs: highspy.Highs, level: Linear, seconds: float, *, first: bool) -> list[float] | None:
        """Return a best solution for one level, or None where HiGHS found none in time.

        No start is handed over: HiGHS 1.16 gave back the start as optimal though its own bound was lower. It was also
        seen to call feasible problems infeasible after presolve, so that is believed only if it says so without
        presolve too, and only of the first level, as each later one has the solution of the level before.
        """
        count = len(self.tops)
        costs = [0.0] * count
        for variable, factor in level.terms.items():
            costs[variable] = factor
        highs.changeColsCost(count, list(range(count)), costs)
        until = time.monotonic() + seconds
        for presolve in self.presolve:
            left = until - time.monotonic()
            if left <= 0:
                return None
            highs.setOptionValue("presolve", presolve)
            highs.setOptionValue("time_limit", left)
            highs.run()
            status = highs.getModelStatus()
            if status == highspy.HighsModelStatus.kOptimal:
                return list(highs.getSolution().col_value)
            if status != highspy.HighsModelStatus.kInfeasible:
                return None
        if first:
            raise Infeasible
        return None
