"""Plausible designs: what smiths who know the trade's rules of thumb, but not this tool, might type. Seeded.

    python tests/plausible.py [how many] [seed]      prints the shares of the verdicts, and how often each check speaks

Rules of thumb with scatter: fire by the chamber's size or by the need, 25 to 60 kBtu/h per square inch of port, an
inlet of the ports' area, a baffle of more, a blower and cylinders for the rate, linings that stand the heat. All common
practice.
"""

import math
import random
import sys
from collections import Counter
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))

from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.result import solve

COUNT, SEED = 250, 20261126
PIPE_BORES_IN = {"3/4": 0.824, "1": 1.049, "1-1/4": 1.380, "1-1/2": 1.610, "2": 2.067, "2-1/2": 2.469, "3": 3.068}
HOT_LININGS = ("dense_castable 1 in, blanket_8lb 2 in", "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in",
               "dense_castable 3/4 in, blanket_8lb 3 in", "ifb_26 2 1/2 in, blanket_8lb 1 in",
               "ifb_26 4 1/2 in")  # fmt: skip
COOL_LININGS = ("ifb_23 2 1/2 in, blanket_8lb 1 in", "ifb_23 4 1/2 in", "blanket_8lb 3 in",
                "ifb_26 2 1/2 in, blanket_8lb 1 in")  # fmt: skip


def texts(rng):
    """The settings of one plausible design, as typed in inches."""
    kind = rng.choice(("forge", "forge", "forge", "heat treating", "crucible"))
    chamber, volume_in3, door_in2 = _chamber(rng, kind)
    high_degF = rng.choice({"forge": (2000, 2150, 2250, 2350), "heat treating": (1500, 1600, 1700),
                            "crucible": (1900, 2150, 2250)}[kind])  # fmt: skip
    per_in3 = rng.uniform(200, 450) * (0.3 if kind == "heat treating" else 1.0)
    fuel = rng.choice(("propane", "propane", "natural_gas"))
    phi = rng.choice((0.90, 0.93, 0.95, 0.96, 0.97, 0.98, 1.0))
    heat = {
        **chamber,
        "opening_area": f"{door_in2 * rng.uniform(0.25, 0.6):.0f} in2",
        "opening_depth": rng.choice(("2 in", "3 in", "4 in")),
        "lining": rng.choice(COOL_LININGS if kind == "heat treating" else HOT_LININGS),
        "chamber_temperature": f"{high_degF} degF",
        "work_metal": "bronze" if kind == "crucible" else "steel",
        "work_temperature": f"{1900 if high_degF < 2150 else 2000} degF" if kind == "crucible"
        else f"{high_degF - rng.choice((50, 100, 150))} degF",
        "work_rate": f"{max(1, round(volume_in3 * rng.uniform(0.01, 0.03)))} lb/h",
        "heat_up_time": rng.choice(("30 min", "40 min", "50 min", "60 min")),
        "firing_rate": "auto" if rng.random() < 0.4 else f"{max(5, per_in3 * volume_in3 / 1000):.0f} kBtu/h",
        "equivalence_ratio": f"{phi}",
        "low_fire": rng.choice(("35 %", "40 %", "45 %", "50 %", "60 %")),
        "ambient_temperature": rng.choice(("50 degF", "60 degF", "70 degF")),
        "fuel": fuel,
    }  # fmt: skip
    rate_Btu_h = solve(Design.from_texts(heat))["firing_rate_gross"] / 0.29307107
    face, port_in2 = _face(rng, rate_Btu_h)
    return {
        **heat,
        **face,
        **_feed(rng, rate_Btu_h, fuel),
        "baffle_holes": f"{math.ceil(rng.uniform(1.5, 3) * port_in2 / (math.pi / 4 * (3 / 8) ** 2))}",
    }  # fmt: skip


def _chamber(rng, kind):
    """Settings of the chamber, its volume, and the area of its end."""
    if kind == "crucible":
        across, length = rng.choice((7.0, 8.0, 9.0, 10.0)), rng.choice((8.0, 10.0, 12.0))
        end = math.pi / 4 * across**2
        shape = {"chamber_shape": "cylinder", "chamber_diameter": f"{across:g} in"}
    else:
        length = rng.choice((18.0, 20.0, 24.0) if kind == "heat treating" else (10.0, 12.0, 14.0, 16.0))
        width, height = rng.choice((5.0, 6.0, 7.0)), rng.choice((4.5, 5.0, 5.5, 6.0))
        end = width * height
        shape = {"chamber_width": f"{width:g} in", "chamber_height": f"{height:g} in"}
    return {**shape, "chamber_length": f"{length:g} in"}, end * length, end


