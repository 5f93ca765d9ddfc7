"""Continuous current a copper conductor may carry: published tables, their factors, and the heat balance.

The direct-current figure is the lower of the free-air table with every factor applied and
of the steady heat balance; the pieces come back with it so that the working can be shown.
Capacity never exceeds the published cell: no credit is taken for air below 30 °C.
Cables of mains circuits have a module of their own, `installed_capacity`.
"""

from __future__ import annotations

import math
from functools import cache
from typing import NamedTuple

from checker.outofrange import OutOfRange, require
from checker.physics.heat_balance import SOURCE as HEAT_SOURCE
from checker.physics.heat_balance import heat_balance_current
from checker.physics.interpolation import linear, log_log, nearest_key
from checker.physics.tables import table

FREE_AIR = "carrying_capacity_free_air"
SMALL_CORD = "carrying_capacity_small_cord"
BASE_C = 30.0  # both tables: ambient they are made for
ENGINE_SPACE_C = 50.0  # 33 CFR 183.425 Table 5 note 1 [seen]
INSULATION_CLASSES_C = (60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0)
FIRST_AREA_M2 = 0.823e-6  # 18 AWG, where the free-air table begins
SAME_GAUGE = 5e-3  # relative: gauge areas are printed to two or three digits
SQUARE_ROOT_SOURCE = "square-root rule, heat in proportion to current squared"
ENCLOSED_FACTOR = 0.79  # least ratio of method B1 to E in IEC 60364-5-52, two loaded conductors, cut down
ONE_SIDE_FACTOR = 0.70  # least ratio of method A1 to C in IEC 60364-5-52, two loaded conductors, cut down
IN_INSULATION = ("none", "one side", "surrounded")


class Factor(NamedTuple):
    """A factor on a tabulated capacity, with where it comes from."""

    name: str
    value: float
    source: str


class Capacity(NamedTuple):
    """What a conductor can carry and how the number came about.

    ``current_a`` is the capacity to use: the lower of ``corrected_a`` (``table_a`` times all
    factors) and ``heat_balance_a`` (its own factor for insulation included). ``governing`` says which.
    """

    current_a: float
    governing: str
    table_a: float
    factors: tuple[Factor, ...]
    corrected_a: float
    heat_balance_a: float
    insulation_class_c: float
    source: str
    heat_balance_source: str


def insulation_class(insulation_c: float) -> float:
    """Temperature class of the free-air table for an insulation: the next class not above it. [°C]

    Raises
    ------
    OutOfRange : the insulation is rated below 60 or above 200 °C.
    """
    require(
        "insulation temperature rating, °C,",
        insulation_c,
        INSULATION_CLASSES_C[0],
        INSULATION_CLASSES_C[-1],
        table(FREE_AIR).source,
    )
    return max(rating for rating in INSULATION_CLASSES_C if rating <= insulation_c)


def free_air_capacity(area_m2: float, insulation_c: float) -> float:
    """Tabulated current of one copper conductor in free air at 30 °C. [A]

    The gauge rows stand at their true metal areas, and an area within half a per cent of one is that
    gauge; a size between two rows is taken on the straight line between them on log-log paper, so it
    stays at or below the next larger row.
    From 0.5 mm2 up to 18 AWG the table of small flexible cords serves, row at or below.

    Parameters
    ----------
    area_m2 : nominal cross-section. [m2]
    insulation_c : temperature rating of the insulation; the next lower class is used. [°C]

    Valid for
    ---------
    0.5 to 107.2 mm2 (4/0 AWG), insulation 60 to 200 °C, ambient 30 °C, up to two conductors together.

    Source
    ------
    33 CFR 183.425 Table 5 [seen]; below 18 AWG, BS 7671 table 4F3A [from memory].
    """
    column = _free_air_column(insulation_class(insulation_c))
    size_m2 = nearest_key(area_m2, column, SAME_GAUGE)
    if size_m2 < FIRST_AREA_M2:
        return _small_cord(size_m2)
    return log_log("conductor area, m2,", size_m2, column, table(FREE_AIR).source)


def free_air_source(area_m2: float) -> str:
    """Document behind `free_air_capacity` for an area, ready to print."""
    size_m2 = nearest_key(area_m2, _free_air_column(INSULATION_CLASSES_C[0]), SAME_GAUGE)
    return table(SMALL_CORD if size_m2 < FIRST_AREA_M2 else FREE_AIR).source


