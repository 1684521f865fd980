"""The stream inside one port: wall velocity gradient at its exit and how much a hot wall warms the mixture.

Laminar, turbulent and in between, with the thin young boundary layer of a short port counted.
"""

from bisect import bisect_right
from functools import cache
from itertools import pairwise
from math import exp, inf, log, sqrt

from ..errors import require
from ..tables import read_table

# Pipe flow is laminar below and turbulent above these Reynolds numbers (Bird, Stewart & Lightfoot; memory).
REYNOLDS_LAMINAR, REYNOLDS_TURBULENT = 2300.0, 4000.0


def turbulent_weight(reynolds):
    """How turbulent a port counts: 0 up to Re 2300, 1 from Re 4000, a straight line between (common practice) [-].

    Laminar and turbulent figures are blended by this weight, so nothing jumps as a flow is turned up.
    """
    if 0 <= reynolds <= REYNOLDS_LAMINAR:
        return 0.0
    require(0 <= reynolds < inf, "reynolds", reynolds, "must be 0 or more")
    return min((reynolds - REYNOLDS_LAMINAR) / (REYNOLDS_TURBULENT - REYNOLDS_LAMINAR), 1.0)


def developed_gradient_1_s(velocity_m_s, diameter_m):
    """Wall velocity gradient of developed laminar flow in a round port.

        g = 8 V/d

    Arguments:
        velocity_m_s   mean over the port   [m/s]
        diameter_m     port                 [m]
    Returns:
        float          g                    [1/s]
    Source:
        Hagen-Poiseuille (published)
    Checked by:
        tests/reference/wall_gradient.csv
    """
    return 8 * velocity_m_s / diameter_m


def friction_gradient_1_s(velocity_m_s, kinematic_viscosity_m2_s, friction_fanning):
    """Wall velocity gradient from the friction factor, in any regime.

        g = f V^2 / (2 nu)

    Arguments:
        velocity_m_s               mean over the port    [m/s]
        kinematic_viscosity_m2_s   nu                    [m2/s]
        friction_fanning           f, 16/Re if laminar   [-]
    Returns:
        float                      g                     [1/s]
    Source:
        definition of the Fanning friction factor (published)
    Checked by:
        tests/reference/wall_gradient.csv
    """
    return friction_fanning * velocity_m_s**2 / (2 * kinematic_viscosity_m2_s)


def blasius_friction_fanning(reynolds):
    """Fanning friction factor of a smooth turbulent pipe, f = 0.0791 Re^-0.25 (Blasius; memory) [-]."""
    return 0.0791 * reynolds**-0.25


@cache
def _developing_points():
    rows = read_table("developing_flow")
    return [log(row["x_plus"]) for row in rows], [log(row["gradient_ratio"]) for row in rows]


def entry_gradient_ratio(x_plus):
    """Wall gradient a distance L into a port over the developed 8V/d, laminar, flat profile at the entry.

        x+ = L/(d Re);  ratio -> 1 for x+ > 0.15, ~ x+^-1/2 for a very short port

    Arguments:
        x_plus   [-]   above 0
    Returns:
        float    [-]   1 or more
    Assumes:
        no vena contracta at the entry
    Source:
        data/developing_flow.csv, the boundary-layer equations of Shah & London (1978) marched (published, computed)
    Checked by:
        tests/test_port_stream.py: friction of Shah 1978, the flat plate for a very short port, 1 for a long one
    """
    require(x_plus > 0, "x_plus", x_plus, "must be above 0")
    xs, ys = _developing_points()
    x = log(x_plus)
    if x >= xs[-1]:
        return 1.0
    if x <= xs[0]:
        return exp(ys[0] - 0.5 * (x - xs[0]))
    i = bisect_right(xs, x)
    return exp(ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1]))


def laminar_gradient_1_s(velocity_m_s, diameter_m, length_m, kinematic_viscosity_m2_s):
    """Wall velocity gradient at the exit of a short port, laminar: 8V/d times entry_gradient_ratio(L/(d Re)) [1/s]."""
    reynolds = velocity_m_s * diameter_m / kinematic_viscosity_m2_s
    return developed_gradient_1_s(velocity_m_s, diameter_m) * entry_gradient_ratio(length_m / diameter_m / reynolds)


def turbulent_gradient_1_s(velocity_m_s, diameter_m, length_m, kinematic_viscosity_m2_s):
    """Wall velocity gradient at the exit of a port, turbulent: Blasius, and never below the laminar one [1/s].

    In a very short port the boundary layer is too young to be turbulent and the laminar one is the steeper.
    """
    reynolds = velocity_m_s * diameter_m / kinematic_viscosity_m2_s
    blasius = friction_gradient_1_s(velocity_m_s, kinematic_viscosity_m2_s, blasius_friction_fanning(reynolds))
    return max(blasius, laminar_gradient_1_s(velocity_m_s, diameter_m, length_m, kinematic_viscosity_m2_s))


def hausen_nusselt(graetz):
    """Mean Nusselt number of laminar flow that enters a hot round port with a developed velocity profile.

        Nu = 3.66 + 0.0668 Gz / (1 + 0.04 Gz^(2/3)),   Gz = Re Pr d/L

    Arguments:
        graetz   Gz    [-]   above 0
    Returns:
        float    Nu    [-]
    Source:
        Hausen (1943) as in Incropera & DeWitt (memory)
    Checked by:
        tests/reference/port_preheat.csv
    """
    return 3.66 + 0.0668 * graetz / (1 + 0.04 * graetz ** (2 / 3))


