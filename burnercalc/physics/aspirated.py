"""Air that a gas jet pulls into a throat: the mixture of a naturally aspirated burner."""

from dataclasses import dataclass
from math import pi, sqrt

from ..constants import AIR_MOLAR_MASS_KG_MOL, ATM_PA, GAS_CONSTANT_J_MOLK
from ..errors import require
from .atmosphere import air_density_kg_m3
from .gas_jet import critical_pressure_ratio, jet_flow_kg_s, jet_mass_flux_kg_m2s

# Loss coefficients on the velocity head in the throat. 1 and 1 give back the plain momentum relation; a well rounded
# inlet is near 0.1 and a good flare regains about half of the exit head (common practice).
PLAIN_INLET_LOSS, PLAIN_OUTLET_LOSS = 1.0, 1.0


@dataclass(frozen=True)
class AspiratedMix:
    """Flows of a naturally aspirated burner.

    Attributes:
        gas_flow_kg_s          through the jet                              [kg/s]
        air_flow_kg_s          pulled in                                    [kg/s]
        air_gas_ratio_volume   at equal temperature and pressure            [-]
        equivalence_ratio      above 1 is rich                              [-]
        thrust_N               of the jet                                   [N]
        throat_velocity_m_s    of the mixture                               [m/s]
    """

    gas_flow_kg_s: float
    air_flow_kg_s: float
    air_gas_ratio_volume: float
    equivalence_ratio: float
    thrust_N: float
    throat_velocity_m_s: float


def jet_thrust_N(
    *, diameter_m, discharge_coefficient, upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, heat_capacity_ratio
):
    """Momentum that a gas jet brings, with the push of gas that still expands when the jet is choked.

        F = Cd A (G u + pe - p),   u = sqrt(2k/(k-1) R T0/M (1 - r**((k-1)/k))),   r = pe/p0, not below r*

    Arguments:
        diameter_m              of the jet                                 [m]
        discharge_coefficient   Cd: narrows the area, not the velocity     [-]
        upstream_Pa             p0, absolute                               [Pa]
        downstream_Pa           p, absolute                                [Pa]
        temp_K                  T0, gas at rest                            [K]
        molar_mass_kg_mol       M                                          [kg/mol]
        heat_capacity_ratio     k                                          [-]
    Returns: float [N]
    Source: gas dynamics (Sutton, Rocket Propulsion Elements, thrust of a nozzle without expansion). Published.
    Checked by: tests/test_aspirated.py (k = 1.4 into vacuum: 1.268 p0 A; low pressure: 2 A dp)
    """
    k = heat_capacity_ratio
    flux = jet_mass_flux_kg_m2s(upstream_Pa, downstream_Pa, temp_K, molar_mass_kg_mol, k)
    ratio = max(downstream_Pa / upstream_Pa, critical_pressure_ratio(k))
    velocity = sqrt(2 * k / (k - 1) * GAS_CONSTANT_J_MOLK * temp_K / molar_mass_kg_mol * (1 - ratio ** ((k - 1) / k)))
    area = discharge_coefficient * pi / 4 * diameter_m**2
    return area * (flux * velocity + ratio * upstream_Pa - downstream_Pa)


