"""How near a hand sets gas and air. One figure for each valve and one for both, declared nowhere else."""

from itertools import pairwise

# Of the gas, by a needle valve and its gauge: from shut to full in a turn or more of a knob of 40 mm, 1 % is 1.3 mm at
# its rim (calculated). No scale is read nearer either: gas goes with the root of its pressure, so it is 2 % of that.
NEEDLE_OFF = 0.01
NEEDLE_PRESSURE_OFF = 2 * NEEDLE_OFF
# Either way in equivalence ratio, both valves set and the blower as it is: a damper's mark alone comes back to 3 % of
# the air, beside which the needle hardly counts. No hand holds it better; all common practice.
MIXTURE_SLIP = 0.03
# A slide: of a gap set against a drill's shank, 5/1000 in; of one set by a rule, as gaps are that are wider than the
# drills that lie in every drawer. Common practice.
GAP_OFF_M, RULE_OFF_M, DRAWER_M = 0.13e-3, 0.5e-3, 13e-3
# From one stop of a slide to the next: what two shanks are missed by together, or a mark of the rule. Nearer they are
# one to a hand. Common practice.
NEXT_GAP_M, NEXT_MARK_M = 2 * GAP_OFF_M, RULE_OFF_M


def apart(gaps_m: list[float]) -> bool:
    """Whether a hand tells each stop of a slide from the one before."""
    return all(abs(b - a) >= (NEXT_MARK_M if max(a, b) > DRAWER_M else NEXT_GAP_M) for a, b in pairwise(gaps_m))