def square_root_factor(limit_c: float, ambient_c: float, base_c: float) -> float:
    """Capacity at an ambient temperature over capacity at the temperature of the table. [1]

    ``sqrt((T_limit - T_ambient) / (T_limit - T_base))``; above 1 in cooler air.

    Parameters
    ----------
    limit_c : temperature the conductor may reach. [°C]
    ambient_c : temperature of the air. [°C]
    base_c : ambient temperature of the table, below the limit. [°C]

    Valid for
    ---------
    -60 °C up to the limit. Within 0.01 of the published tables (PVC and XLPE, base 30 °C).

    Source
    ------
    Heat in proportion to the square of the current and to the rise above the air.
    """
    require("base temperature, °C,", base_c, -60.0, math.nextafter(limit_c, -math.inf), SQUARE_ROOT_SOURCE)
    require("ambient temperature, °C,", ambient_c, -60.0, limit_c, SQUARE_ROOT_SOURCE)
    return math.sqrt((limit_c - ambient_c) / (limit_c - base_c))


def engine_space_factor(insulation_c: float) -> float:
    """Factor for a conductor in an engine space, taken as 50 °C. [1]

    By class of insulation, the next lower class. Source: 33 CFR 183.425 Table 5 note 1. [seen]
    """
    return dict(table("engine_space_factor").pairs("insulation_c", "factor"))[insulation_class(insulation_c)]


def ambient_factor(insulation_c: float, ambient_c: float) -> float:
    """Factor on the free-air table for warm air; never above 1. [1]

    The square-root rule from 30 °C, held at or below the published engine-space factor from 50 °C up.

    Parameters
    ----------
    insulation_c : temperature rating of the insulation; the next lower class is used. [°C]
    ambient_c : temperature of the air around the conductor. [°C]

    Valid for
    ---------
    -60 °C up to the class of the insulation. Below 30 °C the factor is 1: no credit for cold.

    Source
    ------
    Square-root rule; 33 CFR 183.425 Table 5 note 1. [seen]
    """
    limit_c = insulation_class(insulation_c)
    factor = min(1.0, square_root_factor(limit_c, ambient_c, BASE_C))
    if ambient_c >= ENGINE_SPACE_C:
        factor = min(factor, engine_space_factor(limit_c))
    return factor


def bunch_factor(live_conductors: int) -> float:
    """Factor on the free-air table for live conductors bundled together. [1]

    Applied at every voltage: the law asks for it from 50 V, the heat is the same below.
    Source: 33 CFR 183.425 Table 5 note 2 with 183.435(b). [seen]
    """
    return _by_count("bundle_factor", live_conductors)


def conductor_count_factor(live_conductors: int) -> float:
    """Factor for current-carrying conductors in one raceway or cable. [1]

    Source: NFPA 70 310.15(B) as adopted in a state residential code. [seen]
    """
    return _by_count("conductor_count_factor", live_conductors)


def thermal_insulation_factor(in_insulation: str | bool) -> Factor:
    """Factor for a run of half a metre or more against or within thermal insulation. [1]

    Parameters
    ----------
    in_insulation : 'none' (False), 'one side' or 'surrounded' (True).

    Source
    ------
    Surrounded: 0.5, BS 7671 523.9 [from memory]. One side: 0.70, the least ratio of method A1 to
    method C among the two-conductor tables of IEC 60364-5-52, a practice and not a clause.
    """
    word = in_insulation
    if isinstance(word, bool):
        word = "surrounded" if word else "none"
    if word == "none":
        return Factor("thermal insulation", 1.0, "not in thermal insulation")
    if word == "one side":
        return Factor(
            "thermal insulation", ONE_SIDE_FACTOR, "common practice: ratio of method A1 to C, IEC 60364-5-52 [by row]"
        )
    if word == "surrounded":
        return Factor("thermal insulation", 0.5, table("thermal_insulation_factor").source)
    raise OutOfRange("thermal insulation", word, ", ".join(IN_INSULATION), "carrying capacity")


def insulated_length_factor(length_m: float) -> float:
    """Factor for a length wholly surrounded by thermal insulation. [1]

    Straight line between the rows from no length (factor 1); 0.5 from half a metre on.
    Source: BS 7671 table 52.2 and 523.9. [from memory]
    """
    published = table("thermal_insulation_factor")
    require("length in thermal insulation, m,", length_m, 0.0, math.inf, published.source)
    pairs = ((0.0, 1.0), *published.pairs("length_m", "factor"))
    if length_m >= pairs[-1][0]:
        return pairs[-1][1]
    return linear("length in thermal insulation, m,", length_m, pairs, published.source)


