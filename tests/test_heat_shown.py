"""Tables and charts of the room Heat, against sums worked out here and the tables of other programs."""

from dataclasses import replace
from itertools import pairwise
from math import pi, sqrt

import cantera as ct
import pytest
from rows import rows
from test_heat import BTU_H, solved

from burnercalc import catalogue
from burnercalc.parts.flame import Flame
from burnercalc.parts.zone import gas_zones
from burnercalc.physics.band import Band
from burnercalc.physics.gas_zone import rate_to_hold
from burnercalc.views import CHARTS, TABLES
from burnercalc.views.view import Say

NO_FLAME = Flame(*[None] * 6)
KINDS = ["naturally aspirated single flame", "blown single flame", "blown multi-port"]
LEAN = {"equivalence_ratio": "0.5", "chamber_temperature": "2350 degF"}


def shown(r, views, key, **given):
    """What a view hands over for a design of which some parts are given."""
    if views is TABLES:
        given["say"] = Say(catalogue.TABLES[key].words, r.design.units)
    return r.parts.call(views[key], **given)


def test_flue_gas_names_all_that_is_more_than_a_trace_most_first():
    """Equilibrium at 1700 K of propane and air, 0.2095 O2, by cantera."""
    gas = ct.Solution("gri30.yaml")
    gas.set_equivalence_ratio(0.9, "C3H8", "O2:0.2095,N2:0.7905")
    gas.TP = 1700, 101325
    gas.equilibrate("TP")
    names = {"nitrogen": "N2", "carbon dioxide": "CO2", "water vapour": "H2O", "oxygen": "O2", "nitric oxide": "NO"}
    names |= {"carbon monoxide": "CO", "hydrogen": "H2", "hydroxyl": "OH", "atomic oxygen": "O"}
    found = solved(equivalence_ratio="0.9").tables["flue_gas"].rows
    assert [wet for _, wet, _ in found] == sorted((wet for _, wet, _ in found), reverse=True)
    assert set(names) >= {name for name, _, _ in found} >= set(list(names)[:6])
    for name, wet, dry in found:
        expected = gas[names[name]].X[0]
        assert wet == pytest.approx(expected, rel=0.02) and wet >= 1e-6
        if name == "water vapour":
            assert dry is None
        else:
            assert dry == pytest.approx(expected / (1 - gas["H2O"].X[0]), rel=0.02)
    assert sum(wet for _, wet, _ in found) == pytest.approx(1, abs=1e-5)


def test_traces_are_left_out():
    flue = replace(solved().part("flame").flue, wet=(("CO2", 1e-6), ("CH4", 0.99e-6), ("N2", 0.9)), dry=(("N2", 1.0),))
    flame = replace(solved().part("flame"), flue=flue)
    assert shown(solved(), TABLES, "flue_gas", flame=flame) == (("nitrogen", 0.9, 1.0), ("carbon dioxide", 1e-6, None))


def test_layers_descend_from_chamber_to_shell():
    r = solved(lining="dense_castable 1 in, ifb_23 1/2 in, blanket_8lb 2 in")
    table = r.tables["lining_layers"].rows
    # Service limits of the classes, degF.
    assert [(row[0], row[1], round(row[2] / 0.0254, 9), round(1.8 * row[5] - 459.67, 6)) for row in table] == [
        (1, "castable 60 %", 1, 3000),
        (2, "soft brick 23", 0.5, 2300),
        (3, "blanket 8 lb", 2, 2150),
    ]
    assert table[0][3] == r.design.chamber_temperature and table[-1][4] == r["shell_temperature"]
    assert all(row[3] > row[4] for row in table) and all(a[4] == b[3] for a, b in pairwise(table))


def test_heat_balance_by_hand():
    r = solved(burner_count="2")
    installed = 2e5 * BTU_H
    watts = {
        "flue": installed * (1 - r["heat_kept"]),
        "walls": r["wall_loss"],
        "opening": r["opening_loss"],
        "work": r["work_heat"],
    }
    watts["spare"] = installed - sum(watts.values())
    table, chart = r.tables["heat_balance"].rows, r.charts["heat_balance"]
    assert [place for place, _, _ in table] == list(watts) == [text for _, text in chart.declared.x.ticks]
    assert [watt for _, watt, _ in table] == pytest.approx(list(watts.values()))
    assert [share for _, _, share in table] == pytest.approx([watt / installed for watt in watts.values()])
    xs, ys = chart.plot.series["heat"]
    assert xs == (1, 2, 3, 4, 5) == tuple(n for n, _ in chart.declared.x.ticks)
    assert ys == pytest.approx(list(watts.values()))
    assert chart.plot.x == (0.4, 5.6) and chart.plot.mark == ()
    assert chart.plot.y == (0.0, pytest.approx(1.1 * max(watts.values())))


