"""What the tests of the room Air and gas share: designs, units, a part with some of its figures given, a verdict."""

from copy import copy

from designs import worked as solved

from burnercalc import catalogue
from burnercalc.catalogue.sentences import written
from burnercalc.checks import CHECKS
from burnercalc.result import Result

INCH, FT3, PSI, INH2O = 0.0254, 0.3048**3, 6894.757, 249.08891
BTU_H = 1055.05585262 / 3600
KBTU_H = 1000 * BTU_H
CFM = FT3 / 60
# Propane at phi 1, 60 degF, 100 kBtu/h: mixture by hand (tests/reference/flows.csv), density and viscosity by cantera.
MIXTURE_M3_S, DENSITY, VISCOSITY = 988.7 * FT3 / 3600, 1.2438, 17.25e-6


def head_Pa(velocity_m_s):
    return DENSITY * velocity_m_s**2 / 2


def part(name, r=None, **fields):
    """A part of a design, some of its figures given, also those that it works out when asked."""
    made = copy((r or solved()).part(name))
    assert all(hasattr(made, field) for field in fields)
    vars(made).update(fields)
    return made


def judged(key, r: Result | None = None, **given):
    """(verdict, value, limit, text, cures) of a design of which some parts and settings are given."""
    r = r or solved()
    found = r.parts.call(CHECKS[key], **given)
    if found is None:
        return None
    declared = catalogue.CHECKS[key]
    measure = (r.design.units, lambda: r.part("gas").liquid is None)
    text = " ".join(written(declared.cases[case], found.slots, *measure, apart=True) for case in found.cases)
    return found.verdict, found.value, found.limit, text, declared.cures if found.cures is None else found.cures
