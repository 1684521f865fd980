"""Whether the flame stays on a port: velocity below which it can run back in, and above which a cold one lifts off.

A flame next to a wall moves by the wall velocity gradient of the stream: too gentle and it slips upstream along the
wall (flashback), too steep and it is washed off the rim (blow-off). Velocities are those of the mixture at plenum
temperature; at a fixed equivalence ratio they are proportional to the firing rate.
"""

from functools import cache
from math import exp, inf, log, sqrt

from ..errors import InputError, require
from .band import Band
from .port_stream import (
    REYNOLDS_LAMINAR,
    laminar_gradient_1_s,
    stream_exit_temp_K,
    turbulent_gradient_1_s,
    turbulent_weight,
)
from .root import false_position, near_root

# Flashback constant: fixed so that stoichiometric methane (S_L 0.377 m/s, alpha 22.3e-6 m2/s) gives 400 1/s, the figure
# of Lewis & von Elbe (memory). Both gradients are known to +- 30 % at best; flames measured on tubes went back at up to
# a third above the law (tests/reference/flashback_tube.csv).
FLASHBACK_CONSTANT = 0.063
BLOW_OFF_CONSTANT = 0.23
GRADIENT_BAND, FLASHBACK_ABOVE = 0.30, 1 / 3
# A turbulent stream flashes back at a steeper mean gradient than a laminar one (memory: Fine, NACA; review of
# Kalantari & McDonell 2017).
TURBULENT_FLASHBACK = Band(1.5, 2.0, 3.0)
# Puffs of turbulence last in a pipe from the first Reynolds number on (Avila and others 2011; memory), and the flame
# goes back in the first of them: so to be careful a cold stream counts as turbulent from the second on. A hot port
# calms the stream that it warms, and is far shorter than the tubes that were measured: there turbulent_weight holds.
REYNOLDS_PUFFS = (2000.0, REYNOLDS_LAMINAR)
# A lip too hot to quench lets the flame nearer the wall, where the stream is slower. That it does so is published; by
# how much no correlation says: 2 to 4 times the critical gradient is common practice, their geometric mean the middle.
LIP_QUENCHES_K = (600.0, 800.0)
HOT_LIP_FLASHBACK = Band(2.0, 2.0 * sqrt(2), 4.0)

SCAN_LOW_M_S, SCAN_HIGH_M_S, SCAN_RATIO = 1e-9, 300.0, 2.0
ROOT_WITHIN = 1e-12  # of the logarithm of a velocity over SCAN_LOW_M_S, by near_root


def flashback_gradient_1_s(burning_velocity, thermal_diffusivity_m2_s):
    """Critical wall gradient against flashback along the wall of a port, laminar stream.

        g_F = 0.063 S_L^2/alpha

    Arguments:
        burning_velocity           S_L at the temperature of the stream        [m/s]    a Band
        thermal_diffusivity_m2_s   alpha at the same temperature               [m2/s]   above 0
    Returns:
        Band                       g_F; - 30 to + 33 % of the law and the band of S_L [1/s]
    Assumes:
        an open flame on a wall that cools it; on a hot lip see hot_lip, and a flame shut in by
        the duct goes back at several times this gradient
    Source:
        Putnam & Jensen (1949) group (memory), constant fixed to Lewis & von Elbe's methane (memory)
    Checked by:
        tests/reference/critical_gradients.csv, flashback_tube.csv
    """
    return _critical(FLASHBACK_CONSTANT, burning_velocity, thermal_diffusivity_m2_s, FLASHBACK_ABOVE)


def hot_lip(share=1.0):
    """Critical gradient on a lip too hot to quench over that on a cold one at the same temperature of the stream.

        g_hot/g_F = m^share,   m = 2 to 4;   with the band of g_F by times

    Arguments:
        share      how hot the lip is: lip_share  [-]     0 to 1
    Returns:
        Band       g_hot/g_F                      [-]
    Assumes:
        what is not known of the law and what is not known of the lip have nothing to do with each other, so their
        bands do not add up at their worst
    Source:
        direction: Dugger 1955, preheated propane flames (published); size: common practice
    Checked by:
        tests/test_flame_holding.py
    """
    low, value, high = HOT_LIP_FLASHBACK
    return Band(low**share, value**share, high**share)


