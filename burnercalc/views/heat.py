"""What is shown in the room Heat: one function a table or chart, named <key>_table or <key>_chart."""

from math import ceil

from ..parts.aspirated import Aspirated
from ..parts.chamber import Chamber
from ..parts.firing import Firing
from ..parts.flame import Flame, burn
from ..parts.gas import Gas
from ..parts.mixture import Mixture
from ..parts.reached import Reached, into_work_W, walls_K
from ..parts.shop import Shop
from ..parts.zone import Zone, gas_zones
from ..physics import combustion, linings
from ..physics.chamber import LEAST_AVAILABLE, heat_balance
from ..physics.gas_zone import rate_to_hold
from ..physics.gas_zone import reached as temp_reached
from ..physics.walls import steady_profile
from ..tables import read_table
from .view import Plot, Say

RATIOS = tuple(0.5 + 0.05 * n for n in range(23))
LOWEST_K, HIGHEST_K = 478.15, 2033.15  # range of chamber_temperature
CHAMBER_TEMPS_K = tuple(LOWEST_K + (HIGHEST_K - LOWEST_K) * n / 24 for n in range(25))
RATE_SHARES = (0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.65, 0.8, 1.0, 1.25, 1.5)  # of the rate installed
LEAST_SHOWN = 1e-6  # mole fraction below which the table leaves a species out


def flue_gas_table(flame: Flame, say: Say) -> tuple:
    if flame.flue is None:
        return ()
    dry = dict(flame.flue.dry)
    most_first = sorted(flame.flue.wet, key=lambda pair: -pair[1])
    return tuple((say(name), wet, dry.get(name)) for name, wet in most_first if wet >= LEAST_SHOWN)


def lining_layers_table(chamber: Chamber, lining: tuple[tuple[str, float], ...], units: str) -> tuple:
    temps = chamber.layer_temps_K
    return tuple(
        (n + 1, linings.material_name(key, units), thickness, temps[n], temps[n + 1], chamber.layer_limits_K[n])
        for n, (key, thickness) in enumerate(lining)
    )


def _balance(chamber, firing, flame, reached):
    """{place: watt} of all burners while the chamber works; empty where there is no flame."""
    if flame.available is None:
        return {}
    # A flame no hotter than the walls leaves at their temperature.
    kept = reached.kept.value if reached.kept else flame.available
    return dict(heat_balance(chamber.heat, firing.installed_W, kept))


def heat_balance_table(chamber: Chamber, firing: Firing, flame: Flame, reached: Reached, say: Say) -> tuple:
    balance = _balance(chamber, firing, flame, reached)
    return tuple((say(place), watt, watt / firing.installed_W) for place, watt in balance.items())


def burner_kinds_table(
    chamber: Chamber,
    gas: Gas,
    shop: Shop,
    aspirated: Aspirated,
    lining: tuple[tuple[str, float], ...],
    opening_area: float,
    opening_depth: float,
    chamber_temperature: float,
    aspirated_excess_air: float,
    blown_excess_air: float,
    multi_port_excess_air: float,
    aspirated_pressure: float,
    say: Say,
) -> tuple:
    excess_air = {
        "aspirated": aspirated_excess_air,
        "blown_single": blown_excess_air,
        "blown_multi_port": multi_port_excess_air,
    }
    rows = []
    for kind in read_table("burner_kinds"):
        key, excess = kind["key"], excess_air[kind["key"]]
        zones = gas_zones(chamber, gas, shop, lining, opening_area, opening_depth, 1 / (1 + excess))
        working = rate_to_hold(zones[1], chamber_temperature, chamber.work_heat_W) if zones else None
        supply = say(
            f"{key}.gas_supply",
            low=1e3 * kind["gas_low_kPa"],
            high=1e3 * kind["gas_high_kPa"],
            pressure=aspirated_pressure,
            ratio=aspirated.equivalence_ratio,
        )
        rows.append(
            (
                say(f"{key}.kind"),
                excess,
                working and working.available_fraction,
                working and working.firing_rate_W,
                working and combustion.gas_flow_kg_s(gas.composition, working.firing_rate_W),
                supply,
                say("mains", mains=kind["mains_power_W"]) if kind["mains_power_W"] else say("no_mains"),
                say(f"{key}.wears"),
                say("turndown", turndown=kind["turndown"]),
                say(f"{key}.power_cut"),
            )
        )
    return tuple(rows)


def _by_ratio(gas, shop, chamber_temp_K, what):
    """Ratios and values of one figure of the flame over RATIOS, those without a flame left out."""
    found = [(ratio, burn(gas, shop, ratio, chamber_temp_K)) for ratio in RATIOS]
    pairs = [(ratio, getattr(flame, what)) for ratio, flame in found if flame.temp_K is not None]
    return tuple(zip(*pairs))


def _mark(x, y):
    return () if y is None else (x, y)


