"""Steady heat through a lined wall to still air: loss, shell temperature and the temperature at every interface."""

from dataclasses import dataclass
from itertools import pairwise

from ..constants import ATM_PA
from ..errors import require
from .linings import TEMP_MAX_K, TEMP_MIN_K
from .outside import faces_loss_W
from .root import near_root

# Of the rise of the hot face, that of the shell: where to look first.
SHELL_RISES = (0.05, 0.1)
SHELL_WITHIN = 1e-13


@dataclass(frozen=True)
class SteadyWall:
    """Steady state of a wall.

    Attributes:
        loss_W         heat through the wall                                              [W]
        shell_temp_K   outside surface, one value for all faces                           [K]
        temps_K        hot face, every interface, shell: one more than there are layers   [K]
        depths_m       depth of those temperatures below the hot face                     [m]
    """

    loss_W: float
    shell_temp_K: float
    temps_K: tuple
    depths_m: tuple


def still_air(*, ambient_temp_K, emissivity, pressure_Pa=ATM_PA):
    """Film law of the outside: a function (faces, surface_temp_K) -> heat to air and surroundings [W]."""

    def loss_W(faces, surface_temp_K):
        return faces_loss_W(
            faces,
            emissivity=emissivity,
            surface_temp_K=surface_temp_K,
            ambient_temp_K=ambient_temp_K,
            pressure_Pa=pressure_Pa,
        )

    return loss_W


def checked_layers(wall, layers):
    """Depths of the layer faces [m] and the materials; InputError for `lining` when the wall cannot be built so."""
    require(len(layers) > 0, "lining", "empty", "needs at least one layer", "dense_castable 1in, blanket_8lb 2in")
    depths, materials = [0.0], []
    for lining, thickness_m in layers:
        require(
            0 < thickness_m < 10,
            "lining",
            f"{lining.key} {thickness_m:g} m",
            "needs a thickness above 0 and below 10 m",
            f"{lining.key} 0.0254 m",
        )
        materials.append(lining)
        depths.append(depths[-1] + thickness_m)
    limit = wall.thickest_m()
    require(
        depths[-1] <= limit,
        "lining",
        f"{depths[-1]:g} m in all",
        "must be thin enough for the corner factors of so small a chamber",
        f"{limit:.3g} m in all",
    )
    return tuple(depths), tuple(materials)


def steady_wall(*, wall, layers, hot_face_temp_K, ambient_temp_K, film_loss_W):
    """Heat through layers whose conductivity changes with temperature.

        layer:   integral of k dT over the layer = Q R,   R of Wall.layer_resistance_1_m
        outside: Q = sum over faces of A (h (Ts - Ta) + e sigma (Ts**4 - Ta**4))

    The shell temperature is bracketed between air and hot face; each trial marches from the shell to the hot face.

    Arguments:
        wall             chamber_walls.Wall
        layers           tuple of (linings.Material, thickness_m) from the hot face out
        hot_face_temp_K  [K]   above ambient, within the table of linings.py
        ambient_temp_K   [K]
        film_loss_W      function (faces, surface_temp_K) -> [W], such as still_air(...)
    Returns: SteadyWall
    Raises: InputError for chamber_temperature, ambient_temperature or lining
    Assumes: hot face at chamber temperature, layers in perfect contact, one shell temperature, still air
    Source: mean conductivity by the integral (Kirchhoff), any heat-transfer text. Published.
    Checked by: tests/test_walls.py (four wall examples, closed forms for a cylinder and for k linear in T),
        tests/test_walls_3d.py (steady_wall within 3 % of walls in three dimensions)
    """
    depths, materials = checked_layers(wall, layers)
    check_temperatures(hot_face_temp_K, ambient_temp_K)
    faces = wall.outside(depths[-1])
    conductances = [1 / wall.layer_resistance_1_m(low)(high) for low, high in pairwise(depths)]

    def march(shell_temp_K):
        heat_W, temps = film_loss_W(faces, shell_temp_K), [shell_temp_K]
        for lining, conductance in zip(reversed(materials), reversed(conductances)):
            at_cold = temps[-1]
            # Past the end of the table only while the bracket is still wide; the root lies inside.
            if at_cold > TEMP_MAX_K:
                beyond = (at_cold - TEMP_MAX_K) * lining.conductivities_W_mK[-1]
                sum_W_m = lining.conductivity_integrals_W_m[-1] + beyond
            else:
                sum_W_m = lining.conductivity_integral_W_m(at_cold)
            temps.append(lining.temp_at_integral_K(sum_W_m + heat_W / conductance))
        return heat_W, temps

    guesses = (ambient_temp_K + share * (hot_face_temp_K - ambient_temp_K) for share in SHELL_RISES)
    shell = near_root(
        lambda ts: march(ts)[1][-1] - hot_face_temp_K, *guesses, ambient_temp_K, hot_face_temp_K, SHELL_WITHIN
    )
    _, temps = march(shell)
    temps = [hot_face_temp_K] + temps[-2::-1]
    # The heat once more, now from the conduction side of the first layer.
    first = materials[0]
    loss = conductances[0] * (first.conductivity_integral_W_m(temps[0]) - first.conductivity_integral_W_m(temps[1]))
    return SteadyWall(loss, shell, tuple(temps), depths)


def steady_profile(wall, layers, steady, per_layer=32):
    """Temperatures between the interfaces of a steady wall.

        integral of k dT falls in proportion to R(x) within a layer,   R of Wall.layer_resistance_1_m

    Arguments:
        wall, layers   as in steady_wall
        steady         SteadyWall of them
        per_layer      steps in each layer   [-]   1 or more
    Returns: (depths_m, temps_K), hot face first, interfaces included
    Checked by: tests/test_heat_chamber.py (the same wall heated until it is steady, by heatup.heat_up: within 1 K)
    """
    depths, temps = [0.0], [steady.temps_K[0]]
    for i, (lining, _) in enumerate(layers):
        low, high = steady.depths_m[i], steady.depths_m[i + 1]
        at_low, at_high = (lining.conductivity_integral_W_m(temp) for temp in steady.temps_K[i : i + 2])
        resistance_1_m = wall.layer_resistance_1_m(low)
        for n in range(1, per_layer):
            depth = low + (high - low) * n / per_layer
            share = resistance_1_m(depth) / resistance_1_m(high)
            depths.append(depth)
            temps.append(lining.temp_at_integral_K(at_low + (at_high - at_low) * share))
        depths.append(high)
        temps.append(steady.temps_K[i + 1])
    return tuple(depths), tuple(temps)


def check_temperatures(hot_face_temp_K, ambient_temp_K):
    """Refuse temperatures that the lining tables do not hold or a chamber colder than the air."""
    require(
        TEMP_MIN_K <= ambient_temp_K <= 373.15,
        "ambient_temperature",
        f"{ambient_temp_K:g} K",
        f"must be within {TEMP_MIN_K:g} to 373.15 K (-50 to 100 degC)",
        "293.15 K",
    )
    require(
        ambient_temp_K < hot_face_temp_K <= TEMP_MAX_K,
        "chamber_temperature",
        f"{hot_face_temp_K:g} K",
        f"must be above the air and at most {TEMP_MAX_K:g} K (1800 degC)",
        "1573.15 K",
    )