def times(*bands):
    """Product of bands that have nothing to do with each other: their logarithms add as squares."""
    value, below, above = 1.0, 0.0, 0.0
    for low, middle, high in bands:
        value *= middle
        below += log(low / middle) ** 2
        above += log(high / middle) ** 2
    return Band(value * exp(-sqrt(below)), value, value * exp(sqrt(above)))


def mixture_off(burning_velocity_at, equivalence_ratio, off):
    """How far both critical gradients move when the mixture is not quite what was set.

        g_F: S_L^2(phi +- off)/S_L^2(phi);   g_B: the same times (phi +- off)^6.4/phi^6.4

    Arguments:
        burning_velocity_at   function of phi -> Band of S_L   [m/s]
        equivalence_ratio     phi                              [-]
        off                   leaner and richer                [-]     below phi
    Returns:
        tuple of Band         (of flashback, of blow-off), each with 1 as its value   [-]
    Assumes:
        alpha does not move; a flame in open air
    Source:
        flashback_gradient_1_s and blow_off_gradient_1_s at both ends (calculated)
    Checked by:
        tests/test_flame_holding.py
    """
    speed = burning_velocity_at(equivalence_ratio).value
    ends = [equivalence_ratio - off, equivalence_ratio + off]
    back = [(burning_velocity_at(end).value / speed) ** 2 for end in ends]
    lift = [one * (end / equivalence_ratio) ** 6.4 for one, end in zip(back, ends, strict=True)]
    return tuple(Band(min(1.0, *found), 1.0, max(1.0, *found)) for found in (back, lift))


def lip_share(lip_K):
    """How much a lip's heat counts: 0 up to 600 K, all from 800 K, a straight line between (common practice) [-]."""
    cool, hot = LIP_QUENCHES_K
    return min(max((lip_K - cool) / (hot - cool), 0.0), 1.0)


def _critical(constant, burning_velocity, diffusivity, above=GRADIENT_BAND):
    require(0 < diffusivity < 1, "thermal_diffusivity_m2_s", diffusivity, "must be above 0 m2/s")
    low, value, high = burning_velocity
    law = constant / diffusivity
    return Band(law * low * low / (1 + GRADIENT_BAND), law * value * value, law * high * high * (1 + above))


def blow_off_gradient_1_s(burning_velocity, thermal_diffusivity_m2_s, equivalence_ratio, open_air):
    """Critical wall gradient above which the flame of one port alone lifts off.

        g_B = 0.23 S_L^2/alpha [1 - (1 - phi^6.4) sigma],   sigma = 1 in open air, 0 in burnt gas

    Arguments:
        burning_velocity           S_L at the temperature of the stream   [m/s]    a Band
        thermal_diffusivity_m2_s   alpha at the same temperature          [m2/s]   above 0
        equivalence_ratio          phi                                    [-]      up to 1.36; carried on beyond
        open_air                   True when cold air surrounds the flame
    Returns:
        Band                       g_B; +- 30 % and the band of S_L       [1/s]
    Assumes:
        a single free flame. Ports side by side in a hot face hold far more, so this limits the light-up only
    Source:
        Reed, Combust. Flame 11 (1967) 177 (memory)
    Checked by:
        tests/reference/critical_gradients.csv
    """
    surrounded = 1 - (1 - equivalence_ratio**6.4) * (1 if open_air else 0)
    return _critical(BLOW_OFF_CONSTANT * surrounded, burning_velocity, thermal_diffusivity_m2_s)


