"""The cylinders, or the tank: what they can give, and how long; and what an hour of high fire costs."""

from dataclasses import dataclass, replace
from functools import lru_cache

from ..physics import cylinder as physics
from ..physics.band import Band
from ..physics.lp_blend import blend_density_kg_m3, boiled_down, bubble_pressure_Pa, bubble_temp_K, vapour
from ..physics.lp_liquid import liquid_density_kg_m3
from .blend import NEAR_EMPTY, drawn
from .firing import Firing
from .gas import Gas
from .gas_line import GasLine
from .gas_price import GasPrice
from .pilot import Pilot
from .shop import Shop
from .tries import LEAST_REGULATOR_PA

DRAW_BAND = (0.9, 1.1)  # of the coefficient fitted to the table
# Times the gas pressure before the jet, that a regulator needs: a fifth for hose and valves, a fifth that it droops by
# with less. Common practice.
FEEDS = 1.5


@dataclass(frozen=True)
class Cylinders:
    """All None for gas that comes by a line, but of a blend what its tank makes of it, full and near empty. A run ends
    where they are `changed`, at the latest.

    `draw_W`: what they keep up at this fill without chilling further.

    `left_share`: of a full charge, at the end of the run; `full_run_s`, `full_left_share`: of a run from full;
    `least_Pa`: gauge pressure that they must hold, `jet_Pa` the part of it that the jet asks for, `has_Pa` what they
    hold in the shop's air while nothing is drawn; `eased_run_s`: as full_run_s, where they hold less than the regulator
    or the jet needs, by what the other of the two needs. Near empty is what is left at the end, 5 % at least;
    `coldest_K`: air in which they still hold that pressure when nothing is drawn, `boils_K`: the least that any
    regulator can use.
    `first_ratio`, `last_ratio`, `last_rate_W`: mixture and rate at this fill and near empty, with jet, gas pressure and
    air as set for the mean of the charge; None for a pure gas.
    """

    full_kg: float | None  # the full charge of one, of a heavier blend as much by volume as of propane
    draw_W: Band | None
    last_draw_W: Band | None
    coldest_K: float | None
    boils_K: float | None
    holds_kg: float | None  # what they give until the run ends
    last_coldest_K: float | None
    first_ratio: float | None
    last_ratio: float | None
    last_rate_W: float | None
    run_s: float | None
    ended_by: str | None
    frost_s: float | None
    left_share: float | None
    full_run_s: float | None
    full_left_share: float | None
    has_Pa: float | None
    eased_run_s: float | None
    jet_Pa: float
    least_Pa: float
    fuel_cost_per_hour: float


@lru_cache(maxsize=256)
def _run(vessel, liquid_kg, liquid, air_temp_K, inlet_Pa, draw_W, heating_J_kg, changed_kg):
    """Steady, so that what is drawn till it is changed goes with the time."""
    run = physics.run_down(vessel, liquid_kg, liquid, air_temp_K, inlet_Pa, draw_W, heating_J_kg, 100)
    if run.left_kg >= changed_kg:
        return run
    end_s = run.run_time_s * (liquid_kg - changed_kg) / (liquid_kg - run.left_kg)
    frost_s = None if run.frost_time_s is None or run.frost_time_s > end_s else run.frost_time_s
    return replace(run, run_time_s=end_s, ended_by="changed", frost_time_s=frost_s, left_kg=changed_kg)


def _of_blend(gas, first, last, shop, equivalence_ratio, firing):
    """What a blend comes to as it boils off; None of a pure gas."""
    if len(gas.liquid) == 1:
        return dict.fromkeys(("first_ratio", "last_ratio", "last_rate_W"))
    first, last = (drawn(vapour(liquid, shop.temp_K), gas.composition) for liquid in (first, last))
    return {
        "first_ratio": equivalence_ratio * first.ratio_times,
        "last_ratio": equivalence_ratio * last.ratio_times,
        "last_rate_W": firing.rate_W * last.rate_times,
    }