def flame_by_ratio_chart(
    gas: Gas, shop: Shop, flame: Flame, equivalence_ratio: float, chamber_temperature: float
) -> Plot:
    ratios, temps = _by_ratio(gas, shop, chamber_temperature, "temp_K")
    hottest, at = max(zip(temps, ratios))
    return Plot(
        x=(RATIOS[0], RATIOS[-1]),
        y=(50 * (min(temps) // 50), 50 * ceil(hottest / 50)),
        series={"flame": (ratios, temps)},
        mark=_mark(equivalence_ratio, flame.temp_K),
        slots={"ratio": at, "hottest": hottest},
    )


def flue_by_ratio_chart(
    gas: Gas, shop: Shop, flame: Flame, mixture: Mixture, equivalence_ratio: float, chamber_temperature: float
) -> Plot:
    ratios, co = _by_ratio(gas, shop, chamber_temperature, "co_dry")
    _, o2 = _by_ratio(gas, shop, chamber_temperature, "o2_dry")
    rich = mixture.atmosphere.case == "reducing"
    return Plot(
        x=(RATIOS[0], RATIOS[-1]),
        y=(0, max(*co, *o2) * 1.05),
        series={"co": (ratios, co), "o2": (ratios, o2)},
        mark=_mark(equivalence_ratio, flame.co_dry if rich else flame.o2_dry),
    )


def available_by_temperature_chart(
    gas: Gas, shop: Shop, flame: Flame, equivalence_ratio: float, chamber_temperature: float
) -> Plot:
    flames = [(temp, burn(gas, shop, equivalence_ratio, temp).available) for temp in CHAMBER_TEMPS_K]
    temps, shares = zip(*((temp, share) for temp, share in flames if share is not None))
    reach = next((temp for temp, share in zip(temps, shares) if share <= LEAST_AVAILABLE), None)
    return Plot(
        x=(LOWEST_K, HIGHEST_K),
        y=(min(0.0, *shares), 1.0),
        series={"available": (temps, shares)},
        mark=_mark(chamber_temperature, flame.available),
        case="shows" if reach is None else "reach",
        slots={"reach": reach},
    )


def wall_profile_chart(
    chamber: Chamber,
    lining: tuple[tuple[str, float], ...],
    heat_up_time: float,
    ambient_temperature: float,
    chamber_temperature: float,
) -> Plot:
    layers = tuple((linings.material(key), thickness) for key, thickness in lining)
    depths, temps = steady_profile(chamber.walls, layers, chamber.heat.wall)
    warm = chamber.heat.heat_up
    return Plot(
        x=(0.0, depths[-1]),
        y=(ambient_temperature, chamber_temperature + 20),
        series={"heat_up": (warm.depths_m, warm.temps_K), "steady": (depths, temps)},
        slots={"time": heat_up_time, "warm": warm.temps_K[-1], "shell": chamber.shell_temp_K},
    )


def heat_balance_chart(chamber: Chamber, firing: Firing, flame: Flame, reached: Reached) -> Plot:
    balance = _balance(chamber, firing, flame, reached)
    watts, x = tuple(balance.values()), (0.4, 5.6)
    if not watts:
        return Plot(
            x, (0.0, firing.installed_W), {"heat": ((), ())}, case="no_flame", slots={"installed": firing.installed_W}
        )
    spare = balance["spare"]
    return Plot(
        x,
        y=(min(0.0, *watts) * 1.1, max(watts) * 1.1),
        series={"heat": (tuple(range(1, len(watts) + 1)), watts)},
        case="spare" if spare >= 0 else "missing",
        slots={"installed": firing.installed_W, "flue": balance["flue"], "spare": spare, "missing": -spare},
    )


def reached_by_rate_chart(
    zone: Zone,
    firing: Firing,
    shop: Shop,
    reached: Reached,
    work_metal: str,
    work_rate: float,
    work_temperature: float,
    chamber_temperature: float,
) -> Plot:
    """Rates a fixed share of that installed apart; on the mark the middle of the empty chamber at high fire."""
    rates = tuple(share * firing.installed_W for share in RATE_SHARES)
    if not zone.zones:
        nothing: dict[str, tuple] = {"empty_band": ((), (), ()), "empty": ((), ()), "work": ((), ())}
        return Plot((0.0, rates[-1]), (shop.temp_K, chamber_temperature), nothing, case="no_flame")
    work_W = into_work_W(work_metal, work_rate, work_temperature, shop)
    empty = [walls_K(zone, rate) for rate in rates]
    work = tuple(temp_reached(zone.zones[1], rate, work_W).wall_temp_K for rate in rates)
    lows, middles, highs = zip(*empty)
    return Plot(
        x=(0.0, rates[-1]),
        y=(shop.temp_K, 1.03 * max(highs)),
        series={"empty_band": (rates, lows, highs), "empty": (rates, middles), "work": (rates, work)},
        mark=(firing.installed_W, reached.high_empty_K.value),
        case="shows" if work_rate else "empty",
        slots={
            "installed": firing.installed_W,
            "empty": reached.high_empty_K.value,
            "low": reached.high_empty_K.low,
            "high": reached.high_empty_K.high,
            "work": reached.high_work_K.value,
        },
    )
