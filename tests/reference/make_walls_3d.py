"""Write walls_3d.csv: heat through and into closed lined chambers, by finite volumes in three dimensions.

An eighth of a box on a grid of x, y, z; half a lying cylinder on a grid of radius and length. The layers lie over
edges and corners as a box over a box. Each outside cell has its own temperature. Conductivity, heat capacity and the
loss of an outside face to still air over its temperature are those of burnercalc; geometry and solution are not.

    .venv/bin/python tests/reference/make_walls_3d.py          (about four minutes)
"""

from pathlib import Path

import numpy as np
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import cg

from burnercalc.physics.linings import material
from burnercalc.physics.outside import faces_loss_W

AIR_K, HEAT_UP_S, INCH_M = 294.15, 1800.0, 0.0254
CASES = (
    # name, shape, inside sizes in inches, lining (material, inches), hot face [K]
    ("forge", "box", (12, 6, 5.5), (("dense_castable", 1), ("blanket_8lb", 2)), 1505.0),
    ("blanket_only", "box", (12, 6, 5.5), (("blanket_8lb", 2),), 1505.0),
    ("small_brick", "box", (4, 4, 4), (("ifb_26", 2.5),), 1400.0),
    ("three_layers", "box", (18, 9, 9), (("dense_castable", 2), ("ifb_23", 2.5), ("blanket_8lb", 1)), 1573.15),
    ("long_thick", "box", (24, 8, 6), (("dense_castable", 4),), 1505.0),
    ("round_forge", "cylinder", (12, 6.5), (("dense_castable", 1), ("blanket_8lb", 2)), 1505.0),
    ("round_blanket", "cylinder", (12, 6.5), (("blanket_8lb", 2),), 1505.0),
    ("crucible", "cylinder", (10, 8), (("dense_castable", 1.5), ("insulating_castable", 2)), 1573.15),
)


def lines(inside_m, thicknesses_m, step_m, inside_steps):
    """Grid lines from the middle of the chamber out: coarse over the flat, fine near the edge and in the layers."""
    # Half the inside is cut so that steps shrink towards the edge, down to that of the layers.
    t = np.linspace(0, 1, inside_steps + 1)
    found = [inside_m * (1 - (1 - t) ** 1.6)]
    low = inside_m
    for thickness in thicknesses_m:
        # Finest at the hot side, where the heat of the first minutes is.
        count = max(6, round(thickness / step_m))
        t = np.linspace(0, 1, count + 1)[1:]
        found.append(low + thickness * (0.35 * t + 0.65 * t**2))
        low += thickness
    return np.concatenate(found)


