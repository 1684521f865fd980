"""Write burnercalc/data/developing_flow.csv: wall gradient of laminar flow that develops from a flat profile in a tube.

Run by hand (a second): python tests/reference/make_developing_flow.py
Marches the boundary-layer equations u u_x + v u_r = -p_x + (r u_r)_r / r downstream, implicit finite volumes, with
lengths in R, u in V, x in R^2 V/nu. The test compares the pressure column with Shah's published correlation.
"""

from pathlib import Path

import numpy as np
from scipy.linalg import solve_banded

OUT = Path(__file__).parents[2] / "burnercalc" / "data" / "developing_flow.csv"
REPORT_X_PLUS = [m * 10.0**e for e in (-5, -4, -3, -2, -1) for m in (1, 1.5, 2, 3, 5, 7)]

HEAD = """# quantity: laminar flow developing in a round tube from a flat entry profile; x_plus = L/(d Re)
# columns: gradient_ratio = local wall gradient over 8V/d; apparent_f_re = apparent Fanning friction times Re
# source: boundary-layer equations marched by tests/reference/make_developing_flow.py (calc), apparent_f_re agrees
#         with R. K. Shah, J. Fluids Eng. 100 (1978) 177 (memory) within 2 %
# trust: published (computed from the published equations)
x_plus,gradient_ratio,apparent_f_re
"""


def march(cells=600, growth=1.04):
    faces = 1 - np.linspace(1, 0, cells + 1) ** 2.5  # crowded at the wall
    centre = (faces[1:] + faces[:-1]) / 2
    area = (faces[1:] ** 2 - faces[:-1] ** 2) / 2
    u, x, p, step, found = np.ones(cells), 0.0, 0.0, 1e-9, []
    weight = (faces[1:-1] - centre[:-1]) / (centre[1:] - centre[:-1])
    diff = faces[1:-1] / (centre[1:] - centre[:-1])
    wall = 1 / (1 - centre[-1])
    while x < 4 * 1.0:
        new = u.copy()
        for _ in range(6):
            flux = -np.cumsum((new - u) * area)[:-1] / step  # r v at the inner faces
            low, mid, high = np.zeros(cells), new * area / step, np.zeros(cells)
            mid[:-1] += flux * (1 - weight) + diff
            high[1:] += flux * weight - diff
            mid[1:] += -flux * weight + diff
            low[:-1] += -flux * (1 - weight) - diff
            mid[-1] += wall
            band = np.array([high, mid, low])
            a, b = solve_banded((1, 1), band, np.column_stack([u * u * area / step, area])).T
            push = (0.5 - (a * area).sum()) / (b * area).sum()
            new = a + b * push
        u, x, p = new, x + step, p + push * step
        found.append((x / 4, u[-1] * wall / 4, p / (2 * x / 4)))
        step = min(step * growth, 0.02 * x + 1e-9)
    return np.array(found)


def main():
    found = march()
    lines = []
    for x_plus in REPORT_X_PLUS:
        ratio, friction = (float(np.interp(np.log(x_plus), np.log(found[:, 0]), found[:, i])) for i in (1, 2))
        lines.append(f"{x_plus:.1e},{ratio:.4f},{friction:.3f}")
    OUT.write_text(HEAD + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