def _face(rng, rate_Btu_h):
    """Ports of a usual size, as many as the usual loading asks for, on a face that takes them an inch or less apart."""
    sixteenths = rng.choice((3, 4, 4, 5, 5))
    port_in = sixteenths / 16
    ports = max(6, rate_Btu_h / (rng.uniform(25e3, 60e3) * math.pi / 4 * port_in**2))
    width = rng.choice((3.0, 4.0, 4.0))
    pitch = rng.uniform(2.2, 2.8) * port_in
    rows = min(max(2, round((width - 1.75) / pitch) + 1), 6)
    per_row = max(3, round(ports / rows + 0.5))  # a staggered row has one less
    length = max(4.0, 0.5 * round(2 * (per_row * pitch + 1.75)))
    face = {
        "body_length": f"{length:g} in",
        "body_width": f"{width:g} in",
        "body_depth": "4 in" if width == 4 else "3 in",
        "port_diameter": f"{sixteenths}/16 in",
        "rows": f"{rows}",
        "ports_per_row": f"{per_row}",
        "block_thickness": rng.choice(("2 in", "2 1/2 in", "3 in")),
    }
    return face, rows * per_row * math.pi / 4 * port_in**2


def _feed(rng, rate_Btu_h, fuel):
    """Inlet and pipe for a quarter square inch in 10 kBtu/h or so, a blower of two to three times the air."""
    bore_in = math.sqrt(4 / math.pi * rate_Btu_h / 1e5 * rng.uniform(1.2, 2.2))
    pipe = min(PIPE_BORES_IN, key=lambda name: abs(PIPE_BORES_IN[name] - bore_in))
    wider = list(PIPE_BORES_IN)[min(list(PIPE_BORES_IN).index(pipe) + rng.choice((0, 1)), len(PIPE_BORES_IN) - 1)]
    air_cfm = 17 * rate_Btu_h / 1e5
    if fuel == "natural_gas":
        before_jet = rng.choice(("7 inH2O", "8 inH2O", "1 psi"))
        # Who has 1 psi before the jet has a line of 2 psi.
        gas = {"gas_pressure": before_jet, "line_pressure": "2 psi" if before_jet == "1 psi" else "7 inH2O"}
    else:
        gas = {
            "gas_pressure": rng.choice(("3 psi", "5 psi", "8 psi")),
            "cylinder": "100" if rate_Btu_h > 6e4 else rng.choice(("40", "100")),
            "cylinder_count": "2" if rate_Btu_h > 1.2e5 else "1",
        }  # fmt: skip
    return {
        "inlet": wider,
        "mix_pipe": pipe,
        "mix_pipe_length": f"{max(6, round(PIPE_BORES_IN[pipe] * rng.uniform(9, 16)))} in",
        "blower_shutoff_pressure": f"{rng.choice((2.0, 3.0, 4.0)):g} inH2O",
        "blower_free_flow": f"{max(5, round(air_cfm * rng.uniform(2, 4)))} cfm",
        **gas,
    }


def designs(count=COUNT, seed=SEED):
    """So many plausible designs that can be drawn; the same ones for the same seed."""
    rng = random.Random(seed)
    found = []
    while len(found) < count:
        try:
            found.append(Design.from_texts(texts(rng)))
        except InputErrors:
            continue
    return found


def spoken(results):
    """How often each check gives each verdict: {(key, verdict): count}."""
    return Counter((check.key, check.verdict) for result in results for check in result.checks.values())


def report(results):
    """Lines that people read: shares of the verdicts, faults a design, and each check by how often it speaks."""
    worst, said, count = Counter(result.worst for result in results), spoken(results), len(results)
    notes_only = sum(
        result.worst == "good" and any(check.verdict == "note" for check in result.checks.values())
        for result in results
    )
    yield ", ".join(f"{word} {worst[word] / count:.0%}" for word in ("good", "caution", "stop"))
    yield f"of the good ones {notes_only} have notes"
    faults = Counter(min(sum(check.fault for check in result.checks.values()), 6) for result in results)
    yield "designs by number of faults, the last six or more: " + " ".join(str(faults[n]) for n in range(7))
    for key in sorted({key for key, _ in said}, key=lambda key: -said[key, "caution"] - said[key, "stop"]):
        shares = [f"{word} {said[key, word] / count:4.0%}" for word in ("note", "caution", "stop") if said[key, word]]
        if shares:
            yield f"{key:<20}{'  '.join(shares)}"


if __name__ == "__main__":
    count, seed = (int(text) for text in (*sys.argv[1:3], COUNT, SEED)[:2]) if len(sys.argv) > 2 else (
        int(sys.argv[1]) if len(sys.argv) > 1 else COUNT, SEED)  # fmt: skip
    sys.stdout.writelines(f"{line}\n" for line in report([solve(design) for design in designs(count, seed)]))
