"""Burned gas by Leckner's formulas, for tests and for scripts of tests/reference: nothing of ours goes in."""

from math import exp, log10

SIGMA = 5.670374419e-8


def leckner(water, carbon_dioxide, temp_K, path_m):
    """B. Leckner, Combust. Flame 19 (1972) 33, at 1 atm, as heat-transfer texts give it.

    Recalled; its polynomials were then read, alike, in two public programmes.
    """
    t, pressure = temp_K / 1000, 1.01325

    def thin(rows, path):
        return exp(sum(log10(path) ** i * sum(c * t**j for j, c in enumerate(row)) for i, row in enumerate(rows)))

    def broadened(a, b, c, effective, peak, path):
        return 1 - (a - 1) * (1 - effective) / (a + b - 1 + effective) * exp(-c * log10(peak / path) ** 2)

    p_w, p_c = water * pressure, carbon_dioxide * pressure
    w, c = p_w * path_m * 100, p_c * path_m * 100  # bar cm
    of_water = thin(
        ((-2.2118, -1.1987, 0.035596), (0.85667, 0.93048, -0.14391), (-0.10838, -0.17156, 0.045915)), w
    ) * broadened(1.888 - 2.053 * log10(t), 1.10 / t**1.4, 0.5, pressure + 2.56 * p_w / t**0.5, 13.2 * t**2, w)
    of_carbon_dioxide = thin(
        (
            (-3.9893, 2.7669, -2.1081, 0.39163),
            (1.2710, -1.1090, 1.0195, -0.21897),
            (-0.23678, 0.19731, -0.19544, 0.044644),
        ),
        c,
    ) * broadened(1 + 0.1 / t**1.45, 0.23, 1.47, pressure + 0.28 * p_c, 0.225 * t**2, c)
    return of_water + of_carbon_dioxide - overlap(w, c)


def overlap(water_bar_cm, carbon_dioxide_bar_cm):
    """What both gases radiate in the same bands, counted twice in their sum."""
    both = water_bar_cm + carbon_dioxide_bar_cm
    share = water_bar_cm / both
    return (share / (10.7 + 101 * share) - 0.0089 * share**10.4) * max(log10(both), 0) ** 2.76


def leckner_exchange(water, carbon_dioxide, path_m, gas_K, wall_K, wall_emissivity):
    """Radiation from gas to gray walls around it [W/m2]: what is sent out, once through and after each reflection.

    Absorptivity for walls of their own temperature: (Tg/Tw)**0.5 of the emissivity at Tw over the path p L Tw/Tg.
    """
    sent, taken, sent_before, taken_before = 0.0, 0.0, 0.0, 0.0
    for crossings in range(1, 20):
        path = crossings * path_m
        sent_now = leckner(water, carbon_dioxide, gas_K, path)
        taken_now = (gas_K / wall_K) ** 0.5 * leckner(water, carbon_dioxide, wall_K, path * wall_K / gas_K)
        back = (1 - wall_emissivity) ** (crossings - 1)
        sent, taken = sent + back * (sent_now - sent_before), taken + back * (taken_now - taken_before)
        sent_before, taken_before = sent_now, taken_now
    return SIGMA * wall_emissivity * (sent * gas_K**4 - taken * wall_K**4)