def test_heat_balance_tells_what_is_to_spare_and_what_is_missing():
    r = solved()
    need, half = r.part("need"), replace(r.part("reached"), kept=Band(0.4, 0.5, 0.6))
    chamber = r.part("chamber")
    losses = chamber.wall_loss_W + chamber.opening_loss_W + chamber.work_heat_W
    assert need.needed_W > losses
    for spare, case in ((300.0, "spare"), (0.0, "spare"), (-300.0, "missing")):
        fire = replace(r.part("firing"), installed_W=2 * (losses + spare))
        plot = shown(r, CHARTS, "heat_balance", firing=fire, reached=half)
        assert plot.case == case
        assert plot.slots["flue"] == pytest.approx(losses + spare) and plot.slots["installed"] == fire.installed_W
        assert plot.slots["spare"] == pytest.approx(spare, abs=1e-8) and plot.slots["missing"] == -plot.slots["spare"]
        assert plot.y == (pytest.approx(min(0.0, 1.1 * spare), abs=1e-8), pytest.approx(1.1 * (losses + spare)))
    assert solved(firing_rate="15 kBtu/h").charts["heat_balance"].sentence == (
        "Of 15 kBtu/h, 9.50 kBtu/h leaves with the flue gas; 6.90 kBtu/h is missing, so the chamber stays cooler than "
        "wanted."
    )


def test_heat_balance_without_a_flame():
    r = solved()
    plot = shown(r, CHARTS, "heat_balance", flame=NO_FLAME)
    assert plot.series == {"heat": ((), ())} and plot.case == "no_flame"
    assert plot.x == (0.4, 5.6) and plot.y == (0.0, 1e5 * BTU_H) and plot.slots == {"installed": plot.y[1]}
    assert shown(r, TABLES, "heat_balance", flame=NO_FLAME) == shown(r, TABLES, "flue_gas", flame=NO_FLAME) == ()


def test_flame_chart():
    r = solved(equivalence_ratio="1.1", ambient_temperature="77 degF")
    chart = r.charts["flame_by_ratio"]
    ratios, temps = chart.plot.series["flame"]
    assert ratios == pytest.approx([0.5 + 0.05 * n for n in range(23)])
    # 10 K: the table's air is a touch richer in oxygen.
    for row in rows("flames.csv"):
        if row["fuel"] == "propane" and row["inlet_temp_K"] == 298.15 and row["equivalence_ratio"] <= 1.6:
            n = min(range(23), key=lambda n: abs(ratios[n] - row["equivalence_ratio"]))
            if abs(ratios[n] - row["equivalence_ratio"]) < 1e-6:
                assert temps[n] == pytest.approx(row["flame_temp_K"], abs=10)
    assert chart.plot.mark == (1.1, r["flame_temperature"]) and chart.plot.x == pytest.approx((0.5, 1.6))
    low, high = chart.plot.y
    assert low % 50 == high % 50 == 0 and 0 <= min(temps) - low < 50 and 0 <= high - max(temps) < 50
    # Propane burns hottest a little rich, near 2270 K from 25 degC.
    assert chart.sentence.startswith("Hottest near 1.05, at 36")
    assert shown(r, CHARTS, "flame_by_ratio", flame=NO_FLAME).mark == ()


def test_flue_chart_of_a_chamber_at_1800_K():
    for ratio, answer in (("1.1", "flue_co_dry"), ("0.9", "flue_o2_dry"), ("1", "flue_o2_dry")):
        r = solved(equivalence_ratio=ratio, chamber_temperature="1526.85 degC", lining="mullite_brick 6 in")
        plot = r.charts["flue_by_ratio"].plot
        assert plot.mark == (float(ratio), r[answer])
    ratios, co = plot.series["co"]
    same, o2 = plot.series["o2"]
    assert ratios == same == pytest.approx([0.5 + 0.05 * n for n in range(23)])
    compared = 0
    for row in rows("flue.csv"):
        n = min(range(23), key=lambda n: abs(ratios[n] - row["equivalence_ratio"]))
        if row["fuel"] == "propane" and row["temp_K"] == 1800 and abs(ratios[n] - row["equivalence_ratio"]) < 1e-6:
            assert (100 * co[n], 100 * o2[n]) == pytest.approx((row["co_percent"], row["o2_percent"]), abs=0.05)
            compared += 1
    assert compared > 2
    assert plot.x == pytest.approx((0.5, 1.6)) and plot.y == (0, pytest.approx(1.05 * max(*co, *o2)))
    assert shown(r, CHARTS, "flue_by_ratio", flame=NO_FLAME).mark == ()


