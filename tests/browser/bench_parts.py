"""Time the parts of a solve; runs in CPython and, through bench_parts.mjs, in Pyodide. Prints {part: [ms]} as JSON."""

import json
import time

from burnercalc import Design, solve
from burnercalc.parts import PARTS
from burnercalc.physics import combustion, fuels

ROUNDS = 15
times = {}


def measure(name, function, *arguments):
    start = time.perf_counter()
    value = function(*arguments)
    times.setdefault(name, []).append(1000 * (time.perf_counter() - start))
    return value


def whole(design, before=None):
    """Every answer, check and table, as the page asks for them."""
    result = solve(design, before)
    return result, list(result.answers.values()), result.worst, list(result.tables.values())


propane = fuels.fuel_composition("propane")
base, *_ = whole(Design.from_texts({}))
for number in range(ROUNDS):
    # Another mixture, port and chamber each round, so that nothing comes from a cache.
    measure("one flame", combustion.flame_temp_K, propane, 0.9 + 0.01 * number)
    result = solve(Design.from_texts({"port_diameter": f"{6 + 0.1 * number} mm"}))
    for name in PARTS:
        measure(f"a changed port: {name}", result.part, name)
    port = Design.from_texts({"port_diameter": f"{4 + 0.1 * number} mm"})
    measure("a changed port: whole solve", whole, port)
    measure("a changed port: whole solve, after one like it", whole, port, base)
    chamber = Design.from_texts({"chamber_temperature": f"{2200 + 10 * number} degF"})
    measure("a changed chamber: whole solve", whole, chamber)
    mixture = Design.from_texts({"equivalence_ratio": f"{0.95 + 0.01 * number}"})
    measure("a changed mixture: whole solve", whole, mixture)
print(json.dumps(times))