def cylinders(
    cylinder: str,
    cylinder_count: int,
    cylinder_fill: float,
    cylinder_left: float,
    tank_diameter: float,
    tank_length: float,
    regulator_inlet_pressure: float,
    gas_pressure: float,
    equivalence_ratio: float,
    burner_count: int,
    gas: Gas,
    gas_line: GasLine,
    gas_price: GasPrice,
    shop: Shop,
    firing: Firing,
    pilot: Pilot,
) -> Cylinders:
    """Below full, what is left of a blend is what boiled down to it in the shop's air."""
    # All burners of a chamber draw from the same cylinders.
    cost = (firing.gas_kg_s + pilot.gas_kg_s) * burner_count * 3600 * gas_price.per_kg
    jet_Pa = FEEDS * gas_pressure
    least_Pa = max(regulator_inlet_pressure, jet_Pa)
    if gas_line.there:
        none = Cylinders(*[None] * 18, jet_Pa=jet_Pa, least_Pa=least_Pa, fuel_cost_per_hour=cost)
        if gas.liquid is None:
            return none
        last = boiled_down(gas.liquid, shop.temp_K, NEAR_EMPTY)
        return replace(none, **_of_blend(gas, gas.liquid, last, shop, equivalence_ratio, firing))
    vessel = (
        physics.lying_tank(tank_diameter, tank_length)
        if cylinder == "tank"
        else physics.upright_cylinder(f"{cylinder} lb")
    )
    inlet_Pa, burns_W = shop.pressure_Pa + least_Pa, firing.installed_W + pilot.all_W
    first = boiled_down(gas.liquid, shop.temp_K, cylinder_fill)

    def run_from(liquid, share, inlet_Pa=inlet_Pa):
        each_W = burns_W / cylinder_count
        full_kg = vessel.capacity_kg
        changed_kg = full_kg * cylinder_left
        return _run(vessel, full_kg * share, liquid, shop.temp_K, inlet_Pa, each_W, gas.gross_J_kg, changed_kg)

    run, full = run_from(first, cylinder_fill), run_from(gas.liquid, 1.0)
    other_Pa = shop.pressure_Pa + min(regulator_inlet_pressure, jet_Pa)
    left_share = run.left_kg / vessel.capacity_kg
    near_empty = min(max(left_share, NEAR_EMPTY), cylinder_fill)
    last = boiled_down(gas.liquid, shop.temp_K, near_empty)

    def draw(liquid, share):
        each = physics.draw_limit_W(vessel, vessel.capacity_kg * share, liquid, shop.temp_K, inlet_Pa, gas.gross_J_kg)
        return Band(*(factor * each * cylinder_count for factor in (DRAW_BAND[0], 1, DRAW_BAND[1])))

    return Cylinders(
        full_kg=vessel.capacity_kg
        * max(blend_density_kg_m3(gas.liquid, shop.temp_K) / liquid_density_kg_m3("C3H8", shop.temp_K), 1.0),
        draw_W=draw(first, cylinder_fill),
        last_draw_W=draw(last, near_empty),
        coldest_K=bubble_temp_K(first, inlet_Pa),
        boils_K=bubble_temp_K(first, shop.pressure_Pa + LEAST_REGULATOR_PA),
        holds_kg=run.run_time_s * burns_W / gas.gross_J_kg,
        last_coldest_K=bubble_temp_K(last, inlet_Pa),
        **_of_blend(gas, first, last, shop, equivalence_ratio, firing),
        run_s=run.run_time_s,
        ended_by=run.ended_by,
        frost_s=run.frost_time_s,
        left_share=left_share,
        full_run_s=full.run_time_s,
        full_left_share=full.left_kg / vessel.capacity_kg,
        has_Pa=bubble_pressure_Pa(first, shop.temp_K) - shop.pressure_Pa,
        eased_run_s=run_from(gas.liquid, 1.0, other_Pa).run_time_s if run.run_time_s == 0 else None,
        jet_Pa=jet_Pa,
        least_Pa=least_Pa,
        fuel_cost_per_hour=cost,
    )