class Net:
    """Cells with links between them, to the hot face and to the air."""

    def __init__(self, axes, insides_m, layers, shape):
        self.materials = [material(key) for key, _ in layers]
        ends = np.cumsum([inch * INCH_M for _, inch in layers])
        steps = [np.diff(axis) for axis in axes]
        middles = [(axis[1:] + axis[:-1]) / 2 for axis in axes]
        depth = np.maximum.reduce(
            np.meshgrid(*(middle - inside for middle, inside in zip(middles, insides_m)), indexing="ij")
        )
        solid = depth > 0
        index = np.where(solid, np.cumsum(solid.ravel()).reshape(depth.shape) - 1, -1)
        self.layer = np.searchsorted(ends, depth[solid])
        sizes = np.meshgrid(*steps, indexing="ij")
        if shape == "box":
            spaces, factor = [sizes[0] * sizes[1] * sizes[2] / size for size in sizes], 8
            volume = sizes[0] * sizes[1] * sizes[2]
        else:
            # Radius first, then length; half of the length.
            r = np.meshgrid(*middles, indexing="ij")[0]
            factor, volume = 2, 2 * np.pi * r * sizes[0] * sizes[1]
        self.factor, self.volume = factor, volume[solid]
        links, hot, outer = [], [], []
        for way in range(len(axes)):
            low = [slice(None)] * len(axes)
            high, last = list(low), list(low)
            low[way], high[way], last[way] = slice(None, -1), slice(1, None), slice(-1, None)
            low, high, last = tuple(low), tuple(high), tuple(last)
            if shape == "box":
                down = up = spaces[way] / (sizes[way] / 2)
            elif way == 0:
                edge_low, edge_high = axes[0][:-1, None], axes[0][1:, None]
                with np.errstate(divide="ignore"):
                    down = 2 * np.pi * sizes[1] / np.log(r / edge_low)
                up = 2 * np.pi * sizes[1] / np.log(edge_high / r)
                down, up = (np.broadcast_to(x, r.shape) for x in (down, up))
            else:
                down = up = 2 * np.pi * r * sizes[0] / (sizes[1] / 2)
            a, b = index[low], index[high]
            both = (a >= 0) & (b >= 0)
            links.append((a[both], b[both], up[low][both], down[high][both]))
            wall = (a < 0) & (b >= 0)
            hot.append((b[wall], down[high][wall]))
            if shape == "box":
                area = spaces[way]
            else:
                area = 2 * np.pi * (axes[0][-1] * sizes[1] if way == 0 else r * sizes[0])
                area = np.broadcast_to(area, r.shape)
            outer.append((index[last].ravel(), up[last].ravel(), area[last].ravel(), way))
        self.i, self.j, self.gi, self.gj = (np.concatenate(parts) for parts in zip(*links))
        self.hot, self.g_hot = (np.concatenate(parts) for parts in zip(*hot))
        self.outer = outer
        self.density = np.array([lining.density_kg_m3 for lining in self.materials])[self.layer]
        self.mass = self.density * self.volume

    def per_layer(self, name, temps):
        found = np.empty_like(temps)
        for n, lining in enumerate(self.materials):
            mine = self.layer == n
            found[mine] = np.interp(temps[mine], lining.temps_K, getattr(lining, name))
        return found

    def enthalpy(self, temps):
        found = np.empty_like(temps)
        for n, lining in enumerate(self.materials):
            mine = self.layer == n
            grid = np.linspace(AIR_K, 2073.0, 1200)
            cp = np.interp(grid, lining.temps_K, lining.heat_capacities_J_kgK)
            sums = np.concatenate(([0.0], np.cumsum((cp[1:] + cp[:-1]) / 2 * np.diff(grid))))
            found[mine] = np.interp(temps[mine], grid, sums)
        return found

    def matrix(self, temps, hot_K, films, shells):
        """Conductance matrix and source at these properties; film coefficients at the shell temperatures."""
        k, n = self.per_layer("conductivities_W_mK", temps), len(temps)
        g = 1 / (1 / (k[self.i] * self.gi) + 1 / (k[self.j] * self.gj))
        main, source = np.zeros(n), np.zeros(n)
        np.add.at(main, self.i, g)
        np.add.at(main, self.j, g)
        k_hot = (k[self.hot] + self.per_layer("conductivities_W_mK", np.full(n, hot_K))[self.hot]) / 2
        into = k_hot * self.g_hot
        np.add.at(main, self.hot, into)
        np.add.at(source, self.hot, into * hot_K)
        outs = []
        for (cell, g_out, area, way), shell in zip(self.outer, shells):
            h = films[way](shell) / (shell - AIR_K)
            out = 1 / (1 / (k[cell] * g_out) + 1 / (h * area))
            np.add.at(main, cell, out)
            np.add.at(source, cell, out * AIR_K)
            outs.append((out, h * area))
        a = coo_matrix(
            (np.concatenate((-g, -g)), (np.concatenate((self.i, self.j)), np.concatenate((self.j, self.i)))), (n, n)
        )
        return a.tocsr() + diags(main), source, into, outs

    def shells(self, temps, outs):
        return [AIR_K + out * (temps[cell] - AIR_K) / film for (cell, *_), (out, film) in zip(self.outer, outs)]

    def solve(self, a, b, guess):
        x, failed = cg(a, b, x0=guess, rtol=1e-9, M=diags(1 / a.diagonal()), maxiter=4000)
        assert not failed
        return x


def films(shape, sizes_m, thickness_m):
    """Loss of an outside face over its temperature [W/m2], one function for each way out."""
    grid = np.concatenate((AIR_K + np.array([0.0, 0.5, 1, 2, 4, 8, 15]), np.linspace(315, 1500, 120)))

    def table(*faces):
        q = [
            0.0
            if t == AIR_K
            else faces_loss_W(
                [(f, s, 1 / len(faces)) for f, s in faces], emissivity=0.9, surface_temp_K=t, ambient_temp_K=AIR_K
            )
            for t in grid
        ]
        return lambda temps: np.interp(temps, grid, q)

    outside = [size + 2 * thickness_m for size in sizes_m]
    if shape == "box":
        length, width, height = outside
        upright, flat = table(("vertical", height)), length * width / (2 * (length + width))
        return [upright, upright, table(("up", flat), ("down", flat))]
    _, d = outside
    return [table(("cylinder", d)), table(("vertical", d))]


