"""The gas and air train: sizes of hose, gauge, switch and reducers for a fire, and example prices of its parts."""

from itertools import pairwise
from math import ceil, floor, log10

from ..constants import INH2O_PA, PSI_PA
from ..errors import require
from ..physics import losses
from ..physics.house_pipe import longest_run_m
from ..physics.mixture import mixture_properties
from ..physics.pipes import pipe as pipe_of
from ..physics.pipes import pipe_names
from ..tables import by_key
from .stock import METRES, NOISE_M, mm

HOSE_LENGTH_M = 1.83  # 6 ft, the longest that is usual indoors: common practice
HOSE_ROUGHNESS_M = 1.5e-6  # drawn rubber lining: common practice
HOSE_BORES = {"in": (0.25, 0.375, 0.5, 0.75, 1.0, 1.5, 2.0), "mm": (6, 8, 10, 13, 16, 19, 25, 38, 50)}  # as sold
HOSE_SHARE = 0.1  # of the gas pressure that the hose may take: common practice
# Loss coefficients of what gas goes through, wide open, on the bore of its pipe. Quarter-turn cock 3 f, valve with a
# seat 340 f, lift check valve 600 f, tee through its branch 60 f, f = 0.027 of a half-inch pipe: Crane TP-410 (memory);
# strainer and needle valve (Kv 1.5 of 1/2 in): common practice.
VALVES_K = {"cock": 0.1, "filter": 6.0, "trap": 1.6, "solenoid": 9.2, "needle": 45.0, "check_valve": 16.2}
CHECK_OPENS_PA = 100.0  # that a light spring takes besides: common practice
# Full scale of gauges as sold, {from a cylinder: {unit: ...}}: psi and bar, on a line inches of water and mbar.
GAUGES_PA = {
    True: {
        "in": tuple(n * PSI_PA for n in (1, 3, 5, 10, 15, 30, 60, 100, 160)),
        "mm": tuple(n * 1e5 for n in (0.06, 0.1, 0.16, 0.25, 0.4, 0.6, 1.0, 1.6, 2.5, 4.0, 10.0)),
    },
    False: {
        "in": tuple(n * INH2O_PA for n in (5, 15, 30, 60, 100, 200)),
        "mm": tuple(n * 100.0 for n in (10, 16, 25, 40, 60, 100, 160, 250, 400, 600)),
    },
}
SELDOM_PA = {"in": (2 * PSI_PA,), "mm": ()}  # gauges for a cylinder's gas that fewer shops have
# Full scales of sloping gauges as sold; the only ones that show a line's few inches to light by.
TUBES_PA = {"in": tuple(n * INH2O_PA for n in (1, 2, 4, 8)), "mm": (250.0, 500.0, 1000.0, 2000.0)}
TUBE_MARK_PA = {"in": 0.02 * INH2O_PA, "mm": 5.0}  # and what it shows of them
SAME_SCALE = 1e-3  # of a scale, by which what is typed may differ from it
# Ratings of gas parts as sold, {from a cylinder: {unit: ...}}; the least is what a failing regulator may pass on, some
# 30 psi of a cylinder and 5 psi of a line: common practice.
RATED_PA = {
    True: {"in": tuple(n * PSI_PA for n in (30, 60, 125, 250)), "mm": tuple(n * 1e5 for n in (2.5, 4, 10, 16))},
    False: {"in": tuple(n * INH2O_PA for n in (140, 280)), "mm": tuple(n * 100.0 for n in (350, 500, 1000))},
}
HOUSE_PIPE_PA = {"in": 0.5 * INH2O_PA, "mm": 100.0}  # that pipe from meter to train may take: common practice
HOUSE_PIPES = ("1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4")  # as laid in houses
HOUSE_RUNS_M = (5.0, 60.0)  # of the pipes told, the shortest run of the first and what the last reaches
CONNECTOR_MOST_PA = 14 * INH2O_PA  # listed appliance connectors go no higher: half a psi (memory)
# Least thread that a hex bushing of a size is sold with: ASME B16.14 (memory).
BUSHED = {
    "1/4": "1/8",
    "3/8": "1/8",
    "1/2": "1/8",
    "3/4": "1/8",
    "1": "1/8",
    "1-1/4": "1/4",
    "1-1/2": "1/4",
    "2": "1/4",
}
BUSHED |= {"2-1/2": "1", "3": "1", "3-1/2": "1-1/2", "4": "1-1/2"}
# Ends as sold, where gas or air comes in and where it goes out; one of what is screwed into a branch. "left" is the
# left-hand thread of a cylinder's valve, or of hoses that are sold by the millimetre (CGA V-1, EN 16129: memory); what
# has none here is joined otherwise. All else common practice.
MALE, FEMALE, LEFT = "male", "female", "left"
_THROUGH = ("regulator", "line_regulator", "cock", "filter", "trap", "solenoid", "needle", "check_valve", "gauge_tee")
_THROUGH += (
    "isolating_cock",
    "pilot_cock",
    "pilot_regulator",
    "pilot_valve",
    "damper",
    "air_flap",
    "mixer",
    "elbow",
    "union",
    "tee",
    "reducer",
)
_THROUGH += ("jet_reducer", "leg_union", "leg_elbow", "header")
_PIPES = ("house_pipe", "line_connector", "rigid_pipe", "gas_nipples", "pipe_nipples", "tap_nipple", "mix_pipe", "leg")
ENDS = dict.fromkeys(_THROUGH, (FEMALE, FEMALE)) | dict.fromkeys(_PIPES, (MALE, MALE))
ENDS |= dict.fromkeys(("gauge", "jet_gauge", "low_gauge"), (MALE,)) | {"low_gas_switch": (FEMALE,)}
ENDS |= {"connector": (LEFT, MALE), "manifold": (FEMALE, MALE), "jet_holder": (FEMALE, MALE), "bushing": (FEMALE, MALE)}
ENDS |= {"gauge_cock": (MALE, FEMALE), "hose_adapter": (MALE, LEFT)}
HOSE_ENDS = {"in": (MALE, MALE), "mm": (LEFT, LEFT)}
BRANCH = "1/4"  # thread of a gauge, its cock and a switch
PILOT_MOST_PA = 14 * INH2O_PA  # controls and pilots of appliances take no more: half a psi (memory)
GAUGE_ROOM = 4 / 3  # the needle stands in the lower three quarters: EN 837-1 (memory)
REGULATOR_ROOM = 1.5  # capacity over the rate: common practice
SECOND_VALVE_W = 117e3  # 400 kBtu/h: two valves in series above it (memory of NFPA 86)
TIMERS_S = (3.0, 5.0, 10.0)  # safety times that flame relays are sold with: common practice (memory)
PRICED_PIPE_M = 0.61  # of threaded pipe for the price of the table: an example
LARGE_PIPE = "1"  # parts of pipes above it have the other price


