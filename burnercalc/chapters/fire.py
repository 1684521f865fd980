"""Fuel, air and mixture: how much of each flows for the firing rate."""
from ..physics import atmosphere, combustion, fuels

STOICHIOMETRY = "atom balance; dry air with 20.95 % oxygen (US Standard Atmosphere 1976)"
HEATING_VALUE = "enthalpies of formation, NASA polynomials (NASA TM-4513); metering state 15 °C, 101 325 Pa (ISO 13443)"


def solve(d, r):
    fuel = fuels.fuel_composition(d.fuel)
    r.ambient_pressure_Pa = atmosphere.pressure_at_altitude_Pa(d.altitude)
    r.fuel = fuel
    r.rate_W = d.firing_rate

    r.answer("gas_flow", combustion.gas_flow_m3_s(fuel, r.rate_W), "gas_flow", "Gas flow",
             "Fuel gas burned at high fire, as it would fill a meter at 15 °C and sea level.",
             "firing rate / gross heating value", ("firing_rate", "fuel"), HEATING_VALUE, "published")
    r.answer("air_flow", combustion.air_flow_m3_s(fuel, d.equivalence_ratio, r.rate_W), "air_flow", "Air flow",
             "Air that the blower brings at high fire, at 15 °C and sea level.",
             "gas flow x air to burn one volume of gas / equivalence ratio", ("gas_flow", "equivalence_ratio", "fuel"),
             STOICHIOMETRY, "published")
    r.answer("mixture_flow", r["gas_flow"] + r["air_flow"], "air_flow", "Mixture flow",
             "Gas and air together on their way to the ports, at 15 °C and sea level.",
             "gas flow + air flow", ("gas_flow", "air_flow"), STOICHIOMETRY, "calculated")