def run(shape, sizes_in, layers, hot_K, step_m, inside_steps):
    sizes_m = [size * INCH_M for size in sizes_in]
    thick = [inch * INCH_M for _, inch in layers]
    halves = [size / 2 for size in (sizes_m if shape == "box" else sizes_m[::-1])]
    net = Net([lines(half, thick, step_m, inside_steps) for half in halves], halves, layers, shape)
    film = films(shape, sizes_m, sum(thick))
    # Steady: properties and films of the last round until the loss stands still.
    temps = np.full(len(net.layer), 900.0)
    shells, loss = [np.full(len(cell), 400.0) for cell, *_ in net.outer], 0.0
    for _ in range(60):
        a, b, into, outs = net.matrix(temps, hot_K, film, shells)
        temps = net.solve(a, b, temps)
        shells = [np.maximum(0.5 * (old + new), AIR_K + 0.5) for old, new in zip(shells, net.shells(temps, outs))]
        before, loss = loss, net.factor * float(np.sum(into * (hot_K - temps[net.hot])))
        if abs(loss - before) < 1e-5 * loss:
            break
    else:
        raise AssertionError("not steady")
    areas = [outer[2] for outer in net.outer]
    shell_mean = sum(float(np.sum(s * a)) for s, a in zip(shells, areas)) / sum(float(np.sum(a)) for a in areas)
    shell_max = max(float(np.max(s)) for s in shells)
    # From cold, hot face held from the first moment, heat kept by enthalpy.
    temps = np.full(len(net.layer), AIR_K)
    shells = [np.full(len(cell), AIR_K + 1.0) for cell, *_ in net.outer]
    ratio, count = 300 ** (1 / 120), 120
    first = HEAT_UP_S * (ratio - 1) / (ratio**count - 1)
    absorbed = 0.0
    energy = np.zeros_like(temps)
    grids = []
    for lining in net.materials:
        grid = np.linspace(AIR_K, 2073.0, 1200)
        cp = np.interp(grid, lining.temps_K, lining.heat_capacities_J_kgK)
        grids.append((grid, np.concatenate(([0.0], np.cumsum((cp[1:] + cp[:-1]) / 2 * np.diff(grid))))))
    for n in range(count):
        step = first * ratio**n
        a, b, into, outs = net.matrix(temps, hot_K, film, shells)
        cp = net.per_layer("heat_capacities_J_kgK", temps)
        inertia = net.mass * cp / step
        new = net.solve(a + diags(inertia), b + inertia * temps, temps)
        absorbed += step * net.factor * float(np.sum(into * (hot_K - new[net.hot])))
        shells = [np.maximum(s, AIR_K + 0.5) for s in net.shells(new, outs)]
        energy += cp * (new - temps)
        temps = new.copy()
        for m, (grid, sums) in enumerate(grids):
            mine = net.layer == m
            temps[mine] = np.interp(energy[mine], sums, grid)
    stored = net.factor * float(np.sum(net.mass * energy))
    return loss, shell_mean, stored, absorbed, shell_max, len(net.layer)


def main():
    rows = []
    for name, shape, sizes_in, layers, hot_K in CASES:
        # Two grids; what is written is carried on to a grid without steps (second order).
        coarse = run(shape, sizes_in, layers, hot_K, 0.0057 if shape == "box" else 0.0034, 13 if shape == "box" else 24)
        fine = run(shape, sizes_in, layers, hot_K, 0.0038 if shape == "box" else 0.0017, 20 if shape == "box" else 48)
        ratio = (fine[5] / coarse[5]) ** (2 / (3 if shape == "box" else 2))
        best = [f + (f - c) / (ratio - 1) for f, c in zip(fine[:5], coarse[:5])]
        print(name, coarse, fine, [round(x, 1) for x in best], flush=True)
        lining = " + ".join(f"{key} {inch:g}" for key, inch in layers)
        rows.append(
            f"{name},{shape},{'x'.join(f'{s:g}' for s in sizes_in)},{lining},{hot_K:g},"
            f"{best[0]:.1f},{best[1]:.1f},{best[4]:.1f},{best[2] / 1e6:.3f},{best[3] / 1e6:.3f}"
        )
    Path(__file__).with_name("walls_3d.csv").write_text(
        "# quantity:  closed lined chambers: steady heat through the lining; heat in it after 1800 s from cold\n"
        "#            with the hot face held from the first moment\n"
        "# reference: air and cold lining 294.15 K, shell emissivity 0.9; sizes inside, in inches; lying cylinders\n"
        "# source:    finite volumes in three dimensions, written by make_walls_3d.py with scipy\n"
        "# trust:     computed; two grids carried on to none, they differ by less than 1 %\n"
        "case,shape,inside_in,lining,hot_face_K,loss_W,shell_mean_K,shell_max_K,stored_MJ,absorbed_MJ\n"
        + "\n".join(rows)
        + "\n",
        encoding="utf-8",
    )


if __name__ == "__main__":
    main()