def hose_drop_Pa(*, gas_kg_s, bore_m, composition, temp_K, pressure_Pa, length_m=HOSE_LENGTH_M):
    """Pressure lost in a hose, the gas as dense all along as at its end [Pa].

        dp = (f L/D + 1.5) rho V**2 / 2

    Arguments:
        gas_kg_s           mass flow [kg/s]
        bore_m, length_m   D, L [m]
        composition        of the gas; temp_K [K]; pressure_Pa absolute, at its end [Pa]
    Source: Darcy-Weisbach (published), entry and exit 1.5
    Checked by: tests/test_train.py
    """
    gas = mixture_properties(composition, temp_K, pressure_Pa)
    return losses.pipe_drop_Pa(
        gas_kg_s / gas.density_kg_m3,
        bore_m,
        length_m,
        gas.density_kg_m3,
        gas.viscosity_Pas,
        other_K=1.5,
        roughness_m=HOSE_ROUGHNESS_M,
    )


def valves_drop_Pa(*, gas_kg_s, pipe, counts, composition, temp_K, pressure_Pa):
    """Pressure lost between the hose and the jet with every valve wide open [Pa].

        dp = sum(n K) rho V**2 / 2 + 1 mbar a check valve

    Arguments:
        gas_kg_s      mass flow [kg/s]
        pipe          nominal size of the parts
        counts        {part of VALVES_K: how many}
        composition   of the gas; temp_K [K]; pressure_Pa absolute, before the jet [Pa]
    Source: VALVES_K; CHECK_OPENS_PA
    Checked by: tests/test_train.py
    """
    gas, bore = mixture_properties(composition, temp_K, pressure_Pa), pipe_of(pipe)
    speed_m_s = gas_kg_s / gas.density_kg_m3 / bore.area_m2
    lost_K = sum(count * VALVES_K.get(part, 0.0) for part, count in counts.items())
    return lost_K * gas.density_kg_m3 * speed_m_s**2 / 2 + counts.get("check_valve", 0) * CHECK_OPENS_PA