def test_available_heat_chart():
    r = solved(ambient_temperature="60 degF")
    chart = r.charts["available_by_temperature"]
    temps, shares = chart.plot.series["available"]
    # 400 to 3200 degF, the range of the setting.
    assert chart.plot.x == (temps[0], temps[-1]) == pytest.approx((477.6, 2033.15), abs=0.6) and len(temps) == 25
    assert temps[12] == pytest.approx((temps[0] + temps[-1]) / 2)
    table = [row for row in rows("available_heat.csv") if row["fuel"] == "propane" and row["excess_air_percent"] == 0]
    # 1 point up to 2000 degF; the table burns everything.
    for row in table:
        if row["flue_temp_F"] <= 2000:
            temp = (row["flue_temp_F"] - 32) / 1.8 + 273.15
            n = next(n for n in range(1, 25) if temps[n] >= temp)
            along = (temp - temps[n - 1]) / (temps[n] - temps[n - 1])
            found = shares[n - 1] + along * (shares[n] - shares[n - 1])
            assert 100 * found == pytest.approx(row["available_percent"], abs=1)
    assert chart.plot.mark == (r.design.chamber_temperature, r["available_heat"])
    assert chart.plot.y == (0.0, 1.0) and chart.sentence.endswith("the flue gas.")
    assert shown(r, CHARTS, "available_by_temperature", flame=NO_FLAME).mark == ()


def test_available_heat_chart_tells_where_nothing_is_left():
    r = solved(**LEAN)
    chart = r.charts["available_by_temperature"]
    temps, shares = chart.plot.series["available"]
    n = next(n for n in range(25) if shares[n] <= 0.01)
    assert chart.plot.slots["reach"] == temps[n] and chart.plot.y == (shares[-1], 1.0) and shares[-1] < 0
    # A flame leaves nothing at its own temperature; steps of the chart are 65 K.
    assert r["flame_temperature"] - 65 < temps[n] < r["flame_temperature"] + 65
    assert chart.sentence.endswith(f"nothing is left at about {round(1.8 * (temps[n] - 273.15) + 32, -1):.0f} °F.")


def test_wall_chart():
    r = solved(ambient_temperature="15 degC", heat_up_time="40 min")
    chart = r.charts["wall_profile"]
    steady, warm = chart.plot.series["steady"], chart.plot.series["heat_up"]
    assert chart.plot.x == (0.0, pytest.approx(3 * 0.0254)) and chart.plot.mark == ()
    hot = (2250 - 32) / 1.8 + 273.15
    assert chart.plot.y == pytest.approx((288.15, hot + 20))
    for depths, temps in (steady, warm):
        assert depths[0] == 0 and depths[-1] == chart.plot.x[1] and temps[0] == pytest.approx(hot)
    assert steady[1][-1] == pytest.approx(r["shell_temperature"]) and warm[1][-1] < steady[1][-1]
    inner = r.tables["lining_layers"].rows[0][4]
    assert steady[1][min(range(len(steady[0])), key=lambda n: abs(steady[0][n] - 0.0254))] == pytest.approx(inner)
    shell, warm_F = (1.8 * (temp - 273.15) + 32 for temp in (r["shell_temperature"], warm[1][-1]))
    assert chart.sentence == (
        f"After 40 min the shell has {warm_F:.0f} °F, the hot face taken as at the set temperature from the start: a "
        f"real fire is behind that. Hot all through it has {shell:.0f} °F."
    )


def by_kind(r):
    return {row[0]: row for row in r.tables["burner_kinds"].rows}


def test_three_kinds_at_the_excess_air_each_holds():
    r = solved(
        chamber_temperature="1300 degF",
        work_temperature="1200 degF",
        aspirated_excess_air="30 %",
        blown_excess_air="10 %",
        multi_port_excess_air="5 %",
    )
    found = by_kind(r)
    assert list(found) == KINDS
    for kind, percent in zip(KINDS, (30, 10, 5)):
        _, excess, available, working, gas, *_ = found[kind]
        assert excess == pytest.approx(percent / 100)
        # 1 point: the table burns everything; straight lines between its temperatures.
        zone = r.parts.call(gas_zones, equivalence_ratio=1 / (1 + excess))[1]
        gas_K = rate_to_hold(zone, r.design.chamber_temperature, r["work_heat"]).gas_temp_K
        table = [
            (row["flue_temp_F"], row["available_percent"])
            for row in rows("available_heat.csv")
            if row["fuel"] == "propane" and row["excess_air_percent"] == percent
        ]
        gas_F = 1.8 * gas_K - 459.67
        (t0, a0), (t1, a1) = next(pair for pair in pairwise(table) if pair[0][0] <= gas_F <= pair[1][0])
        assert gas_F > 1300 + 50
        assert 100 * available == pytest.approx(a0 + (a1 - a0) * (gas_F - t0) / (t1 - t0), abs=1.0)
        assert working == pytest.approx((r["wall_loss"] + r["opening_loss"] + r["work_heat"]) / available, rel=5e-4)
        # Propane: 50.343 MJ/kg gross (fuels.csv).
        assert gas == pytest.approx(working / 50.343e6, rel=1e-3)