def aspirated_mix(
    *,
    gas_gauge_Pa,
    jet_diameter_m,
    discharge_coefficient,
    throat_diameter_m,
    stoichiometric_ratio_volume,
    molar_mass_kg_mol,
    heat_capacity_ratio,
    gas_temp_K=288.15,
    air_temp_K=288.15,
    ambient_Pa=ATM_PA,
    inlet_loss=PLAIN_INLET_LOSS,
    outlet_loss=PLAIN_OUTLET_LOSS,
    chamber_gauge_Pa=0.0,
):
    """Flows and equivalence ratio of a jet that blows into a straight throat.

    Momentum over the throat, from still air to the chamber (Va, Vg volume flows, A throat area):

        F = (1 + Ko)/2 (mg + ma)(Vg + Va)/A + (Ki - 1)/2 ma Va/A + pc A

    Ki is the loss of the air on its way into the throat, Ko all loss after mixing with the exit head counted in (1 = a
    plain tube end, below 1 = a flare that regains pressure). Ki = Ko = 1, pc = 0 is F = momentum of the mixture, from
    which (1 + r)(s + r) = s A/Aj for low gas pressure; Prigg's r = sqrt(s)(D/d - 1) is its form for r well above s.

    Arguments:
        gas_gauge_Pa                  above ambient at the jet               [Pa]      above 0
        jet_diameter_m                                                       [m]
        discharge_coefficient         of the jet                             [-]
        throat_diameter_m             narrowest part of the mixing tube      [m]       above 3 jet diameters
        stoichiometric_ratio_volume   air over gas for complete combustion   [-]
        molar_mass_kg_mol             of the gas                             [kg/mol]
        heat_capacity_ratio           of the gas                             [-]
        gas_temp_K                    before the jet                         [K]
        air_temp_K                    of the air around                      [K]
        ambient_Pa                    of the air around                      [Pa]
        inlet_loss, outlet_loss       Ki, Ko                                 [-]       0 or more
        chamber_gauge_Pa              back pressure in the chamber           [Pa]      0 or more
    Returns: AspiratedMix
    Raises: InputError for gas_pressure, throat_diameter, inlet_loss, outlet_loss or chamber_pressure
    Assumes: mixed and even at the end of the throat (6 to 10 diameters long), gas cooled by expansion warms up again,
        jet area small beside the throat
    Source: one-dimensional momentum theory of gas injectors: C. J. Lawn, Proc. IMechE C 217 (2003) 237, who finds it
        within 10 % of measurement for a tube of good length (published, abstract read); Prigg (memory)
    Checked by: tests/test_aspirated.py (closed form, Prigg's limit, momentum put back together)
    """
    require(0 < gas_gauge_Pa < 2e6, "gas_pressure", f"{gas_gauge_Pa:g} Pa", "must be above 0 and below 2 MPa gauge")
    require(
        throat_diameter_m > 3 * jet_diameter_m,
        "throat_diameter",
        f"{throat_diameter_m:g} m",
        "must be more than 3 jet diameters",
        f"{3.1 * jet_diameter_m:g} m",
    )
    for field, loss in (("inlet_loss", inlet_loss), ("outlet_loss", outlet_loss)):
        require(0 <= loss < 100, field, loss, "must be 0 or more and below 100", "1")
    require(
        0 <= chamber_gauge_Pa < 1e4,
        "chamber_pressure",
        f"{chamber_gauge_Pa:g} Pa",
        "must be 0 or more and below 10 kPa gauge",
        "0 Pa",
    )
    jet = {
        "diameter_m": jet_diameter_m,
        "discharge_coefficient": discharge_coefficient,
        "upstream_Pa": ambient_Pa + gas_gauge_Pa,
        "downstream_Pa": ambient_Pa,
        "temp_K": gas_temp_K,
        "molar_mass_kg_mol": molar_mass_kg_mol,
        "heat_capacity_ratio": heat_capacity_ratio,
    }
    thrust, gas = jet_thrust_N(**jet), jet_flow_kg_s(**jet)
    area = pi / 4 * throat_diameter_m**2
    rho_air = air_density_kg_m3(air_temp_K, ambient_Pa)
    gas_volume = gas * GAS_CONSTANT_J_MOLK * gas_temp_K / (ambient_Pa * molar_mass_kg_mol)
    # a*ma**2 + b*ma + c = 0, the equation above sorted by the air flow; a > 0 for any loss of 0 or more.
    half = 0.5 * (1 + outlet_loss)
    a = (half + 0.5 * (inlet_loss - 1)) / rho_air
    b = half * (gas_volume + gas / rho_air)
    c = half * gas * gas_volume - area * (thrust - chamber_gauge_Pa * area)
    require(
        c < 0,
        "chamber_pressure" if chamber_gauge_Pa else "throat_diameter",
        f"{chamber_gauge_Pa:g} Pa" if chamber_gauge_Pa else f"{throat_diameter_m:g} m",
        "needs a jet strong enough to pull in air; this one is pushed back",
        "0 Pa" if chamber_gauge_Pa else "",
    )
    air = -2 * c / (b + sqrt(b * b - 4 * a * c))
    ratio = air / AIR_MOLAR_MASS_KG_MOL * molar_mass_kg_mol / gas
    return AspiratedMix(
        gas, air, ratio, stoichiometric_ratio_volume / ratio, thrust, (gas_volume + air / rho_air) / area
    )