def hose(*, gas_kg_s, gauge_Pa, composition, temp_K, ambient_Pa, unit):
    """(bore_m, drop_Pa): the narrowest hose sold by `unit` that takes no more than a tenth of the gas pressure.

    The widest one where even that takes more.
    Arguments: gas_kg_s at high fire [kg/s]; gauge_Pa wanted at its end [Pa]; ambient_Pa [Pa]; unit in or mm
    Source: common practice
    Checked by: tests/test_train.py
    """
    require(gauge_Pa > 0, "gas_pressure", f"{gauge_Pa:g} Pa", "must be above 0", "5 psi")
    for bore in HOSE_BORES[unit]:
        bore_m = bore * METRES[unit]
        drop_Pa = hose_drop_Pa(
            gas_kg_s=gas_kg_s,
            bore_m=bore_m,
            composition=composition,
            temp_K=temp_K,
            pressure_Pa=ambient_Pa + gauge_Pa,
        )
        if drop_Pa <= HOSE_SHARE * gauge_Pa:
            break
    return bore_m, drop_Pa


def wider_hoses_m(bore_m, *, unit):
    """Bores of hoses sold by `unit` that are wider than one, the narrowest first [m].

    Source: HOSE_BORES
    Checked by: tests/test_train.py
    """
    return [wider for bore in HOSE_BORES[unit] if (wider := bore * METRES[unit]) > bore_m + 1e-6]


def gauge_Pa(*, pressure_Pa, unit, from_cylinder, room=GAUGE_ROOM, seldom=False):
    """Full scale of the smallest gauge sold by `unit` that has the pressure in its lower three quarters [Pa].

    Arguments:
        room     full scale over the pressure, at least
        seldom   those too that fewer shops have

    The largest one where even that has not.

    Source: EN 837-1 (memory); ranges as sold
    Checked by: tests/test_train.py
    """
    scales = scales_Pa(unit=unit, from_cylinder=from_cylinder) if seldom else GAUGES_PA[from_cylinder][unit]
    return next((scale for scale in scales if scale >= room * pressure_Pa - 1e-6), scales[-1])


def scales_Pa(*, unit, from_cylinder, sloping=False):
    """Full scales of all gauges sold by `unit`, the least first; of sloping ones, which read a line's low pressures.

    Source: ranges as sold
    Checked by: tests/test_train.py
    """
    if sloping:
        return TUBES_PA[unit]
    return tuple(sorted((*GAUGES_PA[from_cylinder][unit], *(SELDOM_PA[unit] if from_cylinder else ()))))


def scale_unit(scale_Pa, *, unit, from_cylinder, sloping=False):
    """The measure, in or mm, whose shops sell a gauge of this full scale, `unit` where both do; None where none does.

    Source: ranges as sold
    Checked by: tests/test_train.py
    """
    for one in (unit, *({"in", "mm"} - {unit})):
        scales = scales_Pa(unit=one, from_cylinder=from_cylinder, sloping=sloping)
        if any(abs(scale_Pa - known) <= SAME_SCALE * known for known in scales):
            return one
    return None


def gauge_mark_Pa(*, scale_Pa, unit, from_cylinder=True):
    """Pressure from mark to mark of a gauge in psi or bar: 50 to 125 of them, 1, 2 or 5 and noughts [Pa].

    That of a line is in inches of water or mbar; of a scale that only the other measure's shops sell, in that measure.

    Source: EN 837-1 (memory); dials as sold
    Checked by: tests/test_train.py
    """
    unit = scale_unit(scale_Pa, unit=unit, from_cylinder=from_cylinder) or unit
    metric_Pa = 1e5 if from_cylinder else 100.0
    unit_Pa = metric_Pa if unit != "in" else PSI_PA if from_cylinder else INH2O_PA
    most = scale_Pa / unit_Pa / 50 * (1 + 1e-6)
    tens = 10.0 ** floor(log10(most))
    return max(one for one in (1, 2, 5) if one * tens <= most) * tens * unit_Pa


def rated_Pa(*, pressure_Pa, unit, from_cylinder):
    """Rating of the lowest gas part sold by `unit` that stands one and a half times a pressure [Pa].

    The highest one where even that does not.

    Source: common practice; ratings as sold
    Checked by: tests/test_train.py
    """
    sold = RATED_PA[from_cylinder][unit]
    return next((rated for rated in sold if rated >= 1.5 * pressure_Pa), sold[-1])


