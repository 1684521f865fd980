"""How near a hand sets gas and air. One figure for each valve and one for both, declared nowhere else."""

# Of the gas, by a needle valve and its gauge: from shut to full in a turn or more of a knob of 40 mm, 1 % is 1.3 mm at
# its rim (calculated). No scale is read nearer either: gas goes with the root of its pressure, so it is 2 % of that.
NEEDLE_OFF = 0.01
NEEDLE_PRESSURE_OFF = 2 * NEEDLE_OFF
# Either way in equivalence ratio, both valves set and the blower as it is: a damper's mark alone comes back to 3 % of
# the air, beside which the needle hardly counts. No hand holds it better; all common practice.
MIXTURE_SLIP = 0.03