def test_what_is_told_of_each_kind():
    cells = [row[5:] for row in solved().tables["burner_kinds"].rows]
    ratio = solved()["aspirated_equivalence_ratio"]
    shut_off = "air stops and gas goes on: a shut-off valve that closes without power is needed"
    # 10 to 200 kPa and 1 to 20 kPa.
    low = "low pressure is enough, 0.15 psi to 2.9 psi"
    assert cells == [
        (
            f"high pressure, 1.5 psi to 29 psi: the jet must pull in all the air; at 10 psi this jet and throat make "
            f"a mixture of {ratio:.2f}",
            "none",
            "steel flare in the heat: scales away in months",
            "3 to 1",
            "keeps burning: gas and air both come from the jet",
        ),
        (
            low,
            "60 W for the blower",
            "tube end in the heat: scales away unless set back in the lining",
            "4 to 1",
            shut_off,
        ),
        (
            low,
            "60 W for the blower",
            "cast block: no flare; ports must stay clear and the block uncracked",
            "3 to 1",
            shut_off,
        ),
    ]


def test_this_design_uses_what_the_chamber_says_when_the_mixture_is_the_same():
    r = solved(equivalence_ratio=str(1 / 1.05))
    assert by_kind(r)["blown multi-port"][4] == pytest.approx(r["fuel_per_hour"], rel=1e-9)


def test_a_kind_that_cannot_hold_the_chamber_has_no_rate():
    r = solved(aspirated_excess_air="100 %", chamber_temperature="2350 degF")
    _, excess, *numbers = by_kind(r)[KINDS[0]][:5]
    assert excess == 1 and numbers == [None, None, None]
    assert by_kind(r)[KINDS[2]][4] > 0


def test_weak_jet_pulls_in_what_momentum_says():
    """Closed form (1 + r)(s + r) = s A/Aj for a weak jet, plain inlet and outlet; propane: 23.87 volumes of air."""
    r = solved(
        aspirated_pressure="0.1 psi",
        aspirated_jet="1 mm",
        aspirated_throat="3/4",
        jet_discharge_coefficient="1",
        ambient_temperature="59 degF",
    )
    s, area = 44.0956 / 28.9644, (0.824 * 25.4 / 1.0) ** 2
    ratio = (-(1 + s) + sqrt((1 + s) ** 2 - 4 * s * (1 - area))) / 2
    assert r["aspirated_equivalence_ratio"] == pytest.approx(23.87 / ratio, rel=0.01)
    # Bernoulli through the jet: 689.5 Pa, density of propane as ideal gas.
    density = 101325 * 44.0956e-3 / (8.314462618 * 288.15)
    assert r["aspirated_rate"] == pytest.approx(pi / 4 * 1e-6 * sqrt(2 * density * 689.476) * 50.343e6, rel=0.01)


def test_jet_of_a_cold_shop_high_up():
    """A weak jet's flow goes with the root of the gas density; the momentum relation holds the mixture by volume."""
    weak = {"aspirated_pressure": "0.1 psi", "aspirated_jet": "1 mm", "jet_discharge_coefficient": "0.8"}
    low = solved(**weak, ambient_temperature="15 degC")
    high = solved(**weak, ambient_temperature="-5 degC", altitude="5000 ft")
    lighter = 84306.6 / 101325 * 288.15 / 268.15
    assert high["aspirated_rate"] / low["aspirated_rate"] == pytest.approx(sqrt(lighter), rel=2e-3)
    assert high["aspirated_equivalence_ratio"] == pytest.approx(low["aspirated_equivalence_ratio"], rel=2e-3)


def test_losses_and_a_narrow_throat_make_it_rich():
    plain_tube = solved()["aspirated_equivalence_ratio"]
    # Common practice: 0.9 mm in 3/4 in pipe at 10 psi runs near stoichiometric.
    assert 0.75 < plain_tube < 1.2
    for texts in ({"aspirated_outlet_loss": "2"}, {"aspirated_inlet_loss": "2"}, {"aspirated_throat": "1/2"}):
        assert solved(**texts)["aspirated_equivalence_ratio"] > plain_tube
    assert solved(aspirated_outlet_loss="0.5", aspirated_inlet_loss="0.1")["aspirated_equivalence_ratio"] < plain_tube