def house_pipes(*, gas_m3_s, drop_Pa, composition):
    """Pipes from meter to train, as (nominal size, longest run [m]), from the least one to one that is never short.

    Arguments: gas_m3_s all that it carries [m3/s]; drop_Pa that it may take [Pa]; composition of the gas
    Source: fuel gas codes (physics/house_pipe.py)
    Checked by: tests/test_train.py
    """
    flow = {"gas_m3_s": gas_m3_s, "drop_Pa": drop_Pa, "composition": composition}
    least, far = HOUSE_RUNS_M
    found = []
    for name in pipe_names():
        run_m = longest_run_m(bore_m=pipe_of(name).bore_m, **flow)
        if name in HOUSE_PIPES and run_m >= least:
            found.append((name, run_m))
            if run_m >= far:
                break
    return tuple(found)


def _od_m(pipe):
    return pipe_of(pipe).od_m


def reducers(smaller, larger):
    """Bell reducers from one nominal pipe size to another, as (from, to) pairs, one size at a step; () for the same.

    Raises: InputError for mix_pipe, unknown sizes
    Source: reducers as sold are at least one size a step
    Checked by: tests/test_train.py
    """
    known = pipe_names()
    step = 1 if _od_m(larger) >= _od_m(smaller) else -1
    at, to = known.index(smaller), known.index(larger)
    return tuple((known[i], known[i + step]) for i in range(at, to, step))


def bushings(pipe, thread):
    """Hex bushings from a fitting of a pipe size to a smaller thread, as (from, to) pairs; () for the same size.

    Raises: InputError for mix_pipe, unknown sizes and a thread that is larger, which takes reducers
    Source: ASME B16.14 (memory)
    Checked by: tests/test_train.py
    """
    require(_od_m(thread) <= _od_m(pipe), "mix_pipe", pipe, f"must be {thread} or larger", thread)
    steps = [pipe]
    while steps[-1] != thread:
        steps.append(max(thread, BUSHED[steps[-1]], key=_od_m))
    return tuple(pairwise(steps))


def header_bore_m(*, branch_bore_m, branches):
    """Bore of an air header as wide as all its branches together, so that its pressure is even along it [m].

        D = d sqrt(n)

    Source: common practice
    Checked by: tests/test_train.py
    """
    require(branch_bore_m > 0 and branches >= 1, "burner_count", f"{branches}", "must be 1 or more", "1")
    return branch_bore_m * branches**0.5


def price(part, pipe):
    """Example price of a part that stands in a pipe of a nominal size.

    Source: train_parts.csv
    Checked by: tests/test_train.py
    """
    row = by_key("train_parts", "part")[part]
    return row["price_small" if _od_m(pipe) <= _od_m(LARGE_PIPE) else "price_large"]


def pipe_bought(*, length_m, stock_lengths_m):
    """(pieces, their length as sold [m]) of a pipe: the shortest that is long enough, or several of the longest.

    Checked by: tests/test_train.py
    """
    sold = sorted(stock_lengths_m)
    long_enough = next((one for one in sold if one >= length_m - NOISE_M), None)
    return (1, long_enough) if long_enough else (ceil((length_m - NOISE_M) / sold[-1]), sold[-1])


def pipe_price(*, part, pipe, pieces, sold_m):
    """Example price of threaded pipe: that of the table up to PRICED_PIPE_M as sold, above it by length, and a coupling
    between two pieces.

    Checked by: tests/test_train.py
    """
    longer = max(1.0, pieces * sold_m / PRICED_PIPE_M)
    return round(price(part, pipe) * longer, 2) + (pieces - 1) * price("coupling", pipe)


def pipe_for_bore(bore_m):
    """Nominal size of the pipe thread nearest to a hose, at least 1/4 and at most 2.

    Source: common practice: fittings as wide as the hose
    Checked by: tests/test_train.py
    """
    require(bore_m > 0, "gas_pressure", mm(bore_m), "must leave a hose")
    sizes = {"1/4": 0.0064, "3/8": 0.01, "1/2": 0.0135, "3/4": 0.0195, "1": 0.026, "1-1/2": 0.039}
    return next((name for name, bore in sizes.items() if bore_m <= bore), "2")