def required_table_current(current_a: float, factor: float) -> float:
    """Tabulated capacity a cable needs so that, times the factor, it carries a current. [A]

    ``I_table = I / factor``, factor above 0.
    """
    require("derating factor", factor, math.nextafter(0.0, 1.0), math.inf, "definition of a derating factor")
    return current_a / factor


def derated_capacity(table_a: float, *factors: float) -> float:
    """Tabulated capacity times all factors, one after the other. [A]"""
    return table_a * math.prod(factors)


def dc_carrying_capacity(
    area_m2: float,
    insulation_c: float,
    ambient_c: float,
    bunched: int,
    in_insulation: str | bool,
    enclosed: bool = False,
) -> Capacity:
    """Current a single-core copper conductor may carry for ever, with the working. [A]

    ``I = min(I_table * k_ambient * k_bunch * k_insulation, I_heat_balance * k_insulation)``; in conduit no more than
    ``k_conduit`` times what it carries alone in free air.

    Parameters
    ----------
    area_m2 : nominal cross-section of one conductor. [m2]
    insulation_c : temperature rating of the insulation; the next lower class is used. [°C]
    ambient_c : highest temperature of the air around the conductor. [°C]
    bunched : number of live conductors in the same bundle, this one included. [1]
    in_insulation : 'none' (False), 'one side' or 'surrounded' (True), the worst place of the run.
    enclosed : whether it lies in conduit, tube or a duct.

    Valid for
    ---------
    0.5 to 107.2 mm2, insulation classes 60 to 200 °C, ambient -40 °C to the class.
    Terminals, fuse holders and connectors are not included: they may set a lower limit.

    Source
    ------
    33 CFR 183.425 Table 5 and its notes [seen]; heat balance by Churchill and Chu (1975) [from memory].
    """
    limit_c = insulation_class(insulation_c)
    published_a = free_air_capacity(area_m2, limit_c)
    ambient = Factor("ambient", ambient_factor(limit_c, ambient_c), _ambient_source(ambient_c))
    around = thermal_insulation_factor(in_insulation)
    bunch = Factor("bunch", bunch_factor(bunched), table("bundle_factor").source)
    beside: tuple[Factor, ...] = (bunch, around)
    balance_a = around.value * heat_balance_current(area_m2, limit_c, ambient_c, bunched)
    if enclosed:
        # The factors for bunches are those of a raceway already: conduit counts where it is the worse of the two.
        conduit = Factor(
            "conduit", ENCLOSED_FACTOR, "common practice: ratio of method B1 to E, IEC 60364-5-52 [by row]"
        )
        beside = (conduit,) if bunch.value * around.value > ENCLOSED_FACTOR else beside
        alone_a = heat_balance_current(area_m2, limit_c, ambient_c, min(bunched, 2))
        balance_a = min(balance_a, ENCLOSED_FACTOR * alone_a)
    factors = (ambient, *beside)
    corrected_a = derated_capacity(published_a, *(factor.value for factor in factors))
    governing = "table" if corrected_a <= balance_a else "heat balance"
    return Capacity(
        min(corrected_a, balance_a),
        governing,
        published_a,
        factors,
        corrected_a,
        balance_a,
        limit_c,
        free_air_source(area_m2),
        HEAT_SOURCE,
    )


def _ambient_source(ambient_c: float) -> str:
    if ambient_c <= BASE_C:
        return "table made for 30 °C; no credit for cooler air"
    if ambient_c < ENGINE_SPACE_C:
        return SQUARE_ROOT_SOURCE
    return f"{SQUARE_ROOT_SOURCE}, at most the engine-space factor of {table('engine_space_factor').source}"


def _small_cord(area_m2: float) -> float:
    cord = table(SMALL_CORD)
    pairs = cord.pairs("area_mm2", "current_a", -6)
    size_m2 = nearest_key(area_m2, pairs, SAME_GAUGE)
    fitting = [current_a for row_m2, current_a in pairs if row_m2 <= size_m2]
    if not fitting:
        raise OutOfRange("conductor area, m2,", area_m2, (pairs[0][0], FIRST_AREA_M2), cord.source)
    return fitting[-1]


def _by_count(name: str, live_conductors: int) -> float:
    published = table(name)
    require("number of live conductors", live_conductors, 1, math.inf, published.source)
    for row in published.rows:
        if not row["to"] or live_conductors <= float(row["to"]):
            return float(row["factor"])
    raise AssertionError(f"last row of {name} must be open")


@cache
def _free_air_column(rating_c: float) -> tuple[tuple[float, float], ...]:
    return table(FREE_AIR).pairs("area_mm2", f"insulation_{rating_c:g}", -6)