def gnielinski_nusselt(reynolds, prandtl):
    """Nusselt number of turbulent flow in a smooth pipe.

        Nu = (f/8)(Re - 1000) Pr / (1 + 12.7 sqrt(f/8) (Pr^(2/3) - 1)),   f = (0.79 ln Re - 1.64)^-2

    Arguments:
        reynolds   Re   [-]   2300 to 5e6
        prandtl    Pr   [-]   0.5 to 2000
    Returns:
        float      Nu   [-]
    Source:
        Gnielinski, Int. Chem. Eng. 16 (1976) 359; friction: Petukhov (memory)
    Checked by:
        tests/test_port_stream.py, against the library ht
    """
    f8 = (0.79 * log(reynolds) - 1.64) ** -2 / 8
    return f8 * (reynolds - 1000) * prandtl / (1 + 12.7 * sqrt(f8) * (prandtl ** (2 / 3) - 1))


def mean_nusselt(graetz, reynolds, prandtl):
    """Mean Nusselt number over a port: Hausen's below Re 2300, Gnielinski's above 4000, blended between [-]."""
    w = turbulent_weight(reynolds)
    return (1 - w) * hausen_nusselt(graetz) + (w * gnielinski_nusselt(reynolds, prandtl) if w > 0 else 0.0)


def port_exit_temp_K(graetz, reynolds, prandtl, inlet_temp_K, wall_temp_K):
    """Mean temperature of the stream that leaves a port with a wall of one temperature.

        T = T_w - (T_w - T_in) exp(-4 Nu/Gz)

    Arguments:
        graetz         Gz = m cp 4/(pi k L) = Re Pr d/L   [-]   above 0
        reynolds       at the entry, picks the regime     [-]
        prandtl        Pr                                 [-]
        inlet_temp_K   T_in                               [K]
        wall_temp_K    T_w, mean over the port's length   [K]
    Returns:
        float          T                                  [K]   between T_in and T_w
    Assumes:
        Nu of mean_nusselt
    Source:
        heat balance of a tube at constant wall temperature (published)
    Checked by:
        tests/reference/port_preheat.csv
    """
    require(graetz > 0, "graetz", graetz, "must be above 0")
    nusselt = mean_nusselt(graetz, reynolds, prandtl)
    return wall_temp_K - (wall_temp_K - inlet_temp_K) * exp(-4 * nusselt / graetz)


class StreamProperties:
    """Viscosity, conductivity and heat capacity of a mixture over temperature, quick to evaluate.

    `mixture_at(temp_K)` gives an object with density_kg_m3, viscosity_Pas, conductivity_W_mK, heat_capacity_J_kgK, as
    mixture.Mixture has. It is called at the nodes only; between and beyond them each property is a power of T,
    which strays by less than 0.2 % from 250 to 1000 K. Density is ideal.
    """

    NODES_K = (250.0, 330.0, 440.0, 580.0, 760.0, 1000.0)

    def __init__(self, mixture_at):
        found = [mixture_at(temp_K) for temp_K in self.NODES_K]
        self.density_times_temp = found[0].density_kg_m3 * self.NODES_K[0]
        rows = [(m.viscosity_Pas, m.conductivity_W_mK, m.heat_capacity_J_kgK) for m in found]
        self._powers = [
            (t0, *low, *(log(b / a) / log(t1 / t0) for a, b in zip(low, high)))
            for (t0, t1), (low, high) in zip(pairwise(self.NODES_K), pairwise(rows))
        ]

    def at(self, temp_K):
        """(density [kg/m3], viscosity [Pa s], conductivity [W/m/K], heat capacity [J/kg/K]) at a temperature."""
        require(temp_K > 0, "temp_K", temp_K, "must be above 0 K")
        row = self._powers[bisect_right(self.NODES_K, temp_K, 1, len(self.NODES_K) - 1) - 1]
        t0, viscosity, conductivity, capacity, n_viscosity, n_conductivity, n_capacity = row
        s = temp_K / t0
        return (
            self.density_times_temp / temp_K,
            viscosity * s**n_viscosity,
            conductivity * s**n_conductivity,
            capacity * s**n_capacity,
        )


def stream_exit_temp_K(velocity_m_s, diameter_m, length_m, properties, inlet_temp_K, wall_temp_K):
    """Exit temperature of a port's stream with the properties at the mean of inlet and exit temperature.

    Arguments:
        velocity_m_s           mean, at inlet temperature       [m/s]   above 0
        diameter_m, length_m   of the port                      [m]
        properties             StreamProperties of the mixture
        inlet_temp_K           mixture in the plenum            [K]
        wall_temp_K            mean of the port's wall          [K]
    Returns:
        float                  mean temperature at the exit     [K]
    Source:
        port_exit_temp_K
    Checked by:
        tests/test_port_stream.py
    """
    density, viscosity, _, _ = properties.at(inlet_temp_K)
    flux = density * velocity_m_s
    reynolds, exit_K = flux * diameter_m / viscosity, inlet_temp_K
    for _ in range(5):
        _, mu, k, cp = properties.at((inlet_temp_K + exit_K) / 2)
        exit_K = port_exit_temp_K(
            flux * diameter_m**2 * cp / (k * length_m), reynolds, mu * cp / k, inlet_temp_K, wall_temp_K
        )
    return exit_K