class PortFlame:
    """One port with its mixture: the margins against flashback and blow-off at any velocity.

    Attributes:
        diameter_m, length_m    of the port
        properties              port_stream.StreamProperties of the mixture
        burning_velocity_at     function of temp_K -> Band [m/s]
        equivalence_ratio       phi
        inlet_temp_K            mixture in the plenum
        wall_temp_K             mean of the port's wall; None when cold (no preheat)
        hot_port                block_fin.HotPort of a hot block as worked out, instead of a wall of one temperature
        lip_glows               False with hot ports: a block that warms up, its lip still quenching the flame
        off                     mixture_off, where the mixture is not sure; None: exactly as it is said
        burnt                   True with cold ports in a chamber full of burnt gas instead of open air
    """

    def __init__(
        self,
        diameter_m,
        length_m,
        properties,
        burning_velocity_at,
        equivalence_ratio,
        inlet_temp_K,
        wall_temp_K=None,
        hot_port=None,
        lip_glows=True,
        off=None,
        burnt=False,
    ):
        for name, value in (("diameter_m", diameter_m), ("length_m", length_m), ("inlet_temp_K", inlet_temp_K)):
            require(0 < value < float("inf"), name, value, "must be above 0")
        require(
            wall_temp_K is None or 0 < wall_temp_K < 2000,
            "wall_temp_K",
            str(wall_temp_K),
            "must be above 0 and below 2000 K",
        )
        self.diameter_m, self.length_m, self.properties = diameter_m, length_m, properties
        self.burning_velocity_at, self.equivalence_ratio = burning_velocity_at, equivalence_ratio
        self.inlet_temp_K, self.wall_temp_K, self.hot_port = inlet_temp_K, wall_temp_K, hot_port
        self.lip_glows, self.off = lip_glows, off
        self._cold = wall_temp_K is None and hot_port is None
        self.open_air = self._cold and not burnt
        # What leaves a cold port is the same at any velocity, and so are its critical gradients.
        once = cache if self._cold else lambda law: law
        self._flashback = once(self._flashback_gradient_1_s), TURBULENT_FLASHBACK.high
        self._lift = once(self._lift_gradient_1_s), 1.0
        density, viscosity, _, _ = properties.at(inlet_temp_K)
        self._inlet_density, self._inlet_viscosity = density, viscosity
        self._leaves_cold = self._leaves(0.0) if self._cold else None

    def _exit_temp_and_lip(self, velocity_m_s):
        """Temperature of the stream at the exit of the port [K], and how hot its lip counts: lip_share."""
        if self.hot_port is not None:
            exit_K, face_K = self.hot_port.exit_and_face_K(velocity_m_s)
            return exit_K, lip_share(face_K)
        if self.wall_temp_K is None:
            return self.inlet_temp_K, 0.0
        at_K = stream_exit_temp_K(
            velocity_m_s, self.diameter_m, self.length_m, self.properties, self.inlet_temp_K, self.wall_temp_K
        )
        return at_K, 1.0

    def _reynolds(self, velocity_m_s):
        """Reynolds number where the stream enters the port [-]."""
        return velocity_m_s * self._inlet_density * self.diameter_m / self._inlet_viscosity

    def _leaves(self, velocity_m_s):
        """(density, nu, S_L band, alpha, lip_share) at the exit of the port."""
        exit_K, lip = self._exit_temp_and_lip(velocity_m_s)
        density, viscosity, k, cp = self.properties.at(exit_K)
        return density, viscosity / density, self.burning_velocity_at(exit_K), k / (density * cp), lip

    def _exit(self, velocity_m_s):
        """(turbulent weight, laminar gradient, turbulent gradient, S_L band, alpha, lip_share) at the exit of the
        port."""
        density, nu, burning, alpha, lip = self._leaves_cold or self._leaves(velocity_m_s)
        speed = velocity_m_s * self._inlet_density / density
        # The regime is set where the stream enters; a hot wall has no time to calm it in a few diameters.
        reynolds = self._reynolds(velocity_m_s)
        w = turbulent_weight(reynolds)
        laminar = turbulent = laminar_gradient_1_s(speed, self.diameter_m, self.length_m, nu)
        if reynolds > REYNOLDS_PUFFS[0]:
            turbulent = turbulent_gradient_1_s(speed, self.diameter_m, self.length_m, nu)
        return w, laminar, turbulent, burning, alpha, lip

    def wall_gradient_1_s(self, velocity_m_s):
        """Wall velocity gradient at the exit of the port [1/s]."""
        w, laminar, turbulent, *_ = self._exit(velocity_m_s)
        return (1 - w) * laminar + w * turbulent

    def flashback_margin(self, velocity_m_s):
        """Wall gradient over the critical one, with its band; below 1 the flame can enter the port [-].

        A turbulent stream counts its gradient divided by TURBULENT_FLASHBACK, a cold one at the careful end from its
        first puffs on; a lip that glows is a hot one.
        """
        w, laminar, turbulent, *leaves = self._exit(velocity_m_s)
        low, value, high = self._flashback[0](*leaves)
        puffs, factor = self._puffs(velocity_m_s) if self._cold else w, TURBULENT_FLASHBACK
        return Band(
            ((1 - puffs) * laminar + puffs * turbulent / factor.high) / high,
            ((1 - w) * laminar + w * turbulent / factor.value) / value,
            ((1 - w) * laminar + w * turbulent / factor.low) / low,
        )

    def _puffs(self, velocity_m_s):
        """How turbulent a cold stream counts at the careful end: REYNOLDS_PUFFS, a straight line between [-]."""
        first, all_of_it = REYNOLDS_PUFFS
        return min(max((self._reynolds(velocity_m_s) - first) / (all_of_it - first), 0.0), 1.0)

    def _flashback_gradient_1_s(self, burning, alpha, lip):
        critical = [flashback_gradient_1_s(burning, alpha)]
        if lip > 0 and self.lip_glows:
            critical.append(hot_lip(lip))
        if self.off:
            critical.append(self.off[0])
        return times(*critical)

    def blow_off_margin(self, velocity_m_s):
        """Wall gradient over the critical one for blow-off, with its band; above 1 a flame alone lifts [-].

        Cold ports count open air round the flame unless it is burnt, hot ones burnt gas.
        """
        w, laminar, turbulent, *leaves = self._exit(velocity_m_s)
        critical = self._lift[0](*leaves)
        return Band(*(((1 - w) * laminar + w * turbulent) / limit for limit in reversed(critical)))

    def _lift_gradient_1_s(self, burning, alpha, _):
        critical = blow_off_gradient_1_s(burning, alpha, self.equivalence_ratio, open_air=self.open_air)
        # In burnt gas only the burning velocity moves with the mixture, as it does for flashback.
        return times(critical, self.off[self.open_air]) if self.off else critical

    def _none_above_m_s(self, critical_1_s, divided):
        """Velocity that no limit lies above. In a cold port, and beyond the rows of a hot one, the critical gradient
        stays as it is; the stream's is at least that of developed laminar flow, of turbulent flow `divided`."""
        if self.wall_temp_K is not None:
            return SCAN_HIGH_M_S
        stays_m_s = SCAN_LOW_M_S if self.hot_port is None else self.hot_port.velocities_m_s[-1]
        quickest_m_s = critical_1_s(*self._exit(stays_m_s)[3:]).high * self.diameter_m / 8
        if self._reynolds(divided * quickest_m_s) > REYNOLDS_PUFFS[0]:
            quickest_m_s *= divided
        return min(max(stays_m_s, quickest_m_s), SCAN_HIGH_M_S)

    def flashback_velocity_m_s(self):
        """Mixture velocity at plenum temperature below which the flame can enter the port; Band [m/s].

        The highest root of flashback_margin = 1; `high` belongs to the low end of the margin.
        """
        return Band(*reversed(self._velocity(self.flashback_margin, from_m_s=self._none_above_m_s(*self._flashback))))

    def lift_velocity_m_s(self):
        """Mixture velocity at plenum temperature above which the flame of a port alone lifts off; Band [m/s]."""
        return Band(*reversed(self._velocity(self.blow_off_margin, from_m_s=self._none_above_m_s(*self._lift))))

    def careful_flashback_velocity_m_s(self):
        """The high end of flashback_velocity_m_s alone; inf when above all that is sought [m/s]."""
        from_m_s = self._none_above_m_s(*self._flashback)
        if from_m_s == SCAN_HIGH_M_S and self.flashback_margin(from_m_s).low <= 1:
            return inf
        return self._velocity(self.flashback_margin, edges=(0,), from_m_s=from_m_s)[0]

    def careful_lift_velocity_m_s(self):
        """The low end of lift_velocity_m_s alone [m/s]."""
        return self._velocity(self.blow_off_margin, edges=(2,), from_m_s=self._none_above_m_s(*self._lift))[2]

    def _velocity(self, margin, edges=(0, 1, 2), from_m_s=SCAN_HIGH_M_S):
        """Highest velocity at which edges of the margin's band rise through 1: scan downwards, then close in.

        An edge that is not asked for is None. The scan stops where the careful margin dips, or it would step over it,
        and where the stream is calm: from there on down every margin falls.
        """
        calm_m_s, dip_m_s = (reynolds / self._reynolds(1.0) for reynolds in REYNOLDS_PUFFS)
        found, above = [None, None, None], (from_m_s, margin(from_m_s))
        while above[0] > calm_m_s and None in [found[edge] for edge in edges]:
            below_m_s = above[0] / SCAN_RATIO
            below_m_s = next((stop for stop in (dip_m_s, calm_m_s) if below_m_s < stop < above[0]), below_m_s)
            below = (below_m_s, margin(below_m_s))
            for edge in edges:
                if found[edge] is None and below[1][edge] <= 1:
                    ends = ((log(v), log(band[edge])) for v, band in (below, above))
                    found[edge] = exp(false_position(lambda u: log(margin(exp(u))[edge]), *ends, 1e-9))
            above = below
        for edge in edges:
            if found[edge] is None:
                found[edge] = self._calm_root_m_s(lambda at: margin(at)[edge], above[0], above[1][edge])
        return found

    def _calm_root_m_s(self, margin, from_m_s, over):
        """Velocity at which a margin rises through 1 below a calm one, where it is `over`: it falls there about with
        the power 1.5 of the velocity, and no slower than its root."""
        if from_m_s / over**2 < SCAN_LOW_M_S:
            raise InputError(
                "equivalence_ratio",
                self.equivalence_ratio,
                f"needs a limit of the flame between {SCAN_LOW_M_S:g} and {SCAN_HIGH_M_S:g} m/s",
            )
        top, falls = log(from_m_s / SCAN_LOW_M_S), log(over)
        return SCAN_LOW_M_S * exp(
            near_root(
                lambda u: log(margin(SCAN_LOW_M_S * exp(u))),
                top,
                top - falls / 1.5,
                top - 2 * falls,
                top,
                ROOT_WITHIN,
                f_at=falls,
            )
        )


def firing_rate_limit_W(limit_m_s, velocity_m_s, firing_rate_W):
    """Firing rate at a limit of velocity, at a fixed equivalence ratio: limit/velocity times the firing rate.

    Arguments:
        limit_m_s       flashback or lift velocity, a Band            [m/s]
        velocity_m_s    mixture in the port at firing_rate_W          [m/s]   above 0
        firing_rate_W                                                 [W]     above 0
    Returns:
        Band                                                          [W]
    Checked by:
        tests/test_flame_holding.py
    """
    require(0 < velocity_m_s < float("inf"), "velocity_m_s", velocity_m_s, "must be above 0")
    require(0 < firing_rate_W < float("inf"), "firing_rate_W", firing_rate_W, "must be above 0")
    return Band(*(limit / velocity_m_s * firing_rate_W for limit in limit_m_s))
