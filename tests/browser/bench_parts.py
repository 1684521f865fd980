"""Time the parts of a solve; runs in CPython and, through bench_parts.mjs, in Pyodide. Prints {part: [ms]} as JSON."""

import json
import time

from burnercalc.solve import CHAPTERS

from burnercalc import solve as whole
from burnercalc.design import Design
from burnercalc.physics import combustion, fuels
from burnercalc.result import Result

ROUNDS = 15
times = {}


def measure(name, function, *arguments):
    start = time.perf_counter()
    value = function(*arguments)
    times.setdefault(name, []).append(1000 * (time.perf_counter() - start))
    return value


propane = fuels.fuel_composition("propane")
whole(Design.from_texts({}))
for number in range(ROUNDS):
    # Another mixture, port and chamber each round, so that nothing comes from a cache.
    measure("one flame", combustion.flame_temp_K, propane, 0.9 + 0.01 * number)
    design = Design.from_texts({"port_diameter": f"{6 + 0.1 * number} mm"})
    result = Result(design)
    for chapter in CHAPTERS:
        result.group = getattr(chapter, "GROUP", "face")
        measure(f"a changed port: {chapter.__name__.rpartition('.')[2]}", chapter.solve, design, result)
    measure("a changed port: whole solve", whole, Design.from_texts({"port_diameter": f"{4 + 0.1 * number} mm"}))
    measure(
        "a changed chamber: whole solve",
        whole,
        Design.from_texts({"chamber_temperature": f"{2200 + 10 * number} degF"}),
    )
    measure(
        "a changed mixture: whole solve", whole, Design.from_texts({"equivalence_ratio": f"{0.95 + 0.01 * number}"})
    )
print(json.dumps(times))
